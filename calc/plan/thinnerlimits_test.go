package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
)

// A card's limit holds in its own basis, however the thinner is typed, wax solution counted with it where both
// go by mass. By hand, the least that is too much, of gel coat of 1.25 kg/L and styrene of 0.906: 7.25 % by mass, 7.25 × 1.25 ÷
// 0.906 = 10.003 % by volume; of flow coat with 2 % of wax solution 5.25 % and 7.243 %; of primer of 1.4 kg/L and its
// thinner of 0.87 by the litre 20 %, by mass 20 × 0.87 ÷ 1.4 = 12.429 %. A litre taken for a kilogram thins a third too much.
func TestTheThinnerLimitHoldsInEitherBasis(t *testing.T) {
	for _, c := range []struct{ card, by, within, beyond string }{
		{"gelcoat", "mass", "7.25 %", "7.26 %"}, {"gelcoat", "volume", "10.00 %", "10.01 %"},
		{"flowcoat", "mass", "5.25 %", "5.26 %"}, {"flowcoat", "volume", "7.24 %", "7.25 %"},
		{"primer", "volume", "20 %", "20.1 %"}, {"primer", "mass", "12.42 %", "12.44 %"},
	} {
		at := func(share string) error {
			p := planSix(t, "buildup.1.step.1.card = "+c.card+"\nbuildup.1.step.1.film = 150 µm\nbuildup.1.step.1.thinner-by = "+c.by+"\nbuildup.1.step.1.thinner = "+share)
			return p.RefusedAt("buildup.1.step.1.thinner")
		}
		assert.NoError(t, at(c.within), "%v", c)
		var over *plan.ThinnerError
		require.ErrorAs(t, at(c.beyond), &over, "%v", c)
		assert.InDelta(t, map[string]float64{"gelcoat": 0.0725, "flowcoat": 0.0725, "primer": 0.20}[c.card], float64(over.Limit), 1e-12)
		assert.InDelta(t, float64(over.Limit), float64(over.Share), 1.5e-3, "in the basis of the limit")
		assert.Equal(t, c.card != "primer", over.ByMass)
		assert.Equal(t, c.card == "flowcoat", over.WithWax)
	}
}

// Catalyst cures all that polymerizes: product, styrene and wax solution. By hand, 2 % of it and a fifth
// to spare: of 1 kg of gel coat with 5 % of styrene 1.05 × 0.02 × 1.2 = 25.2 g.
func TestCatalystIsBoughtForTheStyreneToo(t *testing.T) {
	for _, card := range []string{"gelcoat", "flowcoat"} {
		s := planSix(t, "buildup.1.step.1.card = "+card+"\nbuildup.1.step.1.thinner-by = mass\nbuildup.1.step.1.thinner = 5 %").Buildups()[0].Steps[0]
		masses := map[string]float64{}
		for _, u := range s.Used {
			masses[u.Card.Key] += float64(u.Mass.Value)
		}
		product := masses[card]
		require.Positive(t, product)
		assert.InEpsilon(t, 0.05*product, masses["styrene"], 1e-9)
		all := product + masses["styrene"] + masses[material.WaxKey]
		assert.InEpsilon(t, all*float64(s.Card.HardenerShare.Value)*1.2, masses["ketone-peroxide"], 1e-9, card)

		leaves := planSix(t, "card.styrene.stays = 0 %\nbuildup.1.step.1.card = "+card+"\nbuildup.1.step.1.thinner-by = mass\nbuildup.1.step.1.thinner = 5 %").Buildups()[0].Steps[0]
		for _, u := range leaves.Used {
			if u.Card.Key == "ketone-peroxide" {
				assert.InEpsilon(t, (product+masses[material.WaxKey])*float64(s.Card.HardenerShare.Value)*1.2, float64(u.Mass.Value), 1e-9, "a thinner that leaves the film isn't cured")
			}
		}
	}
}
