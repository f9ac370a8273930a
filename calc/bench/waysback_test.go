package bench_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
)

// Two parts of a ratio have no table: another hour or another temperature brings them back by the card's
// own limits, and no share of catalyst stands beside it.
func TestARatioComesBackByItsCardAlone(t *testing.T) {
	topcoat := "bench.now.card = topcoat\ncard.topcoat.ratio-mass = 4:1\nbench.now.amount = 200 g\ncard.topcoat.surface-least = 16 °C\ncard.topcoat.surface-most = 30 °C"
	b := benchOf(t, at(7), bare, day, topcoat, "day.today.low = 9\nday.today.high = 24\nday.today.read-temp = 11\nday.today.read-humidity = 55\nday.today.read-at = 7:00\nbench.now.read-at = 7:00\nbench.now.surface-temp = 12")
	require.False(t, b.HasParts)
	hours, warmed := way(b, bench.AtHours), way(b, bench.AtTemperatures)
	require.NotNil(t, hours, "%v", b.Reasons)
	assert.Nil(t, hours.Share.Step)
	assert.GreaterOrEqual(t, inCelsius(hours.Coldest), 16-1e-6)
	require.NotNil(t, warmed)
	assert.Nil(t, warmed.Share.Step)
	assert.InDelta(t, 16, inCelsius(warmed.Surface.Value), 1e-6)
	assert.Nil(t, way(b, bench.ByTimedTest))
	assert.Empty(t, b.Offers(), "no remedy is known by a gel time that hangs on catalyst")
}

// Each reason that heat gives has its way back: a flow coat over 35 °C, one without its patch, and a cup
// that gels before it is spread. No test is timed on a flow coat that may not be laid at all.
func TestEachReasonOfHeatHasAWayBack(t *testing.T) {
	flow := "bench.now.card = flowcoat\nbench.now.ahead = 20\nbench.now.product-temp = 25"
	for name, c := range map[string]struct {
		lines  string
		reason error
		leads  bool
	}{
		"hot":       {flow + "\ncard.flowcoat.patch = 2026-05-30\nbench.now.surface-temp = 36", bench.ErrHotFlowCoat, true},
		"no patch":  {flow + "\nbench.now.surface-temp = 31", bench.ErrNoPatch, true},
		"no time":   {"card.gelcoat.gel-time = 4 min\nbench.now.surface-temp = 30\nbench.now.product-temp = 30", bench.ErrNoTime, true},
		"other day": {"bench.now.read-on = 2026-05-30", bench.ErrOtherDay, false},
	} {
		b := benchOf(t, tenOClock, bare, c.lines)
		require.Contains(t, b.Reasons, c.reason, name)
		assert.Equal(t, c.leads, way(b, bench.AtTemperatures) != nil || way(b, bench.AtHours) != nil, "%s: %v", name, b.Ways())
		if c.reason == bench.ErrHotFlowCoat || c.reason == bench.ErrNoPatch {
			assert.Nil(t, way(b, bench.ByTimedTest), name)
		}
	}
	for at, mayBeTimed := range map[string]bool{"33": true, "34.9": true, "35.1": false, "37": false} {
		b := benchOf(t, tenOClock, bare, flow, "card.flowcoat.patch = 2026-05-30\nbench.now.product-temp = 32\nbench.now.surface-temp = "+at)
		assert.Equal(t, mayBeTimed, way(b, bench.ByTimedTest) != nil, "a flow coat at %s °C: %v", at, b.Reasons)
	}
	assert.NotNil(t, way(benchOf(t, tenOClock, bare, "bench.now.ahead = 20\nbench.now.product-temp = 35\nbench.now.surface-temp = 37"), bench.ByTimedTest), "a gel coat may be timed hotter than its wax would bear")
}

// What a temperature is told to miss is the end that it lies beyond: of the card and of the table.
func TestATemperatureIsToldTheEndThatItMisses(t *testing.T) {
	const wide = "card.gelcoat.surface-least = 5 °C\ncard.gelcoat.surface-most = 50 °C"
	for name, c := range map[string]struct {
		lines string
		limit float64
	}{
		"under the card":  {"bench.now.surface-temp = 14", 15},
		"over the card":   {"card.gelcoat.surface-most = 28 °C\nbench.now.surface-temp = 29", 28},
		"under the table": {wide + "\nbench.now.surface-temp = 12", 15},
		"over the table":  {wide + "\nbench.now.surface-temp = 34", 32},
	} {
		v := verdict(t, benchOf(t, tenOClock, bare, "bench.now.ahead = 20", c.lines), bench.Heat)
		assert.Equal(t, bench.Stops, v.Kind, name)
		assert.InDelta(t, c.limit, v.Limit-273.15, 1e-6, name)
	}
	fit := verdict(t, benchOf(t, tenOClock, bare), bench.Heat)
	assert.Equal(t, bench.Holds, fit.Kind)
	assert.InDelta(t, 32, fit.Limit-273.15, 1e-6)
}

// Shade is offered to a part in the sun alone, by the air of the hour.
func TestShadeIsOfferedInTheSunAlone(t *testing.T) {
	in := func(where string) bool {
		b := benchOf(t, tenOClock, morningWith("bench.now.surface-temp = 33", "day.today.sun = "+where))
		return slices.ContainsFunc(b.Offers(), func(o cure.Offer) bool { return o.Remedy == cure.Shade })
	}
	assert.True(t, in("sun"))
	assert.False(t, in("shade"))
}

// Nothing of an amount that can't be read is guessed, neither the size of the cup.
func TestNoCupIsProposedForATextThatCantBeRead(t *testing.T) {
	b := benchOf(t, tenOClock, bare, "bench.now.amount = 20 pounds of it")
	assert.False(t, b.HasDose)
	assert.Nil(t, b.Whole.Step)
}

// A day that has no dose is told before anybody is asked what the catalyst is measured with; the timed test, whose
// dose hangs on the tool, waits for it.
func TestADayWithoutADoseIsToldBeforeTheTool(t *testing.T) {
	const today = "bench.now.read-on = 2026-06-01"
	const hot = today + "\nbench.now.surface-temp = 38\nbench.now.ahead = 25"
	b := benchOf(t, tenOClock, hot)
	assert.True(t, b.AsksTool)
	assert.True(t, hasReason[*cure.BeyondTableError](b), "%v", b.Reasons)
	assert.NotNil(t, way(b, bench.AtTemperatures))
	assert.Nil(t, way(b, bench.ByTimedTest))
	assert.False(t, b.HasDose)

	withTool := benchOf(t, tenOClock, hot, "bench.now.scale-step = 0.1")
	assert.False(t, withTool.AsksTool)
	assert.NotNil(t, way(withTool, bench.ByTimedTest))

	mild := benchOf(t, tenOClock, today, "bench.now.surface-temp = 25")
	assert.True(t, mild.AsksTool)
	assert.Empty(t, mild.Reasons)
}
