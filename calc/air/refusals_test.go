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
// stand between, and the error names that figure, not what came of it. A share of the explosive limit, or a
// dew point, that came of half of them would pass.
func TestNothingComesOfAFigureThatCantBe(t *testing.T) {
	type result struct {
		v   float64
		err error
	}
	space := func(g, m3, c float64) result {
		f, err := air.InSpace(given(unit.Mass(g/1000), unit.InGram), given(unit.Volume(m3), unit.InCubicMetre), celsius(c))
		return result{float64(f.Value), err}
	}
	fresh := func(g, ppm, c, k float64) result {
		f, err := air.StyreneAir(given(unit.MassFlow(g/3.6e6), unit.InGramPerHour), percent(ppm/1e4), celsius(c), given(unit.Factor(k), unit.InPure))
		return result{float64(f.Value), err}
	}
	emission := func(h float64, sprayed bool) result {
		f, err := air.Emission(given(content(h), unit.InPercent), sprayed)
		return result{float64(f.Value), err}
	}
	dew := func(c, rh float64) result {
		f, err := air.DewPoint(celsius(c), percent(rh))
		return result{float64(f.Value), err}
	}
	nan := math.NaN()
	for name, good := range map[string]result{"closed space": space(50, 3, 20), "fresh air": fresh(100, 50, 20, 3), "emission": emission(0.35, true), "dew point": dew(20, 50)} {
		require.NoError(t, good.err, name)
		assert.Positive(t, good.v, name)
	}
	for meaning, list := range map[string][]result{
		"vapour given off":                     {space(nan, 3, 20), space(-1, 3, 20)},
		"volume of the space":                  {space(50, 0, 20), space(50, nan, 20)},
		"air temperature":                      {space(50, 3, nan), space(50, 3, 200), space(50, 3, -50), fresh(100, 50, nan, 3), fresh(100, 50, 61, 3), dew(nan, 50), dew(-60, 50)},
		"vapour into the air":                  {fresh(nan, 50, 20, 3), fresh(-1, 50, 20, 3)},
		"share of the air, by volume":          {fresh(100, nan, 20, 3), fresh(100, 0, 20, 3)},
		"factor for poor mixing":               {fresh(100, 50, 20, 0.5), fresh(100, 50, 20, nan)},
		"styrene in the product as it goes on": {emission(0.7, true), emission(nan, false), emission(0.005, false)},
		"relative humidity":                    {dew(20, 101), dew(20, nan)},
		"vapour pressure":                      {dew(20, 0)},
	} {
		for i, bad := range list {
			assert.Zero(t, bad.v, "%s, %d: a figure beside its error", meaning, i)
			var refused *working.RangeError
			if assert.ErrorAs(t, bad.err, &refused, "%s, %d", meaning, i) {
				assert.Equal(t, meaning, refused.Arg.Meaning, i)
			}
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

// The temperature and the hour of a reading are held to what they may be with a humidity and without one,
// of the day and of the reading's own dew point: −20 to 60 °C from one midnight to the next, the ends too.
func TestAReadingIsHeldToItsRangeBothWays(t *testing.T) {
	for _, c := range []struct {
		temperature float64
		at          unit.Time
		want        any // the input that is refused
	}{
		{-20, hour, nil}, {-20.1, hour, air.ReadTemperature}, {60, hour, nil}, {60.1, hour, air.ReadTemperature}, {math.NaN(), hour, air.ReadTemperature},
		{20, 0, nil}, {20, -1, air.ReadHour}, {20, 24 * hour, nil}, {20, 24*hour + 1, air.ReadHour}, {20, unit.Time(math.NaN()), air.ReadHour},
	} {
		damp := read(c.temperature, 50, c.at)
		alone := air.Reading{Temperature: damp.Temperature, At: c.at}
		_, ofDamp := makeDay(10, 30, 6, damp)
		_, ofAlone := makeDay(10, 30, 6, alone)
		_, ofDew := damp.DewPoint()
		for name, err := range map[string]error{"a day": ofDamp, "a day without a humidity": ofAlone, "a dew point": ofDew} {
			var refused *air.InputError
			if c.want == nil {
				assert.NoError(t, err, "%s of %v at %v", name, c.temperature, c.at)
			} else if assert.ErrorAs(t, err, &refused, "%s of %v at %v", name, c.temperature, c.at) {
				assert.Equal(t, c.want, refused.Input, name)
			}
		}
	}
}

// Each emission factor by itself covers contents of 1 to 60 % by mass, its ends too.
func TestTheContentsThatEmissionFactorsCover(t *testing.T) {
	for h, holds := range map[float64]bool{0.0099: false, 0.01: true, 0.6: true, 0.601: false} {
		_, boat := air.BoatEmission.Of(content(h))
		_, sprayed := air.SprayedEmission.Of(content(h))
		_, other := air.OtherEmission.Of(content(h))
		assert.Equal(t, []bool{holds, holds, holds}, []bool{boat == nil, sprayed == nil, other == nil}, h)
	}
}

// How far a reading is off is told against the low at sunrise and the high at 15:00 as they were typed, although the curve follows the
// reading; half-way between the two, against their mean. (Exact.)
func TestAReadingIsOffWhatWasTyped(t *testing.T) {
	for _, c := range []struct {
		temperature float64
		at          unit.Time
		off         float64
	}{{8, 6 * hour, -2}, {13, 6 * hour, 3}, {33, 15 * hour, 3}, {26, 15 * hour, -4}, {25, 10*hour + hour/2, 5}, {20, 10*hour + hour/2, 0}, {23, 22*hour + hour/2, 3}} {
		assert.InDelta(t, c.off, float64(day(t, 10, 30, 6, read(c.temperature, 50, c.at)).ReadingOff()), 1e-9, "%v at %v", c.temperature, c.at/hour)
	}
}

// A reading taken within seconds of the day's low or high takes its place: the hours beside it have their
// figures, as the curve has.
func TestAReadingWithinSecondsOfATurn(t *testing.T) {
	for _, turn := range []unit.Time{6 * hour, 15 * hour} {
		for _, off := range []unit.Time{-5, -1, -1e-9, 0, 1e-9, 1, 5} {
			d := day(t, 10, 30, 6, read(20, 50, turn+off))
			for _, at := range []unit.Time{turn - 20, turn + off, turn + off/2, turn, turn + 20} {
				w, err := d.Weather(at)
				require.NoError(t, err, "read %v s from the turn, %v s from it", off, at-turn)
				assert.InDelta(t, float64(celsius(20).Value), float64(w.Air.Value), 1e-3)
				assert.InDelta(t, float64(d.Air(at)), float64(w.Air.Value), 1e-9)
			}
		}
	}
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
	always := fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, air.Limits{Least: celsius(5).Value, Most: celsius(29).Value, Dampest: 1})
	untilHot, err := always.Windows(air.Interval{From: 0, To: 15 * hour})
	require.NoError(t, err)
	require.Len(t, untilHot, 1)
	require.NotEmpty(t, untilHot[0].Closing)
	hot, err := always.Windows(air.Interval{From: 0, To: untilHot[0].To - unit.Second/2})
	require.NoError(t, err)
	require.Len(t, hot, 1)
	assert.Empty(t, hot[0].Closing, "it is too hot a moment after what was asked")
}

// As much as an open door lets in is what it lets in.
func TestADoorLetsInWhatItLetsIn(t *testing.T) {
	assert.False(t, air.ExceedsDoorAir(air.DoorAir.Value))
	assert.True(t, air.ExceedsDoorAir(air.DoorAir.Value*1.0001))
	assert.True(t, air.ExceedsDoorAir(unit.AirFlow(math.NaN())))
}
