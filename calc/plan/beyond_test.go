package plan_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
)

// What is too much for the sums is refused where it was typed, by every kind of step, and never left out
// without a word: an area, rounds of it, a film that the passes can't reach.
func TestWhatIsTooMuchIsRefusedWhereItWasTyped(t *testing.T) {
	hall := func(area float64) (lines string) { // of surfaces of at most 10,000 m²
		ids, n := "", int(math.Ceil(area/10_000))
		for i := range n {
			at := fmt.Sprintf("surface.%d.", i+1)
			ids += fmt.Sprintf(" %d", i+1)
			lines += fmt.Sprintf("%sshape = direct\n%sarea = %.3f m²\n%sbuildup = buildup.1\n", at, at, area/float64(n), at)
		}
		return "surface =" + ids + "\n" + lines
	}
	for _, c := range []struct {
		name   string
		most   float64 // m²
		step   string
		fields []string
	}{
		{"coat", 90_000, step("1", "coat", "card = gelcoat", "method = nap-roller", "film = 400 µm"), []string{"film"}},
		{"rounds", 45_000, step("1", "coat", "card = gelcoat", "method = nap-roller", "film = 400 µm", "goes = 2"), []string{"goes", "film"}},
		{"filler", 500, step("1", "fill", "card = epoxy-filler", "thickness = 1 mm"), []string{"thickness"}},
		{"polish", 25_000, step("1", "polish", "card = compound"), []string{"card"}},
		{"grades", 25_000, step("1", "sand", "by = grades", "grades = P240 P320"), []string{"grades"}},
		{"sanding", 25_000, step("1", "sand", "taken = 50 µm"), []string{"card"}},
	} {
		ok := plan.Make(document(t, hall(c.most), "buildup = 1\nbuildup.1.step = 1", c.step))
		assert.Empty(t, ok.Refused(), c.name)
		for _, times := range []float64{1.2, 2.5} {
			beyond := plan.Make(document(t, hall(times*c.most), "buildup = 1\nbuildup.1.step = 1", c.step))
			assert.True(t, slices.ContainsFunc(c.fields, func(field string) bool { return beyond.RefusedAt("buildup.1.step.1."+field) != nil }), "%s: %v", c.name, beyond.Refused())
		}
	}
	for name, c := range map[string]struct{ step, field string }{
		"passes":      {step("1", "fill", "card = epoxy-filler", "thickness = 500 mm") + "\ncard.epoxy-filler.pass-most = 0.1 mm", "thickness"},
		"each round":  {step("1", "coat", "card = gelcoat", "method = nap-roller", "film = 400 µm", "goes = 2", "go-takes = 400 µm"), "go-takes"},
		"no method":   {step("1", "coat", "card = gelcoat", "method = foam-roller", "film = 400 µm", "thinner = 40 %"), "thinner"},
		"too few":     {step("1", "coat", "card = gelcoat", "method = nap-roller", "film = 2 mm", "coats = 1"), "coats"},
		"too thick":   {step("1", "coat", "card = gelcoat", "method = nap-roller", "film = 2 mm", "film-for = each"), "film"},
		"wrong card":  {step("1", "coat", "card = compound", "method = nap-roller", "film = 1 mm"), "card"},
		"coarser run": {step("1", "sand", "by = grades", "first = P400", "last = P240"), "last"},
	} {
		p := plan.Make(document(t, hall(6), "buildup = 1\nbuildup.1.step = 1", c.step))
		assert.Error(t, p.RefusedAt("buildup.1.step.1."+c.field), "%s: %v", name, p.Refused())
		assert.False(t, p.Buildups()[0].Steps[0].Known, name)
	}
}

// A place to fill needs every one of its sizes, whichever is missing; without one nothing is known of the step.
func TestAPlaceNeedsAllOfItsSizes(t *testing.T) {
	const spots = "buildup.1.step.1.fill-by = spots\nbuildup.1.step.1.spot = 1"
	spot := "buildup.1.step.1.spot.1."
	for is, sizes := range map[string][]string{"trough": {"width = 200 mm", "depth = 3 mm", "length = 1 m"}, "hollow": {"width = 200 mm", "depth = 3 mm", "length = 300 mm"}, "fillet": {"radius = 50 mm", "angle = 90", "length = 2 m"}} {
		for missing, size := range sizes {
			lines := spot + "is = " + is
			if is == "hollow" {
				lines = "" // what a place is until another is chosen
			}
			for i, other := range sizes {
				if i != missing {
					lines += "\n" + spot + other
				}
			}
			p := plan.Make(document(t, filled, spots, lines))
			require.Empty(t, p.Refused())
			key, _, _ := strings.Cut(size, " ")
			assert.Error(t, p.WaitingAt(spot+key), "%s without its %s", is, key)
			assert.False(t, p.Buildups()[0].Steps[0].Known, "%s without its %s", is, key)
		}
	}
	none := plan.Make(document(t, filled, "buildup.1.step.1.fill-by = spots"))
	assert.ErrorIs(t, none.WaitingAt("buildup.1.step.1.spot"), plan.ErrNoSpots)
	assert.False(t, none.Buildups()[0].Steps[0].Known)
}
