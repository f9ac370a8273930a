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

var wholeDay = air.Interval{From: 0, To: 24 * hour}

func TestAWindowEndsWhereTheCureWouldMiss(t *testing.T) {
	card := gelCoat
	card.Least = celsius(20).Value
	f := fit(t, day(t, 10, 30, 6, read(30, 40, 15*hour)), underRoof, card)
	list, err := f.Windows(wholeDay)
	require.NoError(t, err)
	require.Len(t, list, 1)
	w := list[0]
	assert.InDelta(t, 10.5, float64(w.From/hour), 1e-6)
	assert.InDelta(t, 18.5, float64(w.To/hour), 1e-6)
	assert.Equal(t, []air.Condition{air.TooCold}, conditions(w.Closing))
	latest, fits := w.LatestStart(2 * hour)
	assert.True(t, fits)
	assert.InDelta(t, 16.5, float64(latest/hour), 1e-6)
	_, fits = w.LatestStart(9 * hour)
	assert.False(t, fits)
}

// A hot day leaves hours on either side of the heat and of the dawn. From 18 to
// 38 °C, 23 °C is a quarter of the way, a third of the time: 1:00 and 9:00;
// 33 °C is three quarters, two thirds of the time: 12:00 and 20:00.
func TestHoursThatBringADoseBack(t *testing.T) {
	d := day(t, 18, 38, 6, read(38, 30, 15*hour))
	list, err := air.SurfaceWithin(d, underRoof, celsius(23).Value, celsius(33).Value, wholeDay)
	require.NoError(t, err)
	require.Len(t, list, 3)
	for i, want := range [][2]float64{{0, 1}, {9, 12}, {20, 24}} {
		assert.InDelta(t, want[0], float64(list[i].From/hour), 1e-5)
		assert.InDelta(t, want[1], float64(list[i].To/hour), 1e-5)
	}
	none, err := air.SurfaceWithin(d, air.Under(air.Dark, true), celsius(23).Value, celsius(33).Value, air.Interval{From: 7 * hour, To: 18 * hour})
	require.NoError(t, err)
	assert.Empty(t, none, "the band of an allowance is wider than the table's room: measure")
}

func TestAllDayAndNever(t *testing.T) {
	mild := fit(t, day(t, 18, 24, 6, read(20, 55, 9*hour)), underRoof, gelCoat)
	list, err := mild.Windows(wholeDay)
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.Equal(t, wholeDay, list[0].Interval)
	assert.Empty(t, list[0].Closing)
	winter := fit(t, day(t, 2, 9, 8, read(5, 70, 9*hour)), underRoof, gelCoat)
	list, err = winter.Windows(wholeDay)
	require.NoError(t, err)
	assert.Empty(t, list)
}

func TestAskedHoursAreChecked(t *testing.T) {
	f := fit(t, day(t, 18, 24, 6, read(20, 55, 9*hour)), underRoof, gelCoat)
	for _, asked := range []air.Interval{{From: 5 * hour, To: 5 * hour}, {From: 6 * hour, To: 5 * hour}, {From: -1, To: 5 * hour},
		{From: 0, To: 49 * hour}, {From: unit.Time(math.NaN()), To: hour}} {
		_, err := f.Windows(asked)
		var refused *air.InputError
		assert.ErrorAs(t, err, &refused, "%v", asked)
		_, err = air.SurfaceWithin(day(t, 18, 24, 6, read(20, 55, 9*hour)), underRoof, 0, 400, asked)
		assert.Error(t, err)
	}
}

// naive is the definition, minute by minute, from the plain curves alone.
type naive struct {
	day     air.Day
	surface air.Surface
	limits  air.Limits
}

func (n naive) lasts(at unit.Time) bool {
	cold := n.day.Air(at) + unit.Temperature(n.surface.By(n.day, at).Least.Value)
	return cold >= n.limits.Least && float64(cold-n.day.Dew(at)) >= float64(n.limits.Margin)
}

func (n naive) fits(at unit.Time) bool {
	hot := n.day.Air(at) + unit.Temperature(n.surface.By(n.day, at).Most.Value)
	rh := n.day.Humidity(at)
	if hot > n.limits.Most || rh < n.limits.Driest || rh > n.limits.Dampest {
		return false
	}
	for later := at; later <= at+n.limits.Cure; later += minute {
		if !n.lasts(later) {
			return false
		}
	}
	return true
}

func randomSurface(t *testing.T, random *rand.Rand) air.Surface {
	measured, err := air.Measured(celsius(20+15*random.Float64()), celsius(25))
	require.NoError(t, err)
	at := unit.Time(24*random.Float64()) * hour
	return []air.Surface{underRoof, underRoof.MeasuredAt(measured, at), air.Under(air.Mid, true).MeasuredAt(measured, at), air.Under(air.Colour(random.IntN(3)), true)}[random.IntN(4)]
}

func TestWindowsAgreeWithTheirDefinition(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	open := 0
	for range 60 {
		card := gelCoat
		card.Cure = unit.Time(random.IntN(8*60)) * minute
		n := naive{randomDay(t, random), randomSurface(t, random), card}
		start := unit.Time(random.IntN(24*60)) * minute
		asked := air.Interval{From: start, To: start + 24*hour}
		windows, err := fit(t, n.day, n.surface, card).Windows(asked)
		require.NoError(t, err)
		for at := asked.From; at < asked.To; at += minute {
			inside, nearEdge := false, false
			for _, w := range windows {
				inside = inside || w.From <= at && at < w.To
				nearEdge = nearEdge || math.Abs(float64(at-w.From)) < 1 || math.Abs(float64(at-w.To)) < 1
			}
			if !nearEdge && inside != n.fits(at) {
				t.Fatalf("at %v h: window says %v, %+v", float64(at/hour), inside, windows)
			}
			if inside {
				open++
			}
		}
		for _, w := range windows {
			assert.Equal(t, w.To < asked.To, len(w.Closing) > 0, "a window says why it ends")
		}
	}
	assert.Greater(t, open, 5000, "the days drawn leave enough to compare")
}
