package surface

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stationed gives girths of a curve at the places.
func stationed(curve func(float64) float64, at []float64, withPosition bool) []Row {
	var list []Row
	for _, x := range at {
		row := Row{"girth": metres(curve(x))}
		if withPosition {
			row["position"] = metres(x)
		}
		list = append(list, row)
	}
	return list
}

func places01(intervals int) (at []float64) {
	for i := range intervals + 1 {
		at = append(at, float64(i)/float64(intervals))
	}
	return at
}

func cubic(x float64) float64 { return 1 + x*(2-x*(3-1.5*x)) } // ∫₀¹ = 1 + 1 − 1 + 3/8

// Both of Simpson's rules are exact up to the cubic, whatever the number of
// intervals that they are fitted to.
func TestSimpsonIsExactForCubics(t *testing.T) {
	for n := 2; n <= 199; n++ {
		for _, withPosition := range []bool{false, true} {
			in := Input{Rows: stationed(cubic, places01(n), withPosition)}
			if !withPosition {
				in.Lengths = lengths(L{"length": 1})
			}
			m, err := girths.Measure(in)
			require.NoError(t, err)
			assert.InEpsilon(t, 1.375, float64(m.Area.Value), 1e-12, "%d intervals", n)
			assert.NotContains(t, m.Notes, ByTrapezoids)
			assert.Equal(t, n%2 == 0 || n%3 != 0, slices.Contains(m.Notes, ByFirstRule), "%d intervals", n)
			assert.Equal(t, n%2 == 1, slices.Contains(m.Notes, BySecondRule), "%d intervals", n)
		}
	}
}

func TestHalfSpacedEnds(t *testing.T) {
	half := func(ends string, at ...float64) (Measured, error) {
		return girths.Measure(Input{Lengths: lengths(L{"spacing": 0.25}), Choices: map[string]string{"half-ends": ends},
			Rows: stationed(cubic, at, false)})
	}
	for ends, at := range map[string][]float64{
		"first": {0, 0.125, 0.25, 0.5, 0.75, 1},
		"last":  {0, 0.25, 0.5, 0.75, 0.875, 1},
		"both":  {0, 0.125, 0.25, 0.5, 0.75, 0.875, 1},
		"none":  {0, 0.25, 0.5, 0.75, 1},
	} {
		m, err := half(ends, at...)
		require.NoError(t, err, ends)
		assert.InEpsilon(t, 1.375, float64(m.Area.Value), 1e-12, ends)
		near(t, 2+cubic(0)+cubic(1), float64(m.Edge.Value), "edge")
	}
	// The classic multipliers at stations 0, ½, 1, 2, 3 are ½, 2, 1½, 4, 1.
	for i, multiplier := range []float64{0.5, 2, 1.5, 4, 1} {
		g := make([]float64, 5)
		g[i] = 1
		var list []Row
		for _, v := range g {
			list = append(list, Row{"girth": metres(v)})
		}
		m, err := girths.Measure(Input{Lengths: lengths(L{"spacing": 3}), Choices: map[string]string{"half-ends": "first"}, Rows: list})
		require.NoError(t, err)
		near(t, multiplier, float64(m.Area.Value), "multiplier")
	}
	for ends, least := range map[string]float64{"first": 3, "last": 3, "both": 5} {
		_, err := half(ends, slices.Repeat([]float64{0.5}, int(least)-1)...)
		assert.Equal(t, limit("stations", TooFew, least), err)
		_, err = half(ends, slices.Repeat([]float64{0.5}, int(least))...)
		assert.NoError(t, err)
	}
}

// Halving the spacing cuts Simpson's error by 16, that of trapezoids by 4.
func TestOrderOfConvergence(t *testing.T) {
	bow := func(x float64) float64 { return math.Exp(x) }
	off := func(rule spacedRule, n int) float64 {
		var g []float64
		for _, x := range places01(n) {
			g = append(g, bow(x))
		}
		return math.Abs(float64(rule.area(0, 1, g)) - (math.E - 1))
	}
	for _, c := range []struct {
		rule spacedRule
		gain float64
	}{{firstRule, 16}, {secondRule, 16}, {trapezoids, 4}} {
		assert.InEpsilon(t, c.gain, off(c.rule, 12)/off(c.rule, 24), 0.02)
	}
}

func TestUnevenStations(t *testing.T) {
	take := func(at ...float64) Measured {
		m, err := girths.Measure(Input{Rows: stationed(func(x float64) float64 { return 1 + x }, at, true)})
		require.NoError(t, err)
		return m
	}
	for _, at := range [][]float64{{0, 1}, {0, 0.3, 1}, {0, 0.3, 0.5, 0.7, 1}, {0, 0.2, 0.4, 0.6, 1}} {
		near(t, 1.5, float64(take(at...).Area.Value), "a straight taper is exact however it is cut")
	}
	near(t, 2.5, float64(take(1, 2).Area.Value), "positions need not start at nought")
	assert.Equal(t, []Note{EdgeAtLeast, GirthsReadLow, ByTrapezoids}, take(0, 0.3, 1).Notes)
	assert.Equal(t, []Note{EdgeAtLeast, GirthsReadLow, ByFirstRule, ByTrapezoids}, take(0, 0.25, 0.5, 1).Notes)
	assert.Equal(t, []Note{EdgeAtLeast, GirthsReadLow, ByFirstRule}, take(0, 0.502, 1).Notes, "what a tape gives is even")
}

func TestStationsSayTheirPlaceOnce(t *testing.T) {
	at := []float64{0, 0.5, 1}
	plain, placed := stationed(cubic, at, false), stationed(cubic, at, true)
	missing := slices.Clone(placed)
	missing[1] = Row{"girth": metres(1)}
	backwards := stationed(cubic, []float64{0, 0.5, 0.5}, true)
	for _, c := range []struct {
		lengths L
		ends    string
		rows    []Row
		want    *Error
	}{
		{L{}, "none", plain, fault("spacing", Missing)},
		{L{"spacing": 0.5, "length": 1}, "none", plain, fault("length", GivenTwice)},
		{L{"spacing": 0.5}, "none", placed, fault("spacing", GivenTwice)},
		{L{"length": 1}, "none", placed, fault("length", GivenTwice)},
		{L{}, "both", placed, fault("half-ends", GivenTwice)},
		{L{}, "none", missing, fault("position", Missing).in(1)},
		{L{}, "none", backwards, limit("position", NotAscending, 0.5).in(2)},
		{L{"spacing": 51}, "none", plain, limit("spacing", TooLarge, 50)},
	} {
		_, err := girths.Measure(Input{Lengths: lengths(c.lengths), Choices: map[string]string{"half-ends": c.ends}, Rows: c.rows})
		assert.Equal(t, c.want, err)
	}
}
