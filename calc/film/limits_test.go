package film_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// At a limit the reading still counts, just past it no longer: a degree between
// the readings, 5 % past one of them, a tenth between the times.
func TestTheLimitsOfTwoFlowTimes(t *testing.T) {
	cause := func(a, b film.FlowReading, want float64) string {
		_, err := film.ThinnerForFlow(a, b, seconds(want))
		if err == nil {
			return ""
		}
		return err.Error()
	}
	thick := flow(0, 80, 20)
	assert.Empty(t, cause(thick, flow(0.1, 20, 21), 40), "a degree apart")
	assert.NotEmpty(t, cause(thick, flow(0.1, 20, 21.01), 40))
	assert.NotEmpty(t, cause(thick, flow(0.1, 20, 18.99), 40), "colder is as far off as warmer")
	assert.Empty(t, cause(thick, flow(0.1, 20, 20), 83.99))
	assert.NotEmpty(t, cause(thick, flow(0.1, 20, 20), 84.1), "5 % past the longer is 84 s")
	assert.Empty(t, cause(thick, flow(0.1, 20, 20), 19.05))
	assert.NotEmpty(t, cause(thick, flow(0.1, 20, 20), 19.0), "5 % past the shorter is 19.05 s")
	assert.Empty(t, cause(flow(0, 22.01, 20), flow(0.1, 20, 20), 21))
	assert.NotEmpty(t, cause(flow(0, 21.99, 20), flow(0.1, 20, 20), 21))
}

// A refusal names the figure and the limit that it missed.
func TestAFlowTimeThatIsRefusedNamesTheReadingBeside(t *testing.T) {
	for want, nearest := range map[float64]float64{100: 80, 10: 20} {
		_, err := film.ThinnerForFlow(flow(0, 80, 20), flow(0.1, 20, 20), seconds(want))
		assert.Equal(t, &film.FlowError{Cause: film.OutsideReadings, Got: want, Limit: nearest}, err)
	}
	_, err := film.ThinnerForFlow(flow(0, 0, 20), flow(0.1, -3, 20), seconds(9))
	assert.Equal(t, &film.FlowError{Cause: film.NoFlowTime, Got: -3}, err)
}

// A profile past the published table is refused, and the end of the table named.
func TestAProfilePastTheTableIsRefused(t *testing.T) {
	for _, profile := range []float64{-1, 301} {
		_, err := film.DeadFilm(typed(unit.Length(profile*1e-6), unit.InMicrometre))
		var refused *film.ProfileError
		require.ErrorAs(t, err, &refused)
		assert.InDelta(t, 300e-6, float64(refused.Most), 1e-15)
	}
	flat, err := film.DeadFilm(typed(unit.Length(0), unit.InMicrometre))
	require.NoError(t, err)
	assert.Zero(t, flat.Value, "a smooth ground swallows nothing")
}

// Between two teeth the film may lie anywhere: what it cures to at each, and
// whether it is certainly short, follow the right tooth.
func TestAComb(t *testing.T) {
	comb := film.Comb{LastWet: typed(unit.WetFilm(400e-6), unit.InMicrometre), FirstDry: typed(unit.WetFilm(450e-6), unit.InMicrometre), Basis: film.Peak}
	read := func(planned float64) film.CombReading {
		r, err := comb.Read(typed(unit.WetFilm(planned*1e-6), unit.InMicrometre), typed(unit.SolidsByVolume(0.8), unit.InPure))
		require.NoError(t, err)
		return r
	}
	r := read(500)
	assert.InDeltaSlice(t, []float64{400e-6, 450e-6, 320e-6, 360e-6, 340e-6, 75e-6},
		[]float64{float64(r.Least), float64(r.Most), float64(r.CuresLeast), float64(r.CuresMost), float64(r.CuresTo.Value), float64(r.Missing.Value)}, 1e-12)
	assert.Equal(t, film.Peak, r.Basis)
	assert.True(t, r.IsCertainlyShort)
	assert.True(t, read(450).IsCertainlyShort, "the first dry tooth didn't touch")
	assert.False(t, read(449).IsCertainlyShort)
	assert.Equal(t, []*working.Step{comb.LastWet.Step, comb.FirstDry.Step}, r.Mid.Step.From)
	for _, dry := range []unit.WetFilm{400e-6, 350e-6} {
		comb.FirstDry = typed(dry, unit.InMicrometre)
		_, err := comb.Read(typed(unit.WetFilm(500e-6), unit.InMicrometre), typed(unit.SolidsByVolume(0.8), unit.InPure))
		assert.Equal(t, &film.CombError{LastWet: 400e-6, FirstDry: dry}, err)
	}
}

// A comb of which one figure can't be says nothing, and its error names that figure.
func TestACombOfAFigureThatCantBe(t *testing.T) {
	for _, c := range []struct {
		lastWet, firstDry, planned, share float64
		meaning                           string
	}{
		{400, 30_000, 500, 0.8, "first dry tooth"}, {400, 450, 0, 0.8, "wet film planned"}, {400, 450, 30_000, 0.8, "wet film planned"},
		{400, 450, 500, 0, "share of the wet film that stays once cured"}, {400, 450, 500, 1.1, "share of the wet film that stays once cured"}, {-1, 450, 500, 0.8, "last wet tooth"},
	} {
		r, err := film.Comb{LastWet: wetFilm(c.lastWet), FirstDry: wetFilm(c.firstDry)}.Read(wetFilm(c.planned), typed(unit.SolidsByVolume(c.share), unit.InPure))
		var refused *working.RangeError
		require.ErrorAs(t, err, &refused, "%+v", c)
		assert.Equal(t, c.meaning, refused.Arg.Meaning, "%+v", c)
		assert.Zero(t, float64(r.Most)+float64(r.CuresMost)+float64(r.Mid.Value)+float64(r.Missing.Value), "%+v", c)
	}
}

// The first reading may hold thinner already: from 4 % at 60 s to 10 % at 15 s the
// time halves twice, so 30 s lie half-way, at 7 %.
func TestThinnerFromAFirstReadingThatIsntNone(t *testing.T) {
	f, err := film.ThinnerForFlow(flow(0.04, 60, 20), flow(0.10, 15, 20), seconds(30))
	require.NoError(t, err)
	assert.InDelta(t, 0.07, float64(f.Value), 1e-12)
}
