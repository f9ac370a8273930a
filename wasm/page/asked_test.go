package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Metres typed where millimetres are read: one tap reads them as meant, the cut-out's too, and what is typed next. A size with
// a unit of its own is never read anew.
func TestSizesAreReadAsTheyWereMeant(t *testing.T) {
	sized := func(length, width string) *page.State {
		s, _ := start(t, nil)
		s = do(s, "add", "surface", "rectangle")
		return do(do(do(s, "set", "surface.1.length", length), "set", "surface.1.width", width), "sheet", "surface.1", "")
	}
	s := sized("2.4", "1.5")
	assert.Contains(t, view.Page(s).String(), "They are in m: 3.6\u00a0m²<")
	assert.NotContains(t, view.Page(s).String(), "They are in cm", "that would be unusual, too")
	s = do(s, "add", "surface.1.cutout", "")
	s = do(do(s, "set", "surface.1.cutout.1.length", "0.5"), "set", "surface.1.cutout.1.width", "0.4")
	s = do(s, "meant", "surface.1", "m")
	assert.InDelta(t, 2.4*1.5-0.5*0.4, float64(s.Plan.Surface("surface.1").Area.Value), 1e-12)
	assert.Equal(t, unit.InMetre, s.Plan.Job.Units.Scale(unit.Sizes))
	assert.Contains(t, s.Notice, "in m from now on")
	assert.NotContains(t, view.Page(s).String(), "Is that right?")
	assert.Equal(t, unit.InMillimetre, do(s, "undo", "", "").Plan.Job.Units.Scale(unit.Sizes), "one step back takes all of it back")
	for _, m := range []page.Message{{Verb: "meant", Path: "surface.1", Text: "mm"}, {Verb: "meant", Path: "surface.9", Text: "m"}, {Verb: "meant", Path: "surface.1", Text: "kg"}} {
		next, _ := page.Update(s, m)
		assert.Equal(t, s.Doc(), next.Doc(), "%v: nothing to read anew", m)
	}

	half := do(sized("2.4", "1.5 mm"), "meant", "surface.1", "m")
	assert.Equal(t, "1.5 mm", half.Doc().Get("surface.1.width"))
	named := view.Page(sized("3 mm", "2 mm")).String()
	assert.Contains(t, named, "Is that right?")
	assert.NotContains(t, named, "They are in", "the units are typed")
}
