package bench_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
)

// twoTimes is a topcoat timed with nothing in it, 60 s, and with 10 %, 30 s.
var twoTimes = []string{"bench.now.flow-seconds-1 = 60", "bench.now.flow-thinner-2 = 10 %", "bench.now.flow-seconds-2 = 30", "bench.now.flow-wanted = 40"}

func percent(v unit.ByVolume) float64 { return unit.InPercent.From(float64(v)) }

func flowOf(t *testing.T, lines ...string) bench.Flow {
	b := benchOf(t, tenOClock, morningWith(lines...))
	return b.Flow()
}

// Thinner at the bench by two timed readings: 40 s lie ln(60 ÷ 40) ÷ ln 2 of the
// way from 60 to 30. The first reading is without thinner where none is typed, and
// either may be the one with more.
func TestThinnerByTwoFlowTimes(t *testing.T) {
	between := math.Log(1.5) / math.Log(2)
	flow := flowOf(t, twoTimes...)
	require.NoError(t, flow.Err)
	assert.InDelta(t, 10*between, percent(flow.Thinner.Value), 1e-9)
	from4 := flowOf(t, append(twoTimes, "bench.now.flow-thinner-1 = 4 %")...)
	require.NoError(t, from4.Err)
	assert.InDelta(t, 4+6*between, percent(from4.Thinner.Value), 1e-9, "a first reading that already holds some")
	turned := flowOf(t, "bench.now.flow-thinner-1 = 10 %", "bench.now.flow-seconds-1 = 30", "bench.now.flow-seconds-2 = 60", "bench.now.flow-wanted = 40")
	require.NoError(t, turned.Err)
	assert.InDelta(t, 10*between, percent(turned.Thinner.Value), 1e-9, "the other way round")
	far := flowOf(t, append(twoTimes[:3:3], "bench.now.flow-wanted = 20")...)
	var outside *film.FlowError
	require.ErrorAs(t, far.Err, &outside)
	assert.Equal(t, film.OutsideReadings, outside.Cause)
	assert.Nil(t, far.Thinner.Step)
}

// Without one of the two times or the wanted one nothing is asked, nothing refused.
func TestAFlowTimeThatIsMissing(t *testing.T) {
	for _, missing := range []string{"bench.now.flow-seconds-1 = ", "bench.now.flow-seconds-2 = ", "bench.now.flow-wanted = "} {
		b := benchOf(t, tenOClock, morningWith(twoTimes...), missing)
		flow := b.Flow()
		assert.NoError(t, flow.Err, missing)
		assert.Nil(t, flow.Thinner.Step, missing)
		assert.Nil(t, flow.Viscosity.Step, missing)
		assert.True(t, b.HasDose, "no dose hangs on it: %s", missing)
	}
}

// The viscosity is that of the cup that was chosen, at the wanted time, and none
// outside of the 30–100 s that it is made for.
// Source: ISO 2431 (from memory).
func TestTheViscosityIsThatOfTheChosenCup(t *testing.T) {
	for cup, want := range map[string]float64{"3": 0.443*40 - 200./40, "4": 1.37*40 - 200./40, "5": 3.28*40 - 220./40, "6": 6.90*40 - 570./40} {
		flow := flowOf(t, append(twoTimes, "bench.now.flow-cup = "+cup)...)
		require.NotNil(t, flow.Viscosity.Step, cup)
		assert.InDelta(t, want, unit.InSquareMillimetrePerSec.From(float64(flow.Viscosity.Value)), 1e-9, "%s mm", cup)
	}
	short := flowOf(t, "bench.now.flow-seconds-1 = 40", "bench.now.flow-thinner-2 = 10 %", "bench.now.flow-seconds-2 = 20", "bench.now.flow-wanted = 29")
	require.NoError(t, short.Err)
	assert.Nil(t, short.Viscosity.Step)
}
