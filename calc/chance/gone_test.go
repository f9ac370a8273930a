package chance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
)

// Work and cups of a material that is no longer there teach nothing, and neither does work by a method that nobody
// knows; the same of one that is there do.
func TestWhatIsGoneTeachesNothing(t *testing.T) {
	log := func(card, method string) int {
		d := jobtest.Doc(t, "done = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.1\ndone.1.at = 1000\ndone.1.used = 1 kg\ndone.1.planned = 1 kg\n"+
			"cup = 1\ncup.1.mixed = 500 g\ncup.1.in = 100\ncup.1.ended = 900\ncup.1.end = spread\ncup.1.covered = 1 m²").
			Set("done.1.card", card).Set("cup.1.card", card).Set("done.1.method", method).Set("cup.1.method", method)
		p := plan.Make(d)
		require.Empty(t, p.RefusedAt("done.1.card"))
		return len(lessons(d))
	}
	_, known := material.FindMethod("nap-roller")
	require.True(t, known)
	assert.Equal(t, 1, log("gelcoat", "nap-roller"))
	assert.Zero(t, log("9", "nap-roller"), "a card that is gone")
	assert.Zero(t, log("9", "trowel"))
}
