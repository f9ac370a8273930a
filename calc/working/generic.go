package working

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

type (
	// Rule1 is a rule of one argument.
	Rule1[A, R unit.Quantity] struct{ *Rule }
	// Rule2 is a rule of two arguments.
	Rule2[A, B, R unit.Quantity] struct{ *Rule }
	// Rule3 is a rule of three arguments.
	Rule3[A, B, C, R unit.Quantity] struct{ *Rule }
	// Rule4 is a rule of four arguments.
	Rule4[A, B, C, D, R unit.Quantity] struct{ *Rule }
)

// Of1 declares a rule of one argument. The formula's left side is the result's
// symbol; result gives its meaning and scale.
func Of1[A, R unit.Quantity](formula string, from source.Ref, mark source.Mark, result Arg, args []Arg, f func(A) R) Rule1[A, R] {
	return Rule1[A, R]{declare(formula, from, mark, result, args, []unit.Dimension{dim[A](), dim[R]()},
		func(x []float64) float64 { return float64(f(A(x[0]))) })}
}

// Of2 declares a rule of two arguments.
func Of2[A, B, R unit.Quantity](formula string, from source.Ref, mark source.Mark, result Arg, args []Arg, f func(A, B) R) Rule2[A, B, R] {
	return Rule2[A, B, R]{declare(formula, from, mark, result, args, []unit.Dimension{dim[A](), dim[B](), dim[R]()},
		func(x []float64) float64 { return float64(f(A(x[0]), B(x[1]))) })}
}

// Of3 declares a rule of three arguments.
func Of3[A, B, C, R unit.Quantity](formula string, from source.Ref, mark source.Mark, result Arg, args []Arg, f func(A, B, C) R) Rule3[A, B, C, R] {
	return Rule3[A, B, C, R]{declare(formula, from, mark, result, args, []unit.Dimension{dim[A](), dim[B](), dim[C](), dim[R]()},
		func(x []float64) float64 { return float64(f(A(x[0]), B(x[1]), C(x[2]))) })}
}

// Of4 declares a rule of four arguments.
func Of4[A, B, C, D, R unit.Quantity](formula string, from source.Ref, mark source.Mark, result Arg, args []Arg, f func(A, B, C, D) R) Rule4[A, B, C, D, R] {
	return Rule4[A, B, C, D, R]{declare(formula, from, mark, result, args, []unit.Dimension{dim[A](), dim[B](), dim[C](), dim[D](), dim[R]()},
		func(x []float64) float64 { return float64(f(A(x[0]), B(x[1]), C(x[2]), D(x[3]))) })}
}

// Method declares a way of computing that is described in words and has no single
// formula: an integral, a search, a walk. The step of a figure made by it holds its
// inputs and its result.
func Method(description string, from source.Ref, mark source.Mark, result Arg) *Rule {
	return &Rule{Formula: description, Source: from, Mark: mark, Result: result, IsProse: true}
}

func dim[Q unit.Quantity]() unit.Dimension { var q Q; return q.Dimension() }

// declare panics on a rule whose scales don't fit its types: a programmer's slip,
// which shows as soon as the program starts. It keeps no argument but a copy, so
// that the code of a declaration needn't build its list on the heap.
func declare(formula string, from source.Ref, mark source.Mark, result Arg, args []Arg, dims []unit.Dimension, eval func([]float64) float64) *Rule {
	if len(args) != len(dims)-1 {
		panic("working: " + formula + ": wrong number of arguments")
	}
	for i, a := range append(args[:len(args):len(args)], result) {
		if a.Scale.Dimension() != dims[i] {
			panic("working: " + formula + ": the scale of " + a.Symbol + " doesn't fit its type")
		}
	}
	return &Rule{Formula: formula, Source: from, Mark: mark, Result: result, Args: slices.Clone(args), eval: eval}
}

// Of computes the rule. Errors: *RangeError.
func (r Rule1[A, R]) Of(a A) (R, error) { return typed[R](r.compute([]float64{float64(a)})) }

// Of computes the rule. Errors: *RangeError.
func (r Rule2[A, B, R]) Of(a A, b B) (R, error) {
	return typed[R](r.compute([]float64{float64(a), float64(b)}))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule3[A, B, C, R]) Of(a A, b B, c C) (R, error) {
	return typed[R](r.compute([]float64{float64(a), float64(b), float64(c)}))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule4[A, B, C, D, R]) Of(a A, b B, c C, d D) (R, error) {
	return typed[R](r.compute([]float64{float64(a), float64(b), float64(c), float64(d)}))
}

func typed[R unit.Quantity](v float64, err error) (R, error) { return R(v), err }

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule1[A, R]) Figure(a Figure[A]) (Figure[R], error) { return figure[R](r.Rule, a.Step) }

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule2[A, B, R]) Figure(a Figure[A], b Figure[B]) (Figure[R], error) {
	return figure[R](r.Rule, a.Step, b.Step)
}

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule3[A, B, C, R]) Figure(a Figure[A], b Figure[B], c Figure[C]) (Figure[R], error) {
	return figure[R](r.Rule, a.Step, b.Step, c.Step)
}

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule4[A, B, C, D, R]) Figure(a Figure[A], b Figure[B], c Figure[C], d Figure[D]) (Figure[R], error) {
	return figure[R](r.Rule, a.Step, b.Step, c.Step, d.Step)
}

func figure[R unit.Quantity](r *Rule, from ...*Step) (Figure[R], error) {
	si := make([]float64, len(from))
	for i, s := range from {
		if s != nil { // a figure that was never made counts as zero
			si[i] = s.Out
		}
	}
	out, err := r.compute(si)
	if err != nil {
		return Figure[R]{}, err
	}
	return Figure[R]{Value: R(out), Step: &Step{Rule: r, From: from, Out: out}}, nil
}
