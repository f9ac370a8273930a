package plan_test

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/plan"
)

// What is asked of a surface in few words (what it gets, how it lies, what it is made of) is kept no longer than it
// holds: after each such change every answer is that of a plan made from nothing, and it comes back with the text.
func TestAnAnswerFollowsWhatItAskedOfASurface(t *testing.T) {
	d := document(t, gelCoated, "surface = 1 2", `
surface.2.shape = rectangle
surface.2.length = 2 m
surface.2.width = 1 m
surface.2.buildup = buildup.2
surface.2.ground = polyester
surface.2.prepared = both
surface.2.prepared-grade = P120
buildup = 1 2
buildup.2.step = 1 2
buildup.2.step.1.kind = coat
buildup.2.step.1.card = flowcoat
buildup.2.step.1.method = nap-roller
buildup.2.step.1.film = 650 µm
buildup.2.step.1.film-is = wet
buildup.2.step.2.kind = sand
buildup.2.step.2.taken = 100 µm`)
	for _, change := range [][2]string{
		{"surface.2.lies", "wall"}, {"surface.2.lies", "overhead"}, {"surface.2.ground", "metal"}, {"surface.2.ground", "wood"},
		{"surface.2.prepared", ""}, {"surface.2.prepared-grade", "P400"}, {"surface.2.below-water", "yes"}, {"surface.2.patch", "12 May"},
		{"surface.2.buildup", "buildup.1"}, {"surface.2.buildup", ""}, {"surface.1.buildup", "buildup.2"},
	} {
		p, differs := plan.Make(d), false
		var was []any
		for _, q := range questions {
			was = append(was, q.ask(&p))
		}
		now := d.Set(change[0], change[1])
		next, fresh := p.Next(now), plan.Make(now)
		for i, q := range questions {
			want := q.ask(&fresh)
			assert.True(t, reflect.DeepEqual(want, q.ask(&next)), "%s = %s: %s", change[0], change[1], q.name)
			differs = differs || !reflect.DeepEqual(was[i], want)
		}
		assert.True(t, differs, "%s = %s changes nothing here", change[0], change[1])
		back := next.Next(d)
		for i, q := range questions {
			assert.True(t, reflect.DeepEqual(was[i], q.ask(&back)), "%s back: %s", change[0], q.name)
		}
	}
}
