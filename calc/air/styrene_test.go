package air_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/air"
	"shedreckoner/calc/unit"
)

func content(h float64) unit.ByMass { return unit.ByMass(h) }

func TestEmissionRisesWithStyreneAndStaysUnderIt(t *testing.T) {
	for _, sprayed := range []bool{false, true} {
		last := unit.Emission(0)
		for h := 0.05; h <= 0.6; h += 0.005 {
			e, err := air.Emission(given(content(h), unit.InPercent), sprayed)
			require.NoError(t, err)
			assert.Greater(t, e.Value, last)
			assert.Less(t, float64(e.Value), h, "no more leaves than is there")
			boat, err := air.BoatEmission.Of(content(h))
			require.NoError(t, err)
			assert.GreaterOrEqual(t, e.Value, boat, "the larger is shown")
			last = e.Value
		}
	}
}

// In print the branches change at h = 0.33; the larger is never below print.
func TestUnifiedFactorsAreNeverBelowPrint(t *testing.T) {
	for h := 0.05; h <= 0.6; h += 0.0005 {
		sprayed, other := 0.445*h, 0.185*h
		if h >= 0.33 {
			sprayed, other = 1.03646*h-0.195, 0.4506*h-0.0505
		}
		got, err := air.SprayedEmission.Of(content(h))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(got), sprayed-1e-12)
		assert.InDelta(t, sprayed, float64(got), 0.4/2000, "but for the crossing it is print's")
		got, err = air.OtherEmission.Of(content(h))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, float64(got), other-1e-12)
	}
}

// At 42 % the sprayed factor passes the rule for boats; rolled stays with it.
func TestSprayingGivesOffMore(t *testing.T) {
	h := given(content(0.42), unit.InPercent)
	rolled, err := air.Emission(h, false)
	require.NoError(t, err)
	sprayed, err := air.Emission(h, true)
	require.NoError(t, err)
	assert.InDelta(t, 0.445*math.Pow(42, 1.675), unit.InGramPerKilogram.From(float64(rolled.Value)), 1e-9)
	assert.InDelta(t, 240.3, unit.InGramPerKilogram.From(float64(sprayed.Value)), 0.05, "1.03646 × 0.42 − 0.195")
}

func TestThinningAddsStyrene(t *testing.T) {
	h, err := air.ThinnedContent.Of(0.35, 0.05)
	require.NoError(t, err)
	assert.InDelta(t, 0.40/1.05, float64(h), 1e-12)
	same, err := air.ThinnedContent.Of(0.35, 0)
	require.NoError(t, err)
	assert.Equal(t, content(0.35), same)
	_, err = air.BoatEmission.Of(0.7)
	assert.Error(t, err)
}

// The printed formula of the University of Toledo: 403 ft³ of vapour for a pint
// at specific gravity 1, which is air of 70 °F.
func TestAirAgreesWithThePrintedFormula(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	warm := unit.Of[unit.Temperature](70, unit.InFahrenheit)
	for range 100 {
		sg, pints, k, mw, ppm := 0.7+random.Float64(), 3*random.Float64(), 1+9*random.Float64(), 30+150*random.Float64(), 5+200*random.Float64()
		c, err := air.Concentration.Of(unit.Of[unit.Share](ppm, unit.InPartsPerMillion), unit.Of[unit.MolarMass](mw, unit.InGramPerMole), air.Atmosphere.Value, warm)
		require.NoError(t, err)
		q, err := air.AirFor.Of(unit.Factor(k), unit.MassFlow(unit.InUSPint.SI(pints)*sg*1000/60), c)
		require.NoError(t, err)
		assert.InEpsilon(t, 403*sg*pints*k*1e6/(mw*ppm), unit.InCubicFootPerMinute.From(float64(q)), 0.5/403, "402.5 to 403.5 is printed 403")
	}
}

func TestTheLowestLimitIsTheDefault(t *testing.T) {
	lowest := air.LowestExposure()
	for _, e := range air.Exposures {
		assert.LessOrEqual(t, lowest.EightHours, e.EightHours)
		assert.Greater(t, e.Short, e.EightHours)
		assert.NotNil(t, e.Source.Document)
		assert.NotEmpty(t, e.Dated)
		assert.Equal(t, e.EightHours, e.Limit().Value)
	}
}

// Half a kilogram of flow coat at 36 % in an hour: no door brings that under the lowest limit.
func TestACupIsBeyondADoor(t *testing.T) {
	e, err := air.Emission(given(content(0.36), unit.InPercent), false)
	require.NoError(t, err)
	m, err := air.GivenOff.Figure(e, given(unit.Mass(0.5), unit.InKilogram))
	require.NoError(t, err)
	g, err := air.Rate.Figure(m, air.LeavesWithin)
	require.NoError(t, err)
	q, err := air.StyreneAir(g, air.LowestExposure().Limit(), celsius(25), air.MixingFactor)
	require.NoError(t, err)
	assert.InDelta(t, 10570, unit.InCubicMetrePerHour.From(float64(q.Value)), 30, "0.5 × 0.445 × 36^1.675 g/h over 42.57 mg/m³, five times")
	assert.True(t, air.ExceedsDoorAir(q.Value))
	assert.True(t, air.ExceedsDoorAir(unit.AirFlow(math.NaN())))
	assert.False(t, air.ExceedsDoorAir(unit.Of[unit.AirFlow](1000, unit.InCubicMetrePerHour)))
	assert.Len(t, q.Step.Texts(), 7)
}

func TestWarmAirHoldsLessForTheSameShare(t *testing.T) {
	last := unit.AirFlow(0)
	for c := -20.0; c <= 60; c += 5 {
		q, err := air.StyreneAir(given(unit.Of[unit.MassFlow](100, unit.InGramPerHour), unit.InGramPerHour), air.LowestExposure().Limit(), celsius(c), air.MixingFactor)
		require.NoError(t, err)
		assert.Greater(t, q.Value, last)
		last = q.Value
	}
}

func TestTheExplosiveLimitInAClosedSpace(t *testing.T) {
	share := func(grams, cubicMetres float64) unit.Share {
		x, err := air.InSpace(given(unit.Of[unit.Mass](grams, unit.InGram), unit.InGram), given(unit.Volume(cubicMetres), unit.InCubicMetre), celsius(30))
		require.NoError(t, err)
		return x.Value
	}
	assert.InDelta(t, 1, float64(share(37.68, 1)), 0.001, "0.9 % of a cubic metre is 9 L, or 37.7 g at 4.187 mg/m³ a ppm")
	assert.InDelta(t, float64(share(10, 1)), float64(share(5, 0.5)), 1e-12)
	assert.Equal(t, air.BelowTenth, air.DangerOf(share(3, 1)))
	assert.Equal(t, air.Hazardous, air.DangerOf(share(5, 1)))
	assert.Equal(t, air.Explosive, air.DangerOf(share(40, 1)))
	assert.Equal(t, air.Explosive, air.DangerOf(unit.Share(math.NaN())))
	for x, danger := range map[unit.Share]air.Danger{0.0999: air.BelowTenth, 0.1: air.Hazardous, 0.9999: air.Hazardous, 1: air.Explosive} {
		assert.Equal(t, danger, air.DangerOf(x), "at %v of the limit: on it is over it", x)
	}
	_, err := air.InSpace(given(unit.Mass(0.1), unit.InGram), given(unit.Volume(0), unit.InCubicMetre), celsius(25))
	assert.Error(t, err, "no volume")
}

// However much is put on, air holds no more vapour than saturates it: over about
// 27 °C that is enough to burn, below it is not.
func TestAirHoldsNoMoreThanSaturatesIt(t *testing.T) {
	flood := func(c float64) float64 {
		x, err := air.InSpace(given(unit.Mass(100), unit.InGram), given(unit.Volume(1), unit.InCubicMetre), celsius(c))
		require.NoError(t, err)
		return float64(x.Value)
	}
	assert.InDelta(t, 0.5915/0.9, flood(20), 0.0005)
	assert.Less(t, flood(26), 1.)
	assert.Greater(t, flood(27.5), 1.)
}
