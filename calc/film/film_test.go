package film_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/film"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, film.Rules()...) }

func typed[Q unit.Quantity](v Q, scale unit.Scale) working.Figure[Q] {
	return working.Given(v, "typed", scale, "", source.Typed)
}

func wetFilm(micrometres float64) working.Figure[unit.WetFilm] {
	return typed(unit.Of[unit.WetFilm](micrometres, unit.InMicrometre), unit.InMicrometre)
}

func between(random *rand.Rand, min, max float64) float64 { return min + random.Float64()*(max-min) }

// What goes one way comes back the other, and films, areas and densities scale
// what is needed in proportion.
func TestRoundTripsAndScaling(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for range 200 {
		vs := unit.SolidsByVolume(between(random, 0.2, 1))
		dft := unit.DryFilm(between(random, 20e-6, 1e-3))
		wft, err := film.Wet.Of(dft, vs)
		require.NoError(t, err)
		back, err := film.Dry.Of(wft, vs)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(dft), float64(back), 1e-12)

		w := unit.ByMass(between(random, 0.001, 0.2))
		rho, rhoT := unit.Density(between(random, 900, 1800)), unit.Density(between(random, 800, 1000))
		byVolume, err := film.ThinnerByVolume.Of(w, rho, rhoT)
		require.NoError(t, err)
		byMass, err := film.ThinnerByMass.Of(byVolume, rho, rhoT)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(w), float64(byMass), 1e-12)

		g, err := film.MassPerArea.Of(wft, rho)
		require.NoError(t, err)
		again, err := film.FilmOfMass.Of(g, rho)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(wft), float64(again), 1e-12)

		once, err := film.Mix.Of(3, wft, 0, 0.1)
		require.NoError(t, err)
		twice, err := film.Mix.Of(6, wft, 0, 0.1)
		require.NoError(t, err)
		assert.InEpsilon(t, 2*float64(once), float64(twice), 1e-12)
	}
}

// A solvent adds nothing to what stays, so the product as sold that a dry film
// takes is the same however far it is thinned.
func TestSolventDoesNotChangeTheProductNeeded(t *testing.T) {
	need := func(thinner unit.ByVolume) float64 {
		vs, err := film.Thinned.Of(0.5, 0, thinner, 0)
		require.NoError(t, err)
		wft, err := film.Wet.Of(75e-6, vs)
		require.NoError(t, err)
		mix, err := film.Mix.Of(12, wft, 0, 0.42)
		require.NoError(t, err)
		sold, err := film.AsSold.Of(mix, thinner)
		require.NoError(t, err)
		return float64(sold)
	}
	for _, thinner := range []unit.ByVolume{0.05, 0.1, 0.25, 0.5} {
		assert.InEpsilon(t, need(0), need(thinner), 1e-12)
	}
}

// The mass of the mix is that of its parts.
func TestMassIsKeptByMixing(t *testing.T) {
	mix, thinner := unit.Volume(0.01), unit.ByVolume(0.069)
	rho, err := film.MixDensity.Of(1250, thinner, 906)
	require.NoError(t, err)
	whole, err := film.Weight.Of(mix, rho)
	require.NoError(t, err)
	sold, err := film.AsSold.Of(mix, thinner)
	require.NoError(t, err)
	styrene, err := film.Thinner.Of(sold, thinner)
	require.NoError(t, err)
	assert.InEpsilon(t, float64(mix), float64(sold+styrene), 1e-12)
	assert.InEpsilon(t, float64(whole), float64(sold)*1250+float64(styrene)*906, 1e-12)
}

// The cured mass follows from the film and the cured density, or from the mass
// laid on and the share of it that stays: the same either way.
func TestCuredMassTwoWays(t *testing.T) {
	const rho, solidsByMass, vs = 1250, 0.9, 0.83
	cured, err := film.CuredDensity.Of(rho, solidsByMass, vs)
	require.NoError(t, err)
	kept, err := film.Kept.Of(8, 500e-6, cured)
	require.NoError(t, err)
	wft, err := film.Wet.Of(500e-6, vs)
	require.NoError(t, err)
	assert.InEpsilon(t, 8*float64(wft)*rho*solidsByMass, float64(kept), 1e-12)
}

// More thinner leaves less behind, unless what stays is as dense in solids as
// the product itself.
func TestThinningLowersTheCuredShare(t *testing.T) {
	last := unit.SolidsByVolume(1)
	for thinner := unit.ByVolume(0); thinner <= 0.5; thinner += 0.05 {
		vs, err := film.Thinned.Of(0.8, 0.5, thinner, 0.14)
		require.NoError(t, err)
		assert.Less(t, vs, last)
		last = vs
	}
	same, err := film.Thinned.Of(0.86, 1, 0.3, 0.14)
	require.NoError(t, err)
	assert.InDelta(t, 0.86, float64(same), 1e-12)
}

func TestMeanOfPeakTakesHalfTheTexture(t *testing.T) {
	mean, err := film.MeanOfPeak.Of(560e-6, 120e-6)
	require.NoError(t, err)
	assert.InDelta(t, 500e-6, float64(mean), 1e-12)
	assert.Equal(t, "peak", film.Peak.String())
	assert.Equal(t, "mean", film.Mean.String())
}

func TestASmoothGroundSwallowsNothing(t *testing.T) {
	f, err := film.DeadFilm(typed(unit.Length(0), unit.InMicrometre))
	require.NoError(t, err)
	assert.Zero(t, f.Value)
	var outside *film.ProfileError
	_, err = film.DeadFilm(typed(301*unit.Micrometre, unit.InMicrometre))
	require.ErrorAs(t, err, &outside)
	_, err = film.DeadFilm(typed(-unit.Micrometre, unit.InMicrometre))
	require.ErrorAs(t, err, &outside)
}
