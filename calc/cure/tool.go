package cure

import (
	"fmt"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ToolKind is a way of measuring catalyst.
type ToolKind int

// The kinds of tool.
const (
	Scale   ToolKind = iota + 1 // its step in grams
	Syringe                     // its step in millilitres
	Drops                       // the builder's own count of drops in 1 mL
)

// Tool is what catalyst is measured with. NewTool makes one.
type Tool struct {
	kind ToolKind
	step decimal.Decimal // g; mL; drops in 1 mL
}

// ToolError says that a tool can't be right.
type ToolError struct {
	Kind        ToolKind
	Least, Most string // of the step, or of the drops in 1 mL
}

// Error names the range.
func (e *ToolError) Error() string {
	return fmt.Sprintf("cure: a tool of kind %d has a step from %s to %s", e.Kind, e.Least, e.Most)
}

// toolRange holds the steps that a tool can have. Source: assumption; for drops
// common practice, sources give 13.5 to 34 in 1 mL.
var toolRange = map[ToolKind]struct{ least, most string }{
	Scale:   {"0.001", "20"},
	Syringe: {"0.01", "10"},
	Drops:   {"8", "60"},
}

// NewTool makes a tool: a scale by its step in grams, a syringe by its step in
// millilitres, drops by how many the builder counted in 1 mL: no count is
// assumed.
// Range: scale 0.001–20 g, syringe 0.01–10 mL, drops 8–60. Errors: *ToolError.
func NewTool(kind ToolKind, step decimal.Decimal) (Tool, error) {
	limits, known := toolRange[kind]
	if !known || !isPlain(step) ||
		step.LessThan(decimal.RequireFromString(limits.least)) || step.GreaterThan(decimal.RequireFromString(limits.most)) {
		return Tool{}, &ToolError{kind, limits.least, limits.most}
	}
	return Tool{kind, step}, nil
}

// isPlain says if a decimal is short enough to compute with: an exponent of ten
// million would hang the next comparison.
func isPlain(d decimal.Decimal) bool {
	return d.Exponent() >= -12 && d.Exponent() <= 6 && d.NumDigits() <= 18
}

// Kind tells what the tool is; zero for no tool.
func (t Tool) Kind() ToolKind { return t.kind }

var (
	step     = working.Arg{Symbol: "s", Meaning: "step of the tool", Scale: unit.InMillilitre, Min: 0.01, Max: 10}
	gramStep = working.Arg{Symbol: "s", Meaning: "step of the scale", Scale: unit.InGram, Min: 0.001, Max: 20}
	drops    = working.Arg{Symbol: "N", Meaning: "drops in 1 mL, counted", Scale: unit.InPure, Min: 8, Max: 60}
	rhoCat   = working.Arg{Symbol: "ρ_c", Meaning: "density of the catalyst", Scale: unit.InKilogramPerLitre, Min: 0.9, Max: 1.4}
	toolErr  = working.Arg{Symbol: "e", Meaning: "error of the tool, rounding included", Scale: unit.InGram, Min: 1e-4, Max: 40}
)

// The whole error of a tool: its own, and half a mark more for rounding to it.
var (
	// scaleError is one full step of a scale, and half a step to round.
	scaleError = working.Rule1[unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "e = s + s ÷ 2", Source: source.Ref{Document: &source.House, Place: "one full step of a scale, and half a mark to round"}, Mark: source.Assumption,
		Result: toolErr, Args: []working.Arg{gramStep}}, Code: func(s unit.Mass) unit.Mass { return s + s/2 }}

	// syringeError is half a step of a syringe, and half a step to round, weighed.
	syringeError = working.Rule2[unit.Volume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "e = (s ÷ 2 + s ÷ 2) × ρ_c", Source: source.Ref{Document: &source.House, Place: "half a step of a syringe, and half a mark to round"}, Mark: source.Assumption,
		Result: toolErr, Args: []working.Arg{step, rhoCat}},
		Code: func(s unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(s/2+s/2) * float64(rho)) }}

	// dropError is one drop, and half a drop to round, weighed: drops of one
	// bottle differ.
	dropError = working.Rule2[unit.Density, unit.Factor, unit.Mass]{Rule: &working.Rule{Formula: "e = (1 + 0.5) × ρ_c ÷ N", Source: source.Ref{Document: &source.House, Place: "one whole drop, and half a drop to round"}, Mark: source.Assumption,
		Result: toolErr, Args: []working.Arg{rhoCat, drops}},
		Code: func(rho unit.Density, n unit.Factor) unit.Mass {
			return unit.Mass(1.5 * float64(unit.Millilitre) * float64(rho) / float64(n))
		}}
)

// Error is how far a dose measured with the tool may be off the dose that was
// wanted: one full step of a scale, half a step of a syringe, one drop; and half
// a mark more for rounding to it.
// Range: density 0.9–1.4 kg/L. Errors: *ToolError for no tool, *working.RangeError.
// Source: assumption.
func (t Tool) Error(rho working.Figure[unit.Density]) (working.Figure[unit.Mass], error) {
	n := t.step.InexactFloat64()
	switch t.kind {
	case Scale:
		return scaleError.Figure(working.Given(unit.Of[unit.Mass](n, unit.InGram), "step of the scale", unit.InGram, "typed", source.Typed))
	case Syringe:
		return syringeError.Figure(working.Given(unit.Of[unit.Volume](n, unit.InMillilitre), "step of the syringe", unit.InMillilitre, "typed", source.Typed), rho)
	case Drops:
		return dropError.Figure(rho, working.Given(unit.Factor(n), "drops in 1 mL", unit.InPure, "typed", source.Typed))
	}
	return working.Figure[unit.Mass]{}, &ToolError{Kind: t.kind}
}

// Step is the tool's step: grams of a scale, millilitres of a syringe, drops in
// 1 mL.
func (t Tool) Step() decimal.Decimal { return t.step }

// markMass is the catalyst between two marks. The density must be the one that
// Error took.
func (t Tool) markMass(rho unit.Density) unit.Mass {
	n := t.step.InexactFloat64()
	switch t.kind {
	case Scale:
		return unit.Of[unit.Mass](n, unit.InGram)
	case Syringe:
		return unit.Mass(n * float64(unit.Millilitre) * float64(rho))
	}
	return unit.Mass(float64(unit.Millilitre) * float64(rho) / n)
}

// marked is a dose in whole steps of a tool, with the same in grams and in
// millilitres; each of them is inside the limits.
type marked struct {
	steps       int64
	exact       decimal.Decimal // g
	grams       Grams
	millilitres Millilitres
}

// grain is how finely a dose is written in the unit that it isn't measured in.
var grain = decimal.RequireFromString("0.01")

// mark finds the tool's mark nearest to the wanted dose that stays inside the
// limits with an error on either side; false: there is none. All are in grams, rho
// in grams per millilitre. What is written in the other unit stays inside the
// limits too.
func (t Tool) mark(want, least, most, off, rho decimal.Decimal) (marked, bool) {
	one := decimal.NewFromInt(1)
	w, twin := window{least.Add(off), most.Sub(off), one}, window{least, most, one}
	switch t.kind {
	case Scale:
		n, isIn := w.nearest(want, t.step)
		g := n.Mul(t.step)
		ml, fits := twin.nearest(g, grain.Mul(rho))
		return marked{n.IntPart(), g, Grams{g}, Millilitres{ml.Mul(grain)}}, isIn && fits
	case Syringe:
		n, isIn := w.nearest(want, t.step.Mul(rho))
		ml := n.Mul(t.step)
		g, fits := twin.nearest(ml.Mul(rho), grain)
		return marked{n.IntPart(), ml.Mul(rho), Grams{g.Mul(grain)}, Millilitres{ml}}, isIn && fits
	case Drops:
		w.times, twin.times = t.step, t.step // N drops weigh ρ: multiplied by N, so that nothing is divided
		n, isIn := w.nearest(want.Mul(t.step), rho)
		g, fitsG := twin.nearest(n.Mul(rho), grain.Mul(t.step))
		ml, fitsML := twin.nearest(n.Mul(rho), grain.Mul(rho).Mul(t.step))
		return marked{n.IntPart(), n.Mul(rho).DivRound(t.step, 9), Grams{g.Mul(grain)}, Millilitres{ml.Mul(grain)}}, isIn && fitsG && fitsML
	}
	return marked{}, false
}

// window is the doses that are allowed, in grams, all multiplied by times.
type window struct{ least, most, times decimal.Decimal }

// nearest is the number of marks that comes nearest to want inside the window, the
// smaller of two that are as near. Only the marks on either side are tried: a dose
// more than a mark away isn't the one that was wanted.
func (w window) nearest(want, mark decimal.Decimal) (n decimal.Decimal, isIn bool) {
	below, rest := want.QuoRem(mark, 0)
	above := below.Add(decimal.NewFromInt(1))
	first, second := below, above
	if rest.GreaterThan(mark.Sub(rest)) {
		first, second = above, below
	}
	for _, n := range []decimal.Decimal{first, second} {
		g := n.Mul(mark)
		if g.GreaterThanOrEqual(w.least.Mul(w.times)) && g.LessThanOrEqual(w.most.Mul(w.times)) && n.IsPositive() {
			return n, true
		}
	}
	return decimal.Zero, false
}
