package view_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// A page that takes over regions from the one before is the page made from
// nothing, and as much of it is replaced, whatever happens between.
func TestAPageThatKeepsRegionsIsTheSameAsOneFromNothing(t *testing.T) {
	for seed := range uint64(6) {
		r := jobtest.New(seed)
		r.Junk = 0.1
		s := of(t, printable(r.Document()))
		kept, fresh := new(markup.Page), new(markup.Page)
		for n := range 80 {
			s = something(r, s)
			nextKept, nextFresh := kept.Next(view.Page(s)), markup.Cut(view.Page(s))
			require.Equal(t, nextFresh.HTML(), nextKept.HTML(), "seed %d, message %d", seed, n)
			require.Equal(t, nextFresh.Controls, nextKept.Controls, "seed %d, message %d", seed, n)
			require.Equal(t, nextFresh.Patches(fresh), nextKept.Patches(kept), "seed %d, message %d", seed, n)
			kept, fresh = nextKept, nextFresh
		}
	}
}

// What a sheet covers isn't there: no id stands twice. Once it is seen it is the page made from nothing.
func TestACoveredScreenIsRightOnceItIsSeen(t *testing.T) {
	covered := 0
	for seed := range uint64(4) {
		r := jobtest.New(seed)
		s := of(t, printable(r.Document()))
		s.Covers = true
		kept := markup.Cut(view.Page(s))
		for n := range 60 {
			if s = something(r, s); r.IntN(3) == 0 {
				s = do(s, "sheet", []string{"surface.1", "menu", "order.tape", "weigh", page.ShapesSheet}[r.IntN(5)], "")
			}
			next, seen := kept.Next(view.Page(s)), *s
			if seen.Covers = false; s.IsCovered() {
				covered++
				require.NotContains(t, next.HTML(), `id="heading"`, "the screen was made although nobody sees it")
			}
			require.Empty(t, next.Repeats, "seed %d, message %d", seed, n)
			require.Equal(t, markup.Cut(view.Page(&seen)).HTML(), next.Next(view.Page(&seen)).HTML(), "seed %d, message %d", seed, n)
			require.Equal(t, markup.Cut(view.Page(&seen)).Controls, next.Next(view.Page(&seen)).Controls, "seed %d, message %d", seed, n)
			kept = next
		}
	}
	require.Positive(t, covered)
}

// something sends one message that a builder could: mostly about surfaces, whose
// lines are kept.
func something(r *jobtest.Random, s *page.State) *page.State {
	lines := s.Doc().Lines()
	path := lines[r.IntN(len(lines))].Path
	if ids := s.Doc().Items("surface"); len(ids) > 0 && r.IntN(2) == 0 {
		path = "surface." + ids[r.IntN(len(ids))] + "." + []string{"name", "length", "height", "width", "sides"}[r.IntN(5)]
	}
	item, _ := job.Split(path)
	switch r.IntN(14) {
	case 0:
		return do(s, "copy", item, "")
	case 1:
		return do(s, "remove", item, "")
	case 2:
		return do(s, "move", item, []string{"up", "down"}[r.IntN(2)])
	case 3, 4:
		return do(s, "open", item, "")
	case 5:
		m := unit.Choosable[r.IntN(len(unit.Choosable))]
		return do(s, "unit", m.Key(), m.Scales()[r.IntN(len(m.Scales()))].Symbol())
	case 6:
		return do(s, "decimal", "", []string{"comma", "point"}[r.IntN(2)])
	case 7:
		return do(s, []string{"undo", "redo"}[r.IntN(2)], "", "")
	case 8:
		return do(s, "go", page.Screens[r.IntN(len(page.Screens))].Key, "")
	case 9, 10:
		return do(s, "go", "surfaces", "")
	}
	if f := job.FieldAt(path); f != nil {
		return do(s, "set", path, r.Text(f))
	}
	return s
}
