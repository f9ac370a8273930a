package material_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
)

// A square metre of one coat takes about half a kilogram rolled and about double that by the gun, whose mist is lost; of what
// has volume solids on its sheet nothing is told by rule of thumb. (Common practice.)
func TestWhatACoatTakesByRuleOfThumb(t *testing.T) {
	roller, found := material.FindMethod("nap-roller")
	require.True(t, found)
	gun, found := material.FindMethod("gravity-gun")
	require.True(t, found)
	for _, c := range material.Cards {
		rolled, sprayed := c.PerCoat(roller), c.PerCoat(gun)
		switch c.Kind {
		case material.GelCoat:
			assert.InDelta(t, 0.5, float64(rolled.Value), 1e-9, c.Key)
			assert.InDelta(t, 1.1, float64(sprayed.Value), 1e-9, c.Key)
			assert.Greater(t, sprayed.Low, rolled.High, "the gun's least is over the roller's most")
		case material.FlowCoat:
			assert.InDelta(t, 0.5, float64(rolled.Value), 1e-9, c.Key)
		default:
			assert.False(t, rolled.Known || sprayed.Known, c.Key)
		}
	}
}

// Packs go from the small to the large, each size once.
func TestPacksGoFromSmallToLarge(t *testing.T) {
	for _, c := range material.Cards {
		last := 0.
		for _, p := range c.Packs {
			size, err := strconv.ParseFloat(p.Size, 64)
			require.NoError(t, err, "%s: %s", c.Key, p.Size)
			assert.Greater(t, size, last, c.Key)
			last = size
		}
	}
}

// A ratio that has to be typed has a range to be typed in; a film in hot sun has four of twenty-four hours. (Common practice.)
func TestRangesOfWhatIsTyped(t *testing.T) {
	typed := 0
	for _, c := range material.Cards {
		if r := c.RatioByMass; r.High > 0 {
			typed++
			assert.Less(t, r.Low, r.High, c.Key)
		}
		if r := c.RatioByVolume; r.High > 0 {
			typed++
			assert.Less(t, r.Low, r.High, c.Key)
		}
	}
	assert.NotZero(t, typed)
	assert.InDelta(t, 4, 24*float64(material.PaceInSun.Value), 1e-9)
}
