package air_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
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
	d := day(t, 12, 30, 6, read(21, 60, 10.5*hour))
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
			steep := 1.1 * math.Abs(float64(d.Air(at-0.5*minute)-d.Air(at+0.5*minute))) // beside a reading it can be steep
			assert.InDelta(t, float64(last), float64(now), math.Max(0.1, 2*steep+0.5))
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
			assert.False(t, refused.Value >= refused.Min && refused.Value <= refused.Max, "%s: told outside what it may be", name)
			assert.Less(t, refused.Min, refused.Max, name)
		}
	}
	_, err := makeDay(10, 20, 6, air.Reading{})
	assert.NoError(t, err, "a day needs no reading")
}

// Nothing in the next four hours is colder than what is given, by night as by day,
// for a surface that lies at the air's temperature, above or below it.
func TestTheColdestAhead(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 30 {
		d, at := randomDay(t, random), unit.Time(random.Float64())*unit.Day
		offset, err := air.Measured(celsius(20+8*random.Float64()-4), celsius(20))
		require.NoError(t, err)
		s := air.Under(air.Mid, random.IntN(2) == 0).MeasuredAt(offset, at-hour)
		coldest := math.Inf(1)
		for m := unit.Time(0); m <= 4*hour; m += hour / 60 {
			coldest = min(coldest, float64(d.Air(at+m))+min(0, float64(s.By(d, at+m).Least.Value)))
		}
		got := float64(d.ColdestAhead(s, at))
		assert.LessOrEqual(t, got, coldest+1e-9)
		assert.InDelta(t, coldest, got, 0.2, "the minutes miss the very dawn")
	}
	d := day(t, 10, 30, 6, read(30, 30, 15*hour))
	assert.InDelta(t, 10, inCelsius(d.ColdestAhead(underRoof, 4*hour)), 1e-9, "dawn lies between")
	assert.Less(t, inCelsius(d.ColdestAhead(air.Under(air.White, true), 17*hour)), inCelsius(d.Air(21*hour)), "a clear sky cools a part below the air")
}

// The curve passes through the reading at its hour, by night as by day, whatever
// low and high were typed; in between it neither turns nor leaves its band.
func TestTheCurvePassesThroughTheReading(t *testing.T) {
	random := rand.New(rand.NewPCG(17, 18))
	for range 300 {
		low := -5 + 20*random.Float64()
		r := read(low-5+25*random.Float64(), 50, unit.Time(random.IntN(24*60))*minute)
		d := day(t, low, low+15*random.Float64(), 3+6*random.Float64(), r)
		assert.InDelta(t, inCelsius(r.Temperature.Value), inCelsius(d.Air(r.At)), 1e-9)
	}
	d := day(t, 11, 17, 6, read(14, 60, 9*hour+3*minute))
	last := d.Air(9*hour + 3*minute)
	for at := 9*hour + 4*minute; at <= 15*hour; at += minute {
		assert.GreaterOrEqual(t, d.Air(at), last)
		last = d.Air(at)
	}
	assert.InDelta(t, 17, inCelsius(last), 1e-9)
}

// A reading outside of what was forecast takes its own side of the curve along, and
// leaves the other: a warm noon makes no warmer night, a cold one no colder afternoon.
func TestAReadingBeyondTheForecastMovesItsOwnEndOnly(t *testing.T) {
	// The next turn keeps what was typed on the other side; the one after is the reading's.
	warm := day(t, 12, 24, 6, read(28, 50, 11*hour))
	assert.InDelta(t, 12, inCelsius(warm.Air(6*hour)), 1e-9, "the night stays as cold as it was typed")
	assert.InDelta(t, 28, inCelsius(warm.Air(15*hour)), 1e-9, "it gets no colder until three")
	assert.InDelta(t, 12, inCelsius(warm.Air(30*hour)), 1e-9, "nor is the next night warmer")
	cold := day(t, 12, 24, 6, read(8, 50, 9*hour))
	assert.InDelta(t, 24, inCelsius(cold.Air(15*hour)), 1e-9)
	assert.InDelta(t, 8, inCelsius(cold.Air(6*hour)), 1e-9)
	assert.InDelta(t, 8, inCelsius(cold.Air(30*hour)), 1e-9, "the next night is at least as cold")
}

// 14 °C read at 9:03, low 11 and high 17: the day warms, and nothing ahead is
// colder than what was read.
func TestAReadingInTheMorningIsTheColdestAhead(t *testing.T) {
	d := day(t, 11, 17, 6, read(14, 60, 9*hour+3*minute))
	assert.InDelta(t, 14, inCelsius(d.ColdestAhead(underRoof, 9*hour+3*minute)), 1e-9)
	colder := day(t, 11, 17, 6, read(8, 60, 9*hour))
	assert.InDelta(t, 8, inCelsius(colder.ColdestAhead(underRoof, 9*hour)), 1e-9, "colder than the low that was typed")
}

// Air read at 7:00 and a surface at 17:00: the offset is that of 17:00 by the
// curve, it holds two hours, and then the allowance applies.
func TestASurfaceIsComparedWithTheAirOfItsHour(t *testing.T) {
	d := day(t, 12, 26, 6, read(13, 90, 7*hour))
	at17 := d.Air(17 * hour)
	offset, err := air.Measured(celsius(29), working.Given(at17, "air at 17:00", unit.InCelsius, "curve", source.Assumption))
	require.NoError(t, err)
	assert.InDelta(t, 29-inCelsius(at17), float64(offset.Least.Value), 1e-9)
	s := air.Under(air.White, false).MeasuredAt(offset, 17*hour)
	assert.Equal(t, offset.Least.Value, s.By(d, 18.9*hour).Least.Value)
	assert.Zero(t, s.By(d, 19*hour).Least.Value, "two hours later it is as warm as the air")
	assert.Zero(t, s.By(d, 16*hour).Least.Value)

	card := gelCoat // 15 °C
	card.Margin, card.Cure = 0, 0
	list, err := fit(t, d, s, card).Windows(air.Interval{From: 17 * hour, To: 24 * hour})
	require.NoError(t, err)
	require.Len(t, list, 1)
	card.Least = celsius(22).Value
	list, err = fit(t, d, s, card).Windows(air.Interval{From: 17 * hour, To: 24 * hour})
	require.NoError(t, err)
	// 26 − 14 × (1 − cos(π × (h − 15) ÷ 15)) ÷ 2 = 22 at 15 + 15 × arccos(3/7) ÷ π
	want := max(19, 15+15*math.Acos(3./7)/math.Pi)
	require.Len(t, list, 1)
	assert.InDelta(t, want, float64(list[0].To/hour), 1e-5, "and not as long as the warmth of 17:00 would last")
}

// A part measured warm at 18:00 under a clear sky still loses its warmth at night.
func TestAMeasuredPartKeepsItsNight(t *testing.T) {
	d := day(t, 14, 24, 6, read(22, 60, 18*hour))
	offset, err := air.Measured(celsius(22), celsius(22))
	require.NoError(t, err)
	open := air.Under(air.White, true).MeasuredAt(offset, 18*hour)
	assert.InDelta(t, -5, float64(open.By(d, 18.5*hour).Least.Value), 1e-9, "the sun has set")
	assert.InDelta(t, inCelsius(d.Air(22*hour))-5, inCelsius(d.ColdestAhead(open, 18*hour)), 1e-9)
	roofed := air.Under(air.White, false).MeasuredAt(offset, 18*hour)
	assert.InDelta(t, inCelsius(d.Air(22*hour)), inCelsius(d.ColdestAhead(roofed, 18*hour)), 1e-9)
	cold, err := air.Measured(celsius(12), celsius(22))
	require.NoError(t, err)
	assert.InDelta(t, -10, float64(air.Under(air.White, true).MeasuredAt(cold, 18*hour).By(d, 19*hour).Least.Value), 1e-9, "colder than the allowance it stays")

	// both of its ends, each by its own allowance: the warmer one decides how fast a film gels
	night := air.Under(air.White, true)
	allowed := night.By(d, 19*hour)
	require.Less(t, allowed.Least.Value, allowed.Most.Value)
	for _, off := range []unit.TemperatureDifference{allowed.Least.Value - 3, (allowed.Least.Value + allowed.Most.Value) / 2, allowed.Most.Value + 3} {
		measured, err := air.Measured(celsius(22+float64(off)), celsius(22))
		require.NoError(t, err)
		by := night.MeasuredAt(measured, 18*hour).By(d, 19*hour)
		assert.InDelta(t, math.Min(float64(off), float64(allowed.Least.Value)), float64(by.Least.Value), 1e-9)
		assert.InDelta(t, math.Min(float64(off), float64(allowed.Most.Value)), float64(by.Most.Value), 1e-9)
	}
}

// A coat that takes as long as its window is begun with it; one that takes longer, or a
// time that is none, has no latest start.
func TestTheLatestStartLiesInItsWindow(t *testing.T) {
	w := air.Window{Interval: air.Interval{From: 9 * hour, To: 12 * hour}}
	for laying, fits := range map[unit.Time]bool{0: true, hour: true, 3 * hour: true, 3*hour + minute: false, -minute: false, unit.Time(math.NaN()): false} {
		at, ok := w.LatestStart(laying)
		assert.Equal(t, fits, ok, "%v h", float64(laying/hour))
		if fits {
			assert.InDelta(t, float64(12*hour-laying), float64(at), 1e-9)
		}
	}
}
