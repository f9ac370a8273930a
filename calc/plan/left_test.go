package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// One of two alike surfaces is sanded and coated: what is still needed of the material and of the sheets, the hours at the
// gun and those at the sanding are half; with all of it done nothing is.
func TestWhatIsDoneIsNotNeededAgain(t *testing.T) {
	two := gelCoated + "surface = 1 2\nsurface.2.shape = rectangle\nsurface.2.length = 4 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1\n"
	done := func(surfaces ...string) string {
		lines, ids := "", ""
		for i, s := range surfaces {
			for j, step := range []string{"1", "2"} {
				id := string(rune('1' + 2*i + j))
				ids += " " + id
				lines += "\ndone." + id + ".step = buildup.1.step." + step + "\ndone." + id + ".surface = " + s
			}
		}
		return "done =" + ids + lines
	}
	needs := func(lines ...string) (mass, sheets, cartridges, masks float64) {
		for _, n := range planOf(t, append([]string{two}, lines...)...).Needs() {
			sum := 0.
			for _, m := range n.Mass {
				sum += float64(m.Value)
			}
			for _, p := range n.Pieces {
				sum += float64(p.Value)
			}
			switch {
			case n.Grade > 0:
				sheets += sum
			case n.Card.Key == "gelcoat":
				mass += sum
			case n.Card.Key == "cartridges":
				cartridges += sum
			case n.Card.Key == "mask":
				masks += sum
			}
		}
		return
	}
	mass, sheets, cartridges, masks := needs()
	halfMass, halfSheets, _, _ := needs(done("surface.1"))
	noMass, noSheets, noCartridges, noMasks := needs(done("surface.1", "surface.2"))
	require.Positive(t, mass)
	require.Positive(t, sheets)
	require.Positive(t, cartridges)
	require.Positive(t, masks)
	assert.InEpsilon(t, mass/2, halfMass, 1e-9)
	assert.InEpsilon(t, sheets/2, halfSheets, 1e-9)
	assert.Zero(t, noMass)
	assert.Zero(t, noSheets)
	assert.Zero(t, noCartridges)
	assert.Zero(t, noMasks)
}
