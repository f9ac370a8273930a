// Package chain makes figures from figures, one after the other: the first
// error stops the rest. It also takes figures from cards and methods, with their
// marks, so that a working says where each of them comes from.
//
//	var run chain.Run
//	wet := chain.Do2(&run, film.Wet, cured, share)
//	volume := chain.Do2(&run, mixOf, area, wet)
//	if run.Err != nil { … }
package chain

import (
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Run is a chain of rules. After its first error every result is an empty figure,
// which saves an if after each line.
type Run struct{ Err error }

// Keep passes a figure on, or keeps its error. The figure is empty after any.
func Keep[R unit.Quantity](run *Run, f working.Figure[R], err error) working.Figure[R] {
	if run.Err == nil {
		run.Err = err
	}
	if run.Err != nil {
		return working.Figure[R]{}
	}
	return f
}

// Do1 computes a rule of one argument.
func Do1[A, R unit.Quantity](run *Run, r working.Rule1[A, R], a working.Figure[A]) working.Figure[R] {
	if run.Err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a)
	return Keep(run, f, err)
}

// Do2 computes a rule of two arguments.
func Do2[A, B, R unit.Quantity](run *Run, r working.Rule2[A, B, R], a working.Figure[A], b working.Figure[B]) working.Figure[R] {
	if run.Err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b)
	return Keep(run, f, err)
}

// Do3 computes a rule of three arguments.
func Do3[A, B, C, R unit.Quantity](run *Run, r working.Rule3[A, B, C, R], a working.Figure[A], b working.Figure[B], c working.Figure[C]) working.Figure[R] {
	if run.Err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b, c)
	return Keep(run, f, err)
}

// Do4 computes a rule of four arguments.
func Do4[A, B, C, D, R unit.Quantity](run *Run, r working.Rule4[A, B, C, D, R], a working.Figure[A], b working.Figure[B], c working.Figure[C], d working.Figure[D]) working.Figure[R] {
	if run.Err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b, c, d)
	return Keep(run, f, err)
}

// As reads a figure as another kind of the same dimension: a typed film as a
// wet one. Neither value nor working changes.
func As[R, Q unit.Quantity](f working.Figure[Q]) working.Figure[R] {
	return working.Figure[R]{Value: R(f.Value), Step: f.Step}
}

// AppendKnown adds a figure to a list, if it is known.
func AppendKnown[Q unit.Quantity](list []working.Figure[Q], f working.Figure[Q]) []working.Figure[Q] {
	if f.Step == nil {
		return list
	}
	return append(list, f)
}
