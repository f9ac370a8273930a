package sanding

import (
	"fmt"
	"slices"

	"shedreckoner/calc/unit"
)

// ratioSlack forgives the last bits of a ratio of two table values.
const ratioSlack = 1e-9

// Ratio is how many times finer the second grade is, by mean grain size.
// Errors: *GradeError.
func Ratio(coarse, fine Grade) (unit.Factor, error) {
	a, err := coarse.MeanSize()
	if err != nil {
		return 0, err
	}
	b, err := fine.MeanSize()
	if err != nil {
		return 0, err
	}
	return unit.Factor(a / b), nil
}

// NoSequenceError says between which grades the stock leaves too wide a step.
type NoSequenceError struct {
	From, To Grade
	Ratio    unit.Factor
}

// Error names the gap.
func (e *NoSequenceError) Error() string {
	return fmt.Sprintf("sanding: from %s to %s is a step of %.2f", e.From, e.To, float64(e.Ratio))
}

// Propose gives the shortest sequence from first to last with no step wider than
// most, and of the shortest ones the most even. stock holds the grades at hand;
// empty means all. Neither first nor last need be in stock.
// Errors: *GradeError, *NoSequenceError, *Jump when last is coarser than first.
func Propose(first, last Grade, stock []Grade, most unit.Factor) ([]Grade, error) {
	ratio, err := Ratio(first, last)
	if err != nil {
		return nil, err
	}
	if ratio < 1 {
		return nil, &Jump{1, first, last, ratio, OutOfOrder}
	}
	usable := between(first, last, stock)
	next, err := chain(usable, most)
	if err != nil {
		return nil, err
	}
	var sequence []Grade
	for i := 0; i < len(usable); i = next[i] {
		sequence = append(sequence, usable[i])
	}
	return sequence, nil
}

// between lists first, the stocked grades between, and last, each once.
func between(first, last Grade, stock []Grade) []Grade {
	var list []Grade
	for _, g := range Grades() {
		inStock := len(stock) == 0 || slices.Contains(stock, g)
		if g == first || g == last || inStock && first < g && g < last {
			list = append(list, g)
		}
	}
	return list
}

// chain finds for each grade the one to follow it, backwards from the last: fewest
// steps, then the least wide of the widest steps.
func chain(grades []Grade, most unit.Factor) ([]int, error) {
	type way struct {
		steps  int
		widest unit.Factor
	}
	n := len(grades)
	next, ways := make([]int, n), make([]way, n)
	next[n-1] = n
	for i := n - 2; i >= 0; i-- {
		for j := i + 1; j < n; j++ {
			ratio, err := Ratio(grades[i], grades[j])
			if err != nil {
				return nil, err
			}
			if ratio > most*(1+ratioSlack) {
				break
			}
			w := way{ways[j].steps + 1, max(ratio, ways[j].widest)}
			if next[i] == 0 || w.steps < ways[i].steps || w.steps == ways[i].steps && w.widest < ways[i].widest {
				next[i], ways[i] = j, w
			}
		}
		if next[i] == 0 {
			ratio, _ := Ratio(grades[i], grades[i+1])
			return nil, &NoSequenceError{grades[i], grades[i+1], ratio}
		}
	}
	return next, nil
}

// JumpKind says what is wrong with a step between two grades.
type JumpKind int

// The kinds of wrong step.
const (
	OutOfOrder JumpKind = iota // coarser after finer: it scratches again
	Repeated                   // the same grade again: a count says it better
	TooWide                    // the finer grade may leave scratches of the coarser
)

// Jump is a step between two grades that is wrong or worth asking about.
type Jump struct {
	At       int // index of the second grade
	From, To Grade
	Ratio    unit.Factor
	Kind     JumpKind
}

// Error names the step.
func (j *Jump) Error() string {
	return fmt.Sprintf("sanding: %s after %s (kind %d, ratio %.2f)", j.To, j.From, j.Kind, float64(j.Ratio))
}

// Validate lists the steps of a sequence that are out of order, repeated, or
// wider than ask. Errors: *GradeError.
func Validate(sequence []Grade, ask unit.Factor) ([]Jump, error) {
	var list []Jump
	for i := 1; i < len(sequence); i++ {
		from, to := sequence[i-1], sequence[i]
		ratio, err := Ratio(from, to)
		if err != nil {
			return nil, err
		}
		switch {
		case ratio < 1:
			list = append(list, Jump{i, from, to, ratio, OutOfOrder})
		case ratio == 1:
			list = append(list, Jump{i, from, to, ratio, Repeated})
		case ratio > ask*(1+ratioSlack):
			list = append(list, Jump{i, from, to, ratio, TooWide})
		}
	}
	return list, nil
}
