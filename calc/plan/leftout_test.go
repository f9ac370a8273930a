package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
)

// What is refused withholds every amount that hangs on it; what isn't typed yet
// is left out and named. Neither is ever an older figure.
func TestWhatIsRefusedWithholdsWhatHangsOnIt(t *testing.T) {
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
