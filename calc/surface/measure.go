package surface

import (
	"errors"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// of1, of2 and of3 measure by a rule for the area and one for the edge, both of
// the same lengths.

func of1(area working.Rule1[unit.Length, unit.Area], edge working.Rule1[unit.Length, unit.Length], a string) func(Input) (Measured, error) {
	return func(in Input) (Measured, error) {
		return join(area.Figure(in.length(a)))(edge.Figure(in.length(a)))
	}
}

func of2(area working.Rule2[unit.Length, unit.Length, unit.Area], edge working.Rule2[unit.Length, unit.Length, unit.Length], a, b string) func(Input) (Measured, error) {
	return func(in Input) (Measured, error) {
		return join(area.Figure(in.length(a), in.length(b)))(edge.Figure(in.length(a), in.length(b)))
	}
}

func of3(area working.Rule3[unit.Length, unit.Length, unit.Length, unit.Area], edge working.Rule3[unit.Length, unit.Length, unit.Length, unit.Length], a, b, c string) func(Input) (Measured, error) {
	return func(in Input) (Measured, error) {
		x, y, z := in.length(a), in.length(b), in.length(c)
		return join(area.Figure(x, y, z))(edge.Figure(x, y, z))
	}
}

// join makes a measured surface of what two rules gave.
func join(area working.Figure[unit.Area], areaErr error) func(working.Figure[unit.Length], error) (Measured, error) {
	return func(edge working.Figure[unit.Length], edgeErr error) (Measured, error) {
		return Measured{Area: area, Edge: edge}, errors.Join(areaErr, edgeErr)
	}
}

// sum adds figures; one alone needs no adding up.
func sum[Q unit.Quantity](rule *working.Rule, parts []working.Figure[Q]) working.Figure[Q] {
	if len(parts) == 1 {
		return parts[0]
	}
	return working.Sum(rule, parts...)
}

// withNote adds a note to whatever is measured.
func withNote(note Note, measure func(Input) (Measured, error)) func(Input) (Measured, error) {
	return func(in Input) (Measured, error) {
		m, err := measure(in)
		m.Notes = addNote(m.Notes, note)
		return m, err
	}
}
