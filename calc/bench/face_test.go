package bench_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// bare is a phone with nothing on it but a surface and a scale.
const bare = "bench.now.surface-temp = 25\nbench.now.scale-step = 0.1 g\nbench.now.read-on = 2026-06-01\nbench.now.read-at = 10:00"

func at(h float64) bench.Now { return bench.Now{Hour: unit.Time(h * 3600), Date: "2026-06-01"} }

func inGrams(m unit.Mass) float64          { return unit.InGram.From(float64(m)) }
func inCelsius(t unit.Temperature) float64 { return unit.InCelsius.From(float64(t)) }

func verdict(t *testing.T, b bench.Bench, s bench.Subject) bench.Verdict {
	t.Helper()
	for _, v := range b.Verdicts() {
		if v.Subject == s {
			return v
		}
	}
	require.Fail(t, "no such verdict", "%v", s)
	return bench.Verdict{}
}

func way(b bench.Bench, k bench.WayKind) *bench.Way {
	for i := range b.Ways() {
		if b.Ways()[i].Kind == k {
			return &b.Ways()[i]
		}
	}
	return nil
}

func hasReason[E error](b bench.Bench) bool {
	var e E
	return errors.As(errors.Join(b.Reasons...), &e)
}

// Two answers on an empty phone, and there is a dose: gel coat as it ships, the
// product as warm as the surface, 250 g of a tin that nobody has timed.
func TestTwoAnswersGiveADose(t *testing.T) {
	b := benchOf(t, tenOClock, bare)
	require.True(t, b.HasDose, "%v %v", b.Reasons, b.Waiting)
	assert.Equal(t, "gelcoat", b.Card.Key)
	assert.Equal(t, bench.FromShipped, b.Origin)
	assert.True(t, b.IsSame)
	assert.Equal(t, b.Surface.Value, b.Product.Value)
	assert.True(t, b.Size.Proposed)
	assert.False(t, b.AsksAhead, "25 °C is over 8 °C from the card's 15 °C")
	require.NotNil(t, b.Pour)
	share := float64(b.Dose.OfWhole.Value)
	assert.InDelta(t, 0.015, share, 0.0005)
	assert.Equal(t, b.Pour.Amount.Number.Add(b.Weigh[len(b.Weigh)-1].Shows.Number).String(), b.Pour.Then.Number.String(), "what the scale then shows")
	for _, s := range []bench.Subject{bench.Dew, bench.Humidity} {
		assert.Equal(t, bench.NotChecked, verdict(t, b, s).Kind)
	}
	require.NotNil(t, b.Minutes)
	assert.LessOrEqual(t, b.Minutes.Mix.Value, b.Minutes.Spread.Value)
	assert.Less(t, b.Minutes.Spread.Value, b.Minutes.GelsFrom.Value)
	assert.Less(t, b.Minutes.GelsFrom.Value, b.Minutes.GelsUntil.Value)

	empty := benchOf(t, tenOClock)
	assert.ElementsMatch(t, []string{"bench.now.surface-temp", "bench.now.scale-step"}, empty.Waiting)
	assert.True(t, empty.AsksTool)
	assert.Empty(t, empty.Reasons)
}

// US Army TM 55-1905-223 par. 8-24 weighs 4 to 1; the other two are by hand:
// 532 × 100 ÷ 133 = 400, 300 × 2 ÷ 3 = 200.
func TestAFixedRatioIsWeighedAsTheScaleShowsIt(t *testing.T) {
	for _, c := range []struct {
		lines      string
		own, shows []string
		isByVolume bool
		isRefused  bool
	}{
		{lines: "card.topcoat.ratio-mass = 100:33\nbench.now.amount = 532 g", own: []string{"400 g", "132 g"}, shows: []string{"400 g", "532 g"}},
		{lines: "card.topcoat.ratio-mass = 100/33\nbench.now.amount = 532 g", own: []string{"400 g", "132 g"}, shows: []string{"400 g", "532 g"}},
		{lines: "card.topcoat.ratio-mass = 4:1\nbench.now.amount = 500 g", own: []string{"400 g", "100 g"}, shows: []string{"400 g", "500 g"}},
		{lines: "card.topcoat.ratio-mass = 2.2 : 1\nbench.now.amount = 100 g", own: []string{"68.8 g", "31.3 g"}, shows: []string{"68.8 g", "100.1 g"}},
		{lines: "card.topcoat.ratio-volume = 2:1\nbench.now.amount = 300 mL", own: []string{"200 mL", "100 mL"}, shows: []string{"200 mL", "300 mL"}},
		{lines: "card.topcoat.ratio-volume = 2:1\nbench.now.amount = 30 mL", isRefused: true},
	} {
		b := benchOf(t, tenOClock, bare, "bench.now.card = topcoat", c.lines)
		assert.False(t, b.HasDose, c.lines)
		if c.isRefused {
			assert.True(t, hasReason[*cure.CoarseToolError](b), "%s: %v", c.lines, b.Reasons)
			assert.Empty(t, b.Weigh)
			continue
		}
		require.True(t, b.HasParts, "%s: %v %v", c.lines, b.Reasons, b.Waiting)
		require.Len(t, b.Weigh, 2, c.lines)
		for i, l := range b.Weigh {
			assert.Equal(t, []bench.Part{bench.PartA, bench.PartB}[i], l.Part)
			assert.Equal(t, spaced(c.own[i]), l.Own.String(), c.lines)
			assert.Equal(t, spaced(c.shows[i]), l.Shows.String(), c.lines)
		}
		assert.Equal(t, spaced(c.own[1]), b.Pour.Amount.String())
		assert.Equal(t, spaced(c.shows[1]), b.Pour.Then.String())
	}
	missing := benchOf(t, tenOClock, bare, "bench.now.card = topcoat", "bench.now.amount = 300 g")
	assert.False(t, missing.HasParts)
	assert.True(t, hasReason[*cure.RatioError](missing))
}

// spaced has the space before a unit that no line breaks at.
func spaced(text string) string { return strings.Replace(text, " ", "\u00a0", 1) }

func table(t *testing.T, b bench.Bench) cure.Table {
	made, err := chain.DoseTable(b.Card)
	require.NoError(t, err)
	return made
}

func celsiusFigure(c float64) working.Figure[unit.Temperature] {
	return working.Given(unit.Of[unit.Temperature](c, unit.InCelsius), "test", unit.InCelsius, "", source.Typed)
}

// A syringe with marks of 1 mL: half a mark of its own and half to round weigh
// 1.15 g, a whole 1.15 % of 100 g.
func TestACoarseSyringeGetsNoSmallCup(t *testing.T) {
	b := benchOf(t, tenOClock, morningWith("bench.now.tool = syringe", "bench.now.syringe-step = 1 mL", "bench.now.surface-temp = 22", "bench.now.product-temp = 22"))
	assert.False(t, b.HasDose)
	assert.True(t, hasReason[*cure.NotWithThisToolError](b), "%v", b.Reasons)
}

const coat = "surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\n" +
	"buildup = 1\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.1.method = nap-roller\nbuildup.1.step.1.film = 400 µm"

const timed = "test = 1\ntest.1.card = gelcoat\ntest.1.mass = 100 g\ntest.1.temp = 25\ntest.1.share = 1.5\ntest.1.minutes = 15"

// Material, method and film come from the next step of the job; the cup is the
// least of what holds it, in steps of 10 g, and what is left of the coat counts.
func TestTheCupThatIsProposed(t *testing.T) {
	b := benchOf(t, tenOClock, bare, coat, timed)
	require.True(t, b.HasDose, "%v %v", b.Reasons, b.Waiting)
	assert.Equal(t, bench.FromStep, b.Origin)
	assert.Equal(t, "buildup.1.step.1", b.Coat)
	assert.Equal(t, "nap-roller", b.Method.Key)
	assert.InDelta(t, 400e-6, float64(b.Film.Value), 1e-12)
	assert.InDelta(t, 500, inGrams(b.Whole.Value), 1e-9, "the card's batch at 25 °C")
	assert.Equal(t, bench.ByBatch, b.Size.Limits[0].Bound)
	for i := 1; i < len(b.Size.Limits); i++ {
		assert.LessOrEqual(t, b.Size.Limits[i-1].Mass.Value, b.Size.Limits[i].Mass.Value)
	}
	// 2 m² × 400 µm × 1.25 kg/L ÷ 0.95 = 1052.6 g; 1000 g of a cup are on
	rest := benchOf(t, tenOClock, bare, coat, timed, "cup = 1\ncup.1.card = gelcoat\ncup.1.method = nap-roller\ncup.1.step = buildup.1.step.1\ncup.1.mixed = 1000 g\ncup.1.in = 1780300000\ncup.1.ended = 1780300900\ncup.1.end = spread\ncup.1.left = 150 g")
	require.True(t, rest.HasDose, "%v", rest.Reasons)
	assert.Equal(t, bench.ByCoat, rest.Size.Limits[0].Bound)
	assert.InDelta(t, 250, inGrams(rest.Whole.Value), 50, "202.6 g, and what stays in cup and roller")
	done := benchOf(t, tenOClock, bare, coat, timed, "done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1")
	assert.Empty(t, done.Coat, "nothing is left to coat")
}

// The minutes, the bar and the largest cup go by what is measured.
func TestTheMinutesGoByTheMeasuredDose(t *testing.T) {
	fine := benchOf(t, tenOClock, morningWith("bench.now.scale-step = 0.01 g", "bench.now.surface-temp = 28", "bench.now.product-temp = 28"))
	coarse := benchOf(t, tenOClock, morningWith("bench.now.surface-temp = 28", "bench.now.product-temp = 28"))
	require.True(t, fine.HasDose && coarse.HasDose)
	assert.InDelta(t, 1.35, unit.InGram.From(float64(fine.Dose.Mass.Value)), 1e-9)
	assert.InDelta(t, 1.3, unit.InGram.From(float64(coarse.Dose.Mass.Value)), 1e-9)
	assert.Greater(t, float64(coarse.Minutes.GelsFrom.Value), float64(fine.Minutes.GelsFrom.Value), "less catalyst, more time")
	assert.Equal(t, coarse.Dose.OfWhole.Value, coarse.Hand.Catalyst.Value)
}

// A tin timed within 5 °C has a band of ±15 %; a gel time typed on the card is
// the sheet's: it moves early and late alike, and times no tin.
func TestATimedTinAndATypedGelTime(t *testing.T) {
	tested := benchOf(t, tenOClock, bare, timed)
	assert.Equal(t, cure.Timed, tested.Tin)
	assert.InEpsilon(t, 0.85, float64(tested.Hand.Cup.Early.Value/tested.Hand.Cup.Mid.Value), 1e-9)
	assert.InEpsilon(t, 1.15, float64(tested.Hand.Cup.Late.Value/tested.Hand.Cup.Mid.Value), 1e-9)

	shipped, typed := benchOf(t, tenOClock, bare), benchOf(t, tenOClock, bare, "card.gelcoat.gel-time = 26 min")
	assert.Equal(t, cure.Untimed, typed.Tin)
	assert.InDelta(t, 20, unit.InMinute.From(float64(typed.Gel.Time.Low.Value)), 1e-9, "10 of 13 min, of 26")
	assert.InDelta(t, 34, unit.InMinute.From(float64(typed.Gel.Time.High.Value)), 1e-9, "17 of 13 min, of 26")
	assert.InEpsilon(t, 2*float64(shipped.Hand.Cup.Early.Value), float64(typed.Hand.Cup.Early.Value), 0.02)
	half := benchOf(t, tenOClock, bare, "card.gelcoat.gel-time = 6.5 min")
	assert.Less(t, float64(half.Hand.Cup.Early.Value), float64(shipped.Hand.Cup.Early.Value), "a quicker tin gels earlier than the shipped early end")
}

// The batch is stated at 25 °C: a tin that gels there as early as the card's takes
// all of it, and a bit warmer less.
func TestTheBatchIsStatedAt25(t *testing.T) {
	early := benchOf(t, tenOClock, bare, "bench.now.scale-step = 0.01 g").Hand.Cup.Early.Value
	test := fmt.Sprintf("test = 1\ntest.1.card = gelcoat\ntest.1.mass = 100 g\ntest.1.temp = 25\ntest.1.share = 1.5\ntest.1.minutes = %.3f", unit.InMinute.From(float64(early))/0.85)
	b := benchOf(t, tenOClock, bare, "bench.now.scale-step = 0.01 g\nbench.now.method = nap-roller\nbench.now.film = 500 µm", test)
	require.True(t, b.HasDose, "%v", b.Reasons)
	batch := slices.IndexFunc(b.Size.Limits, func(l bench.Limit) bool { return l.Bound == bench.ByBatch })
	assert.InDelta(t, 500, inGrams(b.Size.Limits[batch].Mass.Value), 0.1)
	warmer := benchOf(t, tenOClock, bare, "bench.now.scale-step = 0.01 g\nbench.now.method = nap-roller\nbench.now.film = 500 µm\nbench.now.surface-temp = 26", test)
	batch = slices.IndexFunc(warmer.Size.Limits, func(l bench.Limit) bool { return l.Bound == bench.ByBatch })
	assert.Less(t, inGrams(warmer.Size.Limits[batch].Mass.Value), 495.)
}

const day = "day.today.date = 2026-06-01\nday.today.sunrise = 6:00"

// A flow coat ends at 35 °C, and over 30 °C it needs a patch: its wax melts.
// Source: common practice.
func TestAFlowCoatEndsAt35(t *testing.T) {
	at := func(c string) bench.Bench {
		return benchOf(t, tenOClock, bare, "bench.now.card = flowcoat\ncard.flowcoat.patch = 2026-05-30\nbench.now.surface-temp = "+c)
	}
	assert.NotContains(t, at("35").Reasons, bench.ErrHotFlowCoat)
	assert.Contains(t, at("35.1").Reasons, bench.ErrHotFlowCoat)
	assert.Contains(t, at("35.9").Reasons, bench.ErrHotFlowCoat, "35, not 36")
	assert.Contains(t, benchOf(t, tenOClock, bare, "bench.now.card = flowcoat\nbench.now.surface-temp = 30.5").Reasons, bench.ErrNoPatch)
}

// Wax solution is styrene: 2 % of it and 5.3 % by mass of thinner are over the
// card's 7.25 %, and it gives off vapour as styrene does.
func TestWaxSolutionCountsAsStyrene(t *testing.T) {
	with := func(thinner string) bench.Bench {
		return benchOf(t, tenOClock, bare, "bench.now.card = flowcoat\nbench.now.thinner = "+thinner)
	}
	var over *plan.ThinnerError
	assert.ErrorAs(t, errors.Join(with("5.3 %").Reasons...), &over)
	ok := with("5 %")
	require.True(t, ok.HasDose, "%v", ok.Reasons)
	// (0.36 + 0.05 + 0.02) ÷ 1.07 of styrene, 0.445 × h^1.675 g/kg of it leaves
	h := (0.36 + 0.05 + 0.02) / 1.07 * 100
	sprayed := 0.445 * math.Pow(h, 1.675) / 1000
	if ok.Method.IsSpray {
		sprayed = max(sprayed, 1.03646*h/100-0.195)
	}
	assert.InEpsilon(t, sprayed, float64(ok.Vapour.GivenOff.Value/ok.Whole.Value), 1e-9)
}

// The ceiling holds for the product alone: what pigment and thinner add to the
// cup may not lift the dose over it.
func TestTheCeilingHoldsForTheProduct(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 15\nbench.now.ahead = 15\nbench.now.pigment = 10 %\nbench.now.thinner = 7 %\nbench.now.scale-step = 0.01 g")
	assert.False(t, b.HasDose, "2.2 % of 117 g are 2.57 % of 100 g of product")
	assert.True(t, hasReason[*cure.OutsideError](b), "%v", b.Reasons)
}

// A film that doesn't go off is waited for by the catalyst that went in and the
// surface as it is now; a colder one longer.
func TestAFilmThatDoesNotGoOff(t *testing.T) {
	log := "cup = 1\ncup.1.card = gelcoat\ncup.1.mixed = 300 g\ncup.1.share = 2 %\ncup.1.surface-temp = 18\ncup.1.in = 1780300000"
	stuck := func(lines ...string) (cure.Stuck, error) {
		p := plan.Make(document(t, append([]string{log}, lines...)...))
		return bench.Stuck(&p, "cup.1", tenOClock)
	}
	then, err := stuck()
	require.NoError(t, err)
	assert.InDelta(t, 37, unit.InMinute.From(float64(then.Wait.Value)), 1, "late end at 18 °C and 2 %")
	assert.Greater(t, float64(then.Scrape.Value), float64(then.Wait.Value))
	now, err := stuck("bench.now.surface-temp = 14\nbench.now.read-on = 2026-06-01")
	require.NoError(t, err)
	assert.Greater(t, float64(now.Wait.Value), float64(then.Wait.Value))
	assert.Less(t, float64(now.Warmed.Value), float64(then.Wait.Value), "warming is quicker")
	p := plan.Make(document(t, log))
	_, err = bench.Stuck(&p, "cup.2", tenOClock)
	assert.Error(t, err)
}
