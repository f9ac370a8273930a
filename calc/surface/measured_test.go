package surface

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func counts(many, faces float64) map[string]working.Figure[unit.Factor] {
	return map[string]working.Figure[unit.Factor]{"pieces": number(many), "faces-each": number(faces)}
}

func TestTotalCountsSidesAndCutOuts(t *testing.T) {
	panel := measured(t, rectangle, L{"length": 2, "width": 1})
	hatch := measured(t, rectangle, L{"length": 0.5, "width": 0.4})
	total, err := Total(panel, []Measured{hatch, hatch}, number(3), number(2))
	require.NoError(t, err)
	near(t, 3*2*(2-2*0.2), float64(total.Area.Value), "area")
	near(t, 3*(6+2*1.8), float64(total.Edge.Value), "one edge for both sides")

	alone, err := Total(panel, nil, number(1), number(1))
	require.NoError(t, err)
	assert.Equal(t, panel, alone, "nothing to add to the working")
}

func TestTotalKeepsTheNotes(t *testing.T) {
	deck := measured(t, triangle, L{"base": 2, "height": 2})
	hole, err := direct.Measure(Input{Areas: map[string]working.Figure[unit.Area]{
		"area": working.Given(unit.Area(0.2), "area", unit.InSquareMetre, "typed", source.Typed)}})
	require.NoError(t, err)
	total, err := Total(deck, []Measured{hole, hole}, number(2), number(1))
	require.NoError(t, err)
	assert.Equal(t, []Note{EdgeAtLeast, NoEdge}, total.Notes)
	assert.Equal(t, []Note{EdgeAtLeast}, deck.Notes, "the surface's own notes stay as they were")
}

func TestTotalRefuses(t *testing.T) {
	panel := measured(t, rectangle, L{"length": 1, "width": 1})
	half := measured(t, rectangle, L{"length": 1, "width": 0.5})
	large := measured(t, rectangle, L{"length": 100, "width": 60})
	for _, c := range []struct {
		name        string
		m           Measured
		cutouts     []Measured
		many, sides float64
		want        *Error
	}{
		{"nothing left", panel, []Measured{half, half}, 1, 1, limit("cut-outs", TooLarge, 1).in(1)},
		{"less than nothing", half, []Measured{panel}, 1, 1, limit("cut-outs", TooLarge, 0.5).in(0)},
		{"no panel", panel, nil, 0, 1, fault("count", NotPositive)},
		{"half a panel", panel, nil, 1.5, 1, fault("count", NotWhole)},
		{"three sides", panel, nil, 1, 3, limit("sides", TooLarge, 2)},
		{"a harbour full", large, nil, 1, 2, limit("area", TooLarge, 1e4)},
	} {
		_, err := Total(c.m, c.cutouts, number(c.many), number(c.sides))
		assert.Equal(t, c.want, err, c.name)
	}
}
