package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func TestDewPointRisesWithBothAndStaysUnderTheAir(t *testing.T) {
	for c := -20.0; c <= 60; c += 2.5 {
		last := unit.Temperature(0)
		for rh := 10.0; rh <= 100; rh += 5 {
			td, err := air.DewPoint(celsius(c), percent(rh))
			require.NoError(t, err)
			assert.Greater(t, td.Value, last)
			assert.LessOrEqual(t, float64(td.Value), float64(celsius(c).Value)+1e-9)
			back, err := air.HumidityAt.Of(td.Value, celsius(c).Value)
			require.NoError(t, err)
			assert.InDelta(t, rh/100, float64(back), 1e-9, "round trip")
			last = td.Value
		}
		assert.InDelta(t, float64(celsius(c).Value), float64(last), 1e-9, "saturated air")
	}
}

func TestCooledAirStaysSaturated(t *testing.T) {
	rh, err := air.HumidityAt.Of(celsius(20).Value, celsius(12).Value)
	require.NoError(t, err)
	assert.Equal(t, unit.Share(1), rh)
}

func TestADewPointIsNeverShownTooLow(t *testing.T) {
	for c := -5.0; c < 30; c += 0.0317 {
		for _, scale := range []unit.Scale{unit.InCelsius, unit.InFahrenheit} {
			exact := celsius(c).Value
			shown := air.RoundUp(exact, scale)
			up := scale.From(float64(shown)) - scale.From(float64(exact))
			assert.True(t, up > -1e-7 && up < 0.1, "%v %s up by %v", c, scale.Symbol(), up)
		}
	}
	assert.Equal(t, "12.1\u00a0°C", unit.Write(float64(air.RoundUp(celsius(12.01).Value, unit.InCelsius)), unit.InCelsius, 3))
	assert.Equal(t, "9.3\u00a0°C", unit.Write(float64(air.RoundUp(celsius(9.3).Value, unit.InCelsius)), unit.InCelsius, 3))
	assert.Equal(t, "57.8\u00a0°F", unit.Write(float64(air.RoundUp(unit.Of[unit.Temperature](57.74, unit.InFahrenheit), unit.InFahrenheit)), unit.InFahrenheit, 3))
}

func TestDewPointRefusesWhatItDoesNotCover(t *testing.T) {
	for name, give := range map[string][2]float64{
		"too hot": {61, 50}, "too cold": {-46, 50}, "over saturated": {20, 101}, "no water": {20, 0}, "under the formula's end": {-20, 1},
		"not a number": {20, math.NaN()},
	} {
		_, err := air.DewPoint(celsius(give[0]), percent(give[1]))
		var outside *working.RangeError
		assert.ErrorAs(t, err, &outside, name)
	}
}
