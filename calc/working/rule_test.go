package working_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

var wet = working.Rule3[unit.DryFilm, unit.ByVolume, unit.SolidsByVolume, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT = DFT × (1 + t) ÷ VS", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: working.Arg{Symbol: "WFT", Meaning: "wet film", Scale: unit.InMicrometre, Min: 0, Max: 1e5},
	Args: []working.Arg{
		{Symbol: "DFT", Meaning: "dry film", Scale: unit.InMicrometre, Min: 1, Max: 5000},
		{Symbol: "t", Meaning: "thinner per volume of product", Scale: unit.InPure, Min: 0, Max: 0.5},
		{Symbol: "VS", Meaning: "solids by volume", Scale: unit.InPure, Min: 0.05, Max: 1},
	}},
	Code: func(dft unit.DryFilm, t unit.ByVolume, vs unit.SolidsByVolume) unit.WetFilm {
		return unit.WetFilm(float64(dft) * (1 + float64(t)) / float64(vs))
	}}

func TestFormulaAndCodeAgree(t *testing.T) { workingtest.Check(t, working.List(&wet)...) }

func TestAWrongFormulaIsCaught(t *testing.T) {
	for _, formula := range []string{
		"WFT = DFT × (1 − t) ÷ VS", "WFT = DFT × (1 + t) × VS", "WFT = DFT ÷ VS", "WFT = DFT × (1 + t) ÷ VS +", "x = DFT × (1 + t) ÷ VS",
	} {
		r := *working.List(&wet)[0]
		r.Formula = formula
		assert.Error(t, workingtest.Agrees(&r), formula)
	}
	r := *working.List(&wet)[0]
	r.Result.Scale = unit.InMillimetre
	assert.Error(t, workingtest.Agrees(&r), "a wrong unit")
}

func TestOutsideItsRangeARuleRefuses(t *testing.T) {
	_, err := wet.Of(400e-6, 0, 1.2)
	var outside *working.RangeError
	require.True(t, errors.As(err, &outside))
	assert.Equal(t, "VS", outside.Arg.Symbol)
	zero := 0.0
	_, err = wet.Of(unit.DryFilm(zero/zero), 0, 1)
	assert.Error(t, err)
}

func TestTheWorkingShowsTheNumbers(t *testing.T) {
	f, err := wet.Figure(
		working.Given(unit.DryFilm(400e-6), "dry film", unit.InMicrometre, "typed", source.Typed),
		working.Given(unit.ByVolume(0.05), "thinner", unit.InPure, "typed", source.Typed),
		working.Given(unit.SolidsByVolume(0.8), "cured share", unit.InPure, "gel coat", source.CommonPractice))
	require.NoError(t, err)
	texts := f.Step.Texts()
	require.Len(t, texts, 1)
	assert.Equal(t, "400 × (1 + 0.05) ÷ 0.8", texts[0].Numbers)
	assert.Equal(t, "525\u00a0µm", texts[0].Result)
	assert.Equal(t, []working.Source{{Symbol: "DFT", Name: "dry film", Value: "400\u00a0µm"}, {Symbol: "t", Name: "thinner", Value: "0.05"},
		{Symbol: "VS", Name: "cured share", Value: "0.8", Origin: "gel coat (common practice)"}}, texts[0].From)
}

// What was given has no formula: its working is its name, its value, and where it
// comes from. Nothing at all has none.
func TestTheWorkingOfWhatWasGiven(t *testing.T) {
	given := working.Given(unit.ByMass(0.02), "wax solution", unit.InPercent, "flow coat", source.CommonPractice)
	assert.Equal(t, []working.Text{{Name: "wax solution", Result: "2\u00a0%", Source: "flow coat", Mark: "common practice"}}, given.Step.Texts())
	assert.Empty(t, (*working.Step)(nil).Texts())
}

// A step that two figures rest on is listed once, before them.
func TestAStepIsListedOnce(t *testing.T) {
	one := working.Given(unit.DryFilm(400e-6), "dry film", unit.InMicrometre, "", source.Typed)
	none := working.Given(unit.ByVolume(0), "thinner", unit.InPure, "none", source.Exact)
	share := working.Given(unit.SolidsByVolume(0.8), "cured share", unit.InPure, "", source.Typed)
	film, err := wet.Figure(one, none, share)
	require.NoError(t, err)
	sum := working.Sum(working.SumRule("both", unit.InMicrometre), film, film)
	texts := sum.Step.Texts()
	require.Len(t, texts, 2)
	assert.Equal(t, "wet film", texts[0].Name)
	assert.Equal(t, "both", texts[1].Name)
}

// Φ is the standard normal distribution: Φ(1.96) = 0.9750, in any table.
func TestTheNormalDistributionIsRead(t *testing.T) {
	share := working.Rule1[unit.Factor, unit.Share]{Rule: &working.Rule{Formula: "p = Φ(z)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "p", Meaning: "share below", Scale: unit.InPure, Min: 0, Max: 1}, Args: []working.Arg{{Symbol: "z", Meaning: "deviate", Scale: unit.InPure, Min: -8, Max: 8}}},
		Code: func(z unit.Factor) unit.Share { return unit.Share(math.Erfc(-float64(z)/math.Sqrt2) / 2) }}
	workingtest.Check(t, working.List(&share)...)
	p, err := share.Of(1.96)
	require.NoError(t, err)
	assert.InDelta(t, 0.9750, float64(p), 5e-5)
}

// A result out of its declared range is refused like an argument: without that a
// removal of −20 µm would pass as one.
func TestAResultOutsideItsRangeIsRefused(t *testing.T) {
	removal := working.Rule2[unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "r = b − a", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact, Result: working.Arg{Symbol: "r", Meaning: "removal", Scale: unit.InMicrometre, Min: 0, Max: 20000},
		Args: []working.Arg{{Symbol: "b", Meaning: "before", Scale: unit.InMicrometre, Min: 0, Max: 20000}, {Symbol: "a", Meaning: "after", Scale: unit.InMicrometre, Min: 0, Max: 20000}}},
		Code: func(b, a unit.DryFilm) unit.DryFilm { return b - a }}
	none, err := removal.Of(50e-6, 50e-6)
	require.NoError(t, err)
	assert.Zero(t, none)
	_, err = removal.Of(50e-6, 70e-6)
	var outside *working.RangeError
	require.True(t, errors.As(err, &outside))
	assert.Equal(t, "r", outside.Arg.Symbol)
	assert.InDelta(t, -20, outside.Value, 1e-9)
	wide := *working.List(&removal)[0]
	wide.Result.Max = 1e9
	_, err = wide.Compute(50e-6, 51e-6)
	assert.ErrorAs(t, err, &outside, "however far the range reaches up, −1 µm lies below it")
	_, err = removal.Figure(
		working.Given(unit.DryFilm(50e-6), "before", unit.InMicrometre, "typed", source.Typed),
		working.Given(unit.DryFilm(70e-6), "after", unit.InMicrometre, "typed", source.Typed))
	assert.ErrorAs(t, err, &outside)
}

// A rule whose scales don't fit its types, or that misses an argument, isn't listed:
// the page doesn't start with a mass that is read as a length.
func TestARuleThatDoesNotFitItsTypesIsNotListed(t *testing.T) {
	length, mass := working.Arg{Symbol: "a", Scale: unit.InMetre, Max: 1}, working.Arg{Symbol: "m", Scale: unit.InKilogram, Max: 1}
	rule := func(result working.Arg, args ...working.Arg) func() {
		return func() {
			working.List(&working.Rule1[unit.Length, unit.Mass]{Rule: &working.Rule{Formula: "m = a", Result: result, Args: args},
				Code: func(a unit.Length) unit.Mass { return unit.Mass(a) }})
		}
	}
	assert.NotPanics(t, rule(mass, length))
	assert.Panics(t, rule(length, length), "the result")
	assert.Panics(t, rule(mass, mass), "the argument")
	assert.Panics(t, rule(mass, length, length))
	assert.Panics(t, rule(mass))
}
