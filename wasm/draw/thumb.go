package draw

import (
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/markup"
)

// Thumb is a shape without its measures, small: beside a name that says what it
// is, so it has none of its own.
func Thumb(sk surface.Sketch) markup.HTML {
	var parts []markup.HTML
	for _, stroke := range sk.Strokes {
		if !stroke.Hidden {
			parts = append(parts, path(strokeClass(stroke), strokePath(stroke)))
		}
	}
	return el("svg", at("class", "picture thumb", "aria-hidden", "true",
		"viewBox", "0 0 "+num(surface.SketchWidth*unitPx)+" "+num(surface.SketchHeight*unitPx)), parts...)
}
