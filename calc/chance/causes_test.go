package chance_test

import (
	"fmt"
	"math"

	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// causesOf names what moves a line.
func causesOf(l *chance.Line) []string {
	var list []string
	for _, e := range l.Confidence.Effects {
		kind := map[chance.CauseKind]string{chance.AreaCause: "area", chance.FilmCause: "film", chance.LossCause: "loss", chance.SandedOffCause: "sanded off", chance.UseCause: "use", chance.LearntCause: "learnt"}[e.Cause.Kind]
		switch {
		case e.Cause.Surface != nil:
			kind += " " + e.Cause.Surface.Path
		case e.Cause.Method != nil:
			kind += " " + e.Cause.Method.Key + " " + e.Cause.Card.Key
		default:
			kind += " " + e.Cause.Card.Key
		}
		list = append(list, kind)
	}
	return list
}

// Each line moves with the surfaces that are still to get it, and with the hands that put it on: not with
// those of another build-up, nor with a surface that is done. Together they take what is planned: with an area
// off by its likely range a line is off by its share.
func TestALineMovesWithItsOwnCauses(t *testing.T) {
	two := jobtest.Doc(t, rolled, "surface = 1 2 3\nsurface.3.shape = direct\nsurface.3.area = 50 m²\nsurface.3.buildup = buildup.2\nbuildup = 1 2\nbuildup.2.step = 1 2 3",
		"buildup.2.step.1.kind = fill\nbuildup.2.step.1.card = epoxy-filler\nbuildup.2.step.1.thickness = 1 mm\nbuildup.2.step.2.kind = sand\nbuildup.2.step.2.taken = 100 µm",
		"buildup.2.step.3.kind = polish\nbuildup.2.step.3.card = compound")
	of := func(lines ...string) map[string][]string {
		d := two
		for _, l := range jobtest.Doc(t, lines...).Lines() {
			d = d.Set(l.Path, l.Text)
		}
		p := plan.Make(d)
		require.Empty(t, p.Refused())
		o := simulated(t, p, 1e6)
		all := map[string][]string{}
		for i := range o.Lines {
			if l := &o.Lines[i]; l.Confidence != nil {
				all[l.Card.Key] = causesOf(l)
			}
		}
		return all
	}
	flow := []string{"loss nap-roller flowcoat", "film nap-roller flowcoat"}
	all := of()
	assert.ElementsMatch(t, append([]string{"area surface.1", "area surface.2"}, flow...), all["flowcoat"])
	assert.ElementsMatch(t, []string{"loss knife epoxy-filler", "sanded off epoxy-filler", "area surface.3"}, all["epoxy-filler"])
	assert.ElementsMatch(t, []string{"use compound", "area surface.3"}, all["compound"])
	half := of("done = 1\ndone.1.step = " + flowStep + "\ndone.1.surface = surface.1")
	assert.ElementsMatch(t, append([]string{"area surface.2"}, flow...), half["flowcoat"])
	learnt := of("learn.nap-roller.flowcoat = 0.1 0.1 3")
	assert.ElementsMatch(t, []string{"area surface.1", "area surface.2", "learnt nap-roller flowcoat"}, learnt["flowcoat"])

	p := plan.Make(two)
	o := simulated(t, p, 1e6)
	filler := lineOf(&o, "epoxy-filler")
	for _, e := range filler.Confidence.Effects {
		if e.Cause.Kind == chance.LossCause { // √(0.25² + 0.20²)
			assert.InEpsilon(t, filler.Planned()*(math.Exp(1.644854*0.3201562)-1), e.High, 1e-6)
		}
	}
	l, s := lineOf(&o, "flowcoat"), order.CV(0.03)
	for _, e := range l.Confidence.Effects {
		if e.Cause.Surface != nil { // taped: 3 %
			share := map[string]float64{"surface.1": 0.6, "surface.2": 0.4}[e.Cause.Surface.Path]
			assert.InEpsilon(t, share*l.Planned()*(math.Exp(1.644854*s.SD)-1), e.High, 1e-6, e.Cause.Surface.Path)
		}
	}
}

// Kilograms and litres that are needed are simulated, and nothing else: metres, pieces, and what is all on
// already stay as planned, without an error.
func TestWhatIsSimulated(t *testing.T) {
	done := []string{"done = 1", "done.1.step = buildup.1.step.1", "done.1.surface = surface.1"}
	o := simulated(t, planned(t, append(done, gelAndPaint...)...), 1e6)
	needed := 0
	for _, l := range o.Lines {
		isMeasured := l.Scale == unit.InKilogram || l.Scale == unit.InLitre
		assert.Equal(t, isMeasured && l.Need.IsPositive(), l.Confidence != nil, l.Card.Key)
		require.NoError(t, l.Err, l.Card.Key)
		if l.Confidence != nil {
			needed++
			assert.Same(t, l.Confidence.Have.Step, l.Why(), "the need is the one that is bought")
			texts := l.Why().Texts()
			assert.Contains(t, texts[len(texts)-1].Result, "\u00a0"+l.Scale.Symbol(), "%s is told in the unit that it is sold by", l.Card.Key)
		}
	}
	assert.GreaterOrEqual(t, needed, 2, "the paint and the cleaning")
	assert.Nil(t, lineOf(&o, "gelcoat").Confidence, "it is on")

	unfinished := []string{"buildup.1.step = 1 2", "buildup.1.step.2.kind = coat", "buildup.1.step.2.card = topcoat", "buildup.1.step.2.method = foam-roller"}
	p := plan.Make(jobtest.Doc(t, append(append(append([]string{}, sixSquareMetres...), rolledTwice...), unfinished...)...))
	require.NotEmpty(t, p.Waiting())
	o = simulated(t, p, 1e6)
	assert.NotNil(t, lineOf(&o, "gelcoat").Confidence, "a step that isn't whole yet holds nothing back")
}

// A reserve is kept of what has a colour, all bought at once, and of no other: 5 % of the planned need, half a
// kilogram at least; none where the builder wants none. Of what is sold by the litre it is in litres: half a
// kilogram of paint of 1.2 kg/L is 0.4167 L.
func TestWhatIsKeptForRepairs(t *testing.T) {
	at := func(key string, lines ...string) chance.Way {
		l := simulatedLine(t, planned(t, append(lines, gelAndPaint...)...), key)
		assert.Nil(t, l.Confidence.Start.Reserve.Step)
		assert.InDelta(t, float64(l.Confidence.AtOnce.Enough.Value+l.Confidence.AtOnce.Reserve.Value), float64(l.Confidence.AtOnce.Have.Value), 1e-12)
		return l.Confidence.AtOnce
	}
	assert.InDelta(t, 0.5, float64(at("gelcoat").Reserve.Value), 1e-12)
	assert.Nil(t, at("gelcoat", "card.gelcoat.reserve = 0 %").Reserve.Step)
	assert.Nil(t, at("ketone-peroxide").Reserve.Step)
	paint := at("topcoat").Reserve
	assert.InDelta(t, 0.5/1.2, unit.InLitre.From(float64(paint.Value)), 1e-9)
	texts := paint.Step.Texts()
	assert.Contains(t, texts[len(texts)-1].Result, "\u00a0L")
}

// What is left over is worth its share of what was paid, and never more; without a price nobody knows. Two
// packs of 5 kg at 50 are 10 for each kilogram that is left of the likeliest need.
func TestWhatIsLeftIsWorthItsShare(t *testing.T) {
	onlyFive := []string{"card.gelcoat.pack.1.sold = no", "card.gelcoat.pack.3.sold = no"}
	priced := simulatedLine(t, planned(t, append(append(onlyFive, "card.gelcoat.pack.2.price = 50"), rolledTwice...)...), "gelcoat")
	for _, c := range priced.Confidence.Choices {
		require.True(t, c.Worth.Valid)
		assert.InDelta(t, 10*c.Left.InexactFloat64(), c.Worth.Decimal.InexactFloat64(), 1e-6)
	}
	stocked := simulatedLine(t, planned(t, append(append(onlyFive, "card.gelcoat.pack.2.price = 50", "card.gelcoat.stock = 6.5 kg"), rolledTwice...)...), "gelcoat")
	shown := 0
	for _, c := range stocked.Confidence.Choices {
		if c.Bought.Bought.IsZero() {
			assert.False(t, c.Worth.Valid)
			continue
		}
		shown++
		assert.InDelta(t, min(10*c.Left.InexactFloat64(), c.Bought.Cost.InexactFloat64()), c.Worth.Decimal.InexactFloat64(), 1e-6)
	}
	assert.Positive(t, shown)
	for _, c := range simulatedLine(t, planned(t, append(onlyFive, rolledTwice...)...), "gelcoat").Confidence.Choices {
		assert.False(t, c.Worth.Valid, "no price, no worth")
	}
}

// A job that is too large to be imagined ten thousand times says so, and one line whose reserve can't be
// found stays as planned beside the others.
func TestWhatCannotBeSimulated(t *testing.T) {
	ids, lines, step := "", append([]string{}, rolledTwice...), ""
	for n := range 200 {
		at := fmt.Sprintf("surface.%d", n+1)
		ids += fmt.Sprintf(" %d", n+1)
		lines = append(lines, at+".shape = direct", at+".area = 1 m²", at+".buildup = buildup.1")
	}
	for n := range 40 {
		at := fmt.Sprintf("buildup.1.step.%d", n+1)
		step += fmt.Sprintf(" %d", n+1)
		lines = append(lines, at+".kind = coat", at+".card = gelcoat", at+".method = nap-roller", at+".film = 400 µm", at+".film-for = each", at+".coats = 2")
	}
	p := plan.Make(jobtest.Doc(t, append(append(append([]string{}, sixSquareMetres...), lines...), "surface ="+ids, "buildup.1.step ="+step)...))
	_, err := chance.Simulate(&p, chance.OrderOf(&p))
	var refused *order.ModelError
	require.ErrorAs(t, err, &refused)
	assert.Equal(t, "terms", refused.What)

	huge := jobtest.Doc(t, append(append([]string{}, sixSquareMetres...), rolledTwice...)...).Set("surface.1.length", "100 m").Set("surface.1.width", "100 m").Set("card.gelcoat.pack.3.size", "900 kg").Set("card.ketone-peroxide.pack.1.size", "20 kg")
	for range 11 { // 120,000 m² in twelve build-ups, 126 t: of more than 100 t no reserve is reckoned
		var surface, build string
		huge, surface = huge.Copy("surface.1")
		huge, build = huge.Copy("buildup.1")
		huge = huge.Set(surface+".buildup", build)
	}
	p = plan.Make(huge)
	require.Empty(t, p.Refused())
	o := chance.OrderOf(&p)
	was := lineOf(&o, "gelcoat").Need
	o = simulated(t, p, 1e6)
	l := lineOf(&o, "gelcoat")
	assert.Error(t, l.Err)
	assert.Nil(t, l.Confidence)
	assert.True(t, was.Equal(l.Need))
	assert.NotNil(t, lineOf(&o, "ketone-peroxide").Confidence)
}
