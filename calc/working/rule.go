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
// the formula reads it, and the closed range in that scale's own unit.
type Arg struct {
	_        incomparable
	Symbol   string
	Meaning  string
	Scale    unit.Scale
	Min, Max float64
}

// Rule is what is known of a formula: its range and source. Rule1 to Rule4 have its
// code beside it, in one declaration; a method described in words has none.
type Rule struct {
	Formula string // "WFT = DFT × (1 + t) ÷ VS"; prose for a longer method
	Source  source.Ref
	Mark    source.Mark
	Args    []Arg
	Result  Arg  // what comes out of its range is refused
	IsProse bool // a method described in words, with checks of its own

	eval     func([]float64) float64 // its code, once it is in a List
	isSpoilt bool
}

// Eval computes the rule from arguments in SI base units, without checking
// their range. It is for tests, of rules that are in a List; sums use Of.
func (r *Rule) Eval(si ...float64) float64 { return r.result(r.eval, si) }

// Compute is Of for bare numbers in SI base units: it refuses what Of refuses. It is
// for tests, of rules that are in a List. Errors: *RangeError.
func (r *Rule) Compute(si ...float64) (float64, error) { return r.compute(r.eval, si) }

// Spoil makes the rule give a wrong result until fixed. It is for tests: a check
// that doesn't notice is none.
func (r *Rule) Spoil() (fix func()) {
	r.isSpoilt = true
	return func() { r.isSpoilt = false }
}

func (r *Rule) result(eval func([]float64) float64, si []float64) float64 {
	if r.isSpoilt {
		return 3*eval(si) + 1
	}
	return eval(si)
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

func (r *Rule) compute(eval func([]float64) float64, si []float64) (float64, error) {
	if err := r.check(si); err != nil {
		return 0, err
	}
	out := r.result(eval, si)
	if n := r.Result.Scale.From(out); !r.Result.holds(n) {
		return 0, &RangeError{r, r.Result, n}
	}
	return out, nil
}
