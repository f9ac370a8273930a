package surface

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The rules that take the area under girths at even spacing.
var (
	firstRule = working.Method("Simpson's first rule: spacing ÷ 3 × the sum of the girths times 1, 4, 2, 4, …, 2, 4, 1",
		source.BarrassDerrett.At("p. 74"), source.Published, areaResult("area between stations"))
	secondRule = working.Method("Simpson's second rule: spacing × 3 ÷ 8 × the sum of the girths times 1, 3, 3, 2, 3, 3, …, 2, 3, 3, 1",
		source.BarrassDerrett.At("p. 75"), source.FromMemory, areaResult("area between stations"))
	trapezoids = working.Method("trapezoids: spacing × the mean of the two girths",
		source.Geometry.At(""), source.Exact, areaResult("area between stations"))
)

// A run is a stretch of stations at even spacing, and the rule that fits it.
type run struct {
	from, to int // indices of its first and last station
	rule     *working.Rule
}

// sameSpacing is how far, as a share, spacings may differ and still count as
// even: what a tape gives. An assumption.
const sameSpacing = 0.01

// runs cuts stations into stretches of even spacing, and each of them into
// stretches that a rule fits: the first rule for an even number of intervals,
// the second for threes; five, seven, eleven: the first, and the second for the
// last three; a lone interval is left to the trapezoid.
func runs(at []float64) []run {
	var list []run
	for from := 0; from < len(at)-1; {
		to := from + 1
		for to < len(at)-1 && even(at[from+1]-at[from], at[to+1]-at[to]) {
			to++
		}
		list = append(list, fitted(from, to)...)
		from = to
	}
	return list
}

func even(a, b float64) bool { return b >= a*(1-sameSpacing) && b <= a*(1+sameSpacing) }

func fitted(from, to int) []run {
	switch n := to - from; {
	case n == 1:
		return []run{{from, to, trapezoids}}
	case n%2 == 0:
		return []run{{from, to, firstRule}}
	case n%3 == 0:
		return []run{{from, to, secondRule}}
	}
	return []run{{from, to - 3, firstRule}, {to - 3, to, secondRule}}
}

// area gives the area of the run: Σ multiplier × girth × spacing × factor.
func (r run) area(at, girth []float64) unit.Area {
	n := r.to - r.from
	spacing := (at[r.to] - at[r.from]) / float64(n)
	sum := 0.0
	for i := 0; i <= n; i++ {
		sum += r.multiplier(i, n) * girth[r.from+i]
	}
	return unit.Area(spacing * sum * factors[r.rule])
}

// factors go with the multipliers of each rule.
var factors = map[*working.Rule]float64{firstRule: 1. / 3, secondRule: 3. / 8, trapezoids: 1. / 2}

func (r run) multiplier(i, n int) float64 {
	switch {
	case i == 0 || i == n:
		return 1
	case r.rule == firstRule && i%2 == 1:
		return 4
	case r.rule == secondRule && i%3 != 0:
		return 3
	}
	return 2
}
