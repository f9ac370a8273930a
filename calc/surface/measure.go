package surface

import (
	"errors"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

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

// withNote adds a note to what was measured.
func withNote(note Note) func(Measured, error) (Measured, error) {
	return func(m Measured, err error) (Measured, error) {
		m.Notes = addNote(m.Notes, note)
		return m, err
	}
}
