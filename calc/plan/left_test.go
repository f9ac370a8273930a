package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
)

// Two coats of 300 and 100 µm, then 150 µm sanded off: the upper coat is gone,
// 250 µm of the lower stay, and what stays of each adds up to what stays of all.
func TestTheUppermostCoatGoesFirst(t *testing.T) {
	b := planOf(t, gelCoated, `
buildup.1.step.1.film = 300 µm
buildup.1.step.2.kind = coat
buildup.1.step.2.card = gelcoat
buildup.1.step.2.method = gravity-gun
buildup.1.step.2.film = 100 µm
buildup.1.step.2.film-is = cured
buildup.1.step.3.kind = sand
buildup.1.step.3.by = taken
buildup.1.step.3.taken = 150 µm`).Buildups()[0]
	lower, upper := b.Steps[0], b.Steps[1]
	assert.InDelta(t, 250, micrometres(b.Left.Value), 1e-9)
	assert.Zero(t, upper.Kept.Value)
	density := lower.Card.CuredDensity.Value
	if !lower.Card.CuredDensity.Known {
		density = lower.Card.Density.Value
	}
	assert.InDelta(t, 4*250e-6*float64(density), float64(lower.Kept.Value), 1e-9)
}

// The deepest place decides how often it is filled, wherever in the list it stands.
func TestTheDeepestPlaceDecides(t *testing.T) {
	const spots = "buildup.1.step.1.fill-by = spots\nbuildup.1.step.1.spot = 1 2"
	trough := func(n, depth string) string {
		at := "buildup.1.step.1.spot." + n + "."
		return at + "is = trough\n" + at + "width = 200 mm\n" + at + "length = 1 m\n" + at + "depth = " + depth
	}
	for _, depths := range [][2]string{{"3 mm", "7 mm"}, {"7 mm", "3 mm"}} {
		f := fillOf(t, spots, trough("1", depths[0]), trough("2", depths[1]))
		assert.InDelta(t, 7/0.7, float64(f.Depth.Value/unit.Millimetre), 1e-9)
	}
}
