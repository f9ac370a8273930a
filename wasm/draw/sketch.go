package draw

import (
	"math"
	"strings"

	"shedreckoner/calc/surface"
	"shedreckoner/wasm/markup"
)

// unitPx is how many units of the picture one unit of a sketch is.
const unitPx = 10

// Sketch draws a shape with a letter for each dimension.
func Sketch(sk surface.Sketch, title string) markup.HTML {
	var parts []markup.HTML
	for _, stroke := range sk.Strokes {
		parts = append(parts, path(strokeClass(stroke), strokePath(stroke)))
	}
	for _, mark := range sk.Marks {
		if mark.Line != nil {
			parts = append(parts, path("dimension", strokePath(*mark.Line)), path("tick", ends(*mark.Line)))
		}
	}
	for _, mark := range sk.Marks {
		parts = append(parts, words("letter", "middle", mark.Text, mark.At.X*unitPx, mark.At.Y*unitPx))
	}
	return picture("sketch", surface.SketchWidth*unitPx, surface.SketchHeight*unitPx, title, parts...)
}

func strokeClass(s surface.Stroke) string {
	switch {
	case s.Hidden:
		return "hidden"
	case s.Closed, s.Arc != nil && s.Arc.To-s.Arc.From >= 360:
		return "outline closed"
	}
	return "outline"
}

func strokePoints(s surface.Stroke) []surface.Point {
	if s.Arc == nil {
		return s.Points
	}
	const pieces = 48
	var points []surface.Point
	for i := range pieces + 1 {
		points = append(points, s.Arc.At(s.Arc.From+(s.Arc.To-s.Arc.From)*float64(i)/pieces))
	}
	return points
}

func strokePath(s surface.Stroke) string {
	var b strings.Builder
	for i, p := range strokePoints(s) {
		b.WriteString([]string{"M", "L"}[min(i, 1)] + px(p.X) + " " + px(p.Y))
	}
	if s.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

// ends is the slanted ticks at the two ends of a dimension line.
func ends(s surface.Stroke) string {
	const half = 0.35
	points := strokePoints(s)
	if len(points) < 2 {
		return ""
	}
	d := ""
	for _, end := range [][2]surface.Point{{points[0], points[1]}, {points[len(points)-1], points[len(points)-2]}} {
		along := math.Atan2(end[1].Y-end[0].Y, end[1].X-end[0].X)
		sin, cos := math.Sincos(along + math.Pi/4)
		p := end[0]
		d += "M" + px(p.X-half*cos) + " " + px(p.Y-half*sin) + "L" + px(p.X+half*cos) + " " + px(p.Y+half*sin)
	}
	return d
}

func px(units float64) string { return num(units * unitPx) }
