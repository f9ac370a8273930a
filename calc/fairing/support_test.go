package fairing_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// given makes a figure as plan would, in a scale's own unit.
func given[Q unit.Quantity](n float64, s unit.Scale) working.Figure[Q] {
	return working.Given(unit.Of[Q](n, s), "given", s, "test", source.Typed)
}

func metres(n float64) working.Figure[unit.Length] { return given[unit.Length](n, unit.InMetre) }

// surface samples z over width × height in rows × columns readings.
func surface(t *testing.T, rows, columns int, height, width float64, z func(y, x float64) float64) *fairing.Grid {
	t.Helper()
	dy, dx := height/float64(rows-1), width/float64(columns-1)
	readings := make([][]unit.Length, rows)
	for r := range readings {
		for c := range columns {
			readings[r] = append(readings[r], unit.Length(z(float64(r)*dy, float64(c)*dx)))
		}
	}
	g, err := fairing.NewGrid(readings, metres(dy), metres(dx))
	require.NoError(t, err)
	return g
}
