package cure

import (
	"fmt"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Cups is a day's mixing: equal cups, each weighed out on its own.
type Cups struct {
	Count working.Figure[unit.Factor]
	Each  working.Figure[unit.Mass] // in whole grams of mix
	Loss  working.Figure[unit.Mass] // mixed, and never spread: goes into the order
}

// MaxCups is the most cups that one day is planned for.
const MaxCups = 200

// CupsError says that a day can't be planned in cups.
type CupsError struct {
	Largest, Leftover unit.Mass
	Count             float64 // cups needed, over MaxCups; 0: what is left behind leaves nothing of a cup
}

// Error names the cups.
func (e *CupsError) Error() string {
	return fmt.Sprintf("cure: cups of %s with %s left behind in each don't make a day (%v of %d)", grams(e.Largest), grams(e.Leftover), e.Count, MaxCups)
}

var (
	cupCount = working.Rule3[unit.Mass, unit.Mass, unit.Mass, unit.Factor]{Rule: &working.Rule{Formula: "n = ceil(N ÷ (M − L) − 0.000000001)", Source: source.Ref{Document: &source.House, Place: "whole cups; the last digits of a sum don't make a cup"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "n", Meaning: "cups", Scale: unit.InPure, Min: 1, Max: 1e6},
		Args: []working.Arg{
			{Symbol: "N", Meaning: "mix that must leave the cups", Scale: unit.InGram, Min: 1, Max: 1e6},
			{Symbol: "M", Meaning: "largest cup", Scale: unit.InGram, Min: 1, Max: 20000},
			leftover,
		}},
		Code: func(need, most, left unit.Mass) unit.Factor {
			return unit.Factor(math.Ceil(float64(need/(most-left)) - 1e-9))
		}}

	cupsLoss = working.Rule3[unit.Factor, unit.Mass, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "L_n = n × m − N", Source: source.Ref{Document: &source.House, Place: "what is mixed and not spread"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "L_n", Meaning: "left behind in all cups", Scale: unit.InGram, Min: 0, Max: MaxCups * 1e6},
		Args: []working.Arg{
			{Symbol: "n", Meaning: "cups", Scale: unit.InPure, Min: 1, Max: MaxCups},
			cupMass,
			{Symbol: "N", Meaning: "mix that must leave the cups", Scale: unit.InGram, Min: 1, Max: 1e6},
		}},
		Code: func(n unit.Factor, each, need unit.Mass) unit.Mass { return unit.Mass(n)*each - need }}

	cupEach = &working.Rule{Formula: "the need shared out evenly, with what stays behind in a cup, up to a whole gram; no smaller than the tool can dose",
		Source: source.Ref{Document: &source.House, Place: "equal cups"}, Mark: source.Calculated, Result: cupMass, IsProse: true}
)

// CupsFor plans the cups for an amount of mix that must leave them (on the surface,
// with losses): the fewest of at most the largest cup, equal, in whole grams, with
// what stays behind in each. A cup too small for the tool to dose is mixed larger,
// and the rest is lost.
// Range: need 1 g–1000 kg. Errors: *NotWithThisToolError (tool left out) where
// smallest is over largest, *CupsError, *working.RangeError.
// Source: counting.
func CupsFor(need, largest, smallest, leftover working.Figure[unit.Mass]) (Cups, error) {
	most := working.By(wholeGrams, wholeGram(math.Floor, largest.Value), largest.Step)
	if !(most.Value-leftover.Value >= unit.Gram) {
		return Cups{}, &CupsError{largest.Value, leftover.Value, 0}
	}
	least := wholeGram(math.Ceil, smallest.Value)
	if !(least <= most.Value) {
		return Cups{}, &NotWithThisToolError{Cup: largest.Value, Smallest: smallest.Value}
	}
	n, err := cupCount.Figure(need, most, leftover)
	if err != nil {
		return Cups{}, err
	}
	if n.Value > MaxCups {
		return Cups{}, &CupsError{largest.Value, leftover.Value, float64(n.Value)}
	}
	size := max(least, wholeGram(math.Ceil, need.Value/unit.Mass(n.Value)+leftover.Value))
	each := working.By(cupEach, size, need.Step, n.Step, leftover.Step, smallest.Step)
	loss, err := cupsLoss.Figure(n, each, need)
	if err != nil {
		return Cups{}, err
	}
	return Cups{n, each, loss}, nil
}

var wholeGrams = &working.Rule{Formula: "down to a whole gram", Source: source.Ref{Document: &source.House, Place: "weighed out"}, Mark: source.Exact, Result: cupMass, IsProse: true}

// wholeGram rounds to whole grams, forgiving the last bits of a sum.
func wholeGram(round func(float64) float64, m unit.Mass) unit.Mass {
	g := unit.InGram.From(float64(m))
	if nearest := math.Round(g); math.Abs(g-nearest) < 1e-6 {
		g = nearest
	}
	return unit.Of[unit.Mass](round(g), unit.InGram)
}
