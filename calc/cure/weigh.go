package cure

import (
	"fmt"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// LeastSteps is the least number of a tool's steps in a part that is measured with
// it: with fewer, rounding alone moves the mix by more than 2.5 %.
// Source: assumption.
const LeastSteps = 20

// CoarseToolError says that a part is too small for the steps of the tool.
type CoarseToolError struct {
	Step, Least decimal.Decimal // in Scale
	Scale       unit.Scale      // InGram or InMillilitre
}

// Error names the least that the tool can measure.
func (e *CoarseToolError) Error() string {
	return fmt.Sprintf("cure: a step of %s needs a part of at least %s", e.Step, e.Least)
}

// Weigh rounds a part of a mix, not a peroxide, to the nearest mark of a scale.
// Range: at least LeastSteps steps. Errors: *ToolError for another tool, *CoarseToolError.
func (t Tool) Weigh(part working.Figure[unit.Mass]) (Grams, error) {
	n, err := t.round(Scale, unit.InGram, float64(part.Value))
	return Grams{n}, err
}

// Draw rounds a part of a mix, not a peroxide, to the nearest mark of a syringe
// or measuring cup. Range, errors: as Weigh.
func (t Tool) Draw(part working.Figure[unit.Volume]) (Millilitres, error) {
	n, err := t.round(Syringe, unit.InMillilitre, float64(part.Value))
	return Millilitres{n}, err
}

func (t Tool) round(kind ToolKind, scale unit.Scale, si float64) (decimal.Decimal, error) {
	if t.kind != kind {
		return decimal.Zero, &ToolError{Kind: t.kind}
	}
	amount := scale.From(si)
	least := t.step.Mul(decimal.NewFromInt(LeastSteps))
	if !(amount >= least.InexactFloat64()*(1-1e-9) && amount <= mostMeasured) {
		return decimal.Zero, &CoarseToolError{t.step, least, scale}
	}
	return NearestStep(decimal.NewFromFloat(amount).Round(gramPlaces), t.step), nil
}

// NearestStep rounds a number, zero or more, to the nearest multiple of a step over
// zero; halves go up.
func NearestStep(n, step decimal.Decimal) decimal.Decimal {
	whole, rest := n.QuoRem(step, 0)
	if rest.GreaterThanOrEqual(step.Sub(rest)) {
		whole = whole.Add(decimal.NewFromInt(1))
	}
	return whole.Mul(step)
}

// mostMeasured is the largest part, in grams or millilitres.
const mostMeasured = 200000
