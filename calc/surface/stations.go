package surface

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// spacedRule takes the area under girths at even spacing: spacing × factor × the
// sum of the girths, the first and the last once, those between times inner,
// again and again. It fits a number of intervals that inner divides.
type spacedRule struct {
	*working.Rule
	inner  []float64
	factor float64
	note   Note
}

var (
	firstRule = spacedRule{&working.Rule{Formula: "Simpson's first rule: spacing ÷ 3 × the sum of the girths times 1, 4, 2, 4, …, 2, 4, 1",
		Source: source.Ref{Document: &source.BarrassDerrett, Place: "p. 74"}, Mark: source.Published,
		Result: working.Arg{Symbol: "A", Meaning: "area between stations", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea}, IsProse: true},
		[]float64{4, 2}, 1. / 3, ByFirstRule}
	secondRule = spacedRule{&working.Rule{Formula: "Simpson's second rule: spacing × 3 ÷ 8 × the sum of the girths times 1, 3, 3, 2, 3, 3, …, 2, 3, 3, 1",
		Source: source.Ref{Document: &source.BarrassDerrett, Place: "p. 75"}, Mark: source.FromMemory,
		Result: working.Arg{Symbol: "A", Meaning: "area between stations", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea}, IsProse: true},
		[]float64{3, 3, 2}, 3. / 8, BySecondRule}
	trapezoids = spacedRule{&working.Rule{Formula: "trapezoids: spacing ÷ 2 × the sum of the girths times 1, 2, 2, …, 2, 1",
		Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area between stations", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea}, IsProse: true},
		[]float64{2}, 1. / 2, ByTrapezoids}
)

func (r spacedRule) fits(intervals int) bool { return intervals%len(r.inner) == 0 }

// area gives the area under girths from place first to place last.
func (r spacedRule) area(first, last float64, girths []float64) unit.Area {
	n := len(girths) - 1
	sum := girths[0] + girths[n]
	for i, g := range girths[1:n] {
		sum += r.inner[i%len(r.inner)] * g
	}
	return unit.Area((last - first) / float64(n) * r.factor * sum)
}

// run is a stretch of evenly spaced stations, and the rule that fits it.
type run struct {
	from, to int // indices of its first and last station
	rule     spacedRule
}

// sameSpacing is how far, as a share, spacings may differ and still count as
// even: what a tape gives. An assumption.
const sameSpacing = 0.01

// runs cuts stations into stretches of even spacing, and each of them into
// stretches that a rule fits.
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

// fitted picks the first rule for an even number of intervals, the second for
// threes; for five, seven or eleven the first, and the second over the last
// three. A lone interval is left to the trapezoid.
func fitted(from, to int) []run {
	n := to - from
	for _, rule := range []spacedRule{firstRule, secondRule} {
		if rule.fits(n) {
			return []run{{from, to, rule}}
		}
	}
	if n == 1 {
		return []run{{from, to, trapezoids}}
	}
	return []run{{from, to - 3, firstRule}, {to - 3, to, secondRule}}
}
