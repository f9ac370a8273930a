package film_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func TestCoats(t *testing.T) {
	for _, c := range []struct {
		total, most, each float64
		count             unit.Factor
	}{
		{400, 410, 400, 1},
		{820, 410, 410, 2},
		{820.9, 410, 410.45, 2}, // within the micrometre of slack
		{821.5, 410, 821.5 / 3, 3},
		{1, 410, 1, 1},
	} {
		count, each := inCoats(t, c.total, c.most)
		assert.Equal(t, c.count, count, c.total)
		assert.InDelta(t, c.each, each, 1e-9)
	}
}

// Coats hold the film, none is over the largest by more than the slack, and one
// coat fewer would not do.
func TestCoatsAreTheFewestThatHoldTheFilm(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	for range 500 {
		total, most := between(random, 50, 3000), between(random, 60, 500)
		count, each := inCoats(t, total, most)
		n := float64(count)
		assert.InEpsilon(t, total, n*each, 1e-12)
		assert.LessOrEqual(t, each, most+1)
		if n > 1 {
			assert.Greater(t, total-1, (n-1)*most-1e-6)
		}
	}
}

// inCoats is how many coats hold a film, and the micrometres of each.
func inCoats(t *testing.T, total, most float64) (unit.Factor, float64) {
	t.Helper()
	count, err := film.CoatCount.Figure(wetFilm(total), wetFilm(most))
	require.NoError(t, err)
	each, err := film.FilmPerCoat.Figure(wetFilm(total), count)
	require.NoError(t, err)
	return count.Value, unit.InMicrometre.From(float64(each.Value))
}

func TestNoCoatsOfNothing(t *testing.T) {
	var outside *working.RangeError
	_, err := film.CoatCount.Figure(wetFilm(500), wetFilm(0))
	assert.ErrorAs(t, err, &outside)
}

func TestComb(t *testing.T) {
	comb := film.Comb{LastWet: wetFilm(350), FirstDry: wetFilm(400), Basis: film.Peak}
	r, err := comb.Read(wetFilm(450), typed(unit.SolidsByVolume(0.8), unit.InPercent))
	require.NoError(t, err)
	assert.InDelta(t, 375e-6, float64(r.Mid.Value), 1e-12)
	assert.InDelta(t, 300e-6, float64(r.CuresTo.Value), 1e-12)
	assert.InDelta(t, float64(r.CuresTo.Value), float64(r.CuresLeast+r.CuresMost)/2, 1e-12, "the middle of what it lies between")
	assert.Less(t, r.CuresLeast, r.CuresMost)
	assert.InDelta(t, 75e-6, float64(r.Missing.Value), 1e-12)
	assert.True(t, r.IsCertainlyShort)
	assert.Equal(t, film.Peak, r.Basis)
	assert.Less(t, r.Least, r.Mid.Value)
	assert.Greater(t, r.Most, r.Mid.Value)

	thick, err := comb.Read(wetFilm(360), typed(unit.SolidsByVolume(0.8), unit.InPercent))
	require.NoError(t, err)
	assert.Negative(t, float64(thick.Missing.Value))
	assert.False(t, thick.IsCertainlyShort)

	var crossed *film.CombError
	_, err = film.Comb{LastWet: wetFilm(400), FirstDry: wetFilm(400)}.Read(wetFilm(450), typed(unit.SolidsByVolume(0.8), unit.InPercent))
	assert.ErrorAs(t, err, &crossed)
}
