package bench_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/plan"
)

// The doses for the wall are the table's, by the tool in the hand, cut where a cup
// may not be so large: of an untimed tin over 250 g. The mark is the one below or at
// the table's share, so that no cup goes over it: 1.85 % of 100 g are 1.8 of a scale
// of 0.1 g, and at 1.15 g/mL and 30 drops a millilitre 48. A dash is better than a
// dose for a cup that gels on the roller.
func TestTheDosesForTheWall(t *testing.T) {
	rows := func(lines ...string) map[float64]string {
		p := plan.Make(document(t, append([]string{bare}, lines...)...))
		table, err := chain.DoseTable(p.Job.CardByKey("gelcoat"))
		require.NoError(t, err)
		of := map[float64]string{}
		for _, r := range bench.ShedCard(&p, tenOClock, table) {
			of[inCelsius(r.Surface)] = strings.ReplaceAll(strings.Join(r.Doses, ", "), "\u00a0", " ")
		}
		return of
	}
	scale := rows()
	require.Len(t, scale, len(tablesThatShip["gelcoat"]))
	assert.Equal(t, "1.8 g, 3.7 g, –, –, –", scale[20], "20 °C")
	assert.Equal(t, "1.5 g, 3 g, –, –, –", scale[25])
	timedTin := rows(timed)
	assert.Equal(t, "1.5 g, 3 g, 4.5 g, 6 g, 7.5 g", timedTin[25], "a timed tin takes the card's batch")
	assert.Equal(t, "1.2 g, 2.4 g, 3.6 g, –, –", timedTin[32], "not at 32 °C: the minutes are too few")
	assert.Equal(t, "1.3 mL, 2.6 mL, –, –, –", rows("bench.now.tool = syringe\nbench.now.syringe-step = 0.1 mL")[25])
	assert.Equal(t, "48, 97, –, –, –", rows("bench.now.tool = drops\nbench.now.drops = 30")[20], "drops are bare")
	assert.Equal(t, "–, –, –, –, –", rows("bench.now.scale-step = 1 g")[25], "a scale of 1 g can't dose a small cup")
	assert.Empty(t, rows("bench.now.scale-step = "), "no tool, no doses")
	assert.Empty(t, rows("bench.now.card = topcoat\ncard.topcoat.ratio-mass = 4:1"), "a fixed ratio has no table")
}

// How it is put on and how thick: what is typed comes first, then the step that the
// cup is for, then the last cup of the same material, then what the card is put on
// with as a rule. A film by another method is another number of minutes.
func TestWhereMethodAndFilmComeFrom(t *testing.T) {
	lastCup := "cup = 1\ncup.1.card = gelcoat\ncup.1.method = brush\ncup.1.mixed = 100 g\ncup.1.in = 100\ncup.1.ended = 900"
	for _, c := range []struct {
		name, lines, method string
		film                float64
	}{
		{"nothing typed", "", "gravity-gun", 375},
		{"typed", "bench.now.method = brush\nbench.now.film = 450 µm", "brush", 450},
		{"a step", coat, "nap-roller", 400},
		{"typed over a step", coat + "\nbench.now.method = brush\nbench.now.film = 300 µm", "brush", 300},
		{"the last cup", lastCup, "brush", 375},
		{"the last cup of another material", lastCup + "\nbench.now.card = flowcoat", "nap-roller", 400},
		{"a step over the last cup", coat + "\n" + lastCup, "nap-roller", 400},
		{"filler", "bench.now.card = polyester-filler", "knife", 5000},
	} {
		b := benchOf(t, tenOClock, bare, c.lines)
		require.NotNil(t, b.Method, c.name)
		assert.Equal(t, c.method, b.Method.Key, c.name)
		assert.InDelta(t, c.film, float64(b.Film.Value)*1e6, 1e-6, c.name)
	}
}

// The vapour of a coat is that of the cups still to come: of six, one that runs is
// five more. One that is spread is off the need already, and isn't taken off twice:
// too little would be said of the air to move. So it is whether the step is chosen or
// is the next one anyway.
func TestTheCupsOfACoatStillToCome(t *testing.T) {
	cup := "cup = 1\ncup.1.card = gelcoat\ncup.1.method = brush\ncup.1.step = buildup.1.step.1\ncup.1.mixed = 500 g\ncup.1.product = 500 g\ncup.1.in = 1780300000\ncup.1.day = 2026-06-01"
	spread := cup + "\ncup.1.ended = 1780300900\ncup.1.end = spread\ncup.1.left = 20 g"
	for _, chosen := range []string{"", "bench.now.step = buildup.1.step.1"} {
		for _, c := range []struct {
			name, lines string
			running     int
		}{{"none", "", 0}, {"one runs", cup, 1}, {"one is spread", spread, 0}} {
			b := benchOf(t, tenOClock, bare, coat, timed, "surface.1.length = 4 m", c.lines, chosen)
			require.True(t, b.HasDose && b.HasCups && b.Cups.Count.Value > 3, "%s: %v", c.name, b.Reasons)
			toCome := float64(b.Cups.Count.Value) - float64(c.running)
			assert.InEpsilon(t, toCome*float64(b.Vapour.GivenOff.Value), float64(b.Vapour.Coat.Value), 1e-9, "%s; chosen: %q", c.name, chosen)
		}
	}
}

// While the last cup of a coat but one runs, one is still to come.
func TestTheLastCupOfACoat(t *testing.T) {
	b := benchOf(t, tenOClock, bare, coat, timed, "surface.1.length = 0.5 m\nsurface.1.width = 0.4 m",
		"cup = 1\ncup.1.card = gelcoat\ncup.1.method = brush\ncup.1.step = buildup.1.step.1\ncup.1.mixed = 200 g\ncup.1.product = 200 g\ncup.1.in = 1780300000\ncup.1.day = 2026-06-01")
	require.True(t, b.HasCups, "%v", b.Reasons)
	require.LessOrEqual(t, float64(b.Cups.Count.Value), 2.)
	assert.Equal(t, float64(b.Vapour.GivenOff.Value), float64(b.Vapour.Coat.Value))
}

// A closed space typed at the bench takes the cup's vapour, in air at the warmer of
// product and surface: 200 g of gel coat give off 0.445 × 35^1.675 g/kg, and half the
// space holds more of the limit.
func TestASpaceTypedAtTheBench(t *testing.T) {
	in := func(lines ...string) bench.Vapour {
		return benchOf(t, tenOClock, append([]string{bare, timed, "bench.now.card = gelcoat\nbench.now.amount = 200 g\nbench.now.surface-temp = 24\nbench.now.product-temp = 24"}, lines...)...).Vapour
	}
	large, small, warm := in("bench.now.locker = 20 m³"), in("bench.now.locker = 10 m³"), in("bench.now.locker = 20 m³\nbench.now.product-temp = 26")
	require.True(t, large.IsInside && small.IsInside && warm.IsInside)
	assert.InDelta(t, 20, float64(large.Volume.Value), 1e-9)
	assert.InEpsilon(t, 2*float64(large.Space.Value), float64(small.Space.Value), 1e-9)
	assert.InEpsilon(t, float64(large.Space.Value)*299.15/297.15, float64(warm.Space.Value), 1e-9, "a gas takes more room by the kelvin, at the warmer of the two")
	assert.False(t, in().IsInside)
}

// The limit is that of the agency that was chosen, the lowest where none was: half
// the limit needs twice the air.
func TestTheLimitOfTheChosenAgency(t *testing.T) {
	of := func(lines string) bench.Vapour { return benchOf(t, tenOClock, morningWith(lines)).Vapour }
	lowest := of("bench.now.colour = ")
	assert.Equal(t, air.LowestExposure().Agency, lowest.Limit.Agency)
	for _, e := range air.Exposures {
		v := of("bench.now.agency = " + e.Agency)
		assert.Equal(t, e.Agency, v.Limit.Agency)
		assert.InEpsilon(t, float64(lowest.Air.Value)*float64(air.LowestExposure().EightHours/e.EightHours), float64(v.Air.Value), 1e-6, e.Agency)
	}
	assert.Equal(t, lowest.Limit, of("bench.now.agency = nobody's").Limit)
}

// Without a sunrise it is taken to be six; a day whose low lies over its high is
// refused, and has no curve.
func TestTheDayAtTheBench(t *testing.T) {
	six := benchOf(t, tenOClock, morningWith("day.today.sunrise = 6:00"))
	none := benchOf(t, tenOClock, morningWith("day.today.sunrise = "))
	require.True(t, six.Air.HasCurve && none.Air.HasCurve)
	for hour := 0.; hour < 24; hour += 3 {
		assert.Equal(t, six.Air.Day.Air(at(hour).Hour), none.Air.Day.Air(at(hour).Hour))
	}
	turned := benchOf(t, tenOClock, morningWith("day.today.low = 29", "day.today.high = 17"))
	assert.False(t, turned.Air.HasCurve)
	assert.Error(t, turned.Air.Err)
	assert.NotEmpty(t, turned.Reasons)
	assert.False(t, turned.HasDose)
}

// A step for which nothing can be mixed yet, or ever, is skipped: a coat without
// its film, a polish. The cup is for the next one that can be.
func TestACupIsForAStepThatCanBeMixed(t *testing.T) {
	half := "surface = 1\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nbuildup = 1\nbuildup.1.step = 1 2 3\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = primer\n" +
		"buildup.1.step.2.kind = polish\nbuildup.1.step.2.card = compound\nbuildup.1.step.2.taken = 2 µm\nbuildup.1.step.3.kind = coat\nbuildup.1.step.3.card = gelcoat\nbuildup.1.step.3.method = brush\nbuildup.1.step.3.film = 400 µm"
	b := benchOf(t, tenOClock, bare, half)
	require.NotNil(t, b.Card)
	assert.Equal(t, []string{"gelcoat", "buildup.1.step.3"}, []string{b.Card.Key, b.Coat})
	chosen := benchOf(t, tenOClock, bare, half, "bench.now.step = buildup.1.step.2")
	assert.NotEqual(t, "buildup.1.step.2", chosen.Coat)
}

// The cup that is proposed is the largest in tens of grams under the least of what holds
// it, where the tool can dose any: less would be mixed oftener, more gels on the roller.
func TestTheProposalIsTheLargestThatHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(51, 52))
	by := map[bench.Bound]int{}
	for range 150 {
		size := fmt.Sprintf("surface.1.length = %.2f m", 0.3+3*random.Float64())
		warm := fmt.Sprintf("bench.now.surface-temp = %.1f\nbench.now.scale-step = 0.001 g\nbench.now.ahead = 17\nbuildup.1.step.1.film = %d µm", 18+13*random.Float64(), 250+random.IntN(250))
		b := benchOf(t, tenOClock, bare, coat, []string{timed, ""}[random.IntN(2)], size, warm)
		if !b.HasDose {
			continue
		}
		least := b.Size.Limits[0]
		by[least.Bound]++
		whole, most := inGrams(b.Whole.Value), inGrams(least.Mass.Value)
		if most < 10 {
			assert.InDelta(t, math.Floor(most), whole, 1e-6)
			continue
		}
		assert.InDelta(t, 10*math.Floor(most/10+1e-9), whole, 1e-6, "under %v g", most)
	}
	assert.GreaterOrEqual(t, len(by), 3, "%v", by)
}

// Before the air is checked, each of its four figures is waited for by its own name,
// and of another day all of them: yesterday's air would pass a coat in today's rain.
func TestTheAirIsTodays(t *testing.T) {
	four := []string{"day.today.read-temp", "day.today.read-humidity", "day.today.low", "day.today.high"}
	whole := benchOf(t, tenOClock, warmMorning)
	assert.Empty(t, whole.Air.Waiting)
	assert.True(t, whole.Air.Known && whole.Air.HasCurve)
	for _, path := range four {
		b := benchOf(t, tenOClock, morningWith(path+" = "))
		assert.Equal(t, []string{path}, b.Air.Waiting)
		assert.False(t, b.Air.Known, path)
		assert.NoError(t, b.Air.Err, "%s is waited for, and nothing is wrong", path)
		assert.Equal(t, path != four[2] && path != four[3], b.Air.HasCurve, path)
	}
	yesterdays := benchOf(t, tenOClock, morningWith("day.today.date = 2026-05-31"))
	assert.Equal(t, four, yesterdays.Air.Waiting)
	assert.False(t, yesterdays.Air.Known || yesterdays.Air.HasCurve)
	assert.Equal(t, bench.NotChecked, verdict(t, yesterdays, bench.Humidity).Kind)
}

// How warm a part is beside the air is measured today: one that was hot yesterday
// says nothing about this morning.
func TestYesterdaysSurfaceSaysNothingOfTodays(t *testing.T) {
	of := func(lines ...string) air.Surface { return benchOf(t, tenOClock, morningWith(lines...)).Air.Surface }
	none, old, fresh := of("bench.now.surface-temp = "), of("bench.now.surface-temp = 34", "bench.now.read-on = 2026-05-31"), of("bench.now.surface-temp = 34")
	assert.Equal(t, none, old)
	assert.NotEqual(t, none, fresh)
}

// In the sun a part may be 12 °C above the air if it is white, 25 if it is darker:
// common practice. In the shade its colour says nothing.
func TestTheColourOfThePartInTheSun(t *testing.T) {
	most := func(lines ...string) float64 {
		b := benchOf(t, at(13), morningWith(append(lines, "bench.now.surface-temp = ")...))
		require.True(t, b.Air.HasCurve)
		return float64(b.Air.Surface.By(b.Air.Day, at(13).Hour).Most.Value)
	}
	white, mid, dark := most("day.today.sun = sun", "day.today.colour = white"), most("day.today.sun = sun", "day.today.colour = mid"), most("day.today.sun = sun", "day.today.colour = dark")
	assert.Equal(t, []float64{12, 25, 25}, []float64{white, mid, dark})
	assert.Equal(t, most("day.today.sun = shade", "day.today.colour = white"), most("day.today.sun = shade", "day.today.colour = dark"))
}

// Near its least temperature the coldest hour ahead has to be typed, where no day
// tells it: gel coat from 15 °C, so up to 23 °C, and not at it.
func TestNearTheColdTheNextHoursAreAskedFor(t *testing.T) {
	for c, isNear := range map[string]bool{"15": true, "22.9": true, "23": false, "25": false} {
		b := benchOf(t, tenOClock, bare, "bench.now.surface-temp = "+c)
		assert.Equal(t, isNear, b.IsNearCold(), "%s °C", c)
	}
	byDay := benchOf(t, tenOClock, morningWith("bench.now.surface-temp = 18"))
	assert.False(t, byDay.IsNearCold(), "the day's curve tells")
	assert.False(t, new(bench.Bench).IsNearCold())
}

// Of a coat on two surfaces, one of them done, the cup is proposed for what is left:
// 2 of 6 m².
func TestTheCoatStillTakesWhatIsLeft(t *testing.T) {
	two := "surface = 1 2\nsurface.2.length = 4 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1"
	need := func(lines string) float64 {
		b := benchOf(t, tenOClock, bare, coat, timed, two, lines)
		for _, l := range b.Size.Limits {
			if l.Bound == bench.ByCoat {
				return inGrams(l.Mass.Value)
			}
		}
		t.Fatalf("no limit by the coat: %v", b.Reasons)
		return 0
	}
	stays := 80. + 15 // roller and cup
	whole := need("") - stays
	assert.InEpsilon(t, 6*0.4*1250/0.95, whole, 1e-9)
	assert.InEpsilon(t, whole/3, need("done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.2")-stays, 1e-9)
}
