// Package working is the one home of each formula: a Rule declares the formula as
// it is shown, the range it holds in, its source and the code that computes it, in
// one place. A Figure is a value with the steps that led to it, so that every
// number on the screen opens to its working.
//
// The formula's text is not run: package workingtest parses it, evaluates it at
// points in the rule's range and compares it with the code.
package working

import (
	"fmt"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Arg is one argument of a rule: its symbol in the formula, the scale in which
// the formula reads it, and the range in that scale.
type Arg struct {
	_        incomparable
	Symbol   string
	Meaning  string
	Scale    unit.Scale
	Min, Max float64
}

// In declares an argument: In("DFT", "dry film", unit.InMicrometre, 1, 5000).
// The range is closed and in the scale's own unit.
func In(symbol, meaning string, scale unit.Scale, min, max float64) Arg {
	return Arg{Symbol: symbol, Meaning: meaning, Scale: scale, Min: min, Max: max}
}

// Rule is a formula with its range, source and code.
type Rule struct {
	Formula string // "WFT = DFT × (1 + t) ÷ VS"; prose for a longer method
	Source  source.Ref
	Mark    source.Mark
	Args    []Arg
	Result  Arg  // what comes out of its range is refused
	IsProse bool // a method described in words, with checks of its own
	eval    func([]float64) float64
}

// Eval computes the rule from arguments in SI base units, without checking
// their range. It is for tests; sums use Of.
func (r *Rule) Eval(si ...float64) float64 { return r.eval(si) }

// Compute is Of for bare numbers in SI base units: it refuses what Of refuses. It is
// for tests. Errors: *RangeError.
func (r *Rule) Compute(si ...float64) (float64, error) { return r.compute(si) }

// Spoil makes the rule give a wrong result until fixed. It is for tests: a check
// that doesn't notice is none.
func (r *Rule) Spoil() (fix func()) {
	right := r.eval
	r.eval = func(si []float64) float64 { return 3*right(si) + 1 }
	return func() { r.eval = right }
}

// RangeError says that an argument of a rule, or what came out of it, lies outside
// its range.
type RangeError struct {
	Rule  *Rule
	Arg   Arg     // the argument, or the rule's Result
	Value float64 // in its scale
}

// Error names the argument or the result, its value and its range.
func (e *RangeError) Error() string {
	return fmt.Sprintf("working: %s = %s is outside %s to %s (%s)", e.Arg.Symbol,
		unit.WithUnit(unit.Number(e.Value, 6), e.Arg.Scale), unit.Number(e.Arg.Min, 6),
		unit.WithUnit(unit.Number(e.Arg.Max, 6), e.Arg.Scale), e.Rule.Source)
}

// slack forgives the last bits of a conversion or of a difference at the ends of a
// range: those of the end itself, and at nothing those of a thousand.
const slack = 1e-9

func (r *Rule) check(si []float64) error {
	for i, a := range r.Args {
		if n := a.Scale.From(si[i]); !a.holds(n) {
			return &RangeError{r, a, n}
		}
	}
	return nil
}

// holds says if a number in the scale lies in the range. It refuses NaN.
func (a Arg) holds(n float64) bool {
	wide := math.Max(math.Abs(a.Min), math.Abs(a.Max))
	room := func(end float64) float64 { return slack * math.Max(math.Abs(end), math.Min(wide, 1000)) }
	return n >= a.Min-room(a.Min) && n <= a.Max+room(a.Max)
}

func (r *Rule) compute(si []float64) (float64, error) {
	if err := r.check(si); err != nil {
		return 0, err
	}
	out := r.eval(si)
	if n := r.Result.Scale.From(out); !r.Result.holds(n) {
		return 0, &RangeError{r, r.Result, n}
	}
	return out, nil
}
