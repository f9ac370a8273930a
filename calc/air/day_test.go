package air_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/unit"
)

const (
	hour   = unit.Hour
	minute = unit.Minute
)

func read(c, rh float64, at unit.Time) air.Reading {
	return air.Reading{Temperature: celsius(c), Humidity: percent(rh), At: at}
}

func makeDay(low, high, sunrise float64, r air.Reading) (air.Day, error) {
	return air.NewDay(celsius(low), celsius(high), given(unit.Time(sunrise)*hour, unit.InHour), r)
}

func day(t testing.TB, low, high, sunrise float64, r air.Reading) air.Day {
	d, err := makeDay(low, high, sunrise, r)
	require.NoError(t, err)
	return d
}

// randomDay draws a plausible day.
func randomDay(t testing.TB, random *rand.Rand) air.Day {
	low := -5 + 30*random.Float64()
	high := low + 15*random.Float64()
	return day(t, low, high, 3+6*random.Float64(), read(low+(high-low)*random.Float64(), 30+70*random.Float64(), unit.Time(24*random.Float64())*hour))
}

func inCelsius(t unit.Temperature) float64 { return unit.InCelsius.From(float64(t)) }

func TestTheCurveHitsItsLowAndItsHigh(t *testing.T) {
	d := day(t, 12, 30, 6, read(22, 60, 10*hour))
	for h, want := range map[float64]float64{6: 12, 15: 30, 10.5: 21, 22.5: 21, 30: 12, 39: 30} {
		assert.InDelta(t, want, inCelsius(d.Air(unit.Time(h)*hour)), 1e-9, "at %v h", h)
	}
	assert.InDelta(t, inCelsius(d.Air(24*hour)), inCelsius(d.Air(0)), 1e-9, "the next day starts where this one ends")
	flat := day(t, 18, 18, 0, read(18, 60, 0))
	assert.Equal(t, celsius(18).Value, flat.Air(7*hour))
}

func TestTheCurveIsContinuousAndStaysInItsBand(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 50 {
		d := randomDay(t, random)
		last := d.Air(-minute)
		for at := unit.Time(0); at < 48*hour; at += minute {
			now := d.Air(at)
			assert.InDelta(t, float64(last), float64(now), 0.1, "15 °C over 6 h move at most 0.07 °C a minute")
			assert.LessOrEqual(t, d.Dew(at), now)
			rh := d.Humidity(at)
			assert.True(t, rh > 0 && rh <= 1)
			last = now
		}
	}
}

// The hour of a humidity matters: 60 % read at 12, 22 and 30 °C.
func TestTheDewPointIsThatOfTheReading(t *testing.T) {
	for c, want := range map[float64]float64{12: 4.48, 22: 13.9, 30: 21.4} {
		d := day(t, 12, 30, 6, read(c, 60, 15*hour))
		assert.InDelta(t, math.Min(want, 30), inCelsius(d.Dew(15*hour)), 0.05)
		assert.InDelta(t, math.Min(want, 12), inCelsius(d.Dew(6*hour)), 0.05, "capped at the air at dawn")
	}
	foggy := day(t, 12, 30, 6, read(30, 60, 15*hour))
	assert.Equal(t, unit.Share(1), foggy.Humidity(6*hour))
}

func TestReadingOff(t *testing.T) {
	d := day(t, 12, 30, 6, read(26, 60, 10*hour+hour/2))
	assert.InDelta(t, 5, float64(d.ReadingOff()), 1e-9)
}

func TestCurvesAndTheirFiguresAgree(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 20 {
		d := randomDay(t, random)
		for at := unit.Time(0); at <= 48*hour; at += 0.7 * hour {
			w, err := d.Weather(at)
			require.NoError(t, err)
			assert.Equal(t, d.Air(at), w.Air.Value)
			assert.Equal(t, d.Dew(at), w.Dew.Value)
			assert.Equal(t, d.Humidity(at), w.Humidity.Value)
			assert.NotEmpty(t, w.Humidity.Step.Texts())
		}
	}
	_, err := randomDay(t, random).Weather(49 * hour)
	assert.Error(t, err)
}

func TestADayRefusesWhatCannotBe(t *testing.T) {
	good := read(20, 60, 10*hour)
	for name, try := range map[string]struct {
		low, high, sunrise float64
		reading            air.Reading
		want               air.Input
	}{
		"low over high":     {25, 20, 6, good, air.DayHigh},
		"too cold":          {-21, 20, 6, good, air.DayLow},
		"too hot":           {20, 61, 6, good, air.DayHigh},
		"sunrise at 15:00":  {10, 20, 15, good, air.Sunrise},
		"sunrise before 0":  {10, 20, -1, good, air.Sunrise},
		"low not a number":  {math.NaN(), 20, 6, good, air.DayLow},
		"no humidity":       {10, 20, 6, read(20, 0, 0), air.ReadHumidity},
		"over 100 %":        {10, 20, 6, read(20, 101, 0), air.ReadHumidity},
		"reading too hot":   {10, 20, 6, read(61, 60, 0), air.ReadTemperature},
		"reading after day": {10, 20, 6, read(20, 60, 25*hour), air.ReadHour},
	} {
		_, err := makeDay(try.low, try.high, try.sunrise, try.reading)
		var refused *air.InputError
		if assert.ErrorAs(t, err, &refused, name) {
			assert.Equal(t, try.want, refused.Input, name)
		}
	}
}

// Nothing in the next four hours is colder than what is told, by night as by day,
// for a surface that lies at the air's temperature, above or below it.
func TestTheColdestAhead(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 30 {
		d, at := randomDay(t, random), unit.Time(random.Float64())*unit.Day
		offset, err := air.Measured(celsius(20+8*random.Float64()-4), celsius(20))
		require.NoError(t, err)
		s := air.Held(offset)
		colder := min(0, float64(offset.Least.Value))
		coldest := math.Inf(1)
		for m := unit.Time(0); m <= 4*hour; m += hour / 60 {
			coldest = min(coldest, float64(d.Air(at+m))+colder)
		}
		got := float64(d.ColdestAhead(s, at))
		assert.LessOrEqual(t, got, coldest+1e-9)
		assert.InDelta(t, coldest, got, 0.01, "the minutes miss the very dawn")
	}
	d := day(t, 10, 30, 6, read(30, 30, 15*hour))
	assert.InDelta(t, 10, inCelsius(d.ColdestAhead(air.Surface{}, 4*hour)), 1e-9, "dawn lies between")
	assert.Less(t, inCelsius(d.ColdestAhead(air.InTheOpen(air.White), 17*hour)), inCelsius(d.Air(21*hour)), "a clear sky cools a part below the air")
}
