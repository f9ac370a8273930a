package page_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/page"
)

// The next surface is like the one before but for its sizes, cut-outs and name.
func TestTheNextSurfaceKeepsAllButTheSizes(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "ready", "", "flowcoat-inside")
	s = do(s, "add", "surface", "box")
	for path, text := range map[string]string{"name": "Locker", "length": "1 m", "width": "400", "height": "300", "side": "inside", "inside": "locker",
		"prepared": "both", "prepared-grade": "P120", "by": "drawing", "sides": "both", "lies": "wall"} {
		s = do(s, "set", "surface.1."+path, text)
	}
	s = do(s, "add", "surface.1.cutout", "")
	s = do(s, "sheet", "surface.1", "")
	s, effects := page.Update(s, page.Message{Verb: "like", Path: "surface.1", At: noon})
	doc := s.Doc()
	assert.Equal(t, []string{"surface.2"}, s.Sheets, "Back leads to the list")
	assert.Contains(t, effects, page.Effect{Kind: page.Focus, Key: "f-surface.2.length"})
	for _, key := range []string{"shape", "side", "faces", "buildup", "ground", "inside", "prepared", "prepared-grade", "by", "sides", "lies"} {
		assert.Equal(t, doc.Get("surface.1."+key), doc.Get("surface.2."+key), key)
		assert.NotEmpty(t, doc.Get("surface.2."+key), key)
	}
	for _, key := range []string{"length", "width", "height", "cutout", "count"} {
		assert.Empty(t, doc.Get("surface.2."+key), key)
	}
	assert.Equal(t, "Surface 2", doc.Get("surface.2.name"))
	assert.Empty(t, do(s, "like", "surface.9", "").Doc().Get("surface.3.name"), "of nothing there is no next")
}

// A shape of stations or corners begins with the fewest that it can be measured by:
// nobody has to add what is needed anyway.
func TestAShapeBeginsWithTheFewestRows(t *testing.T) {
	for _, shape := range surface.Shapes {
		s, _ := page.Start(nil, noon)
		s = do(s, "add", "surface", "rectangle")
		added, changed := do(s, "add", "surface", shape.Key), do(s, "set", "surface.1.shape", shape.Key)
		next := do(changed, "like", "surface.1", "")
		if shape.Rows == nil {
			continue
		}
		for item, s := range map[string]*page.State{"surface.2": added, "surface.1": changed, "surface.3": do(next, "copy", "surface.2", "")} {
			assert.Len(t, s.Doc().Items(item+"."+shape.Rows.Key), shape.Rows.Min, shape.Key)
		}
		more := do(changed, "add", "surface.1."+shape.Rows.Key, "")
		again := do(do(more, "set", "surface.1.shape", "circle"), "set", "surface.1.shape", shape.Key)
		assert.Len(t, again.Doc().Items("surface.1."+shape.Rows.Key), shape.Rows.Min+1, "what was there stays")
	}
}

// A box has its usual faces from the start, and those of its other side as long
// as nobody chose others.
func TestANewBuildupHasItsNumberForAName(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "add", "buildup", "")
	assert.Equal(t, "Build-up 1", s.Doc().Get("buildup.1.name"))
	assert.Equal(t, "Build-up 2", do(s, "add", "buildup", "").Doc().Get("buildup.2.name"))
}

func TestFacesOfABoxFollowItsSide(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "add", "surface", "box")
	assert.Equal(t, "top front back left right", s.Doc().Get("surface.1.faces"))
	s = do(s, "set", "surface.1.side", "inside")
	assert.Equal(t, "bottom front back left right", s.Doc().Get("surface.1.faces"))
	s = do(do(s, "set", "surface.1.faces", "top"), "set", "surface.1.side", "outside")
	assert.Equal(t, "top", s.Doc().Get("surface.1.faces"))
}

// A ready sequence goes to what gets nothing yet; a surface on no ground gets
// the usual one; one that says its ground keeps it.
func TestAReadySequenceFindsItsSurfaces(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(s, "add", "surface", "rectangle"), "add", "surface", "circle")
	s = do(s, "set", "surface.2.ground", "epoxy")
	s = do(s, "ready", "", "foam-to-gloss")
	doc := s.Doc()
	assert.Equal(t, "Foam to gloss", doc.Get("buildup.1.name"))
	assert.Len(t, doc.Items("buildup.1.step"), len(ready.Find("foam-to-gloss").Steps()))
	assert.Equal(t, []string{"buildup.1", "foam"}, []string{doc.Get("surface.1.buildup"), doc.Get("surface.1.ground")})
	assert.Equal(t, []string{"buildup.1", "epoxy"}, []string{doc.Get("surface.2.buildup"), doc.Get("surface.2.ground")})

	s = do(do(s, "sheet", "surface.1", ""), "sheet", page.Part("surface.1", page.GetsPart), "")
	s = do(s, "ready", "surface.1", "spray-again")
	assert.Equal(t, "buildup.2", s.Doc().Get("surface.1.buildup"))
	assert.Equal(t, "surface.1", s.Sheet(), "the sheet that only asked is gone")
	assert.Equal(t, "buildup.1", s.Doc().Get("surface.2.buildup"))
	s = do(s, "undo", "", "")
	assert.Equal(t, "buildup.1", s.Doc().Get("surface.1.buildup"), "one change")
}

// A coat starts as its material is put on as a rule, and follows it as long as
// nobody typed otherwise.
func TestACoatStartsAsItsMaterialIsPutOn(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(s, "ready", "", ""), "add", "buildup.1.step", "coat")
	at := func(key string) string { return s.Doc().Get("buildup.1.step.1." + key) }
	s = do(s, "set", "buildup.1.step.1.card", "gelcoat")
	assert.Equal(t, []string{"gravity-gun", "750 µm", "film"}, []string{at("method"), at("film"), at("release")})
	s = do(s, "set", "buildup.1.step.1.card", "topcoat")
	assert.Equal(t, []string{"roll-and-tip", "300 µm", ""}, []string{at("method"), at("film"), at("release")})
	s = do(do(s, "set", "buildup.1.step.1.film", "200 µm"), "set", "buildup.1.step.1.method", "brush")
	s = do(s, "set", "buildup.1.step.1.card", "primer")
	assert.Equal(t, []string{"brush", "200 µm"}, []string{at("method"), at("film")})

	// − and + of an empty number of coats begin at those that are planned
	require.NotNil(t, s.Plan.Buildups()[0].Steps[0].Coat)
	s = do(s, "set", "buildup.1.step.1.film", "500 µm")
	require.InDelta(t, 3, float64(s.Plan.Buildups()[0].Steps[0].Coat.Coats.Value), 1e-9)
	s = do(s, "step", "buildup.1.step.1.coats", "up")
	assert.Equal(t, "4", at("coats"))
}

// However many surfaces or steps are made from one another, one way back leads to
// their list. One that finds no room leaves the sheet that it was asked on.
func TestACopyTakesThePlaceOfItsSheet(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "add", "surface", "rectangle")
	for n, verb := range []string{"copy", "copy", "like", "copy"} {
		path := s.Sheet()
		s = do(s, verb, path, "")
		require.Len(t, s.Doc().Items("surface"), n+2)
		assert.NotEqual(t, path, s.Sheet())
		assert.Len(t, s.Sheets, 1, verb)
	}
	assert.Empty(t, do(s, "back", "", "").Sheet())
	for n := len(s.Doc().Items("surface")); n < job.MaxSurfaces; n++ {
		s = do(s, "copy", s.Sheet(), "")
	}
	require.Len(t, s.Doc().Items("surface"), job.MaxSurfaces)
	last := s.Sheet()
	for _, verb := range []string{"copy", "like"} {
		s = do(s, verb, last, "")
		assert.Equal(t, last, s.Sheet(), verb)
		assert.NotEmpty(t, s.Notice, verb)
	}
}

// A copy bears the name with the next number that is free, so that two surfaces
// are told apart however often one was copied.
func TestACopyBearsTheNextNumber(t *testing.T) {
	for _, c := range []struct{ names, want string }{
		{"Hatch", "Hatch 2"}, {"Hatch 2|Hatch 3|Hatch", "Hatch 4"}, {"Hatch 9", "Hatch 10"}, {"Hatch2", "Hatch 3"}, {"Hatch 2", "Hatch 3"}, {"7", "8"}, {strings.Repeat("9", 30), strings.Repeat("9", 30) + " 2"},
		{strings.Repeat("x", job.MaxWords), strings.Repeat("x", job.MaxWords)},
	} {
		s, _ := page.Start(nil, noon)
		for i, name := range strings.Split(c.names, "|") {
			s = do(do(s, "add", "surface", "rectangle"), "set", "surface."+strconv.Itoa(i+1)+".name", name)
		}
		s = do(s, "copy", "surface.1", "")
		assert.Equal(t, c.want, s.Doc().Get(s.Sheet()+".name"), c.names)
		assert.Empty(t, s.Plan.Unreadable(), c.names)
	}
}
