package surface

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// L holds lengths in metres by key.
type L map[string]float64

func lengths(values L) map[string]working.Figure[unit.Length] {
	figures := map[string]working.Figure[unit.Length]{}
	for key, v := range values {
		figures[key] = metres(v)
	}
	return figures
}

func metres(v float64) working.Figure[unit.Length] {
	return working.Given(unit.Length(v), "length", unit.InMetre, "typed", source.Typed)
}

func number(v float64) working.Figure[unit.Factor] {
	return working.Given(unit.Factor(v), "number", unit.InPure, "typed", source.Typed)
}

func measured(t *testing.T, s *Shape, values L) Measured {
	t.Helper()
	m, err := s.Measure(Input{Lengths: lengths(values)})
	require.NoError(t, err)
	return m
}

func rows(columns []string, cells ...[]float64) []Row {
	var list []Row
	for _, line := range cells {
		row := Row{}
		for i, v := range line {
			row[columns[i]] = metres(v)
		}
		list = append(list, row)
	}
	return list
}

func near(t *testing.T, want, got float64, text string) {
	t.Helper()
	assert.InEpsilon(t, want, got, 1e-9, text)
}

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, Rules()...) }
