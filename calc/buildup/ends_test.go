package buildup_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	b "shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Through the wax with P180 to P240, for a bond on polyester with P80 to P180; epoxy cures for seven days before
// styrene touches it, a laminate for three before epoxy does. Source: common practice.
func TestGradesAndAgesOfTheTrade(t *testing.T) {
	grades := map[b.Ground][2]int{b.Laminate: {80, 180}, b.UnwaxedCoat: {80, 180}, b.WaxedCoat: {180, 240}}
	ages := map[b.Ground]unit.Time{b.FreshEpoxy: 7 * unit.Day, b.Laminate: 3 * unit.Day, b.UnwaxedCoat: 3 * unit.Day}
	seen := map[b.Ground]bool{}
	for g := b.PolystyreneFoam; g <= b.TwoPackCoat; g++ {
		for _, m := range []b.Material{b.Polyester, b.VinylEster, b.Epoxy, b.TwoPack} {
			for _, d := range b.Demands(g, m) {
				switch {
				case d.Requirement == b.Sanding && d.Coarsest > 0:
					assert.Equal(t, grades[g], [2]int{d.Coarsest, d.Finest}, "%v for %v", g, m)
					seen[g] = true
				case d.Requirement == b.Age:
					assert.Equal(t, ages[g], d.Least, "%v for %v", g, m)
				}
			}
		}
	}
	assert.Len(t, seen, len(grades))
}

// The grades that a ground wants are themselves enough; a grade coarser or finer is asked about, with
// the end that it misses. Over every ground and material that names them.
func TestTheEndsOfTheGradesThatAGroundWants(t *testing.T) {
	seen := 0
	for g := b.PolystyreneFoam; g <= b.TwoPackCoat; g++ {
		for _, m := range []b.Material{b.Polyester, b.VinylEster, b.Epoxy, b.TwoPack} {
			for _, d := range b.Demands(g, m) {
				if d.Requirement != b.Sanding || d.Coarsest == 0 {
					continue
				}
				seen++
				for grit, limit := range map[int]int{d.Coarsest - 1: d.Coarsest, d.Coarsest: 0, d.Finest: 0, d.Finest + 1: d.Finest} {
					found := at(b.Check(b.Base{Ground: g, IsSanded: true, Grit: grit}, []b.Step{put(m)}), 0, b.OnGround)
					asked := slices.IndexFunc(found, func(f b.Finding) bool { return f.Fix == b.OtherGrade })
					if limit == 0 {
						assert.Negative(t, asked, "%v for %v: P%d is wanted", g, m, grit)
						continue
					}
					require.GreaterOrEqual(t, asked, 0, "%v for %v: P%d", g, m, grit)
					assert.Equal(t, []float64{float64(grit), float64(limit)}, []float64{found[asked].Got, found[asked].Limit})
				}
			}
		}
	}
	assert.Greater(t, seen, 5)
}

// Beyond the grounds and the materials nothing is demanded.
func TestBeyondTheGroundsAndMaterials(t *testing.T) {
	for g := b.PolystyreneFoam - 2; g < b.TwoPackCoat+3; g++ {
		for m := b.Polyester - 2; m < b.EpoxyFiller+3; m++ {
			if g < b.PolystyreneFoam || g > b.TwoPackCoat || m < b.Polyester || m > b.EpoxyFiller {
				assert.Nil(t, b.Demands(g, m), "ground %d, material %d", g, m)
			}
		}
	}
}

// What a layer is to the next one: filler of epoxy as fresh as its resin, a coat cured under film as a
// laminate, and only epoxy that is known to be seven days old is cured; age makes nothing else epoxy.
func TestWhatALayerIsToTheNext(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}
	ground := func(steps ...b.Step) b.Ground {
		found := at(b.Check(base, steps), len(steps)-1, b.OnGround)
		require.NotEmpty(t, found)
		return found[0].Ground
	}
	underFilm := func(s *b.Step) { s.Layer.IsUnderFilm = true }
	assert.Equal(t, b.FreshEpoxy, ground(put(b.EpoxyFiller), put(b.Polyester, waxed)))
	assert.Equal(t, b.Laminate, ground(put(b.Polyester, underFilm), put(b.Polyester, waxed)))
	assert.Equal(t, b.WaxedCoat, ground(put(b.Polyester, waxed), put(b.Polyester, waxed, after(8*unit.Day))))
	for days, want := range map[float64]b.Ground{6.9: b.FreshEpoxy, 7: b.CuredEpoxy, 8: b.CuredEpoxy} {
		assert.Equal(t, want, ground(put(b.Epoxy), put(b.Polyester, waxed, after(unit.Time(days)*unit.Day))), "%v days", days)
	}
	assert.Equal(t, b.FreshEpoxy, ground(put(b.Epoxy), wash, put(b.Polyester, waxed, after(8*unit.Day))), "a wash of which nobody says when")
}

// Polish keys a layer as sanding does, filler covers a coat as a coat does, and what nobody gave a
// window is asked about. Sanding a part that nothing lies on waits for nothing.
func TestPolishFillerAndGroundsWithoutFigures(t *testing.T) {
	base := b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120, Age: 30 * unit.Day}
	buffed := b.Step{Kind: b.Polish, Grit: 240}
	assert.Empty(t, at(b.Check(base, []b.Step{put(b.Polyester, waxed), buffed, wash, put(b.Polyester, waxed)}), 3, b.OnGround))
	assert.Empty(t, at(b.Check(base, []b.Step{put(b.Polyester), put(b.PolyesterFiller)}), 0, b.OpenCoat))
	assert.Empty(t, at(b.Check(base, []b.Step{sandTo(120, after(unit.Hour))}), 0, b.SandSoon))
	assert.Empty(t, at(b.Check(base, []b.Step{put(b.Polyester, waxed, func(s *b.Step) { s.Layer.SandingFrom = unit.Day }), sandTo(220, after(unit.Day))}), 1, b.SandSoon), "a day is a day")

	found := at(b.Check(base, []b.Step{put(b.Polyester), put(b.Polyester, waxed, after(unit.Hour))}), 1, b.OnGround)
	require.Len(t, found, 1)
	assert.Equal(t, b.Ask, found[0].Severity)
	assert.True(t, found[0].IsUnknown)
}

// Where a card gives no most, no coat is too thick, and one that is too thin has the least for its way
// out; where least and most are one, a number of coats of just that will do.
func TestAFilmWithoutAMost(t *testing.T) {
	check := func(wet, least, most float64) []b.Finding {
		l := b.Layer{Material: b.Polyester, IsWaxed: true, Coats: 1, Wet: unit.WetFilm(wet * 1e-6), WetLeast: unit.WetFilm(least * 1e-6), WetMost: unit.WetFilm(most * 1e-6)}
		return at(b.Check(b.Base{Ground: b.Laminate, IsSanded: true, Grit: 120}, []b.Step{{Kind: b.Coat, Layer: l}}), 0, b.WetFilm)
	}
	assert.Empty(t, check(5000, 300, 0))
	thin := check(250, 300, 0)
	require.Len(t, thin, 1)
	assert.Equal(t, b.Near{Above: thin[0].Near.Above, AboveCoats: 1}, thin[0].Near)
	assert.InDelta(t, 300e-6, float64(thin[0].Near.Above), 1e-12)
	double := check(600, 300, 300)
	require.Len(t, double, 1)
	assert.Equal(t, b.Near{Coats: 2}, double[0].Near)
	one := check(250, 300, 500)
	require.Len(t, one, 1)
	assert.Zero(t, one[0].Near.BelowCoats, "no coat is under one")
}

// The shares that can be chosen end at a thousandth and a half, a film's readings at 50 mm, rounds at their
// most: each is itself allowed. What is left out of a sum because it is too much is refused, never dropped.
func TestTheEndsOfABudgetsFigures(t *testing.T) {
	for thin, holds := range map[float64]bool{0.00099: false, 0.001: true, 0.5: true, 0.501: false} {
		_, err := b.Walk([]b.Step{coat(400, 0.2)}, terms(thin, 0))
		assert.Equal(t, holds, err == nil, "a share of %v", thin)
	}
	for reading, holds := range map[float64]bool{-0.1: false, 0: true, 50_000: true, 50_001: false} {
		_, err := b.Measure([]working.Figure[unit.DryFilm]{micrometres(300), micrometres(reading)})
		assert.Equal(t, holds, err == nil, "a reading of %v µm", reading)
	}
	first, err := b.Measure([]working.Figure[unit.DryFilm]{micrometres(300), micrometres(200), micrometres(200)})
	require.NoError(t, err)
	assert.Equal(t, 1, first.Thinnest, "the first of two as thin")
	often := coat(1, 0.2)
	often.Rounds = b.MaxRounds
	_, err = b.Walk([]b.Step{often}, terms(0.05, 0))
	assert.NoError(t, err)

	twice := coat(30_000, 0.2)
	twice.Rounds = 2
	thick := coat(300, 0.2)
	for name, steps := range map[string][]b.Step{
		"two rounds of 30 mm":       {twice},
		"two coats of 30 mm":        {coat(30_000, 0.2), coat(30_000, 0.2)},
		"60 mm sanded":              {thick, sand(60_000, 0.2)},
		"60 mm sanded in two goes":  {thick, sand(30_000, 0.2), sand(30_000, 0.2)},
		"one more in two rounds":    {thick, twice},
		"one more of nobody knows":  {thick, coat(300, math.NaN())},
		"sanded by nobody knows":    {thick, sand(100, math.NaN())},
		"put on by nobody knows":    {coat(300, math.NaN()), sand(100, 0.2)},
		"sanded unevenly by 2 to 1": {thick, sand(100, 2)},
	} {
		_, err := b.Walk(steps, terms(0.05, 0))
		assert.Error(t, err, name)
		_, err = b.Needed(append(slices.Clone(steps), leaving(sand(10, 0.2), 100, 0)), 0, terms(0.05, 0))
		if steps[0].Rounds < 2 && steps[0].Film.Adds.Value < micrometres(30_000).Value {
			assert.Error(t, err, name)
		}
	}
	for _, at := range []int{-1, 2} {
		_, err := b.Needed([]b.Step{thick, sand(10, 0.2)}, at, terms(0.05, 0))
		assert.Error(t, err)
	}
	tooOften := coat(1, 0.2)
	tooOften.Rounds = b.MaxRounds + 1
	_, err = b.Needed([]b.Step{tooOften, sand(10, 0.2)}, 0, terms(0.05, 0))
	assert.Error(t, err)
	for refused, steps := range [][]b.Step{{coat(40_000, 0.2), sand(100, 0.2)}, {thick, sand(40_000, 0.2)}} {
		_, err := b.InRegion(steps, given[unit.Factor](1, unit.InPure), given[unit.Factor](1, unit.InPure))
		var told *b.StepError
		require.ErrorAs(t, err, &told)
		assert.Equal(t, refused, told.Step)
	}
	_, err = b.SplitRegions(given[unit.Area](1, unit.InSquareMetre), given[unit.Length](math.NaN(), unit.InMetre), given[unit.Length](0.02, unit.InMetre))
	assert.Error(t, err)
	narrow, err := b.SplitRegions(given[unit.Area](0.25, unit.InSquareMetre), given[unit.Length](2, unit.InMetre), given[unit.Length](0.125, unit.InMetre))
	require.NoError(t, err)
	assert.Nil(t, narrow.Flat.Step, "strips that just meet leave no flat")
}

// What is asked of a step that coats and sands back is asked once it has sanded: a film that is short is told
// once a round. What can't be walked for its unfairness alone isn't walked, though nothing is sanded.
func TestAStepThatSandsBackIsAskedOnce(t *testing.T) {
	goes := leaving(coat(150, 0.1), 500, 400)
	goes.Rounds, goes.Film.Takes, goes.Film.TakesCV = 2, micrometres(60), share(0.3)
	points, err := b.Walk([]b.Step{goes}, terms(0.05, 0))
	require.NoError(t, err)
	found := b.Shortfalls([]b.Step{goes}, points, terms(0.05, 0))
	var rules []b.Key
	for _, f := range found {
		rules = append(rules, f.Rule)
	}
	assert.Equal(t, []b.Key{b.MeanLeft, b.ThinLeft, b.MeanLeft, b.ThinLeft}, rules)
	for _, unfairness := range []float64{math.NaN(), -1, 50_001} {
		_, err := b.Walk([]b.Step{coat(300, 0.2)}, terms(0.05, unfairness))
		assert.Error(t, err, "%v µm", unfairness)
	}
}

// The working of one round is that of its film: no sum of one.
func TestOneRoundIsNoSum(t *testing.T) {
	once := coat(300, 0.2)
	points, err := b.Walk([]b.Step{once}, terms(0.05, 0))
	require.NoError(t, err)
	for step, depth := points[0].Mean.Step, 0; step != once.Film.Adds.Step; depth++ {
		require.NotEqual(t, b.Rounds.Rule, step.Rule)
		require.NotEmpty(t, step.From)
		require.Less(t, depth, 5)
		step = step.From[0]
	}
}

// A need leads back to every figure that it was worked out from, and not to the film that it replaces.
func TestANeedLeadsBackToItsFigures(t *testing.T) {
	steps := []b.Step{coat(200, 0.1), coat(300, 0.15), leaving(sand(100, 0.3), 150, 50)}
	need, err := b.Needed(steps, 1, terms(0.05, 10))
	require.NoError(t, err)
	from := need.Film.Step.From
	assert.NotContains(t, from, (*working.Step)(nil))
	assert.NotContains(t, from, steps[1].Film.Adds.Step, "its own film doesn't matter")
	for _, step := range []*working.Step{steps[1].Film.AddsCV.Step, steps[0].Film.Adds.Step, steps[2].Film.Takes.Step, steps[2].Film.TakesCV.Step, steps[2].Film.Least.Mean.Step, steps[2].Film.Least.Thinnest.Step} {
		assert.Contains(t, from, step)
	}
	taken := b.Step{Kind: b.Coat, Film: steps[1].Film}
	taken.Film.Takes, taken.Film.TakesCV = micrometres(20), share(0.3)
	own, err := b.Needed([]b.Step{taken, steps[2]}, 0, terms(0.05, 10))
	require.NoError(t, err)
	assert.Contains(t, own.Film.Step.From, taken.Film.Takes.Step, "what is sanded off it between its goes does")
}

// Filler ends a layer: what cracks below it is told of the layer that is too thick.
func TestALayerUnderFillerHasItsOwnCrackLimit(t *testing.T) {
	limited := func(film, most float64) b.Step {
		s := coat(film, 0.1)
		s.Layer.CuredMost = micrometres(most).Value
		return s
	}
	steps := []b.Step{limited(700, 640), {Kind: b.Fill}, limited(100, 640)}
	points, err := b.Walk(steps, terms(0.05, 0))
	require.NoError(t, err)
	found := b.Shortfalls(steps, points, terms(0.05, 0))
	require.Len(t, found, 1)
	assert.Equal(t, b.CrackLimit, found[0].Rule)
	assert.Equal(t, 0, found[0].Step)
	even, err := b.Walk([]b.Step{limited(640, 640)}, terms(0.05, 0))
	require.NoError(t, err)
	assert.Empty(t, b.Shortfalls(steps[:1], even, terms(0.05, 0)), "at the limit nothing cracks")
}

// Readings with a spread of their own replace the planned one; too few for one leave it.
func TestMeasuredCoatsBringTheirSpread(t *testing.T) {
	planned := coat(300, 0.25).Film
	scattered, err := b.Measure([]working.Figure[unit.DryFilm]{micrometres(250), micrometres(270), micrometres(300), micrometres(330), micrometres(350)})
	require.NoError(t, err)
	require.NotNil(t, scattered.CV.Step)
	assert.Equal(t, scattered.CV, planned.AsCoated(scattered).AddsCV)
	assert.Equal(t, scattered.CV, planned.AsFound(scattered, share(0.4)).FoundCV)
	few, err := b.Measure([]working.Figure[unit.DryFilm]{micrometres(250)})
	require.NoError(t, err)
	assert.Equal(t, planned.AddsCV, planned.AsCoated(few).AddsCV)
	assert.InDelta(t, 0.4, float64(planned.AsFound(few, share(0.4)).FoundCV.Value), 1e-12)
}
