package draw

import (
	"strings"

	"shedreckoner/wasm/markup"
)

// Point is a point of a plot, in the units of its axes.
type Point struct{ X, Y float64 }

// Span is a band's low and high value at one place.
type Span struct{ X, Low, High float64 }

// Interval is a part of an axis.
type Interval struct{ From, To float64 }

// line draws through the points; a point that isn't finite breaks it.
func (f frame) line(class string, points []Point) markup.HTML {
	var b strings.Builder
	move := "M"
	for _, p := range points {
		if !isFinite(p.X, p.Y) {
			move = "M"
			continue
		}
		x, y := f.at(p)
		b.WriteString(move + num(x) + " " + num(y))
		move = "L"
	}
	return path(class, b.String())
}

// band draws the area between the low and the high values.
func (f frame) band(spans []Span) markup.HTML {
	var there, back []string
	for _, s := range spans {
		if !isFinite(s.X, s.Low, s.High) {
			continue
		}
		x, low := f.at(Point{s.X, s.Low})
		_, high := f.at(Point{s.X, s.High})
		there = append(there, num(x)+" "+num(high))
		back = append([]string{num(x) + " " + num(low)}, back...)
	}
	if len(there) < 2 {
		return markup.HTML{}
	}
	return path("band", "M"+strings.Join(append(there, back...), "L")+"Z")
}

// shade marks parts of the axis to the right, over the plot's whole height.
func (f frame) shade(parts []Interval) markup.HTML {
	var list []markup.HTML
	for _, p := range parts {
		if !isFinite(p.From, p.To) || p.To <= p.From {
			continue
		}
		x1, _ := f.at(Point{p.From, f.y.from()})
		x2, _ := f.at(Point{p.To, f.y.from()})
		list = append(list, rect("shaded", x1, f.top, x2-x1, f.bottom-f.top))
	}
	return markup.Join(list...)
}

// upright is a line over the plot's height, with a text above it that stays
// inside the picture. Rows count upwards from the axis's label.
func (f frame) upright(class, text string, v float64, row int) markup.HTML {
	x, _ := f.at(Point{v, f.y.from()})
	if !isFinite(v) || x < f.left || x > f.right {
		return markup.HTML{}
	}
	y := f.top - lineHeight*float64(row+2)
	text = fitted(text, plotWidth)
	half := textWidth(text) / 2
	return markup.Join(line(class, x, y+lineHeight/2, x, f.bottom), words("strong haloed", "middle", text, max(half, min(x, plotWidth-half)), y))
}

// entry is a line of the key below a plot: a sample and its name.
type entry struct{ class, name string }

// key draws the samples with their names, as many to a row as fit.
func (f frame) key(entries []entry) (parts []markup.HTML, rows int) {
	x, y := 0., f.height(0)+lineHeight/2-2
	for _, e := range entries {
		name := fitted(e.name, plotWidth-32)
		width := 32 + textWidth(name)
		if rows == 0 {
			rows = 1
		}
		if x > 0 && x+width > plotWidth {
			x, y, rows = 0, y+lineHeight, rows+1
		}
		sample := line(e.class, x, y, x+24, y)
		if e.class == "band" || e.class == "shaded" {
			sample = rect(e.class+" edged", x, y-5, 24, 10)
		}
		parts = append(parts, sample, words("aside", "start", name, x+30, y))
		x += width + 10
	}
	return parts, rows
}
