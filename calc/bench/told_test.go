package bench_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Over drawn benches, some with a tool far too coarse: a cup without a dose says why or what it waits for; temperatures that bring
// one back are other ones than those of now, with the product no warmer than the part; and minutes begin with mixing.
func TestACupWithoutADoseSaysWhy(t *testing.T) {
	refused, warmed := 0, 0
	for seed := range jobtest.Enough(t, 300, &warmed, 20) {
		d := newBenches(seed).likely()
		if seed%4 == 0 {
			d = d.Set("bench.now.tool", "scale").Set("bench.now.scale-step", "5 g").Set("bench.now.amount", "")
		}
		p := plan.Make(d)
		b := bench.Make(&p, tenOClock)
		if !b.HasDose && !b.HasParts {
			refused++
			assert.True(t, len(b.Reasons) > 0 || len(b.Waiting) > 0 || b.AsksTool, "seed %d", seed)
		}
		if b.Minutes != nil {
			assert.GreaterOrEqual(t, b.Minutes.Spread.Value, b.Minutes.Mix.Value, "seed %d", seed)
		}
		assert.Empty(t, b.PuttyTakes(), "seed %d: no putty is mixed", seed)
		w := way(b, bench.AtTemperatures)
		if w == nil {
			continue
		}
		warmed++
		assert.LessOrEqual(t, float64(w.Product.Value), float64(w.Surface.Value)+1e-9, "seed %d", seed)
		off := math.Max(math.Abs(float64(w.Product.Value-b.Product.Value)), math.Abs(float64(w.Surface.Value-b.Surface.Value)))
		assert.GreaterOrEqual(t, off, 0.05-1e-9, "seed %d: it is as warm as that already", seed)
	}
	assert.NotZero(t, refused)
}

// Each reason that has nothing to do with the weather leads to no other hour and to no other temperature, on a day of
// which the curve is known and good hours lie ahead.
func TestOnlyTheWeatherLeadsToAnotherHour(t *testing.T) {
	const mild = day + "\nday.today.low = 17\nday.today.high = 26\nday.today.read-temp = 22\nday.today.read-humidity = 55\nday.today.read-at = 10:00"
	for name, c := range map[string]struct {
		lines string
		leads bool
	}{
		"too cold":    {"bench.now.surface-temp = 13", true},
		"pigment":     {"bench.now.pigment = 50 %", false},
		"other day":   {"bench.now.read-on = 2026-05-30", false},
		"jump":        {"bench.now.surface-was = 5", false},
		"coarse tool": {"bench.now.scale-step = 20 g", false},
		"own table":   {"card.gelcoat.surface-least = 10 °C\ncard.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = 22\ncard.gelcoat.dose.1.share = 1.8\ncard.gelcoat.dose.2.temp = 30\ncard.gelcoat.dose.2.share = 1.2\nbench.now.surface-temp = 20", true},
	} {
		b := benchOf(t, tenOClock, bare, mild, c.lines)
		require.NotEmpty(t, b.Reasons, name)
		require.False(t, b.HasDose, name)
		assert.Equal(t, c.leads, len(b.Ways()) > 0, "%s: %v", name, b.Reasons)
	}
	dry := benchOf(t, tenOClock, bare, mild, "day.today.read-humidity = 20")
	require.True(t, hasReason[*bench.UnfitError](dry), "%v", dry.Reasons)
	assert.Nil(t, way(dry, bench.AtTemperatures), "dry air isn't helped by the temperatures that there are already")
}

// A surface far from the last cup's is asked about before there is a dose; one that was confirmed is dosed.
func TestAJumpIsAskedAboutBeforeADose(t *testing.T) {
	for _, lines := range []string{"bench.now.surface-was = 9", "bench.now.product-temp = 25\nbench.now.product-was = 9"} {
		b := benchOf(t, tenOClock, bare, lines)
		assert.False(t, b.HasDose, lines)
		assert.Contains(t, b.Reasons, bench.ErrJump, lines)
	}
	near := benchOf(t, tenOClock, bare, "bench.now.surface-was = 11")
	assert.True(t, near.HasDose, "%v", near.Reasons)
}

// Tests of one tin that contradict each other are told, and nothing is dosed by them.
func TestTestsThatContradictAreTold(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "test = 1 2",
		"test.1.card = gelcoat\ntest.1.mass = 100 g\ntest.1.temp = 18\ntest.1.share = 1.7\ntest.1.minutes = 10",
		"test.2.card = gelcoat\ntest.2.mass = 100 g\ntest.2.temp = 28\ntest.2.share = 1.7\ntest.2.minutes = 30")
	assert.False(t, b.HasDose)
	assert.Len(t, b.Reasons, 1)
	assert.Equal(t, cure.Untimed, b.Tin)
}

// A table of the builder's own that doesn't reach the temperature of the largest batch doses none the less.
func TestATableOfItsOwnOffTheBatchsTemperature(t *testing.T) {
	for _, c := range [][3]string{{"26", "30", "28"}, {"16", "22", "20"}} {
		b := benchOf(t, tenOClock, bare, "bench.now.ahead = 18\nbench.now.surface-temp = "+c[2], "card.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = "+c[0]+"\ncard.gelcoat.dose.1.share = 1.6\ncard.gelcoat.dose.2.temp = "+c[1]+"\ncard.gelcoat.dose.2.share = 1.2")
		assert.True(t, b.HasDose, "%v: %v", c, b.Reasons)
	}
}

// The timed test of a hot day: a flow coat's ends at 35 °C, where its wax melts (common practice); a tool too coarse for it is told, with no dose.
func TestATimedTestKeepsToItsMaterialAndItsTool(t *testing.T) {
	flow := way(benchOf(t, tenOClock, bare, "bench.now.card = flowcoat\ncard.flowcoat.patch = 2026-05-30\nbench.now.ahead = 20\nbench.now.product-temp = 34.9\nbench.now.surface-temp = 34.9"), bench.ByTimedTest)
	require.NotNil(t, flow)
	assert.InDelta(t, 35, inCelsius(flow.UpTo), 1e-6)
	const hot = "bench.now.ahead = 25\nbench.now.product-temp = 34.9\nbench.now.surface-temp = 34.9"
	gel := way(benchOf(t, tenOClock, bare, hot), bench.ByTimedTest)
	require.NotNil(t, gel)
	assert.InDelta(t, 35.9, inCelsius(gel.UpTo), 1e-6, "a degree over what is timed")
	require.NoError(t, gel.Err)
	assert.Equal(t, "1", gel.Dose.Number.String(), "1 % of 100 g")
	coarse := way(benchOf(t, tenOClock, bare, hot, "bench.now.scale-step = 5 g"), bench.ByTimedTest)
	require.NotNil(t, coarse)
	assert.Error(t, coarse.Err)
	assert.True(t, coarse.Dose.Number.IsZero())
}

// The limit that heat misses on the card alone, at its cold end as at its warm one; and while nothing tells of the evening, it isn't checked.
func TestVerdictsOfTheCardAlone(t *testing.T) {
	cold := benchOf(t, tenOClock, bare, "card.gelcoat.surface-least = 18 °C\nbench.now.surface-temp = 17\nbench.now.ahead = 18")
	assert.InDelta(t, 18, verdict(t, cold, bench.Heat).Limit-273.15, 1e-6)
	unknown := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 16")
	assert.Equal(t, bench.NotChecked, verdict(t, unknown, bench.ColdEvening).Kind)
}

// Figures that make no day say so, and no hour is told by them; without a humidity nothing is told of windows.
func TestADayThatIsNoneHasNoHours(t *testing.T) {
	const read = day + "\nday.today.read-temp = 22\nday.today.read-humidity = 55\nday.today.read-at = 10:00"
	good := benchOf(t, tenOClock, bare, read, "day.today.low = 17\nday.today.high = 26")
	assert.NoError(t, good.Air.Problem())
	assert.NotEmpty(t, good.Air.Hours().Windows)
	for name, lines := range map[string]string{
		"low over high": "day.today.low = 27\nday.today.high = 20", "no humidity holds": "day.today.low = 17\nday.today.high = 26\ncard.gelcoat.humidity-least = 90 %\ncard.gelcoat.humidity-most = 60 %",
	} {
		b := benchOf(t, tenOClock, bare, read, lines)
		assert.Error(t, b.Air.Problem(), name)
		assert.Empty(t, b.Air.Hours().Windows, name)
	}
	dry := benchOf(t, tenOClock, bare, read, "day.today.low = 17\nday.today.high = 26\nday.today.read-humidity = ")
	assert.NoError(t, dry.Air.Problem())
	assert.Empty(t, dry.Air.Hours().Windows)
	assert.Empty(t, dry.Air.Hours().Through)
	assert.NotEmpty(t, dry.Air.Hours().Dose, "the surface is known by the curve alone")
}

// What a coat's step says of thinner holds at the bench until something is typed there, nothing at all too; and the volume
// that is typed is that of an inside surface that is no box.
func TestWhatTheCoatSaysHoldsAtTheBench(t *testing.T) {
	coat := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1", "surface.1.length = 2 m", "surface.1.width = 1 m", "surface.1.buildup = buildup.1",
		"buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = nap-roller", "buildup.1.step.1.film = 400 µm",
		"buildup.1.step.1.thinner = 4 %", "buildup.1.step.1.thinner-by = mass")
	for line, share := range map[string]float64{"": 0.04, "bench.now.thinner = 2 %\nbench.now.thinner-by = mass": 0.02, "bench.now.thinner = 0": 0} {
		b := benchOf(t, tenOClock, coat, line)
		require.True(t, b.HasDose, "%q: %v", line, b.Reasons)
		assert.InDelta(t, share, float64(b.Mix.Thinner.Value/b.Mix.Product.Value), 1e-9, "%q", line)
	}
	inside := benchOf(t, tenOClock, coat, "surface.1.inside = locker", "bench.now.locker = 3 m³")
	require.True(t, inside.Vapour.IsInside)
	assert.InDelta(t, 3, float64(inside.Vapour.Volume.Value), 1e-9)
	none := benchOf(t, tenOClock, coat, "surface.1.inside = locker")
	assert.True(t, none.Vapour.IsInside)
	assert.Nil(t, none.Vapour.Space.Step, "how large it is isn't guessed")
}

// Every card that can be coated says how thick its usual film is, and in no more than its most in one coat.
func TestEveryCardThatIsCoatedHasAUsualFilm(t *testing.T) {
	seen := 0
	for _, key := range []string{"gelcoat", "flowcoat", "vinylester", "primer", "topcoat"} {
		b := benchOf(t, tenOClock, bare, "bench.now.card = "+key, "card."+key+".ratio-mass = 4:1")
		require.NotNil(t, b.Card, key)
		assert.True(t, b.Card.UsualFilm.Known, key)
		assert.True(t, b.Film.Value > 0 && b.Film.Value <= b.Card.CoatMost.Value+unit.WetFilm(1e-9), key)
		seen++
	}
	assert.Equal(t, 5, seen)
}

// Of two lockers the one that comes nearer to the explosive limit is told, whichever is first: the small box. Its verdict has the
// figure with its working.
func TestTheNearestSpaceIsTold(t *testing.T) {
	box := func(id, high string) string {
		at := "surface." + id
		return at + ".shape = box\n" + at + ".length = 1 m\n" + at + ".width = 1 m\n" + at + ".height = " + high + "\n" + at + ".side = inside\n" + at + ".faces = bottom\n" + at + ".inside = locker\n" + at + ".buildup = buildup.1"
	}
	coat := morningWith("bench.now.for = step", "bench.now.step = buildup.1.step.1", "surface = 1 2", "buildup = 1", "buildup.1.step = 1", "buildup.1.step.1.kind = coat",
		"buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = nap-roller", "buildup.1.step.1.film = 400 µm")
	var shares []float64
	for _, high := range [][2]string{{"4 m", "8 m"}, {"8 m", "4 m"}} {
		b := benchOf(t, tenOClock, coat, box("1", high[0]), box("2", high[1]))
		require.NotNil(t, b.Vapour.Space.Step, "%v", b.Reasons)
		assert.InDelta(t, 4, float64(b.Vapour.Volume.Value), 1e-9, "as much is put on in either, and the low one has half the air")
		v := verdict(t, b, bench.Explosive)
		assert.InDelta(t, float64(b.Vapour.Space.Value), v.Value, 1e-12)
		assert.NotNil(t, v.Why)
		shares = append(shares, v.Value)
	}
	assert.InEpsilon(t, shares[0], shares[1], 1e-9)
}

// No temperature brings back a cup that gels before it is spread at every one of them.
func TestNoTemperatureHelpsWhatGelsAtOnce(t *testing.T) {
	for minutes, helps := range map[string]bool{"6": true, "2": false} {
		b := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 34\nbench.now.ahead = 20\ncard.gelcoat.gel-time = "+minutes+" min")
		require.NotEmpty(t, b.Reasons)
		assert.Equal(t, helps, way(b, bench.AtTemperatures) != nil, "%s min", minutes)
	}
}
