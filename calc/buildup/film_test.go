package buildup_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func TestRules(t *testing.T) { workingtest.Check(t, buildup.Rules()...) }

func TestTheWalkAddsAndTakes(t *testing.T) {
	goes := coat(150, 0.2)
	goes.Rounds, goes.Film.Takes, goes.Film.TakesCV = 3, micrometres(60), share(0.3)
	steps := []buildup.Step{
		{Kind: buildup.Sand, Film: buildup.Film{Takes: micrometres(50), TakesCV: share(0.4)}}, // the ground: no film of ours
		coat(400, 0.2), goes, sand(30, 0.4),
	}
	points, err := buildup.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	var means []float64
	for _, p := range points {
		means = append(means, math.Round(um(p.Mean)*1e6)/1e6)
	}
	assert.Equal(t, []float64{400, 550, 490, 640, 580, 730, 670, 640}, means)
	assert.Equal(t, []int{1, 2, 2, 2, 2, 2, 2, 3}, stepsOf(points))
	assert.Nil(t, points[0].Through.Step, "nothing was taken")
	assert.NotNil(t, points[7].Through.Step)
	sigma := math.Sqrt(math.Pow(0.2*850, 2) + math.Pow(0.3*180+0.4*30, 2))
	assert.InDelta(t, 640-1.6448536*sigma, um(points[7].Thin), 1e-3)
}

func stepsOf(points []buildup.Point) []int {
	var list []int
	for _, p := range points {
		list = append(list, p.Step)
	}
	return list
}

func TestFillerAndOtherMaterialsStartANewFilm(t *testing.T) {
	topcoat := coat(90, 0.15)
	topcoat.Film.NewLayer = true
	steps := []buildup.Step{coat(200, 0.2), {Kind: buildup.Fill}, sand(500, 0.4), coat(150, 0.2), sand(60, 0.4), topcoat, sand(10, 0.4)}
	points, err := buildup.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	assert.Equal(t, []int{0, 3, 4, 5, 6}, stepsOf(points), "filler that is sanded is no film")
	assert.InDelta(t, 90, um(points[2].Mean), 1e-9)
	assert.InDelta(t, 80, um(points[4].Mean), 1e-9)
}

func TestAFilmThatWasFoundReplacesThePlan(t *testing.T) {
	spray := coat(600, 0.2)
	spray.Film = spray.Film.AsFound(buildup.Measured{Mean: micrometres(480)}, share(0.2))
	points, err := buildup.Walk([]buildup.Step{coat(100, 0.2), spray, sand(100, 0.4), coat(50, 0.2)}, terms(0.05, 0))
	require.NoError(t, err)
	assert.Equal(t, []int{0, 1, 2, 3}, stepsOf(points))
	assert.InDelta(t, 480, um(points[1].Mean), 1e-9)
	assert.InDelta(t, 380, um(points[2].Mean), 1e-9)
	assert.InDelta(t, 430, um(points[3].Mean), 1e-9)
}

// The share expected to go through, against a simulation of the same walk.
func TestThroughAgainstASimulation(t *testing.T) {
	second := coat(180, 0.30)
	second.Rounds = 2
	steps := []buildup.Step{coat(200, 0.20), second, sand(250, 0.35), sand(100, 0.50)}
	points, err := buildup.Walk(steps, terms(0.05, 40))
	require.NoError(t, err)
	const draws = 2_000_000
	random, through := rand.New(rand.NewPCG(11, 12)), 0
	for range draws {
		lays, dwells, plane := random.NormFloat64(), random.NormFloat64(), random.NormFloat64()
		film := 200*(1+0.20*lays) + 2*180*(1+0.30*lays)
		film -= 250*(1+0.35*dwells) + 100*(1+0.50*dwells) + 40*plane
		if film < 0 {
			through++
		}
	}
	p := float64(through) / draws
	assert.InDelta(t, p, float64(points[len(points)-1].Through.Value), 4*math.Sqrt(p*(1-p)/draws), "four standard errors")
}

// randomSteps is a layer of coats and sandings with leasts, and the index of
// the coat to solve for.
func randomSteps(random *rand.Rand) ([]buildup.Step, int) {
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	var steps []buildup.Step
	for range 1 + random.IntN(3) {
		c := coat(between(50, 300), between(0.05, 0.35))
		c.Rounds = 1 + random.IntN(3)
		if random.IntN(2) == 0 {
			c.Film.Takes, c.Film.TakesCV = micrometres(between(5, 40)), share(between(0.1, 0.5))
		}
		steps = append(steps, c)
	}
	at := random.IntN(len(steps))
	for range 1 + random.IntN(4) {
		steps = append(steps, sand(between(20, 400), between(0.1, 0.5)))
	}
	last := len(steps) - 1
	steps[last] = leaving(steps[last], between(0, 500), between(0, 300))
	return steps, at
}

// Solved backwards, then walked forwards, the least is kept everywhere and met
// at one point: exactly so much film, no more.
func TestSolvedBackwardsAndWalkedForwards(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 22))
	solved := map[bool]int{}
	for range 400 {
		steps, at := randomSteps(random)
		on := terms(0.01+0.2*random.Float64(), 30*random.Float64())
		need, err := buildup.Needed(steps, at, on)
		var uneven *buildup.TooUnevenError
		if errors.As(err, &uneven) {
			continue
		}
		require.NoError(t, err)
		if need.Film.Value == 0 {
			continue // the other coats are enough
		}
		solved[need.IsThin]++
		steps[at].Film.Adds = need.Film
		points, err := buildup.Walk(steps, on)
		require.NoError(t, err)
		spare := math.Inf(1)
		for _, p := range points {
			if p.Step < at || !p.IsTaking && p.Least.Thinnest.Step == nil {
				continue
			}
			spare = min(spare, um(p.Mean)-um(p.Least.Mean), um(p.Thin)-um(p.Least.Thinnest))
		}
		assert.InDelta(t, 0, spare, 1e-6)
	}
	assert.Greater(t, solved[true], 50)
}

// Where nothing is sanded the thin side is asked for all the same, if the coat has a least for it: of a film of 20 % a
// twentieth lies under 1 − 1.645 × 0.2 of it, so that 250 µm there take 250 ÷ 0.671 in the mean.
func TestSolvedForTheThinSideWhereNothingIsTaken(t *testing.T) {
	need, err := buildup.Needed([]buildup.Step{leaving(coat(1, 0.2), 100, 250)}, 0, terms(0.05, 0))
	require.NoError(t, err)
	assert.True(t, need.IsThin)
	assert.InDelta(t, 250/(1-1.6448536269514722*0.2), um(need.Film), 1e-6)
	need, err = buildup.Needed([]buildup.Step{leaving(coat(1, 0.2), 100, 0)}, 0, terms(0.05, 0))
	require.NoError(t, err)
	assert.False(t, need.IsThin, "nothing is asked of the thin side")
	assert.InDelta(t, 100, um(need.Film), 1e-9)
}

func TestSolvedForTheMeanAlone(t *testing.T) {
	steps := []buildup.Step{coat(1, 0.01), leaving(sand(177, 0.01), 500, 0)}
	need, err := buildup.Needed(steps, 0, terms(0.05, 0))
	require.NoError(t, err)
	assert.False(t, need.IsThin)
	assert.Equal(t, 1, need.By)
	assert.InDelta(t, 677, um(need.Film), 1e-9)
	steps[0].Rounds = 2
	need, err = buildup.Needed(steps, 0, terms(0.05, 0))
	require.NoError(t, err)
	assert.InDelta(t, 338.5, um(need.Film), 1e-9, "each go")
}

// At z × CV of 1 and more no film is enough; just under it, a very thick one, and
// none over the 50 mm that are still a film: the number would be followed.
func TestNotByMoreFilmByAMoreEvenOne(t *testing.T) {
	at := func(cv float64) error {
		_, err := buildup.Needed([]buildup.Step{coat(1, cv), sand(177, 0.4)}, 0, terms(0.05, 0))
		return err
	}
	limit := 1 / 1.6448536269514722
	assert.NoError(t, at(limit-5e-3))
	var far *working.RangeError
	require.ErrorAs(t, at(limit-1e-5), &far)
	assert.Equal(t, buildup.FilmNeeded, far.Rule)
	assert.Greater(t, far.Value, 50000.)
	var uneven *buildup.TooUnevenError
	require.True(t, errors.As(at(limit+1e-9), &uneven))
	assert.InDelta(t, 1, uneven.Reach, 1e-6)
	assert.InDelta(t, limit, float64(uneven.Below), 1e-9)
	for _, film := range []float64{500, 5000, 50000} {
		points, err := buildup.Walk([]buildup.Step{coat(film, limit+0.05), sand(177, 0.4)}, terms(0.05, 0))
		require.NoError(t, err)
		assert.Greater(t, float64(points[1].Through.Value), 0.05, "indeed")
	}
}

func TestMoreFilmLessThrough(t *testing.T) {
	before := 1.0
	for film := 100.0; film <= 800; film += 50 {
		points, err := buildup.Walk([]buildup.Step{coat(film, 0.25), sand(177, 0.4)}, terms(0.05, 20))
		require.NoError(t, err)
		p := float64(points[1].Through.Value)
		assert.Less(t, p, before)
		before = p
	}
}

func TestEdgesGoFirst(t *testing.T) {
	regions, err := buildup.SplitRegions(given[unit.Area](6, unit.InSquareMetre), given[unit.Length](10, unit.InMetre), given[unit.Length](25, unit.InMillimetre))
	require.NoError(t, err)
	assert.InDelta(t, 0.25, float64(regions.Edge.Value), 1e-12)
	assert.InDelta(t, 5.75, float64(regions.Flat.Value), 1e-12)
	narrow, err := buildup.SplitRegions(given[unit.Area](0.04, unit.InSquareMetre), given[unit.Length](2.08, unit.InMetre), given[unit.Length](25, unit.InMillimetre))
	require.NoError(t, err)
	assert.Nil(t, narrow.Flat.Step)
	assert.InDelta(t, 0.04, float64(narrow.Edge.Value), 1e-12)

	steps := []buildup.Step{coat(640, 0.25), sand(177, 0.4)}
	edge, err := buildup.InRegion(steps, given[unit.Factor](0.7, unit.InPure), given[unit.Factor](2, unit.InPure))
	require.NoError(t, err)
	flat, err := buildup.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	strip, err := buildup.Walk(edge, terms(0.05, 0))
	require.NoError(t, err)
	assert.InDelta(t, 0.7*640-2*177, um(strip[1].Mean), 1e-9)
	assert.Greater(t, strip[1].Through.Value, 10*flat[1].Through.Value)
	assert.InDelta(t, 640, um(steps[0].Film.Adds), 1e-9, "the steps given stay as they were")
}

func TestReadingsReplaceThePlan(t *testing.T) {
	var readings []working.Figure[unit.DryFilm]
	for _, f := range []float64{420, 380, 300, 450, 400} {
		readings = append(readings, micrometres(f))
	}
	few, err := buildup.Measure(readings[:4])
	require.NoError(t, err)
	assert.Nil(t, few.CV.Step, "four readings give no spread")
	assert.Equal(t, 2, few.Thinnest)
	all, err := buildup.Measure(readings)
	require.NoError(t, err)
	assert.InDelta(t, 390, um(all.Mean), 1e-9)
	assert.InDelta(t, math.Sqrt(3200)/390, float64(all.CV.Value), 1e-9)
	planned := coat(500, 0.25).Film
	assert.Equal(t, planned.AddsCV, planned.AsCoated(few).AddsCV)
	assert.Equal(t, all.CV, planned.AsCoated(all).AddsCV)
	assert.Equal(t, all.Mean, planned.AsCoated(all).Adds)
	for _, bad := range [][]working.Figure[unit.DryFilm]{nil, {micrometres(0)}, {micrometres(-1), micrometres(5)}, {micrometres(math.NaN())}} {
		_, err := buildup.Measure(bad)
		assert.ErrorIs(t, err, buildup.ErrNoReadings)
	}
}

func TestWhatCantBeWalkedIsRefused(t *testing.T) {
	cause := func(err error) buildup.StepCause {
		var e *buildup.StepError
		require.True(t, errors.As(err, &e), "%v", err)
		return e.Cause
	}
	on := terms(0.05, 0)
	many := make([]buildup.Step, buildup.MaxSteps+1)
	_, err := buildup.Walk(many, on)
	assert.Equal(t, buildup.TooManySteps, cause(err))
	_, err = buildup.Walk(many[:buildup.MaxSteps], on)
	assert.NoError(t, err)
	again := coat(10, 0.2)
	again.Rounds = buildup.MaxRounds + 1
	_, err = buildup.Walk([]buildup.Step{again}, on)
	assert.Equal(t, buildup.TooManyRounds, cause(err))
	for _, s := range []buildup.Step{coat(400, 0), coat(400, 1.5), coat(-5, 0.2), coat(math.NaN(), 0.2), coat(0, 0.2), coat(60000, 0.2)} {
		_, err := buildup.Walk([]buildup.Step{s}, on)
		assert.Equal(t, buildup.OutOfRange, cause(err))
		var outside *working.RangeError
		assert.True(t, errors.As(err, &outside))
	}
	for _, bad := range []float64{0, 0.6, math.NaN()} {
		_, err := buildup.Walk([]buildup.Step{coat(400, 0.2)}, terms(bad, 0))
		var e *buildup.ShareError
		assert.True(t, errors.As(err, &e))
	}
	_, err = buildup.Needed([]buildup.Step{sand(10, 0.3)}, 0, on)
	assert.Equal(t, buildup.NotACoat, cause(err))
	_, err = buildup.Needed([]buildup.Step{coat(10, 0.3)}, 1, on)
	assert.Equal(t, buildup.NotACoat, cause(err))
	_, err = buildup.Needed([]buildup.Step{coat(10, 0)}, 0, on)
	assert.Equal(t, buildup.OutOfRange, cause(err))
	_, err = buildup.Needed([]buildup.Step{coat(10, 0.3), sand(10, 0.3)}, 0, terms(0.05, math.NaN()))
	assert.Equal(t, buildup.OutOfRange, cause(err))
	for _, least := range []float64{math.Inf(1), 60000} {
		bad := []buildup.Step{coat(10, 0.3), leaving(sand(10, 0.3), 0, least)}
		_, err = buildup.Needed(bad, 0, on)
		assert.Equal(t, buildup.OutOfRange, cause(err))
		_, err = buildup.Walk(bad, on)
		assert.Equal(t, buildup.OutOfRange, cause(err))
	}
	found := coat(10, 0.3)
	found.Film = found.Film.AsFound(buildup.Measured{Mean: micrometres(300)}, share(0.2))
	_, err = buildup.Needed([]buildup.Step{found, sand(10, 0.3)}, 0, on)
	assert.Equal(t, buildup.NoLaterPoint, cause(err))
}
