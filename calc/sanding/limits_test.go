package sanding_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
)

// A step exactly as wide as what is asked about is none to ask about: P220 to
// P400 is 68 to 35 µm.
func TestAStepAsWideAsTheLimitHolds(t *testing.T) {
	ratio, err := sanding.Ratio(220, 400)
	require.NoError(t, err)
	assert.InDelta(t, 68./35, float64(ratio), 1e-12, "the coarser over the finer")
	jumps, err := sanding.Validate([]sanding.Grade{220, 400}, ratio)
	require.NoError(t, err)
	assert.Empty(t, jumps)
	jumps, err = sanding.Validate([]sanding.Grade{220, 400}, ratio*0.999)
	require.NoError(t, err)
	assert.Equal(t, []sanding.Jump{{At: 1, From: 220, To: 400, Ratio: ratio, Kind: sanding.TooWide}}, jumps)
	jumps, err = sanding.Validate([]sanding.Grade{400, 400, 220}, ratio)
	require.NoError(t, err)
	require.Len(t, jumps, 2)
	assert.Equal(t, []sanding.JumpKind{sanding.Repeated, sanding.OutOfOrder}, []sanding.JumpKind{jumps[0].Kind, jumps[1].Kind})
	assert.Equal(t, []int{1, 2}, []int{jumps[0].At, jumps[1].At})
}

// A grade that is in no table has no scratches to reckon with.
func TestAnUnknownGradeIsRefusedEverywhere(t *testing.T) {
	k, flatten := given[unit.Factor](0.33, unit.InPure), micrometres(60)
	_, err := sanding.Ladder([]sanding.Turn{{Grade: 220}, {Grade: 410}}, k, flatten)
	assert.Error(t, err)
	_, err = sanding.Runs([]sanding.Turn{{Grade: 410}}, k, flatten)
	assert.Error(t, err)
	_, err = sanding.Validate([]sanding.Grade{410, 800}, 2)
	assert.Error(t, err)
	for _, pair := range [][2]sanding.Grade{{220, 410}, {410, 220}} {
		ratio, err := sanding.Ratio(pair[0], pair[1])
		assert.Error(t, err)
		assert.Zero(t, ratio)
	}
	size, err := sanding.Grade(410).MeanSize()
	assert.Error(t, err)
	assert.Zero(t, size)
	grade, err := sanding.American(80)
	assert.Error(t, err)
	assert.Zero(t, grade)
	for _, text := range []string{"P0", "P-80", "US 0"} {
		_, err = sanding.ReadGrade(text)
		assert.Error(t, err, text)
	}
}

// The first polish takes the deeper of the last scratches and its own least; the
// later ones take their own; no polish takes nothing.
func TestPolishTakesTheDeeperOfTwo(t *testing.T) {
	for own, want := range map[float64]float64{3: 5, 8: 8} {
		films, err := sanding.Polish(micrometres(5), micrometres(own), micrometres(1))
		require.NoError(t, err)
		require.Len(t, films, 2)
		assert.InDelta(t, want*1e-6, float64(films[0].Value), 1e-15)
		assert.InDelta(t, 1e-6, float64(films[1].Value), 1e-15)
	}
	none, err := sanding.Polish(micrometres(5))
	require.NoError(t, err)
	assert.Empty(t, none)
}

// Before and after the wrong way round is no removal of −20 µm.
func TestARemovalBelowNothingIsRefused(t *testing.T) {
	_, err := sanding.ByReadings.Of(460e-6, 480e-6)
	assert.Error(t, err)
	_, err = sanding.ByWeight.Of(0.099, 0.100, 1, 1000)
	assert.Error(t, err)
	same, err := sanding.ByReadings.Of(460e-6, 460e-6)
	require.NoError(t, err)
	assert.Zero(t, same)
}
