package working_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// A formula is cut at its signs: letters with what hangs on them (subscripts, a prime, a bar) are names, digits with
// their point are numbers, all else are single signs, a small ⁿ too. The pieces make up the formula.
func TestAFormulaIsCutIntoNamesNumbersAndSigns(t *testing.T) {
	for formula, want := range map[string]struct{ names, numbers []string }{
		"VS' × t_ref ÷ (1 + x_2)² − ln(e ÷ 6.112)": {[]string{"VS'", "t_ref", "x_2", "ln", "e"}, []string{"1", "6.112"}},
		"t₁ + (t₂ − t₁) × ln(T ÷ T₁₀)":             {[]string{"t₁", "t₂", "t₁", "ln", "T", "T₁₀"}, nil},
		"a − √b ≤ 10 : c":                          {[]string{"a", "b", "c"}, []string{"10"}},
		"xⁿ + yª − zº":                             {[]string{"x", "y", "z"}, nil},
		"x\u0304 ÷ σ1":                             {[]string{"x\u0304", "σ1"}, nil},
		"0.5 × 2":                                  {nil, []string{"0.5", "2"}},
		"x₀ + y₉₀ × 0.9 − 905 × q90":               {[]string{"x₀", "y₉₀", "q90"}, []string{"0.9", "905"}},
	} {
		var names, numbers []string
		var all strings.Builder
		for _, tok := range working.Tokens(formula) {
			all.WriteString(tok.Text)
			assert.False(t, tok.IsName && tok.IsNumber, formula)
			if tok.IsName {
				names = append(names, tok.Text)
			} else if tok.IsNumber {
				numbers = append(numbers, tok.Text)
			} else {
				assert.Len(t, []rune(tok.Text), 1, formula)
			}
		}
		assert.Equal(t, want.names, names, formula)
		assert.Equal(t, want.numbers, numbers, formula)
		assert.Equal(t, formula, all.String())
	}
}

// What was typed has no origin beside it, what is exact has its own without a mark, all else its mark too; a letter for
// which nothing was given stays a letter, and a number below zero stands in brackets.
func TestOriginsAndLettersOfAWorking(t *testing.T) {
	origins := map[source.Mark]string{source.Typed: "", source.Exact: "by definition", source.Assumption: "by definition (assumption)"}
	for mark, want := range origins {
		f, err := wet.Figure(working.Given(unit.DryFilm(400e-6), "dry film", unit.InMicrometre, "by definition", mark),
			working.Given(unit.ByVolume(0.05), "thinner", unit.InPure, "", source.Typed), working.Given(unit.SolidsByVolume(0.8), "cured share", unit.InPure, "", source.Typed))
		require.NoError(t, err)
		assert.Equal(t, want, f.Step.Texts()[0].From[0].Origin, mark)
	}
	bare, err := wet.Figure(working.Given(unit.DryFilm(400e-6), "dry film", unit.InMicrometre, "", source.Typed), working.Figure[unit.ByVolume]{},
		working.Given(unit.SolidsByVolume(0.8), "cured share", unit.InPure, "", source.Typed))
	require.NoError(t, err)
	texts := bare.Step.Texts()
	assert.Equal(t, "400 × (1 + t) ÷ 0.8", texts[0].Numbers)
	assert.Len(t, texts[0].From, 2)

	warmer := working.Rule2[unit.TemperatureDifference, unit.TemperatureDifference, unit.TemperatureDifference]{Rule: &working.Rule{Formula: "d = a − b", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "difference", Scale: unit.InCelsiusDifference, Min: -100, Max: 100},
		Args:   []working.Arg{{Symbol: "a", Meaning: "one", Scale: unit.InCelsiusDifference, Min: -100, Max: 100}, {Symbol: "b", Meaning: "other", Scale: unit.InCelsiusDifference, Min: -100, Max: 100}}},
		Code: func(a, b unit.TemperatureDifference) unit.TemperatureDifference { return a - b }}
	d, err := warmer.Figure(working.Given(unit.TemperatureDifference(2), "one", unit.InCelsiusDifference, "", source.Typed), working.Given(unit.TemperatureDifference(-3), "other", unit.InCelsiusDifference, "", source.Typed))
	require.NoError(t, err)
	assert.Equal(t, "2 − (−3)", d.Step.Texts()[0].Numbers)
}

// Both ends of a range hold, and so do the last bits of a conversion past them; a millionth of the range doesn't. At an
// end that is nothing, the bits are those of a thousand.
func TestTheEndsOfARange(t *testing.T) {
	for c, holds := range map[[2]float64]bool{
		{1, 0.05}: true, {0.99999, 0.05}: false, {1 - 1e-10, 0.05}: true, {5000, 0.05}: true, {5000 * (1 + 1e-10), 0.05}: true, {5000.01, 0.05}: false,
		{400, 0}: true, {400, -1e-12}: true, {400, -1e-5}: false,
	} {
		_, err := wet.Of(unit.DryFilm(c[0]*1e-6), unit.ByVolume(c[1]), 0.8)
		assert.Equal(t, holds, err == nil, "%v: %v", c, err)
	}
}
