package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
)

// A number is read as it is written: groups of three, a fraction of two whole numbers, and nothing below its first part.
func TestNumbersAtTheirEdges(t *testing.T) {
	for text, want := range map[string]float64{
		"12 500": 12.5, "999 999": 999.999, "1 234 567": 1234.567, "0,125": 0.000125, "1.5": 0.0015, "9": 0.009, "90": 0.09, "1/2": 0.0005, "2 1/2": 0.0025,
	} {
		got, err := unit.Read(text, unit.InMillimetre)
		require.NoError(t, err, text)
		assert.InEpsilon(t, want, got, 1e-9, text)
	}
	for _, text := range []string{"1/0", "1.5/2", "1/2.5", "2 ft -6 in", "2 ft 3 ft", "6 in 2 ft", "-", "."} {
		_, err := unit.Read(text, unit.InMillimetre)
		assert.Error(t, err, text)
	}
}

// Each scale of a measure is found by its symbol, and no other; 3.6 kg in an hour are a gram in a second.
func TestScalesAreFoundByTheirSymbols(t *testing.T) {
	for _, m := range unit.Choosable {
		for _, s := range m.Scales() {
			assert.Equal(t, s, m.Scale(s.Symbol()), "%s: %s", m.Key(), s.Symbol())
		}
		assert.Equal(t, unit.NoScale, m.Scale("cubit"), m.Key())
	}
	assert.InDelta(t, 1e-3, unit.InGramPerHour.SI(3600), 1e-15)
}
