package fairing_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
)

// withBalloons is resin with so large a share of balloons, by true volume.
func withBalloons(share float64) fairing.Recipe {
	part := func(kind fairing.Kind, litres, density float64) fairing.Part {
		return fairing.Part{Kind: kind, Mass: given[unit.Mass](litres*density, unit.InKilogram), Density: given[unit.Density](density, unit.InKilogramPerLitre)}
	}
	return fairing.Recipe{
		Parts: []fairing.Part{part(fairing.Resin, 1-share, 1.15), part(fairing.Balloons, share, 0.25)},
		Air:   given[unit.Share](0, unit.InPure),
	}
}

// Over 62 % of balloons no resin is left to wet them: the putty crumbles off the
// hull. A limit a point higher would let such a putty through.
func TestBalloonsAreAskedOver55AndRefusedOver62Percent(t *testing.T) {
	for share, want := range map[float64]string{0.549: "", 0.55: "", 0.551: "dry", 0.619: "dry", 0.62: "dry", 0.621: "refused", 0.63: "refused"} {
		putty, err := withBalloons(share).Mix()
		var refused *fairing.BalloonError
		got := ""
		switch {
		case errors.As(err, &refused):
			got = "refused"
			assert.InDelta(t, share, float64(refused.Share), 1e-9)
			assert.InDelta(t, 0.62, float64(refused.Most), 1e-12, "the limit that is named")
		case putty.IsDry():
			got = "dry"
		}
		assert.Equal(t, want, got, share)
	}
}

// A cut of 1 mm may be as deep as 1 mm, and no deeper: half of it would fill the
// whole hull half a millimetre higher than need be, twice through foam.
func TestTheLowestDatumCutsAsDeepAsAllowed(t *testing.T) {
	proud := surface(t, 3, 3, 1, 1, func(y, x float64) float64 { return 1e-3 * (x + y - 2) }) // from −2 mm to 0
	cheap := fairing.Cost{Fill: 1, Cut: 0}
	lowest, err := proud.Best(cheap, unit.Millimetre)
	require.NoError(t, err)
	assert.InDelta(t, 1e-3, float64(lowest.Value), 1e-12, "the spot 2 mm proud stands 1 mm over it")
	curve, err := proud.Curve(2, unit.Millimetre)
	require.NoError(t, err, "two points are a curve")
	assert.InDelta(t, 1e-3, float64(curve[0].Raise), 1e-12)
	assert.InDelta(t, 2e-3, float64(curve[1].Raise), 1e-12)
	for _, points := range []int{1, 1001} {
		_, err = proud.Curve(points, unit.Millimetre)
		assert.Error(t, err, points)
	}
	thirds, err := proud.Curve(4, unit.Millimetre)
	require.NoError(t, err)
	for i, d := range thirds {
		assert.InDelta(t, 1e-3+float64(i)*1e-3/3, float64(d.Raise), 1e-12, "evenly from the lowest to the highest")
	}
	whole, err := proud.Curve(1000, 0)
	require.NoError(t, err)
	assert.Equal(t, whole[0].Raise, whole[999].Raise, "nothing may be cut: one height is left")
	for _, cut := range []unit.Length{-1e-9, 0.5001} {
		_, err = proud.Best(cheap, cut)
		assert.Error(t, err, cut)
	}
	_, err = proud.Best(cheap, 0.5)
	assert.NoError(t, err, "as far as a reading reaches")
}

// Neither cost may be below zero, nor both nothing, nor so large that they can't be added up; one of them alone may be nothing.
func TestCostsThatCantBeCompared(t *testing.T) {
	g := surface(t, 3, 3, 1, 1, func(y, x float64) float64 { return 1e-3 * (x - y) })
	nan := unit.Factor(math.NaN())
	for _, c := range []fairing.Cost{{Fill: -1, Cut: 3}, {Fill: 3, Cut: -1}, {}, {Fill: nan, Cut: 1}, {Fill: 1, Cut: nan}, {Fill: 1, Cut: 1e12}, {Fill: 1e12, Cut: 1}, {Fill: 5e11, Cut: 5e11}} {
		_, err := g.Best(c, unit.Millimetre)
		var refused *fairing.CostError
		assert.ErrorAs(t, err, &refused, "%+v", c)
	}
	for _, c := range []fairing.Cost{{Fill: 1}, {Cut: 1}, {Fill: 4e11, Cut: 4e11}} {
		best, err := g.Best(c, unit.Millimetre)
		require.NoError(t, err, "%+v", c)
		var from []float64
		for _, step := range best.Step.From {
			from = append(from, step.Out)
		}
		assert.Equal(t, []float64{float64(c.Fill), float64(c.Cut), 1e-3}, from, "filling, cutting, the deepest cut")
	}
}

// A fillet's angle is 20° to 160°: both ends hold.
func TestTheAnglesOfAFillet(t *testing.T) {
	for degrees, holds := range map[float64]bool{19.9: false, 20: true, 160: true, 160.1: false} {
		_, err := fairing.Fillet.Of(0.02, unit.Angle(degrees*math.Pi/180), 1)
		assert.Equal(t, holds, err == nil, "%v°", degrees)
	}
}

// The longest reading is 500 mm, typed or pasted, on either side.
func TestReadingsUpToHalfAMetre(t *testing.T) {
	readings, err := paste("500 -500\n0 1")
	require.NoError(t, err)
	_, err = fairing.NewGrid(readings, metres(0.001), metres(20))
	assert.NoError(t, err, "and the narrowest and widest spacing")
	for _, text := range []string{"500.1 0\n0 1", "0 -500.1\n0 1"} {
		_, err = paste(text)
		assert.Error(t, err, text)
	}
	for gap, isRows := range map[[2]float64]bool{{0.0009, 1}: true, {1, 0.0009}: false, {20.01, 1}: true, {1, 20.01}: false} {
		_, err = fairing.NewGrid(readings, metres(gap[0]), metres(gap[1]))
		var between *fairing.GapError
		require.ErrorAs(t, err, &between, gap)
		assert.Equal(t, isRows, between.Rows, "rows and columns aren't taken for each other: %v", gap)
	}
}

// A ragged grid says which row is ragged and how long the first one is.
func TestARaggedGridSaysWhere(t *testing.T) {
	_, err := fairing.NewGrid([][]unit.Length{{1e-3, 2e-3}, {1e-3, 2e-3, 3e-3}}, metres(1), metres(1))
	assert.Equal(t, &fairing.RaggedError{Row: 1, Has: 3, First: 2}, err)
}

// Spacing of rows and of columns are two: a grid of 2 × 3 readings, 0.5 m between
// rows and 0.2 m between columns, is 0.5 × 0.4 m.
func TestRowsAndColumnsHaveTheirOwnSpacing(t *testing.T) {
	g, err := fairing.NewGrid([][]unit.Length{{1e-3, 1e-3, 1e-3}, {1e-3, 1e-3, 1e-3}}, metres(0.5), metres(0.2))
	require.NoError(t, err)
	assert.InDelta(t, 0.2e-3, float64(g.At(0).Fill), 1e-15, "0.2 m² of a millimetre")
	slope, err := fairing.NewGrid([][]unit.Length{{0, 2e-3}, {0, 2e-3}, {0, 2e-3}}, metres(0.5), metres(0.2))
	require.NoError(t, err)
	assert.InDelta(t, 0.2e-3, float64(slope.At(0).Fill), 1e-15, "1 × 0.2 m of a millimetre at the mean")
}

// What is wrong with readings is reported at the row that is wrong: a first row
// that is too short or too long is a size, a last one that differs from it is a
// slip of the pen.
func TestAGridIsMeasuredByItsFirstRow(t *testing.T) {
	row := func(n int) []unit.Length { return make([]unit.Length, n) }
	spacing := given[unit.Length](1, unit.InMetre)
	for _, c := range []struct {
		rows  []int
		size  *fairing.SizeError
		wrong *fairing.RaggedError
	}{
		{rows: []int{3, 3, 1}, wrong: &fairing.RaggedError{Row: 2, Has: 1, First: 3}},
		{rows: []int{3, 3, 101}, wrong: &fairing.RaggedError{Row: 2, Has: 101, First: 3}},
		{rows: []int{1, 3, 3}, size: &fairing.SizeError{Rows: 3, Columns: 1}},
		{rows: []int{101, 3, 3}, size: &fairing.SizeError{Rows: 3, Columns: 101}},
		{rows: []int{3}, size: &fairing.SizeError{Rows: 1, Columns: 3}},
		{rows: nil, size: &fairing.SizeError{}},
	} {
		var rows [][]unit.Length
		for _, n := range c.rows {
			rows = append(rows, row(n))
		}
		_, err := fairing.NewGrid(rows, spacing, spacing)
		if c.wrong != nil {
			var wrong *fairing.RaggedError
			require.ErrorAs(t, err, &wrong, "%v", c.rows)
			assert.Equal(t, c.wrong, wrong, "%v", c.rows)
			continue
		}
		var size *fairing.SizeError
		require.ErrorAs(t, err, &size, "%v", c.rows)
		assert.Equal(t, c.size, size, "%v", c.rows)
	}
}
