package sanding_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
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
	assert.Equal(t, sanding.Jump{At: 1, From: 400, To: 400, Ratio: 1, Kind: sanding.Repeated}, jumps[0])
	assert.Equal(t, sanding.Jump{At: 2, From: 400, To: 220, Ratio: 1 / ratio, Kind: sanding.OutOfOrder}, jumps[1])
	_, err = sanding.Propose(400, 220, nil, 1.8)
	assert.Equal(t, &sanding.Jump{At: 1, From: 400, To: 220, Ratio: 1 / ratio, Kind: sanding.OutOfOrder}, err)
}

// A ladder of a figure that can't be is none: its error says which, and no stage stands beside it.
func TestNoLadderOfAFigureThatCantBe(t *testing.T) {
	k, flatten, turns := given[unit.Factor](0.33, unit.InPure), micrometres(60), []sanding.Turn{{Grade: 220}, {Grade: 400}}
	var grade *sanding.GradeError
	_, err := sanding.Propose(410, 800, nil, 1.8)
	assert.ErrorAs(t, err, &grade)
	stages, err := sanding.Ladder([]sanding.Turn{{Grade: 410}}, k, flatten)
	assert.ErrorAs(t, err, &grade)
	assert.Empty(t, stages)
	var refused *working.RangeError
	for _, share := range []float64{0.04, 1.1, math.NaN()} {
		k := given[unit.Factor](share, unit.InPure)
		stages, err = sanding.Ladder(turns, k, flatten)
		require.ErrorAs(t, err, &refused, share)
		assert.Empty(t, stages)
		_, err = sanding.Runs(turns, k, flatten)
		assert.ErrorAs(t, err, &refused, share)
	}
	for _, own := range []float64{-1, 51, math.NaN()} {
		_, err = sanding.Runs(turns, k, flatten, micrometres(own))
		require.ErrorAs(t, err, &refused, own)
		assert.Equal(t, "least film that the compound takes", refused.Arg.Meaning)
	}
}

// Scratches deeper than any compound takes are taken none the less; a gauge's loss is before less after.
func TestFilmThatIsTaken(t *testing.T) {
	films, err := sanding.Polish(micrometres(60), micrometres(3))
	require.NoError(t, err)
	assert.InDelta(t, 60e-6, float64(films[0].Value), 1e-15)
	off, err := sanding.Gauged(micrometres(500), micrometres(480), 5e-6)
	require.NoError(t, err)
	assert.InDelta(t, 20e-6, float64(off.Value), 1e-15)
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
