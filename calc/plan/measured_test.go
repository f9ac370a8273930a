package plan_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
)

const twoBrushed = brushed + `
surface = 1 2
surface.1.length = 2 m
surface.1.width = 1 m
surface.1.buildup = buildup.1
surface.2.length = 3 m
surface.2.width = 2 m
surface.2.buildup = buildup.1
`

func measuredOn(p *plan.Plan, surface string) *plan.Budget {
	list := p.Buildups()[0].Budgets()
	for i := range list {
		if list[i].Surface == surface {
			return &list[i]
		}
	}
	return nil
}

// A comb whose teeth can't be is refused at its tooth, once, and what it was read on isn't told as if it had been
// measured; a comb of a step that lays no coat is none.
func TestACombThatCantBeMeasuresNothing(t *testing.T) {
	const bad = "buildup.1.step.1.comb = 1\nbuildup.1.step.1.comb.1.last-wet = 400\nbuildup.1.step.1.comb.1.first-dry = 300\n"
	const good = "buildup.1.step.1.comb.1.first-dry = 500\n"
	for _, surface := range []string{"", "surface.2"} {
		on := "buildup.1.step.1.comb.1.surface = " + surface + "\n"
		p := plan.Make(document(t, twoBrushed, bad, on))
		var at []string
		for _, r := range p.Refused() {
			at = append(at, r.Path)
		}
		assert.Equal(t, []string{"buildup.1.step.1.comb.1.first-dry"}, at, "read on %q", surface)
		assert.Nil(t, measuredOn(&p, surface), "read on %q", surface)
		p = plan.Make(document(t, twoBrushed, bad, on, good))
		assert.Empty(t, p.Refused())
		assert.NotNil(t, measuredOn(&p, surface), "read on %q", surface)
	}
	both := plan.Make(document(t, twoBrushed, bad, "buildup.1.step.1.comb = 1 2\nbuildup.1.step.1.comb.2.last-wet = 300\nbuildup.1.step.1.comb.2.first-dry = 400\nbuildup.1.step.1.comb.2.surface = surface.2"))
	assert.Len(t, both.Refused(), 1, "read on none, it counts on each, and is refused once")
	stray := planOf(t, twoBrushed, strings.ReplaceAll(bad, "step.1", "step.2"))
	assert.Len(t, stray.Buildups()[0].Budgets(), 1, "sanding has no wet film")
}

const recoated = `
buildup.1.step = 1 2 4 5
buildup.1.step.1.film = 300 µm
buildup.1.step.2.by = taken
buildup.1.step.2.taken = 200 µm
buildup.1.step.5.kind = sand
buildup.1.step.5.by = taken
buildup.1.step.5.taken = 50 µm
buildup.1.step.4.kind = coat
buildup.1.step.4.card = gelcoat
buildup.1.step.4.method = gravity-gun
buildup.1.step.4.film = 600 µm
buildup.1.step.4.film-is = cured
buildup.1.step.4.release = film
`

// Filler between two coats of one card parts them: what was sanded through below it is closed.
func TestFillerOpensAnotherLayer(t *testing.T) {
	w := planOf(t, gelCoated, recoated, "buildup.1.step = 1 2 6 4 5\nbuildup.1.step.6.kind = fill\nbuildup.1.step.6.card = polyester-filler\nbuildup.1.step.6.thickness = 1 mm").Buildups()[0].Budgets()[0]
	last, ok := w.Last()
	require.True(t, ok)
	assert.Equal(t, last.Through.Value, w.Share.Value)
	assert.Less(t, float64(w.Share.Value), 1e-3)
}
