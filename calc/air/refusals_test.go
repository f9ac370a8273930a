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

// Each figure in turn is one that can't be: nothing comes of it but its error, however many sums
// stand between. A share of the explosive limit, or a dew point, that came of half of them would pass.
func TestNothingComesOfAFigureThatCantBe(t *testing.T) {
	grams := func(n float64) working.Figure[unit.Mass] { return given(unit.Mass(n/1000), unit.InGram) }
	space := func(n float64) working.Figure[unit.Volume] { return given(unit.Volume(n), unit.InCubicMetre) }
	rate := func(n float64) working.Figure[unit.MassFlow] {
		return given(unit.MassFlow(n/3.6e6), unit.InGramPerHour)
	}
	factor := func(n float64) working.Figure[unit.Factor] { return given(unit.Factor(n), unit.InPure) }
	nan := math.NaN()
	for name, c := range map[string]struct {
		good func() (float64, error)
		bad  []func() (float64, error)
	}{
		"closed space": {
			func() (float64, error) {
				f, err := air.InSpace(grams(50), space(3), celsius(20))
				return float64(f.Value), err
			},
			[]func() (float64, error){
				func() (float64, error) {
					f, err := air.InSpace(grams(nan), space(3), celsius(20))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.InSpace(grams(-1), space(3), celsius(20))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.InSpace(grams(50), space(0), celsius(20))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.InSpace(grams(50), space(3), celsius(nan))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.InSpace(grams(50), space(3), celsius(200))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.InSpace(grams(50), space(3), celsius(-50))
					return float64(f.Value), err
				},
			},
		},
		"fresh air": {
			func() (float64, error) {
				f, err := air.StyreneAir(rate(100), percent(0.005), celsius(20), factor(3))
				return float64(f.Value), err
			},
			[]func() (float64, error){
				func() (float64, error) {
					f, err := air.StyreneAir(rate(nan), percent(0.005), celsius(20), factor(3))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.StyreneAir(rate(100), percent(nan), celsius(20), factor(3))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.StyreneAir(rate(100), percent(0.005), celsius(nan), factor(3))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.StyreneAir(rate(100), percent(0.005), celsius(20), factor(0.5))
					return float64(f.Value), err
				},
			},
		},
		"emission": {
			func() (float64, error) {
				f, err := air.Emission(given(content(0.35), unit.InPercent), true)
				return float64(f.Value), err
			},
			[]func() (float64, error){
				func() (float64, error) {
					f, err := air.Emission(given(content(0.7), unit.InPercent), true)
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.Emission(given(content(nan), unit.InPercent), false)
					return float64(f.Value), err
				},
			},
		},
		"dew point": {
			func() (float64, error) {
				f, err := air.DewPoint(celsius(20), percent(50))
				return float64(f.Value), err
			},
			[]func() (float64, error){
				func() (float64, error) {
					f, err := air.DewPoint(celsius(nan), percent(50))
					return float64(f.Value), err
				},
				func() (float64, error) { f, err := air.DewPoint(celsius(20), percent(0)); return float64(f.Value), err },
				func() (float64, error) {
					f, err := air.DewPoint(celsius(20), percent(101))
					return float64(f.Value), err
				},
				func() (float64, error) {
					f, err := air.DewPoint(celsius(-60), percent(50))
					return float64(f.Value), err
				},
			},
		},
	} {
		v, err := c.good()
		require.NoError(t, err, name)
		assert.Positive(t, v, name)
		for i, bad := range c.bad {
			v, err := bad()
			assert.Error(t, err, "%s, %d", name, i)
			assert.Zero(t, v, "%s, %d: a figure beside its error", name, i)
		}
	}
}

// A day isn't made of a reading that can't be, and none of its hours is told beyond it.
func TestNoDayOfAReadingThatCantBe(t *testing.T) {
	_, err := makeDay(10, 30, 6, read(20, 50, 12*hour))
	require.NoError(t, err)
	for name, r := range map[string]air.Reading{
		"far too warm": read(80, 50, 12*hour), "no number": read(math.NaN(), 50, 12*hour), "before the day": read(20, 50, -hour), "after it": read(20, 50, 25*hour),
		"damper than wet": read(20, 130, 12*hour),
	} {
		_, err := makeDay(10, 30, 6, r)
		assert.Error(t, err, name)
	}
	d := day(t, 10, 30, 6, read(20, 50, 12*hour))
	for at, isTold := range map[unit.Time]bool{-1: false, 0: true, 48 * hour: true, 48*hour + 1: false} {
		_, err := d.Weather(at)
		assert.Equal(t, isTold, err == nil, at)
	}
	for _, asked := range []air.Interval{{From: 5 * hour, To: 5 * hour}, {From: 6 * hour, To: 5 * hour}, {From: -hour, To: 5 * hour}, {From: 0, To: 49 * hour}} {
		_, err := air.SurfaceWithin(d, underRoof, celsius(15).Value, celsius(25).Value, asked)
		assert.Error(t, err, asked)
	}
	_, err = air.SurfaceWithin(d, underRoof, celsius(25).Value, celsius(15).Value, wholeDay)
	assert.Error(t, err, "no temperature is over 25 and under 15 °C")
}

// What nobody measured holds at no hour, not in the first hours of the day either. By day a measured part
// is as warm as it was measured, however warm others get; it holds until its hours are over.
func TestWhatIsMeasuredHoldsForItsHours(t *testing.T) {
	d := day(t, 10, 30, 6, read(20, 50, 12*hour))
	allowed := air.Under(air.White, true)
	for at := unit.Time(0); at < 24*hour; at += hour / 2 {
		assert.False(t, allowed.IsMeasured(at))
		want := allowed.Night
		if at >= 6*hour && at < 18*hour {
			want = allowed.Day
		}
		assert.Equal(t, want, allowed.By(d, at), at/hour)
	}
	hot, err := air.Measured(celsius(80), celsius(25))
	require.NoError(t, err)
	require.Greater(t, hot.Most.Value, allowed.Day.Most.Value)
	measured := allowed.MeasuredAt(hot, 10*hour)
	for at, holds := range map[unit.Time]bool{10*hour - 1: false, 10 * hour: true, 10*hour + air.HoldsFor - 1: true, 10*hour + air.HoldsFor: false} {
		assert.Equal(t, holds, measured.IsMeasured(at), at)
	}
	assert.Equal(t, hot, measured.By(d, 11*hour))
}

// A window that ends with the hours that were asked for isn't closed by what comes after them.
func TestAWindowThatEndsWithWhatWasAskedHasNoClosing(t *testing.T) {
	f := fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, air.Limits{Least: celsius(15).Value, Most: celsius(35).Value, Dampest: 1, Cure: 4 * hour})
	list, err := f.Windows(wholeDay)
	require.NoError(t, err)
	require.Len(t, list, 1)
	require.NotEmpty(t, list[0].Closing)
	short, err := f.Windows(air.Interval{From: 0, To: list[0].To})
	require.NoError(t, err)
	require.Len(t, short, 1)
	assert.InDelta(t, float64(list[0].To), float64(short[0].To), 0.01)
	until, err := f.Windows(air.Interval{From: 0, To: list[0].To - hour})
	require.NoError(t, err)
	require.Len(t, until, 1)
	assert.Empty(t, until[0].Closing)
}

// As much as an open door lets in is what it lets in.
func TestADoorLetsInWhatItLetsIn(t *testing.T) {
	assert.False(t, air.ExceedsDoorAir(air.DoorAir.Value))
	assert.True(t, air.ExceedsDoorAir(air.DoorAir.Value*1.0001))
	assert.True(t, air.ExceedsDoorAir(unit.AirFlow(math.NaN())))
}
