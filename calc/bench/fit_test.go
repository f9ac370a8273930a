package bench_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

func TestTheColdestHourIsAskedNearTheCardsLeast(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 22.9")
	assert.True(t, b.AsksAhead)
	assert.Equal(t, []string{"bench.now.ahead"}, b.Waiting)
	assert.False(t, b.HasDose)
	assert.False(t, benchOf(t, tenOClock, bare, "bench.now.surface-temp = 23").AsksAhead)
	assert.True(t, benchOf(t, tenOClock, bare, "bench.now.surface-temp = 22.9\nbench.now.ahead = 16").HasDose)
	cold := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 22.9\nbench.now.ahead = 14.9")
	assert.False(t, cold.HasDose)
	assert.True(t, hasReason[*cure.ColdEveningError](cold))
	assert.Equal(t, bench.Stops, verdict(t, cold, bench.ColdEvening).Kind)
}

// Readings and the day's curve: 14 °C read at 9:03 under a high of 17 only warms;
// air read colder than the low is the coldest ahead; a part in the open loses its
// night though it was measured.
func TestTheColdestAheadKnowsTheReadings(t *testing.T) {
	b := benchOf(t, at(9.05), bare, day, "day.today.low = 11\nday.today.high = 17\nday.today.read-temp = 14\nday.today.read-humidity = 60\nday.today.read-at = 9:03\nbench.now.read-at = 9:03\nbench.now.surface-temp = 16")
	assert.InDelta(t, 14, inCelsius(b.Air.ColdestAhead), 0.01)
	colder := benchOf(t, at(9), bare, day, "day.today.low = 16\nday.today.high = 26\nday.today.read-temp = 13\nday.today.read-humidity = 60\nday.today.read-at = 9:00\nbench.now.read-at = 9:00\nbench.now.surface-temp = 18")
	assert.InDelta(t, 13, inCelsius(colder.Air.ColdestAhead), 0.01)
	assert.False(t, colder.HasDose, "the air is under the card's 15 °C")

	night := "day.today.low = 13\nday.today.high = 24\nday.today.read-temp = 22\nday.today.read-humidity = 50\nday.today.read-at = 18:00\nbench.now.read-at = 18:00\nbench.now.surface-temp = 22"
	roofed, open := benchOf(t, at(18), bare, day, night), benchOf(t, at(18), bare, day, night, "day.today.sun = sun")
	assert.InDelta(t, 5, float64(roofed.Air.ColdestAhead-open.Air.ColdestAhead), 0.01, "the clear sky takes 5 °C though the part was measured")
	assert.True(t, roofed.HasDose, "%v", roofed.Reasons)
	assert.False(t, open.HasDose)
	assert.True(t, hasReason[*cure.ColdEveningError](open))
}

// Yesterday's weather doesn't count: the dose follows today's surface, and air and
// humidity aren't checked.
func TestWeatherOfAnotherDay(t *testing.T) {
	b := benchOf(t, tenOClock, morningWith("day.today.date = 2026-05-31"))
	require.True(t, b.HasDose, "%v", b.Reasons)
	assert.False(t, b.Air.HasCurve)
	assert.Equal(t, bench.NotChecked, verdict(t, b, bench.Dew).Kind)
	assert.False(t, benchOf(t, tenOClock, morningWith("bench.now.read-on = 2026-05-31")).HasDose)
}

// Unfit now by a fresh reading: no dose, and when it comes back. By one of three
// hours ago it is asked.
func TestUnfitNow(t *testing.T) {
	damp := "day.today.low = 16\nday.today.high = 28\nday.today.read-temp = 18\nday.today.read-humidity = 78\nday.today.read-at = 8:00\nbench.now.read-at = 8:00\nbench.now.surface-temp = 16.5"
	b := benchOf(t, at(8), bare, day, damp)
	assert.False(t, b.HasDose)
	assert.True(t, hasReason[*bench.UnfitError](b), "%v", b.Reasons)
	assert.Equal(t, bench.Stops, verdict(t, b, bench.Dew).Kind)
	hours := way(b, bench.AtHours)
	require.NotNil(t, hours)
	assert.Greater(t, float64(hours.From), float64(8*unit.Hour))
	dew := float64(b.Air.DewPoint.Value)
	coldest := b.Air.Day.Air(hours.From) + unit.Temperature(b.Air.Surface.By(b.Air.Day, hours.From).Least.Value)
	assert.GreaterOrEqual(t, float64(coldest)-dew, 2.99, "then it is 3 °C over the dew point")

	for _, hour := range []float64{9.99, 10} {
		b := benchOf(t, at(hour), bare, day, damp)
		asks := slices.ContainsFunc(b.Verdicts(), func(v bench.Verdict) bool { return v.Subject == bench.Readings })
		assert.Equal(t, hour >= 10, asks, "at %v: asked from two hours on", hour)
	}
	old := benchOf(t, at(11), bare, day, damp)
	assert.False(t, old.Air.IsFresh)
	assert.False(t, hasReason[*bench.UnfitError](old), "three hours later that reading says nothing")
	assert.Equal(t, bench.Asks, verdict(t, old, bench.Readings).Kind)
	require.NotEmpty(t, old.Air.Now)
	assert.Equal(t, bench.Asks, verdict(t, old, bench.Dew).Kind, "it asks, where a fresh one stops")
	assert.Equal(t, bench.Stops, verdict(t, benchOf(t, at(8.5), bare, day, damp), bench.Dew).Kind)
}

// Fit now and unfit later: the dose, with the hour, and red where the cups of the
// coat don't all fit before.
func TestUnfitLater(t *testing.T) {
	warm := "day.today.low = 17\nday.today.high = 27\nday.today.read-temp = 25\nday.today.read-humidity = 60\nday.today.read-at = 12:00\nbench.now.read-at = 12:00\nbench.now.surface-temp = 25"
	b := benchOf(t, at(12), bare, day, warm)
	require.True(t, b.HasDose, "%v", b.Reasons)
	dew := verdict(t, b, bench.Dew)
	require.Equal(t, bench.Holds, dew.Kind)
	require.Greater(t, float64(dew.At), float64(12*unit.Hour), "holds until an hour")
	each := float64(b.Minutes.Mix.Value) + float64(b.Covers.Value)/float64(b.Method.Speed.Value)
	assert.InDelta(t, math.Floor((float64(dew.At)-12*3600)/each), dew.CupsBefore, 1e-9)

	evening := "day.today.read-temp = 24\nday.today.read-at = 19:00\nbench.now.read-at = 19:00"
	big := benchOf(t, at(19), bare, day, warm, evening, strings.Replace(coat, "1.length = 2 m", "1.length = 30 m", 1))
	require.True(t, big.HasDose, "%v", big.Reasons)
	reds := func(b bench.Bench) (list []bench.Verdict) {
		for _, v := range b.Verdicts() {
			if v.Kind == bench.Stops && v.Subject != bench.Film {
				list = append(list, v)
			}
		}
		return list
	}
	require.Len(t, reds(big), 1, "by what closes the window")
	assert.True(t, reds(big)[0].IsLater)
	assert.Greater(t, float64(reds(big)[0].At), float64(19*unit.Hour))
	assert.Less(t, reds(big)[0].CupsBefore, big.Facts.CupsLeft)
	assert.Empty(t, reds(benchOf(t, at(19), bare, day, warm, evening, coat)))

	late := benchOf(t, bench.Now{Hour: dew.At + unit.Hour/2, Date: "2026-06-01"}, bare, day, warm, "bench.now.surface-temp = 22\nbench.now.read-at = 18:00")
	if v := verdict(t, late, bench.Dew); assert.Equal(t, bench.Stops, v.Kind, "the dew comes within the cure") && v.IsLater {
		assert.Greater(t, v.At, dew.At)
	}
}

// Over the table's end: the hours, the temperatures and the timed test that bring a
// dose back; the test allows cups of its tin, on its day and up to a degree above
// it.
func TestAHotDay(t *testing.T) {
	weather := "day.today.low = 22\nday.today.high = 38\nday.today.read-temp = 36\nday.today.read-humidity = 35\nday.today.read-at = 13:00\nbench.now.read-at = 13:00\nday.today.sunrise = 5:40"
	hot := []string{bare, day, weather, "bench.now.surface-temp = 38\nbench.now.tin = A"}
	b := benchOf(t, at(13), hot...)
	assert.False(t, b.HasDose)
	assert.True(t, hasReason[*cure.BeyondTableError](b))

	hours := way(b, bench.AtHours)
	require.NotNil(t, hours)
	assert.LessOrEqual(t, inCelsius(hours.Warmest), 32.01)
	assert.GreaterOrEqual(t, inCelsius(hours.Coldest), 15.)
	want, err := table(t, b).At(celsiusFigure(inCelsius(hours.Warmest)))
	require.NoError(t, err)
	assert.InDelta(t, float64(want.Value), float64(hours.Share.Value), 1e-12)

	temps := way(b, bench.AtTemperatures)
	require.NotNil(t, temps)
	assert.InDelta(t, 32, inCelsius(temps.Surface.Value), 1e-9)
	assert.Greater(t, float64(temps.Product.Value), float64(b.Air.DewPoint.Value), "over the dew point")
	assert.True(t, benchOf(t, at(13), append(hot, fmt.Sprintf("bench.now.surface-temp = 32\nbench.now.product-temp = %.0f\nday.today.date = ", inCelsius(temps.Product.Value)))...).HasDose, "these temperatures do")

	test := way(b, bench.ByTimedTest)
	require.NotNil(t, test)
	require.NoError(t, test.Err)
	assert.Equal(t, "1\u00a0g", test.Dose.String())
	assert.InDelta(t, 100, inGrams(test.Mass.Value), 1e-9)
	assert.InDelta(t, 39, inCelsius(test.UpTo), 1e-9)

	cooler := way(benchOf(t, at(13), append(slices.Clone(hot), "bench.now.product-temp = 36")...), bench.ByTimedTest)
	require.NotNil(t, cooler)
	assert.ErrorIs(t, cooler.Err, bench.ErrTestCooler, "timed at 36 °C it says nothing of a part at 38 °C")
	assert.InDelta(t, 39, inCelsius(cooler.UpTo), 1e-9, "what a test as warm as the part would open")
	hottest := way(benchOf(t, at(13), append(slices.Clone(hot), "bench.now.surface-temp = 41.5")...), bench.ByTimedTest)
	require.NotNil(t, hottest)
	assert.InDelta(t, 42, inCelsius(hottest.UpTo), 1e-9, "never over 42 °C")
	hottest = way(benchOf(t, at(13), append(slices.Clone(hot), "bench.now.surface-temp = 41.5", "bench.now.product-temp = 40")...), bench.ByTimedTest)
	require.NotNil(t, hottest)
	assert.InDelta(t, 42, inCelsius(hottest.UpTo), 1e-9, "never over 42 °C, with a product that is cooler")
	for _, past := range []string{"bench.now.surface-temp = 42.5", "bench.now.product-temp = 42.5"} {
		assert.Nil(t, way(benchOf(t, at(13), append(slices.Clone(hot), past)...), bench.ByTimedTest), past)
	}

	result := func(temp, minutes float64, tin, day string) string {
		return fmt.Sprintf("test = 1\ntest.1.card = gelcoat\ntest.1.mass = 100 g\ntest.1.temp = %v\ntest.1.share = 1\ntest.1.minutes = %v\ntest.1.tin = %s\ntest.1.day = %s", temp, minutes, tin, day)
	}
	calm := "day.today.date = "
	assert.True(t, benchOf(t, at(13), append(slices.Clone(hot), calm, result(37, 12, "A", "2026-06-01"))...).HasDose, "a whole degree over the test")
	opened := benchOf(t, at(13), append(hot, calm, result(38, 12, "A", "2026-06-01"))...)
	require.True(t, opened.HasDose, "%v %v", opened.Reasons, opened.Waiting)
	assert.Equal(t, cure.TimedToday, opened.Tin)
	whole, got, off := inGrams(opened.Whole.Value), unit.InGram.From(float64(opened.Dose.Mass.Value)), float64(opened.Dose.Error.Value)
	assert.LessOrEqual(t, whole, 250.)
	assert.GreaterOrEqual(t, got-off*whole, 0.01*whole-1e-6, "never under the floor")
	for name, lines := range map[string][]string{
		"larger cup":     {calm, result(38, 12, "A", "2026-06-01"), "test.1.mass = 101 g"},
		"in the table":   {calm, result(31.9, 12, "A", "2026-06-01"), "bench.now.surface-temp = 32.5\nbench.now.product-temp = 32.5"},
		"too quick":      {calm, result(38, 7, "A", "2026-06-01")},
		"another tin":    {calm, result(38, 12, "B", "2026-06-01")},
		"another day":    {calm, result(38, 12, "A", "2026-05-31")},
		"too warm":       {calm, result(36.9, 12, "A", "2026-06-01")},
		"vinyl ester":    {calm, result(38, 12, "A", "2026-06-01"), "bench.now.card = vinylester\ntest.1.card = vinylester"},
		"product cooler": {calm, result(36.5, 12, "A", "2026-06-01")},
		"over 42 °C":     {calm, result(42, 12, "A", "2026-06-01"), "bench.now.surface-temp = 42.5\nbench.now.product-temp = 42"},
		"unpatched flow": {calm, result(34, 12, "A", "2026-06-01"), "bench.now.card = flowcoat\ntest.1.card = flowcoat\nbench.now.surface-temp = 34\nbench.now.product-temp = 34"},
	} {
		assert.False(t, benchOf(t, at(13), append(slices.Clone(hot), lines...)...).HasDose, name)
	}
}

// In a box of 0.5 m³ a coat of 2.5 m² inside reaches the explosive limit at 30 °C;
// at 20 °C the air can't hold so much vapour. What goes on outside doesn't count.
func TestTheExplosiveLimitInABox(t *testing.T) {
	box := "surface = 1 2\nsurface.1.shape = box\nsurface.1.side = inside\nsurface.1.faces = top bottom front back left right\nsurface.1.length = 1 m\nsurface.1.width = 0.5 m\nsurface.1.height = 1 m\nsurface.1.inside = locker\nsurface.1.buildup = buildup.1\n" +
		"surface.2.length = 5 m\nsurface.2.width = 2 m\nsurface.2.buildup = buildup.1\n" +
		"buildup = 1\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.1.method = brush\nbuildup.1.step.1.film = 400 µm"
	other := benchOf(t, tenOClock, bare, strings.Replace(box, "surface = 1 2", "surface = 2 1", 1), "bench.now.surface-temp = 30")
	assert.True(t, other.Vapour.IsInside, "what lies inside counts wherever it stands in the list")
	hot := benchOf(t, tenOClock, bare, box, "bench.now.surface-temp = 30")
	require.True(t, hot.Vapour.IsInside)
	assert.InDelta(t, 0.5, float64(hot.Vapour.Volume.Value), 1e-9)
	assert.False(t, hot.HasDose)
	assert.True(t, hasReason[*bench.ExplosiveError](hot), "%v", hot.Reasons)
	assert.Equal(t, bench.Stops, verdict(t, hot, bench.Explosive).Kind)

	cool := benchOf(t, tenOClock, bare, box, "bench.now.surface-temp = 24")
	assert.InDelta(t, 0.7583/0.9, float64(cool.Vapour.Space.Value), 0.01, "saturated at 24 °C: 0.758 %")
	assert.Equal(t, air.Hazardous, cool.Vapour.Danger)
	assert.True(t, cool.HasDose, "%v", cool.Reasons)

	unknown := benchOf(t, tenOClock, bare, coat, "surface.1.inside = locker")
	assert.Equal(t, bench.Asks, verdict(t, unknown, bench.Explosive).Kind, "its volume is asked for")
	open := benchOf(t, tenOClock, bare, coat)
	assert.Equal(t, bench.Holds, verdict(t, open, bench.Explosive).Kind)
}
