package draw

import (
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/markup"
)

// Thumb is a shape without its measures, small: beside a name that says what it
// is, so it has none of its own. It fills its box, which always has the same proportions.
func Thumb(sk surface.Sketch) markup.HTML {
	const margin = 1.3
	low, far := surface.Point{X: surface.SketchWidth, Y: surface.SketchHeight}, surface.Point{}
	var parts []markup.HTML
	for _, line := range sk.Strokes {
		if line.Hidden {
			continue
		}
		parts = append(parts, stroke(line, ""))
		points := line.Points
		if line.Arc != nil {
			points = chords(line.Arc)
		}
		for _, p := range points {
			low, far = surface.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, surface.Point{X: max(far.X, p.X), Y: max(far.Y, p.Y)}
		}
	}
	scale := max((far.X-low.X+2*margin)/surface.SketchWidth, (far.Y-low.Y+2*margin)/surface.SketchHeight)
	wide, high := surface.SketchWidth*scale, surface.SketchHeight*scale
	return el("svg", at("class", "picture thumb", "aria-hidden", "true",
		"viewBox", num(unitPx*(low.X+far.X-wide)/2)+" "+num(unitPx*(low.Y+far.Y-high)/2)+" "+num(unitPx*wide)+" "+num(unitPx*high)), parts...)
}
