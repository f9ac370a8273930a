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

// gelCoat is the polyester gel coat of the default cards, with four hours of cure.
var gelCoat = air.Limits{
	Least: unit.Of[unit.Temperature](15, unit.InCelsius), Most: unit.Of[unit.Temperature](32, unit.InCelsius),
	Driest: 0.40, Dampest: 0.80, Margin: air.DewMargin.Value, Cure: 4 * hour,
}

func fit(t testing.TB, d air.Day, s air.Surface, l air.Limits) air.Fit {
	f, err := air.NewFit(d, s, l)
	require.NoError(t, err)
	return f
}

var underRoof = air.Under(air.White, false)

func conditions(list []air.Finding) []air.Condition {
	var names []air.Condition
	for _, f := range list {
		names = append(names, f.Condition)
	}
	return names
}

func TestEachReasonIsGiven(t *testing.T) {
	for _, try := range []struct {
		air, rh, surface float64
		want             []air.Condition
	}{
		{22, 60, 22, nil},
		{14, 60, 14, []air.Condition{air.TooCold}},
		{30, 50, 45, []air.Condition{air.TooHot}},
		{25, 30, 25, []air.Condition{air.TooDry}},
		{22, 82, 24, []air.Condition{air.TooDamp}},
		{22, 78, 20, []air.Condition{air.TooNearDew}},
		{10, 95, 9, []air.Condition{air.TooCold, air.TooDamp, air.TooNearDew}},
		{15, 40, 15, nil}, // at its limits a card still fits
	} {
		now, err := here(read(try.air, try.rh, 9*hour), celsius(try.surface))
		require.NoError(t, err)
		found := gelCoat.Findings(now)
		assert.Equal(t, try.want, conditions(found), "%+v", try)
		for _, f := range found {
			assert.Equal(t, 9*hour, f.At)
			assert.NotNil(t, f.Condition.Scale())
		}
	}
}

func TestAFindingNamesItsNumbers(t *testing.T) {
	now, err := here(read(20, 80, 9*hour), celsius(18))
	require.NoError(t, err)
	found := gelCoat.Findings(now)
	require.Equal(t, []air.Condition{air.TooNearDew}, conditions(found))
	assert.InDelta(t, 18-16.45, found[0].Value, 0.05, "dew point of psychrolib")
	assert.Equal(t, 3.0, found[0].Limit)
}

func TestUnknownConditionsNeverPass(t *testing.T) {
	nothing := unit.Temperature(math.NaN())
	found := gelCoat.Findings(air.Conditions{Coldest: nothing, Hottest: nothing, Dew: nothing, Humidity: unit.Share(math.NaN())})
	assert.Len(t, found, 5)
}

// From 10 °C at 6:00 to 30 °C at 15:00 the curve passes 20 °C at 10:30 and, halfway to the next dawn, at 22:30.
func TestThroughTheCure(t *testing.T) {
	card := gelCoat
	card.Least = celsius(20).Value
	f := fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, card)
	assert.Empty(t, f.Now(18*hour))
	assert.Empty(t, f.Through(18*hour))
	found := f.Through(19 * hour)
	require.Equal(t, []air.Condition{air.TooCold}, conditions(found))
	assert.InDelta(t, 22.5, float64(found[0].At/hour), 1e-6)
	assert.InDelta(t, inCelsius(f.Conditions(23*hour).Coldest), unit.InCelsius.From(found[0].Value), 1e-9, "the worst of the cure")
	found = f.Through(23 * hour)
	assert.Equal(t, 23*hour, found[0].At, "missed at once")
	found = f.Through(9 * hour) // too cold until 10:30, warm enough through the rest of the cure
	require.NotEmpty(t, found)
	require.Equal(t, air.TooCold, found[0].Condition, "a cold beginning isn't forgiven for a warm end")
	assert.Equal(t, 9*hour, found[0].At)
	assert.InDelta(t, inCelsius(f.Conditions(9*hour).Coldest), unit.InCelsius.From(found[0].Value), 1e-9)
	card.Cure = 0
	assert.Empty(t, fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, card).Through(23*hour), "no cure, nothing to miss")
}

func TestTheEveningCountsForTheDewPoint(t *testing.T) {
	damp := day(t, 16, 28, 6, read(28, 50, 15*hour)) // dew point 16.7 °C
	f := fit(t, damp, underRoof, gelCoat)
	assert.Empty(t, f.Now(18*hour))
	long := gelCoat
	long.Cure = 8 * hour
	assert.Equal(t, []air.Condition{air.TooNearDew}, conditions(fit(t, damp, underRoof, long).Through(18*hour)))
	open := fit(t, damp, air.Under(air.White, true), gelCoat)
	assert.Contains(t, conditions(open.Through(17*hour)), air.TooNearDew, "a clear sky takes the margin sooner")
}

func TestLimitsThatCannotBeMetAreRefused(t *testing.T) {
	for name, spoil := range map[string]func(*air.Limits){
		"least over most":   func(l *air.Limits) { l.Least = l.Most + 1 },
		"no most":           func(l *air.Limits) { l.Most = 0 },
		"floor over roof":   func(l *air.Limits) { l.Driest = 0.9 },
		"over 100 %":        func(l *air.Limits) { l.Dampest = 1.1 },
		"negative margin":   func(l *air.Limits) { l.Margin = -14 },
		"a month of cure":   func(l *air.Limits) { l.Cure = 30 * unit.Day },
		"not a number":      func(l *air.Limits) { l.Least = unit.Temperature(math.NaN()) },
		"margin of no size": func(l *air.Limits) { l.Margin = unit.TemperatureDifference(math.NaN()) },
	} {
		card := gelCoat
		spoil(&card)
		_, err := air.NewFit(air.Day{}, underRoof, card)
		var refused *air.InputError
		assert.ErrorAs(t, err, &refused, name)
	}
}

// here is the conditions of what was measured at the work.
func here(r air.Reading, surface working.Figure[unit.Temperature]) (air.Conditions, error) {
	dew, err := r.DewPoint()
	return air.Conditions{At: r.At, Coldest: surface.Value, Hottest: surface.Value, Dew: dew.Value, Humidity: r.Humidity.Value}, err
}

// A cure that goes through a night which is too cold is told of that night, however
// warm the next day is: it begins warm enough and ends so.
func TestAColdNightWithinACureIsTold(t *testing.T) {
	long := gelCoat
	long.Least, long.Cure = celsius(20).Value, 26*hour
	f := fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, long)
	require.Empty(t, f.Now(13*hour))
	require.Empty(t, f.Now(39*hour))
	found := f.Through(13 * hour)
	require.Equal(t, air.TooCold, conditions(found)[0])
	assert.InDelta(t, 22.5, float64(found[0].At/hour), 1e-6)
}
