package fairing_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// epoxyPutty is resin and hardener two to one, balloons and silica, by mass.
func epoxyPutty(resin, hardener, balloons, silica, air float64) fairing.Recipe {
	part := func(kind fairing.Kind, grams, density float64) fairing.Part {
		return fairing.Part{Kind: kind, Mass: given[unit.Mass](grams, unit.InGram), Density: given[unit.Density](density, unit.InKilogramPerLitre)}
	}
	return fairing.Recipe{
		Parts: []fairing.Part{
			part(fairing.Resin, resin, 1.13), part(fairing.Hardener, hardener, 0.95),
			part(fairing.Balloons, balloons, 0.23), part(fairing.Silica, silica, 2.2),
		},
		Air: given[unit.Share](air, unit.InPure),
	}
}

// What is weighed for a volume makes that volume, at the same density.
func TestWeighedTheRecipeMakesTheVolumeWanted(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for range 100 {
		recipe := epoxyPutty(300+200*random.Float64(), 150, 60*random.Float64(), 30*random.Float64(), 0.1*random.Float64())
		wanted := given[unit.Volume](0.05+3*random.Float64(), unit.InLitre)
		masses, err := recipe.For(wanted)
		require.NoError(t, err)
		before, err := recipe.Mix()
		require.NoError(t, err)
		for i := range recipe.Parts {
			recipe.Parts[i].Mass = masses[i]
		}
		after, err := recipe.Mix()
		require.NoError(t, err)
		assert.InEpsilon(t, float64(wanted.Value), float64(after.Volume.Value), 1e-12)
		assert.InEpsilon(t, float64(before.Density.Value), float64(after.Density.Value), 1e-12)
	}
}

func TestAirLightensAPuttyAndChangesNoShare(t *testing.T) {
	solid, err := epoxyPutty(400, 200, 100, 20, 0).Mix()
	require.NoError(t, err)
	airy, err := epoxyPutty(400, 200, 100, 20, 0.1).Mix()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.9*float64(solid.Density.Value), float64(airy.Density.Value), 1e-12)
	assert.Equal(t, solid.Balloons.Value, airy.Balloons.Value)
}

func TestTooManyBalloonsAreAskedAndRefused(t *testing.T) {
	light, err := epoxyPutty(400, 200, 120, 0, 0).Mix()
	require.NoError(t, err)
	assert.False(t, light.IsDry())
	dry, err := epoxyPutty(400, 200, 180, 0, 0).Mix()
	require.NoError(t, err)
	assert.True(t, dry.IsDry())
	_, err = epoxyPutty(400, 200, 240, 0, 0).Mix()
	var refused *fairing.BalloonError
	require.True(t, errors.As(err, &refused))
	assert.Greater(t, refused.Share, fairing.MostBalloons)
}

func TestARecipeThatAddsToNothingIsRefused(t *testing.T) {
	for _, r := range []fairing.Recipe{{}, epoxyPutty(0, 0, 0, 0, 0)} {
		_, err := r.Mix()
		assert.ErrorIs(t, err, fairing.ErrNothing)
		_, err = r.For(given[unit.Volume](1, unit.InLitre))
		assert.ErrorIs(t, err, fairing.ErrNothing)
	}
	_, err := epoxyPutty(-1, 0, 0, 0, 0).Mix()
	assert.Error(t, err)
}

// A recipe of which one figure can't be makes no putty, weighs nothing and costs nothing: what was left out of
// it would be missing in the cup.
func TestNoPuttyOfAFigureThatCantBe(t *testing.T) {
	nan := math.NaN()
	price := make([]decimal.Decimal, 4)
	for meaning, recipes := range map[string][]fairing.Recipe{
		"mass of the part": {epoxyPutty(400, 200, 60, nan, 0), epoxyPutty(400, nan, 60, 10, 0), epoxyPutty(400, 200, -1, 10, 0), epoxyPutty(2e7, 200, 60, 10, 0)},
		"share of air":     {epoxyPutty(400, 200, 60, 10, 0.31), epoxyPutty(400, 200, 60, 10, -0.1), epoxyPutty(400, 200, 60, 10, nan)},
	} {
		for i, recipe := range recipes {
			_, errMix := recipe.Mix()
			masses, errFor := recipe.For(given[unit.Volume](1, unit.InLitre))
			cost, errCost := recipe.CostPerLitre(price)
			for _, err := range []error{errMix, errFor, errCost} {
				var refused *working.RangeError
				require.ErrorAs(t, err, &refused, "%s, %d", meaning, i)
				assert.Equal(t, meaning, refused.Arg.Meaning, i)
			}
			assert.Empty(t, masses)
			assert.True(t, cost.IsZero())
		}
	}
	good := epoxyPutty(400, 200, 60, 10, 0.05)
	for _, litres := range []float64{-1, nan, 1.1e4} {
		masses, err := good.For(given[unit.Volume](litres, unit.InLitre))
		assert.Error(t, err, litres)
		assert.Empty(t, masses)
	}
	good.Parts[1].Density = given[unit.Density](0, unit.InKilogramPerLitre)
	_, err := good.Mix()
	assert.Error(t, err, "nothing has no density")
}

// A litre costs as much of a large mix as of a small one.
func TestALitreCostsTheSameHoweverMuchIsMixed(t *testing.T) {
	price := []decimal.Decimal{decimal.NewFromInt(20), decimal.NewFromInt(30), decimal.NewFromInt(60), decimal.NewFromInt(25)}
	small, err := epoxyPutty(40, 20, 6, 1, 0.05).CostPerLitre(price)
	require.NoError(t, err)
	large, err := epoxyPutty(4000, 2000, 600, 100, 0.05).CostPerLitre(price)
	require.NoError(t, err)
	assert.Equal(t, small.Round(6).String(), large.Round(6).String())
	_, err = epoxyPutty(40, 20, 6, 1, 0.05).CostPerLitre(price[:1])
	assert.Equal(t, &fairing.PriceError{Parts: 4, Prices: 1}, err)
}

func TestCostPerLitre(t *testing.T) {
	recipe := epoxyPutty(1130, 0, 0, 0, 0) // a litre of resin
	price := []decimal.Decimal{decimal.RequireFromString("20"), decimal.Zero, decimal.Zero, decimal.Zero}
	got, err := recipe.CostPerLitre(price)
	require.NoError(t, err)
	assert.Equal(t, "22.6", got.Round(6).String())
	_, err = recipe.CostPerLitre(price[1:])
	var misfit *fairing.PriceError
	assert.True(t, errors.As(err, &misfit))
	price[0] = price[0].Neg()
	_, err = recipe.CostPerLitre(price)
	assert.Error(t, err)
}

// A ratio by volume is not the same ratio by mass: resin 1.13, hardener 0.95.
func TestHardenerByVolumeIsNotByMass(t *testing.T) {
	byMass, err := fairing.HardenerByMass.Of(0.4, 0.5)
	require.NoError(t, err)
	byVolume, err := fairing.HardenerByVolume.Of(0.4, 1130, 0.5, 950)
	require.NoError(t, err)
	assert.InEpsilon(t, 950./1130, float64(byVolume/byMass), 1e-12)
}

// Two litres of balloons as they lie to one of resin.
func ExampleRecipe_Mix() {
	recipe, _ := bulkRecipe(2)
	putty, _ := recipe.Mix()
	fmt.Println(unit.Number(unit.InKilogramPerLitre.From(float64(putty.Density.Value)), 3), "kg/L")
	fmt.Println(unit.Number(unit.InPercent.From(float64(putty.Balloons.Value)), 3), "% balloons by volume")
	// Output:
	// 0.75 kg/L
	// 44.4 % balloons by volume
}
