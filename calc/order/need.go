package order

import (
	"fmt"
	"math"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Tenth is the step to which needs are rounded: 0.1 g in kg, 0.1 mL in L.
var Tenth = decimal.New(1, -4)

// roundSlack is the share of a step by which a float may overshoot a mark and still
// count as on it: far more than the error of a sum of floats, far less than
// matters.
const roundSlack = 1e-3

// mostSteps keeps the float's last bit under the slack.
const mostSteps = 1e12

// RoundUpError says that a computed amount can't be bought: negative, not a
// number, or beyond every scale.
type RoundUpError struct{ Value float64 }

// Error names the amount.
func (e *RoundUpError) Error() string { return fmt.Sprintf("order: can't buy %g", e.Value) }

// RoundUp is the one way from a computed amount to one that is dosed or bought: up
// to the next step, in the scale's unit. 0.1 + 0.2 kg is 0.3 kg and not 0.3001,
// since a float's error past a mark doesn't count.
// Range: v from 0 to 10¹² steps. Errors: *RoundUpError.
// Source: our own; amounts round up.
func RoundUp[Q unit.Quantity](v Q, scale unit.Scale, step decimal.Decimal) (decimal.Decimal, error) {
	steps := scale.From(float64(v)) / step.InexactFloat64()
	if !(steps >= -roundSlack && steps <= mostSteps) {
		return decimal.Zero, &RoundUpError{scale.From(float64(v))}
	}
	return decimal.NewFromInt(int64(math.Max(0, math.Ceil(steps-roundSlack)))).Mul(step), nil
}

// ToBuy is what is left to buy of a need beside the stock, never below zero.
func ToBuy(need, inStock decimal.Decimal) decimal.Decimal {
	return decimal.Max(need.Sub(inStock), decimal.Zero)
}

// Reserve is kept of a colour for repairs: a later batch never matches,
// r = max(p × N, r_min).
// Range: p 0–0.5, N 0–1e5 kg, r_min 0–100 kg. Errors: *working.RangeError.
// Source: common practice.
var Reserve = working.Rule3[unit.Share, unit.Mass, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "r = max(p × N, r_min)", Source: source.Ref{Document: &source.Practice, Place: "repair reserve of one batch"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "r", Meaning: "kept for repairs", Scale: unit.InKilogram, Min: 0, Max: 5e4},
	Args: []working.Arg{
		{Symbol: "p", Meaning: "share kept for repairs", Scale: unit.InPure, Min: 0, Max: 0.5},
		{Symbol: "N", Meaning: "needed", Scale: unit.InKilogram, Min: 0, Max: 1e5},
		{Symbol: "r_min", Meaning: "least kept for repairs", Scale: unit.InKilogram, Min: 0, Max: 100},
	}},
	Code: func(p unit.Share, need, least unit.Mass) unit.Mass { return max(unit.Mass(p)*need, least) }}
