package bench_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
)

// What is said to bring a dose back does: at the hour that is named, with product
// and part at the temperatures that are named; and what is offered for more time
// gives more.
func TestWhatBringsItBackDoes(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 32))
	hours, temperatures, cooled := 0, 0, 0
	for range 300 {
		now := 5 + 15*random.Float64()
		low := 8 + 16*random.Float64()
		high := low + 6 + 12*random.Float64()
		surface := low + (high-low)*random.Float64()*1.2
		weather := fmt.Sprintf("day.today.low = %.1f\nday.today.high = %.1f\nday.today.read-temp = %.1f\nday.today.read-humidity = %.0f\nday.today.read-at = %d:00\nbench.now.read-at = %d:00\nbench.now.surface-temp = %.1f",
			low, high, low+(high-low)*random.Float64(), 35+40*random.Float64(), int(now), int(now), surface)
		b := benchOf(t, at(float64(int(now))), bare, day, weather)
		for _, w := range b.Ways() {
			switch w.Kind {
			case bench.AtHours:
				if w.From >= unit.Day-unit.Hour { // tomorrow has readings of its own
					continue
				}
				then := w.From + 2*unit.Minute
				clock := fmt.Sprintf("%d:%02d", int(then/unit.Hour), int(then/unit.Minute)%60)
				part := inCelsius(b.Air.Day.Air(then)) + float64(b.Air.Surface.By(b.Air.Day, then).Least.Value)
				c := benchOf(t, bench.Now{Hour: then, Date: tenOClock.Date}, bare, day, weather, fmt.Sprintf("bench.now.surface-temp = %.2f\nbench.now.read-at = %s", part, clock))
				assert.True(t, c.HasDose, "at %s, %s: %v %v", clock, weather, c.Reasons, c.Waiting)
				hours++
			case bench.AtTemperatures:
				c := benchOf(t, tenOClock, bare, fmt.Sprintf("bench.now.surface-temp = %.4f\nbench.now.product-temp = %.4f\nbench.now.ahead = %.4f",
					inCelsius(w.Surface.Value)-1e-9, inCelsius(w.Product.Value), max(15, inCelsius(b.Air.ColdestAhead))))
				assert.True(t, c.HasDose, "%.1f, %.1f °C: %v %v", inCelsius(w.Surface.Value), inCelsius(w.Product.Value), c.Reasons, c.Waiting)
				assert.False(t, w.DewPoint.Step != nil && w.Product.Value < w.DewPoint.Value && w.Product.Value < b.Product.Value, "cooled under the dew point")
				temperatures++
			}
		}
		for _, o := range b.Offers() {
			if o.Remedy != cure.CoolProduct || !b.HasDose {
				continue
			}
			c := benchOf(t, at(float64(int(now))), bare, day, weather, fmt.Sprintf("bench.now.product-temp = %.2f\nbench.now.amount = %.0f g", inCelsius(o.Target.Value), inGrams(b.Whole.Value)))
			assert.Greater(t, float64(c.Hand.Spreading.Value), float64(b.Hand.Spreading.Value), weather)
			cooled++
		}
	}
	assert.Greater(t, hours, 20)
	assert.Greater(t, temperatures, 30)
	assert.Greater(t, cooled, 5)
	t.Log(hours, temperatures, cooled)
}

// No more than two stretches of hours are listed, the next ones: the rest of a
// morning and the evening of a hot day, while the next morning would do as well.
func TestTheNextTwoStretchesOfHoursAreNamed(t *testing.T) {
	b := benchOf(t, at(10), bare, day, "day.today.low = 9\nday.today.high = 40\nday.today.read-temp = \nday.today.read-humidity = \nday.today.sunrise = 6:00\nbench.now.read-at = 10:00\nbench.now.surface-temp = 14")
	require.False(t, b.HasDose)
	var hours []bench.Way
	for _, w := range b.Ways() {
		if w.Kind == bench.AtHours {
			hours = append(hours, w)
		}
	}
	require.Len(t, hours, 2)
	for _, w := range hours {
		assert.LessOrEqual(t, w.To, (10+24)*unit.Hour, "until this time tomorrow: what comes then will be read then")
		assert.GreaterOrEqual(t, w.From, 10*unit.Hour)
	}
	assert.Less(t, hours[0].From, hours[1].From)
	assert.Less(t, hours[1].From, 24*unit.Hour)
}

// A part out of reach is brought to the nearer end of what does: of the catalyst
// table, or of the card where the table goes further. A part warmed to the card's
// 15 °C has no dose by a table that begins at 18.
func TestAPartIsBroughtIntoTableAndCard(t *testing.T) {
	table := func(ends ...string) string {
		return "card.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = " + ends[0] + "\ncard.gelcoat.dose.1.share = 2\ncard.gelcoat.dose.2.temp = " + ends[1] + "\ncard.gelcoat.dose.2.share = 1.6"
	}
	for _, c := range []struct {
		name, table, surface string
		want                 float64
	}{
		{"the table is narrower, cold", table("18", "28"), "12", 18},
		{"the table is narrower, hot", table("18", "28"), "33", 28},
		{"the card is narrower, cold", table("10", "35"), "12", 15},
		{"the card is narrower, hot", table("10", "35"), "34", 32},
	} {
		b := benchOf(t, tenOClock, bare, c.table, "bench.now.ahead = 15\nbench.now.surface-temp = "+c.surface)
		require.False(t, b.HasDose, c.name)
		at := slices.IndexFunc(b.Ways(), func(w bench.Way) bool { return w.Kind == bench.AtTemperatures })
		require.GreaterOrEqual(t, at, 0, "%s: %v", c.name, b.Reasons)
		assert.InDelta(t, c.want, inCelsius(b.Ways()[at].Surface.Value), 1e-6, c.name)
	}
}

// A part is never brought so low that dew lies on it: three degrees over the dew point,
// and where those lie over the table's end no temperature does.
func TestNoPartIsBroughtUnderItsDew(t *testing.T) {
	way := func(lines ...string) *bench.Way {
		b := benchOf(t, tenOClock, append([]string{bare, day, "day.today.read-at = 10:00"}, lines...)...)
		require.True(t, b.Air.Known && !b.HasDose, "%v %v", b.Reasons, b.Waiting)
		for i, w := range b.Ways() {
			if w.Kind == bench.AtTemperatures {
				return &b.Ways()[i]
			}
		}
		return nil
	}
	mild := way("day.today.low = 17\nday.today.high = 24\nday.today.read-temp = 22\nday.today.read-humidity = 85\nbench.now.surface-temp = 14")
	require.NotNil(t, mild)
	assert.Greater(t, inCelsius(mild.DewPoint.Value), 19.)
	assert.InDelta(t, inCelsius(mild.DewPoint.Value)+3, inCelsius(mild.Surface.Value), 1e-6)
	assert.Nil(t, way("day.today.low = 28\nday.today.high = 36\nday.today.read-temp = 34\nday.today.read-humidity = 90\nbench.now.surface-temp = 36"), "dew at 32 °C")
}

// Each reason that is of air or temperature leads to something that brings the dose
// back; what no hour and no temperature changes leads nowhere.
func TestEachReasonOfTheWeatherHasAWayBack(t *testing.T) {
	const none = "day.today.low = \nday.today.high = "
	const flat = "card.gelcoat.dose = 1 2\ncard.gelcoat.dose.1.temp = 15\ncard.gelcoat.dose.1.share = 1.8\ncard.gelcoat.dose.2.temp = 32\ncard.gelcoat.dose.2.share = 1.6"
	for name, c := range map[string]struct {
		reason any
		lines  []string
		leads  bool
	}{
		"over the table":      {new(*cure.BeyondTableError), []string{"bench.now.surface-temp = 34", "bench.now.product-temp = 30"}, true},
		"under the card":      {new(*cure.TemperatureError), []string{"bench.now.surface-temp = 20", "bench.now.product-temp = 12", "bench.now.ahead = 18"}, true},
		"apart":               {new(*cure.ApartError), []string{"bench.now.surface-temp = 15.5", "bench.now.product-temp = 31", "bench.now.ahead = 15.5", flat}, true},
		"steep":               {new(*cure.SteepError), []string{"bench.now.surface-temp = 16", "bench.now.product-temp = 29", "bench.now.ahead = 16"}, true},
		"coarse scale":        {new(*cure.NotWithThisToolError), []string{"bench.now.scale-step = 1 g"}, false},
		"untested, too large": {new(*cure.CupTooLargeError), []string{"bench.now.amount = 300 g"}, false},
		"wrong peroxide":      {new(*cure.PeroxideError), []string{"bench.now.catalyst = benzoyl-paste"}, false},
	} {
		b := benchOf(t, tenOClock, morningWith(c.lines...), none)
		require.False(t, b.HasDose, name)
		require.True(t, slices.ContainsFunc(b.Reasons, func(err error) bool { return errorIs(err, c.reason) }), "%s: %v", name, b.Reasons)
		assert.Equal(t, c.leads, len(b.Ways()) > 0, "%s: %v", name, b.Reasons)
	}
	late := benchOf(t, at(22), morningWith("day.today.low = 8", "day.today.read-at = 22:00"))
	require.True(t, hasReason[*cure.ColdEveningError](late), "%v", late.Reasons)
	assert.NotEmpty(t, late.Ways(), "tomorrow's hours")
}

// The part alone is brought down where the product may stay as it is.
func TestTheProductMayStayAsItIs(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "bench.now.surface-temp = 33\nbench.now.product-temp = 24")
	at := slices.IndexFunc(b.Ways(), func(w bench.Way) bool { return w.Kind == bench.AtTemperatures })
	require.GreaterOrEqual(t, at, 0, "%v", b.Reasons)
	w := b.Ways()[at]
	assert.InDeltaSlice(t, []float64{32, 24}, []float64{inCelsius(w.Surface.Value), inCelsius(w.Product.Value)}, 1e-6)
}

// Whatever stands in the way, product, part or evening: with all the warmth that is
// offered there is a dose at the bench, and so there is with any other offer that is
// said to bring one back. Where a dose is there, nothing is said to.
func TestWhatIsOfferedBringsADose(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 9))
	seen := map[cure.Remedy]int{}
	for range 400 {
		now := map[string]float64{"product-temp": 5 + 30*random.Float64(), "surface-temp": 5 + 35*random.Float64(), "ahead": 8 + 15*random.Float64()}
		with := func(now map[string]float64) bench.Bench {
			return benchOf(t, tenOClock, bare, fmt.Sprintf("bench.now.product-temp = %.6f\nbench.now.surface-temp = %.6f\nbench.now.ahead = %.6f", now["product-temp"], now["surface-temp"], now["ahead"]))
		}
		b := with(now)
		place := map[cure.Remedy]string{cure.WarmProduct: "product-temp", cure.CoolProduct: "product-temp", cure.WarmPart: "surface-temp", cure.WarmShed: "ahead"}
		warm, isWarm := maps.Clone(now), false
		for _, o := range b.Offers() {
			if o.Opens {
				assert.False(t, b.HasDose, "%v: %+v", now, o)
			}
			at, isTemperature := place[o.Remedy]
			switch {
			case o.Remedy >= cure.WarmProduct:
				warm[at], isWarm = inCelsius(o.Target.Value)+1e-6, true
				seen[o.Remedy]++
			case isTemperature && o.Opens:
				cooled := maps.Clone(now)
				cooled[at] = inCelsius(o.Target.Value)
				c := with(cooled)
				assert.True(t, c.HasDose, "%v, cooled to %v: %v", now, cooled[at], c.Reasons)
				seen[o.Remedy]++
			}
		}
		if isWarm {
			c := with(warm)
			assert.True(t, c.HasDose, "%v, warmed to %v: %v %v", now, warm, c.Reasons, c.Waiting)
		}
	}
	t.Log(seen)
	assert.Greater(t, min(seen[cure.WarmProduct], seen[cure.WarmPart], seen[cure.WarmShed], seen[cure.CoolProduct]), 20)
}
