package draw

import "shedreckoner/wasm/markup"

// CurvePlot is a curve with a band about it, and a point on it.
type CurvePlot struct {
	Title  string // for those who don't see it: what it says, not that it is a curve
	X, Y   Axis
	Line   []Point
	Band   []Span
	Shaded []Interval // of X
	Mark   *Mark

	LineName, BandName, ShadedName string // of the key; left out where empty
}

// Mark is a point with what stands there.
type Mark struct {
	Point
	Text string
}

// Curve draws a plot: gel time against temperature, say. Without a range on both
// axes it draws nothing.
func Curve(p CurvePlot) markup.HTML {
	f, ok := newFrame(p.X, p.Y, 1)
	if !ok {
		return markup.HTML{}
	}
	var entries []entry
	for _, e := range []entry{{"curve", p.LineName}, {"band", p.BandName}, {"shaded", p.ShadedName}} {
		if e.name != "" {
			entries = append(entries, e)
		}
	}
	key, rows := f.key(entries)
	parts := []markup.HTML{f.inside(f.shade(p.Shaded), f.band(p.Band)), f.axes(), f.inside(f.line("curve", p.Line)), f.dot(p.Mark)}
	return picture("plot", plotWidth, f.height(rows), p.Title, append(parts, key...)...)
}

// dot draws a point with lines to both axes; one outside the plot isn't drawn.
func (f frame) dot(m *Mark) markup.HTML {
	if m == nil || !isFinite(m.X, m.Y) {
		return markup.HTML{}
	}
	x, y := f.at(m.Point)
	if x < f.left || x > f.right || y < f.top || y > f.bottom {
		return markup.HTML{}
	}
	return markup.Join(f.upright("today dashed", m.Text, m.X, 0), line("today dashed", f.left, y, x, y),
		el("circle", at("class", "dot", "cx", num(x), "cy", num(y), "r", "6")))
}
