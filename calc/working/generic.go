package working

import "shedreckoner/calc/unit"

// The rules by the number of their arguments: what is known of them, and their
// code with the types of what goes in and comes out. Declared as literals they are
// data that the compiler lays out: hundreds cost nothing as the page starts.
type (
	// Rule1 is a rule of one argument.
	Rule1[A, R unit.Quantity] struct {
		*Rule
		Code func(A) R
	}
	// Rule2 is a rule of two arguments.
	Rule2[A, B, R unit.Quantity] struct {
		*Rule
		Code func(A, B) R
	}
	// Rule3 is a rule of three arguments.
	Rule3[A, B, C, R unit.Quantity] struct {
		*Rule
		Code func(A, B, C) R
	}
	// Rule4 is a rule of four arguments.
	Rule4[A, B, C, D, R unit.Quantity] struct {
		*Rule
		Code func(A, B, C, D) R
	}
)

// Declared is a rule as it was declared: a *Rule described in words, or a pointer to a
// Rule1 to Rule4.
type Declared interface{ declared() *Rule }

// List gives rules whose code can be asked for whatever their types. It panics on
// one whose scales don't fit its types: a slip of the programmer that shows as
// soon as its package's rules are checked. A package makes its list when it is asked for: the
// page starts without.
func List(all ...Declared) []*Rule {
	list := make([]*Rule, len(all))
	for i, d := range all {
		list[i] = d.declared()
	}
	return list
}

func (r *Rule) declared() *Rule { return r }

func (r *Rule) with(eval func([]float64) float64, dims ...unit.Dimension) *Rule {
	if len(r.Args) != len(dims)-1 {
		panic("working: " + r.Formula + ": wrong number of arguments")
	}
	for i, a := range append(r.Args[:len(r.Args):len(r.Args)], r.Result) {
		if a.Scale.Dimension() != dims[i] {
			panic("working: " + r.Formula + ": the scale of " + a.Symbol + " doesn't fit its type")
		}
	}
	r.eval = eval
	return r
}

func dim[Q unit.Quantity]() unit.Dimension { var q Q; return q.Dimension() }

func (r *Rule1[A, R]) declared() *Rule    { return r.with(r.at, dim[A](), dim[R]()) }
func (r *Rule2[A, B, R]) declared() *Rule { return r.with(r.at, dim[A](), dim[B](), dim[R]()) }
func (r *Rule3[A, B, C, R]) declared() *Rule {
	return r.with(r.at, dim[A](), dim[B](), dim[C](), dim[R]())
}
func (r *Rule4[A, B, C, D, R]) declared() *Rule {
	return r.with(r.at, dim[A](), dim[B](), dim[C](), dim[D](), dim[R]())
}

func (r Rule1[A, R]) at(x []float64) float64       { return float64(r.Code(A(x[0]))) }
func (r Rule2[A, B, R]) at(x []float64) float64    { return float64(r.Code(A(x[0]), B(x[1]))) }
func (r Rule3[A, B, C, R]) at(x []float64) float64 { return float64(r.Code(A(x[0]), B(x[1]), C(x[2]))) }
func (r Rule4[A, B, C, D, R]) at(x []float64) float64 {
	return float64(r.Code(A(x[0]), B(x[1]), C(x[2]), D(x[3])))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule1[A, R]) Of(a A) (R, error) {
	return typed[R](r.compute(r.at, []float64{float64(a)}))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule2[A, B, R]) Of(a A, b B) (R, error) {
	return typed[R](r.compute(r.at, []float64{float64(a), float64(b)}))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule3[A, B, C, R]) Of(a A, b B, c C) (R, error) {
	return typed[R](r.compute(r.at, []float64{float64(a), float64(b), float64(c)}))
}

// Of computes the rule. Errors: *RangeError.
func (r Rule4[A, B, C, D, R]) Of(a A, b B, c C, d D) (R, error) {
	return typed[R](r.compute(r.at, []float64{float64(a), float64(b), float64(c), float64(d)}))
}

func typed[R unit.Quantity](v float64, err error) (R, error) { return R(v), err }

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule1[A, R]) Figure(a Figure[A]) (Figure[R], error) {
	return figure[R](r.Rule, r.at, a.Step)
}

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule2[A, B, R]) Figure(a Figure[A], b Figure[B]) (Figure[R], error) {
	return figure[R](r.Rule, r.at, a.Step, b.Step)
}

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule3[A, B, C, R]) Figure(a Figure[A], b Figure[B], c Figure[C]) (Figure[R], error) {
	return figure[R](r.Rule, r.at, a.Step, b.Step, c.Step)
}

// Figure computes the rule and keeps the working. Errors: *RangeError.
func (r Rule4[A, B, C, D, R]) Figure(a Figure[A], b Figure[B], c Figure[C], d Figure[D]) (Figure[R], error) {
	return figure[R](r.Rule, r.at, a.Step, b.Step, c.Step, d.Step)
}

func figure[R unit.Quantity](r *Rule, eval func([]float64) float64, from ...*Step) (Figure[R], error) {
	si := make([]float64, len(from))
	for i, s := range from {
		if s != nil { // a figure that was never made counts as zero
			si[i] = s.Out
		}
	}
	out, err := r.compute(eval, si)
	if err != nil {
		return Figure[R]{}, err
	}
	return Figure[R]{Value: R(out), Step: &Step{Rule: r, From: from, Out: out}}, nil
}
