package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// What one wet coat of gel coat may be, as it is put on and as the surfaces lie: a
// larger limit would let a wall sag, a smaller least would not cure.
// Source: common practice, 0.20–0.60 mm flat, 0.50 on a wall or rolled, 0.40 overhead.
func TestTheLimitsOfACoatByMethodAndLie(t *testing.T) {
	for _, c := range []struct {
		method, lies string
		most         float64
	}{
		{"gravity-gun", "flat", 600}, {"gravity-gun", "wall", 500}, {"gravity-gun", "overhead", 400},
		{"nap-roller", "flat", 500}, {"nap-roller", "wall", 500}, {"nap-roller", "overhead", 400},
	} {
		p := plan.Make(document(t, overGround, "surface.1.lies = "+c.lies, "buildup.1.step.1.card = gelcoat", "buildup.1.step.1.method = "+c.method, "buildup.1.step.1.film = 350 µm"))
		require.Empty(t, p.Refused(), "%v", c)
		least, most := p.Buildups()[0].Steps[0].Coat.Limits()
		assert.InDelta(t, 200, unit.InMicrometre.From(float64(least)), 1e-9, "%v", c)
		assert.InDelta(t, c.most, unit.InMicrometre.From(float64(most)), 1e-9, "%v", c)
	}
	p := plan.Make(document(t, overGround, "buildup.1.step.1.film = 350 µm", "card.flowcoat.coat-least = 250 µm", "card.flowcoat.coat-most = 450 µm"))
	least, most := p.Buildups()[0].Steps[0].Coat.Limits()
	assert.InDelta(t, 250, unit.InMicrometre.From(float64(least)), 1e-9, "as the builder typed it")
	assert.InDelta(t, 450, unit.InMicrometre.From(float64(most)), 1e-9)
}

// A film that is meant for each coat, with no number typed, is that of one coat; of
// three it is three times as much.
func TestAFilmForEachCoatIsOfOneUntilCounted(t *testing.T) {
	for count, want := range map[string]float64{"": 1, "1": 1, "3": 3} {
		p := plan.Make(document(t, overGround, "buildup.1.step.1.film-for = each", "buildup.1.step.1.coats = "+count))
		require.Empty(t, p.Refused(), count)
		c := p.Buildups()[0].Steps[0].Coat
		assert.InDelta(t, want, float64(c.Coats.Value), 1e-12, count)
		assert.InDelta(t, 400, unit.InMicrometre.From(float64(c.WetEach.Value)), 1e-9, count)
		assert.InDelta(t, 400*want, unit.InMicrometre.From(float64(c.Wet.Value)), 1e-9, count)
	}
}
