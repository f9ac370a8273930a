package film_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func flow(thinner, seconds, celsius float64) film.FlowReading {
	return film.FlowReading{
		Thinner:     typed(unit.ByVolume(thinner), unit.InPercent),
		Time:        typed(unit.Time(seconds), unit.InSecond),
		Temperature: unit.Of[unit.Temperature](celsius, unit.InCelsius),
	}
}

func seconds(s float64) working.Figure[unit.Time] { return typed(unit.Time(s), unit.InSecond) }

func TestThinnerForFlow(t *testing.T) {
	thick, thin := flow(0, 80, 20), flow(0.1, 20, 20.5)
	half, err := film.ThinnerForFlow(thick, thin, seconds(40)) // halfway in the logarithm
	require.NoError(t, err)
	assert.InDelta(t, 0.05, float64(half.Value), 1e-12)

	swapped, err := film.ThinnerForFlow(thin, thick, seconds(40))
	require.NoError(t, err)
	assert.InDelta(t, 0.05, float64(swapped.Value), 1e-12)

	last := -1.0
	for s := 80.0; s >= 20; s -= 5 { // a shorter time takes more thinner
		f, err := film.ThinnerForFlow(thick, thin, seconds(s))
		require.NoError(t, err)
		assert.Greater(t, float64(f.Value), last)
		last = float64(f.Value)
	}
}

func TestJustPastAReadingIsThatReading(t *testing.T) {
	f, err := film.ThinnerForFlow(flow(0, 80, 20), flow(0.1, 20, 20), seconds(83))
	require.NoError(t, err)
	assert.Zero(t, f.Value)
	f, err = film.ThinnerForFlow(flow(0, 80, 20), flow(0.1, 20, 20), seconds(19.5))
	require.NoError(t, err)
	assert.InDelta(t, 0.1, float64(f.Value), 1e-12)
}

func TestThinnerForFlowRefuses(t *testing.T) {
	thick, thin := flow(0, 80, 20), flow(0.1, 20, 20)
	for _, c := range []struct {
		name  string
		a, b  film.FlowReading
		want  float64
		cause film.FlowCause
		told  []float64 // what was got, and what it was held against
	}{
		{"other temperature", thick, flow(0.1, 20, 22), 40, film.OtherTemperature, []float64{2, 1}},
		{"colder", flow(0, 80, 22), flow(0.1, 20, 20.5), 40, film.OtherTemperature, []float64{1.5, 1}},
		{"no temperature", thick, flow(0.1, 20, math.NaN()), 40, film.OtherTemperature, nil},
		{"too close", flow(0, 21, 20), thin, 20.5, film.TimesTooClose, []float64{1.05, 1.1}},
		{"thickens", flow(0, 20, 20), flow(0.1, 80, 20), 40, film.TimeNotFalling, []float64{80, 20}},
		{"stays as thick", flow(0, 20, 20), flow(0.1, 20, 20), 20, film.TimeNotFalling, []float64{20, 20}},
		{"same thinner", thick, flow(0, 20, 20), 40, film.TimeNotFalling, []float64{20, 80}},
		{"longer than both", thick, thin, 90, film.OutsideReadings, []float64{90, 80}},
		{"shorter than both", thick, thin, 15, film.OutsideReadings, []float64{15, 20}},
		{"no time", thick, flow(0.1, 0, 20), 40, film.NoFlowTime, []float64{0, 0}},
		{"not a number", thick, thin, math.NaN(), film.NoFlowTime, nil},
	} {
		_, err := film.ThinnerForFlow(c.a, c.b, seconds(c.want))
		var refused *film.FlowError
		require.ErrorAs(t, err, &refused, c.name)
		assert.Equal(t, c.cause, refused.Cause, c.name)
		if c.told != nil {
			assert.InDeltaSlice(t, c.told, []float64{refused.Got, refused.Limit}, 1e-9, c.name)
		}
	}
}

// The working goes through the readings in the order of the formula: the first one's thinner and time, the
// second one's, and the time that is wanted.
func TestTheWorkingOfThinnerGoesThroughTheReadings(t *testing.T) {
	a, b, wanted := flow(0, 80, 20), flow(0.1, 20, 20), seconds(40)
	f, err := film.ThinnerForFlow(a, b, wanted)
	require.NoError(t, err)
	assert.Equal(t, []*working.Step{a.Thinner.Step, a.Time.Step, b.Thinner.Step, b.Time.Step, wanted.Step}, f.Step.From)
}

// At a limit itself two flow times still tell: a degree apart, a tenth apart in
// time, a twentieth past the nearer reading; a little past it they don't.
func TestFlowTimesAtTheirLimits(t *testing.T) {
	for _, c := range []struct {
		name     string
		a, b     film.FlowReading
		want     float64
		isPassed bool
	}{
		{"a degree apart", flow(0, 80, 20), flow(0.1, 20, 21), 40, true},
		{"over a degree", flow(0, 80, 20), flow(0.1, 20, 21.01), 40, false},
		{"a tenth apart in time", flow(0, 22, 20), flow(0.1, 20, 20), 21, true},
		{"under a tenth", flow(0, 21.99, 20), flow(0.1, 20, 20), 21, false},
		{"a twentieth longer", flow(0, 80, 20), flow(0.1, 20, 20), 84, true},
		{"more than that", flow(0, 80, 20), flow(0.1, 20, 20), 84.01, false},
		{"a twentieth shorter", flow(0, 84, 20), flow(0.1, 21, 20), 20, true},
		{"less than that", flow(0, 84, 20), flow(0.1, 21, 20), 19.99, false},
	} {
		_, err := film.ThinnerForFlow(c.a, c.b, seconds(c.want))
		assert.Equal(t, c.isPassed, err == nil, "%s: %v", c.name, err)
	}
}

func TestFlowCupsHoldOnlyInTheirRange(t *testing.T) {
	for _, outside := range []unit.Time{29, 101} {
		_, err := film.Cup4.Of(outside)
		var refused *working.RangeError
		assert.ErrorAs(t, err, &refused)
	}
}
