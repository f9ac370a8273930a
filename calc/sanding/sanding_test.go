package sanding_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestRules(t *testing.T) { workingtest.Check(t, sanding.Rules()...) }

func TestTheTableIsComplete(t *testing.T) {
	grades := sanding.Grades()
	require.Len(t, grades, 28)
	for i := 1; i < len(grades); i++ {
		ratio, err := sanding.Ratio(grades[i-1], grades[i])
		require.NoError(t, err)
		assert.Greater(t, grades[i], grades[i-1])
		assert.Greater(t, float64(ratio), 1.1, "%s is clearly finer than %s", grades[i], grades[i-1])
		assert.Less(t, float64(ratio), 1.5, "no grade is missing between %s and %s", grades[i-1], grades[i])
	}
}

func TestGradesOfTwoSystemsAreKeptApart(t *testing.T) {
	for text, want := range map[string]sanding.Grade{"P220": 220, " p 1000 ": 1000, "US 400": 800, "us320": 400} {
		got, err := sanding.ReadGrade(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	for text, cause := range map[string]sanding.GradeCause{
		"400": sanding.WhichSystem, "P410": sanding.UnknownGrade, "US 80": sanding.NotMapped, "US 800": sanding.NotMapped,
		"": sanding.UnknownGrade, "coarse": sanding.UnknownGrade, "SU400": sanding.UnknownGrade, "P-220": sanding.UnknownGrade,
		"PP220": sanding.UnknownGrade, "P220.5": sanding.UnknownGrade, "0": sanding.UnknownGrade, "-400": sanding.UnknownGrade, "US 0": sanding.UnknownGrade,
		"99999999999999999999": sanding.UnknownGrade,
	} {
		got, err := sanding.ReadGrade(text)
		assert.Zero(t, got, "%q: no grade beside its refusal", text)
		var refused *sanding.GradeError
		require.True(t, errors.As(err, &refused), text)
		assert.Equal(t, cause, refused.Cause, text)
	}
}

// The American standard's own median sizes (UAMA for ANSI B74.18, through GNU
// units 2.22) are finer than the P grades that the trade puts beside them, so
// the film taken is never understated, nor by more than half overstated.
func TestAmericanGradesErrToTheSafeSide(t *testing.T) {
	for number, median := range map[int]float64{320: 29.5, 400: 18.25, 500: 13.9, 600: 10.55} {
		g, err := sanding.American(number)
		require.NoError(t, err)
		size, err := g.MeanSize()
		require.NoError(t, err)
		assert.Greater(t, unit.InMicrometre.From(float64(size)), median, number)
		assert.Less(t, unit.InMicrometre.From(float64(size)), 1.5*median, number)
	}
}

func TestOwnRemovalTakesTheAssumptionsPlace(t *testing.T) {
	own := micrometres(7)
	stages, err := sanding.Ladder([]sanding.Turn{{Grade: 220}, {Grade: 400, Own: &own}, {Grade: 800}}, given[unit.Factor](0.33, unit.InPure), micrometres(60))
	require.NoError(t, err)
	assert.Equal(t, own.Value, stages[1].Takes.Value)
	assert.InDelta(t, 60e-6, float64(stages[0].Takes.Value), 1e-12)
	assert.InDelta(t, 0.33*35e-6, float64(stages[2].Takes.Value), 1e-12, "the next still takes the scratches")
}

func TestTheBasisOfTheFilmSetsWhatTheTextureCosts(t *testing.T) {
	texture := given[unit.Length](120, unit.InMicrometre)
	peak, err := sanding.Texture.Figure(sanding.OfPeak, texture)
	require.NoError(t, err)
	mean, err := sanding.Texture.Figure(sanding.OfMean, texture)
	require.NoError(t, err)
	assert.InDelta(t, 120e-6, float64(peak.Value), 1e-15)
	assert.InDelta(t, 60e-6, float64(mean.Value), 1e-15)
}

func TestPolishNeverTakesLessThanItsOwn(t *testing.T) {
	films, err := sanding.Polish(micrometres(2.8), micrometres(3), micrometres(1))
	require.NoError(t, err)
	require.Len(t, films, 2)
	assert.InDelta(t, 3e-6, float64(films[0].Value), 1e-15)
	assert.InDelta(t, 1e-6, float64(films[1].Value), 1e-15)
}

// A run begun finer takes less; begun at its last grade, texture and polish.
func TestRunsFromEachGrade(t *testing.T) {
	turns := []sanding.Turn{{Grade: 220}, {Grade: 320}, {Grade: 600}, {Grade: 1200}}
	runs, err := sanding.Runs(turns, given[unit.Factor](1./3, unit.InPure), micrometres(50), micrometres(3), micrometres(1))
	require.NoError(t, err)
	require.Len(t, runs, 4)
	assert.InDelta(t, 50+(68+46.2+25.8+15.3)/3+1, unit.InMicrometre.From(float64(runs[0].Value)), 1e-9)
	assert.InDelta(t, 50+15.3/3+1, unit.InMicrometre.From(float64(runs[3].Value)), 1e-9)
	for i := 1; i < len(runs); i++ {
		assert.Less(t, runs[i].Value, runs[i-1].Value)
	}
}

func TestEveryProposalHolds(t *testing.T) {
	grades := sanding.Grades()
	for i, first := range grades {
		for _, last := range grades[i:] {
			sequence, err := sanding.Propose(first, last, nil, 1.8)
			require.NoError(t, err)
			assert.Equal(t, first, sequence[0])
			assert.Equal(t, last, sequence[len(sequence)-1])
			jumps, err := sanding.Validate(sequence, 1.8)
			require.NoError(t, err)
			assert.Empty(t, jumps, sequence)
			coarse, _ := first.MeanSize()
			fine, _ := last.MeanSize()
			fewest := math.Log(float64(coarse/fine)) / math.Log(1.8)
			assert.GreaterOrEqual(t, float64(len(sequence)-1), fewest-1e-9)
		}
	}
}

func TestAProposalKeepsToTheStock(t *testing.T) {
	stock := []sanding.Grade{180, 220, 320, 400, 600, 800, 1000, 1200}
	sequence, err := sanding.Propose(220, 1200, stock, 1.8)
	require.NoError(t, err)
	assert.Equal(t, []sanding.Grade{220, 320, 600, 1200}, sequence)
	_, err = sanding.Propose(180, 400, []sanding.Grade{80}, 1.8)
	var gap *sanding.NoSequenceError
	require.True(t, errors.As(err, &gap))
	assert.Equal(t, sanding.Grade(180), gap.From)
	assert.InDelta(t, 2.343, float64(gap.Ratio), 0.001)
	_, err = sanding.Propose(400, 180, nil, 1.8)
	var order *sanding.Jump
	require.True(t, errors.As(err, &order))
	assert.Equal(t, sanding.OutOfOrder, order.Kind)
}

// Common practice: P400 to P800 is a step in use (1.6), P180 to P400 leaves
// scratches in one ladder in use (2.34) and is asked about.
func TestValidateAsksAndRefuses(t *testing.T) {
	jumps, err := sanding.Validate([]sanding.Grade{180, 400, 800, 800, 320}, 2.0)
	require.NoError(t, err)
	require.Len(t, jumps, 3)
	assert.Equal(t, sanding.TooWide, jumps[0].Kind)
	assert.Equal(t, 1, jumps[0].At)
	assert.Equal(t, sanding.Repeated, jumps[1].Kind)
	assert.Equal(t, sanding.OutOfOrder, jumps[2].Kind)
	_, err = sanding.Validate([]sanding.Grade{180, 410}, 2.0)
	assert.Error(t, err)
}

func TestADifferenceLostInTheScaleIsRefused(t *testing.T) {
	area, cured := given[unit.Area](0.01, unit.InSquareMetre), given[unit.Density](1.3, unit.InKilogramPerLitre)
	gram := func(n float64) unit.Mass { return unit.Of[unit.Mass](n, unit.InGram) }
	before := given[unit.Mass](100, unit.InGram)
	got, err := sanding.Weighed(before, given[unit.Mass](99.8, unit.InGram), area, cured, gram(0.1))
	require.NoError(t, err)
	assert.InDelta(t, 15.38e-6, float64(got.Value), 1e-8)
	for _, after := range []float64{99.9, 100, 101, math.NaN()} {
		_, err := sanding.Weighed(before, given[unit.Mass](after, unit.InGram), area, cured, gram(0.1))
		var lost *sanding.TooFineError
		assert.True(t, errors.As(err, &lost), after)
	}
	var lost *sanding.TooFineError
	_, err = sanding.Gauged(micrometres(500), micrometres(480), 0)
	require.ErrorAs(t, err, &lost, "a gauge without a step says nothing of what it loses")
	_, err = sanding.Gauged(micrometres(500), micrometres(480), 25e-6)
	require.ErrorAs(t, err, &lost)
	assert.InDelta(t, 20e-6, lost.Difference, 1e-12)
	assert.InDelta(t, 25e-6, lost.Step, 1e-12)
}

// One micrometre off one square metre at 1 kg/L is one gram of dust.
func TestDust(t *testing.T) {
	m, err := sanding.Dust.Of(1, 1e-6, 1000)
	require.NoError(t, err)
	assert.InDelta(t, 1e-3, float64(m), 1e-15)
}
