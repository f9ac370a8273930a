package draw

import (
	"math"

	"shedreckoner/calc/surface"
	"shedreckoner/wasm/markup"
)

const (
	unitPx     = 10  // units of the picture in one of a sketch
	letterSize = 17. // a sketch is shown smaller than other pictures: its area stands beside it
	tickHalf   = 0.35
)

// Sketch draws a shape with a letter for each dimension.
func Sketch(sk surface.Sketch, title string) markup.HTML {
	var strokes, lines, letters []markup.HTML
	for _, s := range sk.Strokes {
		strokes = append(strokes, stroke(s, ""))
	}
	for _, mark := range sk.Marks {
		if mark.Line != nil {
			lines = append(lines, stroke(*mark.Line, "dimension"))
		}
		letters = append(letters, el("text", at("class", "letter", "text-anchor", "middle", "x", num(mark.At.X*unitPx), "y", num(mark.At.Y*unitPx), "dy", "0.35em"), markup.Text(mark.Text)))
	}
	return el("svg", at("class", "picture sketch", "role", "img", "viewBox", "0 0 "+num(surface.SketchWidth*unitPx)+" "+num(surface.SketchHeight*unitPx),
		"font-size", num(letterSize), "aria-label", title), append(append(strokes, lines...), letters...)...)
}

// stroke draws a line of a sketch, of its own class where none is given; a
// dimension line has a slanted tick at either end.
func stroke(s surface.Stroke, class string) markup.HTML {
	points, d := s.Points, ""
	if s.Arc != nil {
		points = chords(s.Arc)
	}
	for i, p := range points {
		d += []string{"M", "L"}[min(i, 1)] + num(p.X*unitPx) + " " + num(p.Y*unitPx)
	}
	if s.Closed {
		d += "Z"
	}
	last := len(points) - 1
	switch {
	case class != "" && last > 0:
		for _, end := range [][2]surface.Point{{points[0], points[1]}, {points[last], points[last-1]}} {
			sin, cos := math.Sincos(math.Atan2(end[1].Y-end[0].Y, end[1].X-end[0].X) + math.Pi/4)
			x, y, dx, dy := end[0].X*unitPx, end[0].Y*unitPx, tickHalf*unitPx*cos, tickHalf*unitPx*sin
			d += "M" + num(x-dx) + " " + num(y-dy) + "L" + num(x+dx) + " " + num(y+dy)
		}
	case s.Hidden:
		class = "hidden"
	case s.Closed, s.Arc != nil && s.Arc.To-s.Arc.From >= 360:
		class = "outline closed"
	default:
		class = "outline"
	}
	return el("path", at("class", class, "d", d))
}

// chords is what an arc is drawn through.
func chords(arc *surface.Arc) (points []surface.Point) {
	const pieces = 48
	for i := range pieces + 1 {
		points = append(points, arc.At(arc.From+(arc.To-arc.From)*float64(i)/pieces))
	}
	return points
}
