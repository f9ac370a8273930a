package fairing_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func TestRules(t *testing.T) { workingtest.Check(t, fairing.Rules()...) }

// smooth is a surface with all derivatives; its integral over the unit square
// is (e − 1)·(1 − 1/e), in millimetres of depth.
func smooth(y, x float64) float64 { return 1e-3 * math.Exp(x-y) }

var smoothVolume = 1e-3 * (math.E - 1) * (1 - 1/math.E)

// order is the power of the spacing by which an error falls from a coarse to a
// fine sampling.
func order(coarse, fine, refinement float64) float64 {
	return math.Log(math.Abs(coarse/fine)) / math.Log(refinement)
}

func TestSimpsonConvergesByTheFourthOrder(t *testing.T) {
	miss := func(intervals int) float64 {
		g := surface(t, intervals+1, intervals+1, 1, 1, smooth)
		return float64(g.At(0).Fill) - smoothVolume
	}
	assert.InDelta(t, 4, order(miss(4), miss(8), 2), 0.1)
	assert.InDelta(t, 4, order(miss(16), miss(32), 2), 0.1)
	assert.InDelta(t, 4, order(miss(9), miss(27), 3), 0.3, "odd, with three intervals by the second rule")
}

// A grid of two by two is a trapezoid each way: the sum over tiles is the
// compound rule.
func TestTrapezoidsConvergeByTheSecondOrder(t *testing.T) {
	miss := func(tiles int) float64 {
		side, sum := 1/float64(tiles), 0.0
		for i := range tiles {
			for j := range tiles {
				g := surface(t, 2, 2, side, side, func(y, x float64) float64 { return smooth(float64(i)*side+y, float64(j)*side+x) })
				sum += float64(g.At(0).Fill)
			}
		}
		return sum - smoothVolume
	}
	assert.InDelta(t, 2, order(miss(4), miss(8), 2), 0.05)
	assert.InDelta(t, 2, order(miss(8), miss(16), 2), 0.05)
}

// Simpson's rules are exact for cubics each way, whatever the count.
func TestCubicsAreExact(t *testing.T) {
	cubic := func(y, x float64) float64 { return 1e-3 * (1 + x*x*x) * (2 - y*y*y) }
	for _, n := range []int{3, 4, 5, 6, 7, 8, 99, 100} {
		g := surface(t, n, n, 1, 1, cubic)
		assert.InEpsilon(t, 1e-3*1.25*1.75, float64(g.At(0).Fill), 1e-12, n)
	}
}

func TestGridAgainstClosedForms(t *testing.T) {
	trough, err := fairing.Trough.Of(0.2, 3e-3, 1)
	require.NoError(t, err)
	g := surface(t, 4, 5, 1, 0.2, func(_, x float64) float64 { u := x/0.1 - 1; return 3e-3 * (1 - u*u) })
	assert.InEpsilon(t, float64(trough), float64(g.At(0).Fill), 1e-12)

	skim, err := fairing.Skim.Of(0.6, 2e-3)
	require.NoError(t, err)
	flat := surface(t, 6, 2, 0.6, 1, func(_, _ float64) float64 { return 2e-3 })
	assert.InEpsilon(t, float64(skim), float64(flat.At(0).Fill), 1e-12)

	hollow, err := fairing.BattenHollow.Of(0.3, 0.2, 3e-3)
	require.NoError(t, err)
	bowl := surface(t, 61, 91, 0.2, 0.3, func(y, x float64) float64 {
		u, v := y/0.1-1, x/0.15-1
		return max(0, 3e-3*(1-u*u-v*v))
	})
	// The rim is a kink, where no rule keeps its order: a part in a thousand.
	assert.InEpsilon(t, float64(hollow), float64(bowl.At(0).Fill), 1e-3)
}

// hull is a grid of seeded readings, hollows and proud spots.
func hull(t *testing.T, random *rand.Rand) *fairing.Grid {
	rows, columns := 2+random.IntN(12), 2+random.IntN(12)
	return surface(t, rows, columns, 0.2*float64(rows-1), 0.15*float64(columns-1), func(_, _ float64) float64 {
		return 0.012*random.Float64() - 0.004
	})
}

func TestRaisingTheDatum(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 50 {
		g := hull(t, random)
		curve, err := g.Curve(40, 2*unit.Millimetre)
		require.NoError(t, err)
		last := curve[len(curve)-1]
		assert.InDelta(t, 0, float64(last.Cut), 1e-12, "the highest datum cuts nothing")
		area := float64(last.Fill-curve[0].Fill-last.Cut+curve[0].Cut) / float64(last.Raise-curve[0].Raise)
		for i, d := range curve[1:] {
			before := curve[i]
			assert.GreaterOrEqual(t, d.Fill, before.Fill)
			assert.LessOrEqual(t, d.Cut, before.Cut)
			gained := float64(d.Fill - d.Cut - before.Fill + before.Cut)
			assert.InDelta(t, area*float64(d.Raise-before.Raise), gained, 1e-12, "fill less cut grows by the area")
		}
	}
}

func TestTheBestDatumIsBest(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 100 {
		g := hull(t, random)
		cost := fairing.Cost{Fill: unit.Factor(random.Float64()), Cut: unit.Factor(10 * random.Float64())}
		mostCut := unit.Length(6e-3 * random.Float64())
		best, err := g.Best(cost, mostCut)
		require.NoError(t, err)
		price := func(d fairing.Datum) float64 {
			return float64(cost.Fill)*float64(d.Fill) + float64(cost.Cut)*float64(d.Cut)
		}
		curve, err := g.Curve(200, mostCut)
		require.NoError(t, err)
		least := price(g.At(best.Value))
		for _, d := range curve {
			assert.LessOrEqual(t, least, price(d)+1e-15)
		}
		_, proudest := g.Extremes(best.Value)
		assert.LessOrEqual(t, -float64(proudest.Depth), float64(mostCut)+1e-12, "nothing is cut deeper than allowed")
	}
}

func TestAFreeSideIsTakenWhole(t *testing.T) {
	g := surface(t, 3, 3, 1, 1, func(y, x float64) float64 { return 1e-3 * (x + y - 0.5) })
	up, err := g.Best(fairing.Cost{Cut: 1}, 5*unit.Millimetre)
	require.NoError(t, err)
	assert.InDelta(t, 0.5e-3, float64(up.Value), 1e-12, "filler for nothing: nothing is cut")
	down, err := g.Best(fairing.Cost{Fill: 1}, 5*unit.Millimetre)
	require.NoError(t, err)
	assert.InDelta(t, -1.5e-3, float64(down.Value), 1e-12, "cutting for nothing: nothing is filled")
	_, err = g.Best(fairing.Cost{}, 0)
	assert.Error(t, err)
	_, err = g.Best(fairing.Cost{Fill: 1, Cut: 1}, -1)
	assert.Error(t, err)
	_, err = g.Curve(1, 0)
	assert.Error(t, err)
}

func TestTheMapAndItsExtremes(t *testing.T) {
	even, err := fairing.NewGrid([][]unit.Length{{0, 0, 0}, {0, 0, 0}}, metres(0.2), metres(0.2))
	require.NoError(t, err)
	low, high := even.Extremes(0)
	assert.Equal(t, []fairing.Cell{{}, {}}, []fairing.Cell{low, high}, "of equals the first")
	g := surface(t, 2, 3, 0.3, 0.4, func(y, x float64) float64 { return 0.01*x - 0.01*y })
	deepest, proudest := g.Extremes(unit.Millimetre)
	assert.Equal(t, []int{0, 2, 1, 0}, []int{deepest.Row, deepest.Column, proudest.Row, proudest.Column})
	assert.InDelta(t, 5e-3, float64(deepest.Depth), 1e-12)
	assert.InDelta(t, -2e-3, float64(proudest.Depth), 1e-12)
	assert.Equal(t, deepest.Depth, g.Depths(unit.Millimetre)[0][2])
	for _, raise := range []unit.Length{-0.1, -0.002, 0.001, 0.1} { // all proud, some, all hollow
		deepest, proudest = g.Extremes(raise)
		assert.Equal(t, []int{0, 2, 1, 0}, []int{deepest.Row, deepest.Column, proudest.Row, proudest.Column}, "raised by %v", raise)
		assert.InDelta(t, 4e-3+float64(raise), float64(deepest.Depth), 1e-12)
		assert.InDelta(t, -3e-3+float64(raise), float64(proudest.Depth), 1e-12)
	}
	assert.InDelta(t, float64(g.At(0).Fill), float64(g.Fill(metres(0)).Value), 1e-15)
	assert.InDelta(t, float64(g.At(0).Cut), float64(g.Cut(metres(0)).Value), 1e-15)
}

func TestGridLimits(t *testing.T) {
	rows := func(r, c int) [][]unit.Length {
		list := make([][]unit.Length, r)
		for i := range list {
			list[i] = make([]unit.Length, c)
		}
		return list
	}
	for _, ok := range [][2]int{{2, 2}, {100, 100}, {2, 100}} {
		_, err := fairing.NewGrid(rows(ok[0], ok[1]), metres(0.2), metres(0.2))
		assert.NoError(t, err)
	}
	for _, bad := range [][2]int{{0, 0}, {1, 5}, {5, 1}, {101, 100}, {100, 101}} {
		_, err := fairing.NewGrid(rows(bad[0], bad[1]), metres(0.2), metres(0.2))
		var size *fairing.SizeError
		assert.True(t, errors.As(err, &size), bad)
	}
	ragged := rows(3, 3)
	ragged[2] = ragged[2][:2]
	_, err := fairing.NewGrid(ragged, metres(0.2), metres(0.2))
	var short *fairing.RaggedError
	require.True(t, errors.As(err, &short))
	assert.Equal(t, 2, short.Row)
	for _, z := range []float64{math.NaN(), math.Inf(1), 0.6, -0.6} {
		bad := rows(2, 2)
		bad[1][0] = unit.Length(z)
		_, err := fairing.NewGrid(bad, metres(0.2), metres(0.2))
		var reading *fairing.ReadingError
		require.True(t, errors.As(err, &reading))
		assert.Equal(t, []int{1, 0}, []int{reading.Row, reading.Column})
		assert.EqualValues(t, 0.5, reading.Most, "half a metre: what is over it was slipped by a unit")
		assert.True(t, reading.Value == unit.Length(z) || math.IsNaN(z))
	}
	for _, gap := range []float64{0, -1, 21, math.NaN()} {
		_, err := fairing.NewGrid(rows(2, 2), metres(0.2), metres(gap))
		var between *fairing.GapError
		require.True(t, errors.As(err, &between))
		assert.False(t, between.Rows)
	}
}

func TestPasses(t *testing.T) {
	for _, c := range []struct{ depth, largest, want float64 }{{5, 5, 1}, {10, 5, 2}, {10.0005, 5, 2}, {10.002, 5, 3}, {0.4, 5, 1}} {
		n, err := fairing.Passes.Of(unit.Of[unit.Length](c.depth, unit.InMillimetre), unit.Of[unit.Length](c.largest, unit.InMillimetre))
		require.NoError(t, err)
		assert.Equal(t, c.want, float64(n), c.depth)
	}
}

// What a grid fills and cuts leads back to all that it was worked out from, each gap once: rows, columns, the two gaps and the datum.
func TestAGridLeadsBackToItsGaps(t *testing.T) {
	g, err := fairing.NewGrid([][]unit.Length{{0, 0.001, 0}, {0, 0.002, -0.001}}, metres(0.2), metres(0.3))
	require.NoError(t, err)
	raise := metres(0.001)
	for _, volume := range []working.Figure[unit.Volume]{g.Fill(raise), g.Cut(raise)} {
		var from []float64
		for _, step := range volume.Step.From {
			from = append(from, step.Out)
		}
		assert.Equal(t, []float64{2, 3, 0.2, 0.3, 0.001}, from)
	}
}
