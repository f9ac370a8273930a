package air_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/source"
)

func TestAMeasuredOffsetHasNoBand(t *testing.T) {
	o, err := air.Measured(celsius(43), celsius(31))
	require.NoError(t, err)
	assert.InDelta(t, 12, float64(o.Least.Value), 1e-9)
	assert.Equal(t, o.Least, o.Most)
	_, err = air.Measured(celsius(143), celsius(31))
	assert.Error(t, err)
}

// Readings of common practice: a white deck at 31 °C, a dark hull and a grey
// deck at 21 °C, a dark deck at 31 °C.
func TestAllowancesHoldWhatWasRead(t *testing.T) {
	for _, seen := range []struct {
		colour       air.Colour
		air, surface float64
	}{{air.White, 31, 43}, {air.Dark, 21, 27}, {air.Mid, 21, 46}, {air.Dark, 31, 54}} {
		o := air.Allowance(seen.colour, air.Sun)
		over := seen.surface - seen.air
		assert.True(t, float64(o.Least.Value) <= over && over <= float64(o.Most.Value), "%v", seen)
		assert.Equal(t, source.CommonPractice, o.Most.Step.Mark)
	}
}

func TestAllowancesAreOrdered(t *testing.T) {
	for c := air.White; c <= air.Dark; c++ {
		for p := air.Shade; p <= air.NightSky; p++ {
			o := air.Allowance(c, p)
			assert.LessOrEqual(t, o.Least.Value, o.Most.Value)
			assert.Contains(t, o.Least.Step.Origin, "not measured")
			if c > air.White {
				assert.GreaterOrEqual(t, o.Most.Value, air.Allowance(c-1, p).Most.Value, "no cooler than a lighter one")
			}
		}
	}
	assert.Negative(t, float64(air.Allowance(air.Dark, air.NightSky).Least.Value))
}

func TestSurfaceFigures(t *testing.T) {
	surface, err := air.SurfaceTemperature.Figure(celsius(20), air.Allowance(air.White, air.NightSky).Least)
	require.NoError(t, err)
	over, err := air.OverDew.Figure(surface, celsius(12))
	require.NoError(t, err)
	assert.InDelta(t, 3, float64(over.Value), 1e-9)
	assert.Len(t, over.Step.Texts(), 2)
}
