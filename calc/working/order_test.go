package working_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// A rule of four different quantities takes them in the order of its letters: as figures, as numbers, in its working and in the
// check of its scales.
func TestFourArgumentsKeepTheirOrder(t *testing.T) {
	scales := []unit.Scale{unit.InMetre, unit.InKilogram, unit.InHour, unit.InPure}
	rule := func(order [4]int, result unit.Scale) *working.Rule4[unit.Length, unit.Mass, unit.Time, unit.Factor, unit.Area] {
		r := &working.Rule{Formula: "R = a + 10 × b + 100 × c + 1000 × d", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact, Result: working.Arg{Symbol: "R", Meaning: "result", Scale: result, Max: 1e9}}
		for i, letter := range []string{"a", "b", "c", "d"} {
			r.Args = append(r.Args, working.Arg{Symbol: letter, Meaning: letter, Scale: scales[order[i]], Max: 1e6})
		}
		return &working.Rule4[unit.Length, unit.Mass, unit.Time, unit.Factor, unit.Area]{Rule: r, Code: func(a unit.Length, b unit.Mass, c unit.Time, d unit.Factor) unit.Area {
			return unit.Area(float64(a) + 10*float64(b) + 100*float64(c) + 1000*float64(d))
		}}
	}
	good := rule([4]int{0, 1, 2, 3}, unit.InSquareMetre)
	assert.NotPanics(t, func() { working.List(good) })
	for _, swapped := range [][4]int{{1, 0, 2, 3}, {0, 2, 1, 3}, {0, 1, 3, 2}} {
		assert.Panics(t, func() { working.List(rule(swapped, unit.InSquareMetre)) }, "%v", swapped)
	}
	assert.Panics(t, func() { working.List(rule([4]int{0, 1, 2, 3}, unit.InPure)) }, "the result")
	a, b := working.Given(unit.Length(1), "a", unit.InMetre, "", source.Typed), working.Given(unit.Mass(2), "b", unit.InKilogram, "", source.Typed)
	c, d := working.Given(unit.Time(3), "c", unit.InSecond, "", source.Typed), working.Given(unit.Factor(4), "d", unit.InPure, "", source.Typed)
	f, err := good.Figure(a, b, c, d)
	require.NoError(t, err)
	assert.InDelta(t, 4321, float64(f.Value), 1e-9)
	assert.Equal(t, []*working.Step{a.Step, b.Step, c.Step, d.Step}, f.Step.From)
	got, err := good.Of(1, 2, 3, 4)
	require.NoError(t, err)
	assert.InDelta(t, 4321, float64(got), 1e-9)
	assert.InDelta(t, 4321, good.Eval(1, 2, 3, 4), 1e-9)

	sum := working.Sum(working.SumRule("both", unit.InMetre), a, working.Given(unit.Length(5), "e", unit.InMetre, "", source.Typed))
	assert.InDelta(t, 6, float64(sum.Value), 1e-12)
	assert.Len(t, sum.Step.From, 2)
}

// A spoilt rule gives something else, until it is fixed.
func TestASpoiltRuleGivesSomethingElse(t *testing.T) {
	r := working.List(&wet)[0]
	right, err := r.Compute(400e-6, 0.05, 0.8)
	require.NoError(t, err)
	fix := r.Spoil()
	wrong := r.Eval(400e-6, 0.05, 0.8)
	fix()
	again, err := r.Compute(400e-6, 0.05, 0.8)
	require.NoError(t, err)
	assert.NotEqual(t, right, wrong)
	assert.Equal(t, right, again)
}
