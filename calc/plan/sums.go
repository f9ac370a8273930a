package plan

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// sums runs a chain of rules and keeps the first error; after it every result
// is an empty figure. It saves an if behind every line of a plan.
type sums struct{ err error }

func keep[R unit.Quantity](s *sums, f working.Figure[R], err error) working.Figure[R] {
	if s.err == nil {
		s.err = err
	}
	if s.err != nil {
		return working.Figure[R]{}
	}
	return f
}

func do2[A, B, R unit.Quantity](s *sums, r working.Rule2[A, B, R], a working.Figure[A], b working.Figure[B]) working.Figure[R] {
	if s.err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b)
	return keep(s, f, err)
}

func do3[A, B, C, R unit.Quantity](s *sums, r working.Rule3[A, B, C, R], a working.Figure[A], b working.Figure[B], c working.Figure[C]) working.Figure[R] {
	if s.err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b, c)
	return keep(s, f, err)
}

func do4[A, B, C, D, R unit.Quantity](s *sums, r working.Rule4[A, B, C, D, R], a working.Figure[A], b working.Figure[B], c working.Figure[C], d working.Figure[D]) working.Figure[R] {
	if s.err != nil {
		return working.Figure[R]{}
	}
	f, err := r.Figure(a, b, c, d)
	return keep(s, f, err)
}

// as reads a figure as another kind of the same dimension: a typed film as a
// wet one.
func as[R, Q unit.Quantity](f working.Figure[Q]) working.Figure[R] {
	return working.Figure[R]{Value: R(f.Value), Step: f.Step}
}

// onCard gives a figure of a card, with the card's name and the figure's mark.
func onCard[Q unit.Quantity](c *job.Card, s material.Spec[Q], name string, scale unit.Scale) working.Figure[Q] {
	return working.Given(s.Value, name, scale, c.Name, s.Mark)
}

// ofMethod gives a figure of a method.
func ofMethod[Q unit.Quantity](m *material.Method, s material.Spec[Q], name string, scale unit.Scale) working.Figure[Q] {
	return working.Given(s.Value, name, scale, m.Name, s.Mark)
}
