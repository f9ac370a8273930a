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

// Tool is what catalyst is measured with. Its only maker is NewTool.
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

// isPlain says if a decimal is short enough to reckon with: an exponent of ten
// million would hang the next comparison.
func isPlain(d decimal.Decimal) bool {
	return d.Exponent() >= -12 && d.Exponent() <= 6 && d.NumDigits() <= 18
}

// Kind tells what the tool is; zero for no tool.
func (t Tool) Kind() ToolKind { return t.kind }

var (
	step    = working.In("s", "step of the tool", unit.InMillilitre, 0.01, 10)
	rhoCat  = working.In("ρ_c", "density of the catalyst", unit.InKilogramPerLitre, 0.9, 1.4)
	toolErr = working.In("e", "error of the tool", unit.InGram, 1e-4, 20)
)

// syringeError is half a step of a syringe, weighed.
var syringeError = working.Of2("e = s ÷ 2 × ρ_c", source.House.At("half a step of a syringe"), source.Assumption,
	toolErr, []working.Arg{step, rhoCat},
	func(s unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(s) / 2 * float64(rho)) })

// dropError is one drop, weighed: drops of one bottle differ.
var dropError = working.Of2("e = ρ_c ÷ N", source.House.At("one whole drop"), source.Assumption,
	toolErr, []working.Arg{rhoCat, working.In("N", "drops in 1 mL, counted", unit.InPure, 8, 60)},
	func(rho unit.Density, n unit.Factor) unit.Mass {
		return unit.Mass(float64(unit.Millilitre) * float64(rho) / float64(n))
	})

// Error is how far a dose measured with the tool may be off: one full step of a
// scale, half a step of a syringe, one drop.
// Range: density 0.9–1.4 kg/L. Errors: *ToolError for no tool, *working.RangeError.
// Source: assumption.
func (t Tool) Error(rho working.Figure[unit.Density]) (working.Figure[unit.Mass], error) {
	n := t.step.InexactFloat64()
	switch t.kind {
	case Scale:
		return working.Given(unit.Of[unit.Mass](n, unit.InGram), "error of the scale, one full step", unit.InGram, "", source.Assumption), nil
	case Syringe:
		return syringeError.Figure(working.Given(unit.Of[unit.Volume](n, unit.InMillilitre), "step of the syringe", unit.InMillilitre, "typed", source.Typed), rho)
	case Drops:
		return dropError.Figure(rho, working.Given(unit.Factor(n), "drops in 1 mL", unit.InPure, "typed", source.Typed))
	}
	return working.Figure[unit.Mass]{}, &ToolError{Kind: t.kind}
}

// marked is a dose in whole steps of a tool, with what is the same in grams and
// in millilitres; each lies inside the limits by itself.
type marked struct {
	steps       int64
	exact       decimal.Decimal // g
	grams       Grams
	millilitres Millilitres
}

// grain is how finely a dose is written in the unit that it isn't measured in.
var grain = decimal.RequireFromString("0.01")

// mark finds the tool's mark nearest to the wanted dose inside the limits;
// false: there is none. All are in grams, rho in grams per millilitre.
func (t Tool) mark(want, least, most, rho decimal.Decimal) (marked, bool) {
	w := window{least, most, decimal.NewFromInt(1)}
	switch t.kind {
	case Scale:
		n, isIn := w.nearest(want, t.step)
		g := n.Mul(t.step)
		ml, fits := w.nearest(g, grain.Mul(rho))
		return marked{n.IntPart(), g, Grams{g}, Millilitres{ml.Mul(grain)}}, isIn && fits
	case Syringe:
		n, isIn := w.nearest(want, t.step.Mul(rho))
		ml := n.Mul(t.step)
		g, fits := w.nearest(ml.Mul(rho), grain)
		return marked{n.IntPart(), ml.Mul(rho), Grams{g.Mul(grain)}, Millilitres{ml}}, isIn && fits
	case Drops:
		w.times = t.step // N drops weigh ρ: reckoned N-fold, so that nothing is divided
		n, isIn := w.nearest(want.Mul(t.step), rho)
		g, fitsG := w.nearest(n.Mul(rho), grain.Mul(t.step))
		ml, fitsML := w.nearest(n.Mul(rho), grain.Mul(rho).Mul(t.step))
		return marked{n.IntPart(), n.Mul(rho).DivRound(t.step, 9), Grams{g.Mul(grain)}, Millilitres{ml.Mul(grain)}}, isIn && fitsG && fitsML
	}
	return marked{}, false
}

// window is the doses that are allowed, in grams, reckoned times-fold.
type window struct{ least, most, times decimal.Decimal }

// nearest is how many marks come nearest to want inside the window, the fewer
// of two as near. The wanted dose lies inside, so that it is one of the two beside it.
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
