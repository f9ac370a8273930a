package draw

import (
	"strings"

	"shedreckoner/wasm/markup"
)

// Plot is curves over one axis, and what bears on them. What has a name stands
// in the key.
type Plot struct {
	Title  string // for those who don't see it: what it says, not that it is a curve
	X, Y   Axis
	Shaded []Shade
	Band   Band
	Lines  []Line
	Dots   []Dots
	Course Course
	Marks  []Mark
}

// Point is a point of a plot, in the units of its axes.
type Point struct{ X, Y float64 }

// Line goes through points, dressed by its class.
type Line struct {
	Name, Class string
	Points      []Point
}

// Dots are points that no line needs to join.
type Dots Line

// Band is what lies between a low and a high value.
type Band struct {
	Name  string
	Spans []Span
}

// Span is a band's low and high value at one place.
type Span struct{ X, Low, High float64 }

// Shade is parts of the axis to the right, over the plot's whole height.
type Shade struct {
	Name, Class string
	Parts       []Interval
}

// Interval is a part of an axis.
type Interval struct{ From, To float64 }

// Course is something that lasts, as a bar at the foot of the plot.
type Course struct {
	Name string
	Interval
}

// Mark is a line over the plot's height with a text above it, and a dot where it
// has a height of its own.
type Mark struct {
	Point
	Class, Text, Name string
}

// Draw draws the plot: gel time against temperature, say. Without a range on both
// axes it draws nothing. Texts stay inside the picture, and nothing lies over one.
func (p Plot) Draw() markup.HTML {
	f, ok := newFrame(p.X, p.Y, 0)
	if !ok {
		return markup.HTML{}
	}
	var shown []Mark
	for _, m := range p.Marks {
		if x, _ := f.at(m.Point); isFinite(m.X) && x >= f.left && x <= f.right {
			shown = append(shown, m)
		}
	}
	f, _ = newFrame(p.X, p.Y, len(shown))
	var under, over []markup.HTML
	for _, s := range p.Shaded {
		under = append(under, f.shade(s))
	}
	for _, l := range p.Lines {
		over = append(over, f.line(l.Class, l.Points))
	}
	if c := p.Course; isFinite(c.From, c.To) && c.To > c.From {
		x, _ := f.at(Point{X: c.From, Y: f.y.from()})
		to, _ := f.at(Point{X: c.To, Y: f.y.from()})
		over = append(over, rect("course", x, f.bottom-courseHeight, to-x, courseHeight))
	}
	parts := []markup.HTML{f.inside(append(under, f.band(p.Band.Spans))...), f.axes(), f.inside(over...)}
	for _, d := range p.Dots {
		for _, at := range d.Points {
			parts = append(parts, f.dot(d.Class, at))
		}
	}
	key, rows := f.key(p.entries())
	parts = append(append(parts, f.marks(shown)...), key...)
	return picture("plot", plotWidth, f.height(rows), p.Title, parts...)
}

const courseHeight = 8.

// entries is what the key explains.
func (p Plot) entries() (list []entry) {
	add := func(class, name string, isThere bool) {
		if name != "" && isThere {
			list = append(list, entry{class, name})
		}
	}
	for _, l := range p.Lines {
		add(l.Class, l.Name, len(l.Points) > 0)
	}
	add("band", p.Band.Name, len(p.Band.Spans) > 0)
	for _, s := range p.Shaded {
		add("shaded "+s.Class, s.Name, len(s.Parts) > 0)
	}
	for _, d := range p.Dots {
		add("dot "+d.Class, d.Name, len(d.Points) > 0)
	}
	for _, m := range p.Marks {
		add(m.Class, m.Name, true)
	}
	add("course", p.Course.Name, p.Course.To > p.Course.From)
	return list
}

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

func (f frame) shade(s Shade) markup.HTML {
	var list []markup.HTML
	for _, p := range s.Parts {
		if !isFinite(p.From, p.To) || p.To <= p.From {
			continue
		}
		x1, _ := f.at(Point{p.From, f.y.from()})
		x2, _ := f.at(Point{p.To, f.y.from()})
		list = append(list, rect("shaded "+s.Class, x1, f.top, x2-x1, f.bottom-f.top))
	}
	return markup.Join(list...)
}

// dot draws a point; one outside the plot isn't drawn.
func (f frame) dot(class string, p Point) markup.HTML {
	x, y := f.at(p)
	if !isFinite(p.X, p.Y) || x < f.left || x > f.right || y < f.top || y > f.bottom {
		return markup.HTML{}
	}
	return circle(class, x, y)
}

func circle(class string, x, y float64) markup.HTML {
	return el("circle", at("class", "dot "+class, "cx", num(x), "cy", num(y), "r", "5"))
}
