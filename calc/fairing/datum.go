package fairing

import (
	"fmt"
	"sort"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Datum is a height of the datum and what it costs: the higher, the more filler and
// the less cutting.
type Datum struct {
	Raise     unit.Length // above the straight-edge as it lay; below zero: lower
	Fill, Cut unit.Volume
}

// At gives the volumes with the datum raised.
func (g *Grid) At(raise unit.Length) Datum {
	var fill, cut float64
	for r, row := range g.readings {
		for c, z := range row {
			depth := float64(z+raise) * g.rows[r] * g.columns[c]
			if depth > 0 {
				fill += depth
			} else {
				cut -= depth
			}
		}
	}
	return Datum{raise, unit.Volume(fill), unit.Volume(cut)}
}

// MaxPoints bounds a curve.
const MaxPoints = 1000

// CurveError says that a curve can't be made.
type CurveError struct {
	Points  int
	MostCut unit.Length
}

// Error names what was asked for.
func (e *CurveError) Error() string {
	return fmt.Sprintf("fairing: curve of %d points down to a cut of %g m", e.Points, float64(e.MostCut))
}

// Curve gives the volumes at n heights of the datum, evenly from the lowest
// that cuts no proud spot deeper than mostCut up to the one that cuts nothing.
// Range: 2 to 1000 points. Errors: *CurveError.
func (g *Grid) Curve(n int, mostCut unit.Length) ([]Datum, error) {
	low, high, ok := g.heights(mostCut)
	if n < 2 || n > MaxPoints || !ok {
		return nil, &CurveError{n, mostCut}
	}
	list := make([]Datum, n)
	for i := range list {
		list[i] = g.At(low + (high-low)*unit.Length(i)/unit.Length(n-1))
	}
	return list, nil
}

// heights gives the lowest datum that cuts no deeper than mostCut, and the
// lowest that cuts nothing.
func (g *Grid) heights(mostCut unit.Length) (low, high unit.Length, ok bool) {
	_, proudest := g.Extremes(0)
	return -proudest.Depth - mostCut, -proudest.Depth, mostCut >= 0 && mostCut <= mostReading
}

// Cost weighs filling against cutting: what a litre of each costs, in one
// measure, be it money or hours. Only their ratio matters.
type Cost struct{ Fill, Cut unit.Factor }

// CostError says that the costs can't be compared: one is below zero, or both are
// zero.
type CostError struct{ Cost }

// Error names the costs.
func (e *CostError) Error() string {
	return fmt.Sprintf("fairing: costs of %g and %g a litre", float64(e.Fill), float64(e.Cut))
}

// BestDatum is the method of Grid.Best. Source: our own method: the cost is
// made of straight lines in the height, bent upwards at each reading, so one
// of the readings is the lowest point.
var BestDatum = &working.Rule{Formula: "height of the datum at which filler and cutting together cost least", Source: source.Ref{Document: &source.House, Place: "best datum"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "h", Meaning: "datum raised by", Scale: unit.InMillimetre, Min: -1000, Max: 500}, IsProse: true}

// Best gives the height of the datum at which filling and cutting cost least,
// no proud spot cut deeper than mostCut. Exact, not a point of a curve.
// Errors: *CostError, *CurveError.
func (g *Grid) Best(cost Cost, mostCut unit.Length) (working.Figure[unit.Length], error) {
	if !(cost.Fill >= 0 && cost.Cut >= 0 && cost.Fill+cost.Cut > 0 && cost.Fill+cost.Cut < 1e12) {
		return working.Figure[unit.Length]{}, &CostError{cost}
	}
	low, high, ok := g.heights(mostCut)
	if !ok {
		return working.Figure[unit.Length]{}, &CurveError{1, mostCut}
	}
	best := min(max(g.balance(cost), low), high)
	return working.By(BestDatum, best,
		working.Given(cost.Fill, "cost of a litre filled", unit.InPure, "", source.Typed).Step,
		working.Given(cost.Cut, "cost of a litre cut", unit.InPure, "", source.Typed).Step,
		working.Given(mostCut, "deepest cut allowed", unit.InMillimetre, "", source.Typed).Step), nil
}

// balance is the height at which a further rise costs as much in filler as it saves
// in cutting: the area filled is to the area cut as the cost of cutting is to that
// of filling.
func (g *Grid) balance(cost Cost) unit.Length {
	type spot struct {
		z    unit.Length
		area float64
	}
	var spots []spot
	total := 0.0
	for r, row := range g.readings {
		for c, z := range row {
			area := g.rows[r] * g.columns[c]
			spots = append(spots, spot{z, area})
			total += area
		}
	}
	sort.SliceStable(spots, func(i, j int) bool { return spots[i].z > spots[j].z })
	filled := 0.0
	for _, s := range spots {
		filled += s.area
		if filled*float64(cost.Fill) >= (total-filled)*float64(cost.Cut) {
			return -s.z
		}
	}
	return -spots[len(spots)-1].z
}
