// Package draw makes the page's pictures as SVG: sketches of shapes, films to
// scale, curves. Pictures carry no style of their own: classes are dressed by
// the page's style sheet.
package draw

import (
	"math"
	"strconv"
	"strings"

	"shedreckoner/calc/surface"
	"shedreckoner/wasm/markup"
)

var (
	el = markup.El
	at = markup.A
)

// unitPx is how many units of the picture one unit of a sketch is.
const unitPx = 10

// Sketch draws a shape with a letter for each dimension.
func Sketch(sk surface.Sketch, title string) markup.HTML {
	var parts []markup.HTML
	for _, stroke := range sk.Strokes {
		class := "outline"
		if stroke.Hidden {
			class = "hidden"
		}
		parts = append(parts, strokePath(stroke, class))
	}
	for _, mark := range sk.Marks {
		if mark.Line != nil {
			parts = append(parts, strokePath(*mark.Line, "dimension"))
		}
		parts = append(parts, el("text", at("class", "letter", "x", px(mark.At.X), "y", px(mark.At.Y), "dy", "0.35em", "text-anchor", "middle"), markup.Text(mark.Text)))
	}
	return picture("sketch", surface.SketchWidth*unitPx, surface.SketchHeight*unitPx, title, parts...)
}

// picture is an SVG with a title for those who don't see it.
func picture(class string, width, height float64, title string, parts ...markup.HTML) markup.HTML {
	return el("svg", at("class", "picture "+class, "role", "img", "viewBox", "0 0 "+num(width)+" "+num(height), "aria-label", title), parts...)
}

func strokePath(s surface.Stroke, class string) markup.HTML {
	points := s.Points
	if s.Arc != nil {
		points = nil
		const pieces = 48
		for i := range pieces + 1 {
			points = append(points, s.Arc.At(s.Arc.From+(s.Arc.To-s.Arc.From)*float64(i)/pieces))
		}
	}
	var b strings.Builder
	for i, p := range points {
		b.WriteString([]string{"M", "L"}[min(i, 1)] + px(p.X) + " " + px(p.Y))
	}
	if s.Closed {
		b.WriteString("Z")
	}
	return el("path", at("class", class, "d", b.String()))
}

func px(units float64) string { return num(units * unitPx) }

// num writes a coordinate, to a tenth.
func num(n float64) string { return strconv.FormatFloat(math.Round(n*10)/10, 'f', -1, 64) }
