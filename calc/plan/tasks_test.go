package plan_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// A fill of 14 mm left is 20 mm put on, two passes of 10 at the most: each is laid,
// and sanded before the next; the last too, unless a run of grades that follows
// sands it. A pass left out of the calendar would be laid on one that is still wet.
func TestEachPassOfAFillIsLaidAndSanded(t *testing.T) {
	const fill = "surface = 1\nsurface.1.name = Keel\nsurface.1.lies = wall\nsurface.1.length = 2 m\nsurface.1.width = 1 m\nsurface.1.buildup = buildup.1\nbuildup = 1\nbuildup.1.step.1.kind = fill\nbuildup.1.step.1.card = epoxy-filler\nbuildup.1.step.1.thickness = 14 mm\n"
	for steps, want := range map[string][]plan.WorkKind{
		"buildup.1.step = 1": {plan.LayFiller, plan.SandIt, plan.LayFiller, plan.SandIt},
		"buildup.1.step = 1 2\nbuildup.1.step.2.kind = sand\nbuildup.1.step.2.by = grades\nbuildup.1.step.2.first = P80\nbuildup.1.step.2.last = P120": {plan.LayFiller, plan.SandIt, plan.LayFiller},
	} {
		b := planOf(t, fill, steps).Buildups()[0]
		assert.Equal(t, []string{"Keel"}, b.Surfaces, "the surfaces that get it, by their names")
		require.NotEmpty(t, b.Steps)
		var got []plan.WorkKind
		which := 0
		for _, task := range b.Steps[0].Tasks(2 * unit.SquareMetre) {
			got = append(got, task.Kind)
			if task.Kind == plan.LayFiller {
				which++
				assert.Equal(t, which, task.Which)
				assert.Equal(t, 2, task.Of)
			}
		}
		assert.Equal(t, want, got, steps)
	}
}
