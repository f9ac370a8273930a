package plan_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
)

// What is refused withholds every amount that depends on it; what isn't typed yet
// is left out and named. Neither is ever a stale figure.
func TestWhatIsRefusedWithholdsWhatDependsOnIt(t *testing.T) {
	d := with(deck(), "surface = 1 2\nsurface.2.name = Side deck\nsurface.2.length = 2 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.1")
	p := plan.Make(d)
	assert.Empty(t, p.LeftOut())
	assert.Nil(t, p.Withheld("gelcoat", p.LeftOut()))

	p = plan.Make(d.Set("surface.2.width", "1,500"))
	out := p.LeftOut()
	require.Len(t, out, 1)
	assert.Equal(t, plan.LeftOut{Path: "surface.2", Name: "Side deck", By: "surface.2.width", IsRefused: true}, out[0])
	for _, card := range []string{"gelcoat", "ketone-peroxide"} {
		require.NotNil(t, p.Withheld(card, out), card)
		assert.Equal(t, "surface.2.width", p.Withheld(card, out).By)
	}
	assert.Nil(t, p.Withheld("primer", out), "nothing of it hangs on that")

	p = plan.Make(d.Set("surface.2.width", ""))
	out = p.LeftOut()
	require.Len(t, out, 1)
	assert.False(t, out[0].IsRefused)
	assert.Nil(t, p.Withheld("gelcoat", out), "the rest of the job goes on")

	p = plan.Make(d.Set("buildup.1.step.1.film", "thick"))
	out = p.LeftOut()
	require.Len(t, out, 1)
	assert.Equal(t, "buildup.1.step.1", out[0].Path)
	require.NotNil(t, p.Withheld("gelcoat", out))

	p = plan.Make(d.Set("surface.2.width", "1,500").Set("surface.2.buildup", ""))
	assert.Empty(t, p.LeftOut(), "it gets nothing")
}

// A figure of a card that is refused withholds what depends on the card: what ships
// can't replace what was typed. What is half typed of a stock or of a pack withholds
// only what is bought (package chance).
func TestARefusedFigureOfACardWithholdsItsMaterial(t *testing.T) {
	for path, withheld := range map[string][]string{
		"card.gelcoat.density":         {"gelcoat", "ketone-peroxide"},
		"card.gelcoat.cured":           {"gelcoat", "ketone-peroxide"},
		"card.ketone-peroxide.density": {"ketone-peroxide"},
		"card.gloves.each-spell":       {"gloves"},
		"card.gelcoat.stock":           {},
	} {
		p := plan.Make(deck().Set(path, "0,"))
		require.Error(t, p.RefusedAt(path), path)
		out := p.LeftOut()
		for _, card := range []string{"gelcoat", "ketone-peroxide", "gloves"} {
			waits := p.Withheld(card, out)
			if !slices.Contains(withheld, card) {
				assert.Nil(t, waits, "%s: %s", path, card)
			} else if assert.NotNil(t, waits, "%s: %s", path, card) {
				assert.Equal(t, path, waits.By)
			}
		}
	}
}

// What stands first and needs nothing hides nothing of what comes after it: a
// surface that gets nothing, a build-up that no surface gets, a step that is known.
func TestEveryItemThatIsLeftOutIsNamed(t *testing.T) {
	d := document(t, "surface = 1 2 3\nsurface.1.length = 1,500\nsurface.1.width = 1 m\nsurface.2.length = 2 m\nsurface.2.width = 1 m\nsurface.2.buildup = buildup.2",
		"surface.3.name = Locker\nsurface.3.length = long\nsurface.3.width = 1 m\nsurface.3.buildup = buildup.2",
		"buildup = 1 2\nbuildup.1.step = 1\nbuildup.1.step.1.kind = coat\nbuildup.1.step.1.card = gelcoat\nbuildup.1.step.1.method = nap-roller\nbuildup.1.step.1.film = thin",
		"buildup.2.name = Inside\nbuildup.2.step = 1 2 3\nbuildup.2.step.1.kind = wash\nbuildup.2.step.2.kind = coat\nbuildup.2.step.2.card = flowcoat\nbuildup.2.step.2.method = nap-roller\nbuildup.2.step.2.film = thick",
		"buildup.2.step.3.kind = sand\nbuildup.2.step.3.taken = deep")
	p := plan.Make(d)
	var paths, names []string
	for _, out := range p.LeftOut() {
		paths, names = append(paths, out.Path), append(names, out.Name)
		assert.True(t, out.IsRefused, out.Path)
	}
	assert.Equal(t, []string{"surface.3", "buildup.2.step.2", "buildup.2.step.3"}, paths)
	assert.Equal(t, []string{"Locker", "step 2 of Inside", "step 3 of Inside"}, names)
	assert.True(t, p.IsWithheld("buildup.2"))
	assert.False(t, p.IsWithheld("buildup.1"))
	assert.True(t, p.IsWithheld(""))
}
