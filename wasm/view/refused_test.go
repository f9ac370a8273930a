package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Whatever is refused can be found: from a screen where it can't be seen the
// notice leads to it, and there its message stands. A figure that is missing for
// a reason that nobody can see can't be had back.
func TestEveryRefusalIsToldAndFound(t *testing.T) {
	shown := func(s *page.State) string { return markup.Cut(view.Page(s)).HTML() }
	told := 0
	for seed := range uint64(120) {
		s := do(of(t, printable(jobtest.New(seed).Document())), "go", "sources", "")
		for i, r := range s.Plan.Refused() {
			if i < 3 {
				assert.Contains(t, shown(s), `data-do="find" data-path="`+r.Path+`"`)
			}
			found := do(s, "find", r.Path, "")
			assert.True(t, found.IsShown(found.PlaceOf(r.Path)), r.Path)
			assert.True(t, strings.Contains(shown(found), `id="say-`+r.Path+`"`), "seed %d: %s: %v", seed, r.Path, r.Err)
			told++
		}
	}
	assert.Greater(t, told, 250)
}
