package view

import (
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// beside is what stands right of a list on a wide screen while nothing of it is
// open: where the area is, or what is next.
func beside(s *page.State) html {
	switch {
	case s.Screen == "surfaces" && len(s.Plan.Surfaces()) > 0:
		return whereItLies(s)
	case s.Screen == "log":
		return join(el("h2", nil, txt(words.WhenTheRest)), calendarBody(s))
	}
	return nothing
}

// barsInSight and sketchesInSight are how many surfaces have their bar, and their
// drawing, beside the list.
const (
	barsInSight     = 16
	sketchesInSight = 6
)

// whereItLies is the area surface by surface, and what gets which build-up.
func whereItLies(s *page.State) html {
	var bars []draw.LeftRow
	var drawn []html
	for i := range s.Plan.Surfaces() {
		if p := &s.Plan.Surfaces()[i]; p.Known && len(bars) < barsInSight {
			bars = append(bars, draw.LeftRow{Name: surfaceName(s, p.Path), Text: of(s, p.Area, unit.Areas), Film: float64(p.Area.Value)})
			if len(drawn) < sketchesInSight {
				drawn = append(drawn, drawnSurface(s, i))
			}
		}
	}
	var lines []html
	for _, b := range s.Plan.Buildups() {
		if len(b.Surfaces) > 0 {
			lines = append(lines, el("p", a("class", "ends"), el("span", nil, txt(buildupName(s, b.Path))), el("strong", nil, txt(of(s, b.Area, unit.Areas)))))
		}
	}
	return region("lies", "section", a("class", "figures"), el("h2", nil, txt(words.WhereItLies)),
		draw.Left(draw.LeftPlot{Title: words.WhereItLies, Rows: bars}), join(lines...),
		el("div", a("class", "drawn"), drawn...))
}

// drawnSurface is a surface's sketch in its sizes, with its name.
func drawnSurface(s *page.State, at int) html {
	typed := s.Plan.Job.Surfaces[at]
	sketch := typed.Part.Shape.Sketch(typed.Part.Input)
	parts := []html{el("b", nil, txt(nameOf(typed))), draw.Sketch(sketch, words.SketchOf+typed.Part.Shape.Name)}
	if sketch.OffScale {
		parts = append(parts, el("small", nil, txt(words.NotToScale)))
	}
	return el("div", a("class", "one"), parts...)
}
