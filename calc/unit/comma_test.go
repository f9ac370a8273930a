package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
)

func TestWhatMeansTwoThingsWithADecimalComma(t *testing.T) {
	for text, readings := range map[string][]string{
		"1.500":        {"1,5", "1500"},
		"12.345 mm":    {"12,345", "12345"},
		"2 ft 1.250in": {"1,25", "1250"},
		"-3.000":       {"3", "3000"},
	} {
		var read *unit.ReadError
		require.ErrorAs(t, unit.CheckComma(text), &read, text)
		assert.Equal(t, unit.TwoReadings, read.Cause)
		assert.Equal(t, readings, read.Readings, text)
	}
	for _, text := range []string{"", "1.5", "1,5", "1.5000", "0.125", "1500.125", "1.234.567", "1,234.567", "3/4 in", "warm", "1.500,5"} {
		assert.NoError(t, unit.CheckComma(text), text)
	}
}

func TestFiguresWithADecimalComma(t *testing.T) {
	for text, want := range map[string]string{
		"":                               "",
		"1.6 g":                          "1,6 g",
		"WFT = 0.4 mm ÷ 0.95 = 0.421 mm": "WFT = 0,4 mm ÷ 0,95 = 0,421 mm",
		"Type 1.5 or 1500.":              "Type 1,5 or 1500.",
		"section 2.1.5, 3.":              "section 2.1.5, 3.",
		"1,500.5":                        "1,500.5",
		"Ends. 5 more":                   "Ends. 5 more",
		"a.5":                            "a.5",
		"10:30, 2026-06-01, P120":        "10:30, 2026-06-01, P120",
	} {
		assert.Equal(t, want, unit.Commas(text))
	}
	for _, first := range "0123456789" {
		for _, last := range "0123456789" {
			assert.Equal(t, string(first)+","+string(last), unit.Commas(string(first)+"."+string(last)))
		}
	}
}

// Found by fuzzing: looking for the refused number by its digits found it again
// inside the one that had just got its zero, without end.
func TestANumberGetsItsZeroOnce(t *testing.T) {
	for text, want := range map[string]string{
		"1.000 x 1.000":             "1.0000 x 1.0000",
		"0 \xf7A 1.000\x16AA 1.000": "0 \xf7A 1.0000\x16AA 1.0000",
		"1.125; 2.250; 1.125":       "1.1250; 2.2500; 1.1250",
		"11.125":                    "11.1250",
		"1.5, 0.125":                "1.5, 0.125",
		"":                          "",
	} {
		assert.Equal(t, want, unit.Ungrouped(text))
		assert.NoError(t, unit.CheckComma(unit.Ungrouped(text)))
	}
}
