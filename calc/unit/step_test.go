package unit_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
)

func TestAStepKeepsWhatWasTyped(t *testing.T) {
	by := func(text string) func(unit.Scale) (decimal.Decimal, bool) {
		return func(s unit.Scale) (decimal.Decimal, bool) {
			return decimal.RequireFromString(text), s != unit.InFoot
		}
	}
	for _, c := range []struct {
		text, by string
		bare     unit.Scale
		want     string
	}{
		{"24", "1", unit.InCelsius, "25"},
		{"24.5 C", "1", unit.InCelsius, "25.5 C"},
		{"75°F", "-1", unit.InCelsius, "74°F"},
		{"-3 °C", "1", unit.InCelsius, "-2 °C"},
		{"1,5 kg", "0.1", unit.InGram, "1,6 kg"},
		{"0.3", "-0.1", unit.InKilogram, "0.2"},
		{"1,9 kg", "0.1", unit.InGram, "2 kg"},
		{"1,0005 kg", "0.1005", unit.InGram, "1,1010 kg"},
		{"12 500 g", "10", unit.InGram, "12510 g"},
		{"12,500.5 g", "10", unit.InGram, "12510.5 g"},
		{"100 oz", "0.5", unit.InGram, "100.5 oz"},
	} {
		got, ok := unit.Step(c.text, c.bare, by(c.by))
		require.True(t, ok, c.text)
		assert.Equal(t, c.want, got, c.text)
		_, err := unit.Read(got, c.bare)
		assert.NoError(t, err, got)
	}
	for _, text := range []string{"", "warm", "2 ft 6 in", "3/4 in", "1 ft", "1,500", "3 kg", "12345678901234567890"} {
		got, ok := unit.Step(text, unit.InMillimetre, by("1"))
		assert.False(t, ok, text)
		assert.Equal(t, text, got)
	}
}
