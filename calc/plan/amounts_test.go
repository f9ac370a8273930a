package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// A card's limit holds in its own basis, however the thinner is measured, and wax solution counts with it. By hand, at 1.25 kg/L
// of product and 0.906 of styrene: 10 % by volume are 10 × 0.906 ÷ 1.25 = 7.248 % by mass, under 7.25; 10.1 are 7.32. At
// 0.87 kg/L of a thinner 13.9 % by mass are 13.9 × 1.25 ÷ 0.87 = 19.97 % by volume, under 20; 14 are 20.1.
func TestAThinnersLimitHoldsInItsOwnBasis(t *testing.T) {
	card := func(basis material.Basis, most, wax float64) *job.Card {
		c := &job.Card{}
		c.Density.Value, c.Density.Known = 1250, true
		c.ThinnerRefuse.Value, c.ThinnerRefuse.Known, c.ThinnerBasis = unit.Share(most), true, basis
		c.Wax.Value, c.Wax.Known = unit.ByMass(wax), wax > 0
		return c
	}
	for name, c := range map[string]struct {
		card    *job.Card
		density float64
		share   float64
		byMass  bool
		holds   bool
	}{
		"by volume, just under":     {card(material.ByMass, 0.0725, 0), 906, 0.10, false, true},
		"by volume, just over":      {card(material.ByMass, 0.0725, 0), 906, 0.101, false, false},
		"by mass, just under":       {card(material.ByMass, 0.0725, 0), 906, 0.0724, true, true},
		"by mass, just over":        {card(material.ByMass, 0.0725, 0), 906, 0.0726, true, false},
		"with wax, just under":      {card(material.ByMass, 0.0725, 0.02), 906, 0.0524, true, true},
		"with wax, just over":       {card(material.ByMass, 0.0725, 0.02), 906, 0.0526, true, false},
		"limit by volume, under":    {card(material.ByVolume, 0.20, 0), 870, 0.139, true, true},
		"limit by volume, over":     {card(material.ByVolume, 0.20, 0), 870, 0.14, true, false},
		"limit by volume, as typed": {card(material.ByVolume, 0.20, 0), 870, 0.20, false, true},
	} {
		thinner := &job.Card{}
		thinner.Density.Value, thinner.Density.Known = unit.Density(c.density), true
		step := &job.Step{Thinner: working.Given(unit.Share(c.share), "thinner", unit.InPercent, "", source.Typed), ThinnerByMass: c.byMass}
		err := plan.CheckThinner(step, c.card, thinner)
		var over *plan.ThinnerError
		if c.holds {
			assert.NoError(t, err, name)
		} else {
			require.ErrorAs(t, err, &over, name)
			assert.Equal(t, c.card.ThinnerBasis == material.ByMass, over.ByMass, name)
			assert.Equal(t, c.card.Wax.Known, over.WithWax, name)
			assert.Equal(t, c.card.ThinnerRefuse.Value, over.Limit, name)
			assert.Greater(t, float64(over.Share), float64(over.Limit), name)
		}
	}
}

func useOf(t *testing.T, s plan.Step, key string) float64 {
	t.Helper()
	for _, u := range s.Used {
		if u.Card.Key == key {
			return float64(u.Mass.Value)
		}
	}
	require.Fail(t, "not used", key)
	return 0
}

// Catalyst is bought for all that cures: styrene that stays in the film counts with the product, a thinner that leaves it doesn't.
func TestCatalystIsForAllThatCures(t *testing.T) {
	plain := planOf(t, gelCoated).Buildups()[0].Steps[0]
	share := useOf(t, plain, "ketone-peroxide") / useOf(t, plain, "gelcoat")
	thinned := planOf(t, gelCoated, "buildup.1.step.1.thinner = 5 %").Buildups()[0].Steps[0]
	product, styrene := useOf(t, thinned, "gelcoat"), useOf(t, thinned, "styrene")
	require.Positive(t, styrene)
	assert.InEpsilon(t, share*(product+styrene), useOf(t, thinned, "ketone-peroxide"), 1e-9)
	leaves := planOf(t, gelCoated, "buildup.1.step.1.thinner = 5 %\ncard.styrene.stays = 0 %").Buildups()[0].Steps[0]
	assert.InEpsilon(t, share*useOf(t, leaves, "gelcoat"), useOf(t, leaves, "ketone-peroxide"), 1e-9)
}

// What a square metre takes stands beside the trade's figure once there is an area, and of a coat alone.
func TestATradesFigureNeedsACoatOnAnArea(t *testing.T) {
	steps := planOf(t, gelCoated).Buildups()[0].Steps
	takes, trade, known := steps[0].CrossCheck()
	require.True(t, known)
	assert.InEpsilon(t, useOf(t, steps[0], "gelcoat")/4/2, float64(takes.Value), 0.2, "4 m², one or two coats")
	assert.True(t, trade.Known)
	_, _, known = steps[1].CrossCheck()
	assert.False(t, known, "sanding")
	bare := planOf(t, gelCoated, "surface = ").Buildups()[0].Steps
	_, _, known = bare[0].CrossCheck()
	assert.False(t, known, "no area")
	assert.False(t, bare[0].Progress.IsDone(), "what goes on no surface isn't done either")
}

// Sanded filler makes dust of the filler's own density, sanded gel coat of the gel coat's.
func TestDustIsOfWhatIsSanded(t *testing.T) {
	run := "buildup.1.step = 1 2\nbuildup.1.step.2.by = grades\nbuildup.1.step.2.first = P120\nbuildup.1.step.2.last = P220\n"
	gel := planOf(t, gelCoated, run).Buildups()[0].Steps
	fill := planOf(t, gelCoated, run, "buildup.1.step.1.kind = fill\nbuildup.1.step.1.card = epoxy-filler\nbuildup.1.step.1.thickness = 2 mm").Buildups()[0].Steps
	for _, steps := range [][]plan.Step{gel, fill} {
		card := steps[0].Card
		density := card.CuredDensity
		if !density.Known {
			density = card.Density
		}
		require.NotNil(t, steps[1].Sand)
		assert.InEpsilon(t, 4*float64(steps[1].Taken.Value)*float64(density.Value), float64(steps[1].Sand.Dust.Value), 1e-9, card.Name)
	}
}

// A cup's mixed mass that can't be read says nothing of what was left in it.
func TestACupWithoutItsMixPutNothingOn(t *testing.T) {
	for mixed, isRefused := range map[string]bool{"junk": false, "": false, "20 g": true, "200 g": false} {
		p := plan.Make(document(t, gelCoated, "cup = 1\ncup.1.step = buildup.1.step.1\ncup.1.card = gelcoat\ncup.1.left = 30 g\ncup.1.in = 1790000000\ncup.1.ended = 1790000600\ncup.1.end = spread\ncup.1.mixed = "+mixed))
		assert.Equal(t, isRefused, p.RefusedAt("cup.1.left") != nil, "mixed %q", mixed)
		on, known := p.PutOn("cup.1")
		assert.Equal(t, mixed == "200 g", known, "mixed %q", mixed)
		if known {
			assert.InDelta(t, 0.17, float64(on.Value), 1e-12)
		}
	}
}

// A place is filled once each of its figures is there, whichever of them is missing.
func TestAPlaceWaitsForEachOfItsFigures(t *testing.T) {
	const at = "buildup.1.step.1.spot.1."
	for kind, keys := range map[string][]string{"trough": {"length", "width", "depth"}, "": {"length", "width", "depth"}, "fillet": {"length", "radius", "angle"}} {
		for _, missing := range append(keys, "") {
			lines := "buildup.1.step.1.fill-by = spots\nbuildup.1.step.1.spot = 1\n" + at + "is = " + kind
			for _, key := range keys {
				if key != missing {
					lines += "\n" + at + key + " = " + map[string]string{"length": "1 m", "width": "200 mm", "depth": "5 mm", "radius": "20 mm", "angle": "90"}[key]
				}
			}
			p := planOf(t, filled, lines)
			assert.Equal(t, missing == "", p.Buildups()[0].Steps[0].Known, "%s without %q", kind, missing)
			if missing != "" {
				assert.Error(t, p.WaitingAt(at+missing), kind)
			}
		}
	}
	none := planOf(t, filled, "buildup.1.step.1.fill-by = spots")
	assert.ErrorIs(t, none.WaitingAt("buildup.1.step.1.spot"), plan.ErrNoSpots)
	assert.False(t, none.Buildups()[0].Steps[0].Known)
}
