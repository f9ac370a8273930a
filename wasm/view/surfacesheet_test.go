package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/ready"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// The sheet of a surface says what its girths count for, what is missing, what stops what it gets, and what it gets and lies on.
func TestASurfacesSheetSaysWhatHolds(t *testing.T) {
	demo, fair := madeUp("surfaces"), fairState(t)
	sheet := func(s *page.State, path string, lines ...string) *page.State {
		return do(with(s, lines...), "sheet", path, "")
	}
	empty, _ := page.Start(nil, noon)
	girths := do(empty, "add", "surface", "girths")
	flat := do(empty, "add", "surface", "rectangle")
	lost := with(demo, "surface.1.height = none")
	asked := sheet(demo, "surface.1", "surface.1.height = 20 mm")
	saysEach(t, []saying{
		{girths, "sizes-surface.1", words.OneSideOnly, words.AllRoundOnce},
		{with(girths, "surface.1."+surface.GirthKey+" = "+surface.Round), "sizes-surface.1", words.AllRoundOnce, words.OneSideOnly},
		{girths, "sizes-surface.1", "Add a station Half-way station in the end intervals", ""}, // seldom other than usual: last
		{sheet(demo, "surface.2"), "sizes-surface.2", "Height mm Outside Inside Faces that are coated", ""},
		{flat, "sizes-surface.1", "Length", "girth"},
		{flat, "measured-surface.1", "– why", "m²"},
		{flat, "figures-surface.1", "Still to be typed: length.", words.SayTheGround},
		{with(flat, "surface.1.length = 2 m", "surface.1.width = 1 m"), "measured-surface.1", "2 m² why", "–"},
		{with(flat, "surface.1.length = 2 m", "surface.1.width = 1 m"), "figures-surface.1", words.EdgeForTape + " 6 m", "Still to be typed"},
		{with(flat, "surface.1.length = 40 m", "surface.1.width = 30 m"), "item-surface.1", words.UnusualArea + " · gets nothing yet", ""},
		{with(flat, "surface.1.length = 3 m", "surface.1.width = 1 m"), "item-surface.1", "gets nothing yet", words.UnusualArea},
		{flat, "setup-surface.1.gets", "gets nothing yet", ""},
		{sheet(demo, "surface.1"), "setup-surface.1.gets", "gets New parts: fair, flow coat, gel coat", ""},
		{sheet(fair, "surface.1"), "setup-surface.1.gets", "gets " + words.UnnamedBuildup, ""},
		{sheet(fair, "surface.1"), "figures-surface.1", "Stop: step 1 Fill: Epoxy fairing filler.|1 thing to check on the build-up.|" + words.SeeTheBuildup, words.SayTheGround},
		{sheet(fair, "surface.1", "surface.1.ground ="), "figures-surface.1", words.SayTheGround, ""},
		{sheet(demo, "surface.1"), "figures-surface.1", words.EdgeForTape, words.SeeTheBuildup + "|to check|" + words.SayTheGround},
		{asked, "asked-surface.1", "", words.ItIsReal},
		{do(lost, "go", "surfaces", ""), "fig-area", "–", "m²"},
		{demo, "fig-area", "m²", "–"},
		{do(demo, "why", "area", ""), "fig-area", "Total area", ""},
	})
	for s, wants := range map[*page.State]bool{sheet(demo, "surface.1"): false, do(sheet(demo, "surface.1"), "why", "surface.1.area", ""): true} {
		assert.Equal(t, !wants, strings.Contains(regionOf(t, view.Page(s).String(), "working-surface.1"), " hidden="))
	}
	gone := do(sheet(demo, "surface.1"), "remove", "surface.1", "")
	assert.NotContains(t, view.Page(gone).String(), `id="measured-surface.1"`)
	for sheetKey, region := range map[string]string{"surface.1": "surface.1", "surface.2": "surface.2"} {
		var pressed []string
		for _, b := range buttonsOf(view.Page(do(sheet(demo, sheetKey), "sheet", page.Part(region, page.ShapePart), "")).String()) {
			if b.do == "choose" && b.pressed == "true" {
				pressed = append(pressed, b.text)
			}
		}
		assert.Equal(t, []string{demo.Doc().Get(region + ".shape")}, pressed, "the shape that it has is marked")
	}
	for _, b := range buttonsOf(regionOf(t, view.Page(sheet(demo, "surface.2")).String(), "sizes-surface.2")) {
		if b.path != "surface.2.faces" {
			continue
		}
		has := strings.Contains(" "+demo.Doc().Get("surface.2.faces")+" ", " "+b.label+" ")
		assert.Equal(t, has, b.pressed == "true", b.label)
		assert.Equal(t, !has, strings.Contains(" "+b.text+" ", " "+b.label+" "), "a tap switches it: %s", b.text)
	}
	gets := buttonsOf(view.Page(sheet(demo, "surface.3.gets")).String())
	var marked []string
	for _, b := range gets {
		if b.do == "choose" && b.pressed == "true" {
			marked = append(marked, b.text+" "+b.label)
		}
	}
	assert.Equal(t, []string{"buildup.2 Topsides: spray again"}, marked)
	assert.Contains(t, textOf(t, sheet(demo, "surface.3.gets"), "sheet"), words.OrStartOne)
	assert.NotContains(t, textOf(t, do(flat, "sheet", "surface.1.gets", ""), "sheet"), words.OrStartOne)
	for i, r := range ready.Sequences {
		var offers []button
		for _, b := range buttonsOf(view.Page(do(flat, "sheet", "surface.1.gets", "")).String()) {
			if b.do == "ready" {
				offers = append(offers, b)
			}
		}
		require.Len(t, offers, len(ready.Sequences)+1)
		assert.Equal(t, button{do: "ready", path: "surface.1", text: r.Key, label: r.Name + " " + words.Sequence(&r)}, offers[i])
	}
}

// Beside the list each measured surface has its bar, the area to one scale, and its sketch, as far as there is room.
func TestWhereTheAreaLies(t *testing.T) {
	demo := madeUp("surfaces")
	lies := regionOf(t, view.Page(demo).String(), "lies")
	var bars []draw.LeftRow
	for i, p := range demo.Plan.Surfaces() {
		bars = append(bars, draw.LeftRow{Name: demo.Plan.Job.Surfaces[i].Name, Text: shownAs(p.Area, unit.InSquareMetre), Film: float64(p.Area.Value)})
	}
	assert.Contains(t, lies, draw.Left(draw.LeftPlot{Title: "Where the area is", Rows: bars}).String())
	for _, b := range demo.Plan.Buildups() {
		assert.Contains(t, plain(textIn(lies)), plain(demo.Doc().Get(b.Path+".name")+" "+shownAs(b.Area, unit.InSquareMetre)))
	}
	assert.Equal(t, 3, strings.Count(lies, `class="one"`))
	many, _ := page.Start(nil, noon)
	for range 20 {
		many = do(many, "add", "surface", "rectangle")
		path := "surface." + many.Doc().Items("surface")[len(many.Doc().Items("surface"))-1]
		many = with(many, path+".length = 2 m", path+".width = 1 m")
	}
	for many.Sheet() != "" {
		many = do(many, "back", "", "")
	}
	lies = regionOf(t, view.Page(many).String(), "lies")
	assert.Equal(t, 6, strings.Count(lies, `class="one"`))
	assert.Equal(t, 16, strings.Count(plain(textIn(strings.Split(lies, `class="drawn"`)[0])), "2 m²"))
	one := with(do(many, "remove", "surface.1", ""), "surface.2.width = none")
	assert.NotContains(t, strings.Split(regionOf(t, view.Page(one).String(), "lies"), `class="drawn"`)[0], "–")
	log := view.Page(madeUp("log")).String()
	assert.Contains(t, regionOf(t, log, "sheet"), words.WhenTheRest)
	assert.Equal(t, "", plain(textIn(regionOf(t, view.Page(madeUp("order")).String(), "sheet"))), "nothing stands beside the other lists")
}

// The first visit says what the page is, the ways to begin, and what to mind; in the made-up job nothing leads there again.
func TestTheFirstVisit(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	cleared := madeUp("surfaces")
	for range 3 {
		cleared = do(cleared, "remove", "surface."+cleared.Doc().Items("surface")[0], "")
	}
	saysEach(t, []saying{
		{empty, "screen", words.WhatItIs + "|" + words.AddASurface + "|" + words.OnlyACup + "|" + words.LookAtMadeUp + "|" + words.BeforeATin[0], words.AddOneLike},
		{cleared, "screen", words.WhatItIs + "|" + words.OnlyACup, words.LookAtMadeUp},
		{madeUp("surfaces"), "screen", words.AddOneLike, words.WhatItIs},
	})
	tiles := buttonsOf(regionOf(t, view.Page(empty).String(), "screen"))
	assert.Equal(t, []string{"rectangle", "girths", "box"}, []string{tiles[0].text, tiles[1].text, tiles[2].text})
	assert.Equal(t, words.MoreShapes(len(surface.Shapes)-3), strings.TrimPrefix(tiles[3].label, "••• "))
	every := buttonsOf(regionOf(t, view.Page(do(empty, "sheet", page.ShapesSheet, "")).String(), "sheet"))
	var shapes []string
	for _, b := range every {
		if b.do == "add" {
			shapes = append(shapes, b.text)
			assert.Equal(t, "surface", b.path)
		}
	}
	require.Len(t, shapes, len(surface.Shapes))
	for i, shape := range surface.Shapes {
		assert.Equal(t, shape.Key, shapes[i])
	}
}
