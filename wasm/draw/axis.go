package draw

import (
	"math"

	"shedreckoner/wasm/markup"
)

// Tick is a place on an axis and its label, unit included.
type Tick struct {
	At   float64
	Text string
}

// Axis is what a plot is measured against: it goes from its first tick to its
// last.
type Axis struct {
	Label string
	Ticks []Tick
}

// NiceTicks gives round places, at most a few more than the given number, that
// span low to high. Without a range it gives none.
func NiceTicks(low, high float64, about int, text func(float64) string) []Tick {
	if !isFinite(low, high, high-low) || high <= low || about < 1 {
		return nil
	}
	step := niceStep((high - low) / float64(about))
	if from := math.Floor(low / step); isFinite(step, from) && step > 0 && from+1 > from && math.Abs(from) < 1<<40 {
		var ticks []Tick
		for i := from; ; i++ {
			ticks = append(ticks, Tick{i * step, text(i * step)})
			if i*step >= high {
				return ticks
			}
		}
	}
	return nil
}

// niceStep is the least of 1, 2, 5, 10, … that isn't under the step.
func niceStep(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, nice := range []float64{1, 2, 5} {
		if nice*power >= least {
			return nice * power
		}
	}
	return 10 * power
}

func (a Axis) from() float64 { return a.Ticks[0].At }
func (a Axis) to() float64   { return a.Ticks[len(a.Ticks)-1].At }

func (a Axis) isGood() bool {
	return len(a.Ticks) > 1 && isFinite(a.from(), a.to(), a.to()-a.from()) && a.to() > a.from()
}

// share is how far along the axis a value lies, held near the axis so that a
// wild value makes no wild coordinate.
func (a Axis) share(v float64) float64 {
	return max(-2, min((v-a.from())/(a.to()-a.from()), 3))
}

const (
	plotWidth  = 300.
	plotHeight = 150. // of what lies between the axes
)

// frame is a plot's place in its picture.
type frame struct {
	x, y                     Axis
	left, top, right, bottom float64
}

// newFrame makes room for the texts of the axes, and for rows of text above.
func newFrame(x, y Axis, rows int) (frame, bool) {
	if !x.isGood() || !y.isGood() {
		return frame{}, false
	}
	left := 0.
	for _, t := range y.Ticks {
		left = max(left, textWidth(t.Text))
	}
	top := float64(rows+1)*lineHeight + lineHeight/2
	return frame{x, y, min(left+6, plotWidth/2), top, plotWidth - 8, top + plotHeight}, true
}

// height is the picture's height with rows of text below the axes.
func (f frame) height(rows int) float64 { return f.bottom + (2.5+float64(rows))*lineHeight + 4 }

func (f frame) at(p Point) (x, y float64) {
	return f.left + (f.right-f.left)*f.x.share(p.X), f.bottom - (f.bottom-f.top)*f.y.share(p.Y)
}

// inside clips what is drawn to the space between the axes.
func (f frame) inside(parts ...markup.HTML) markup.HTML {
	w, h := f.right-f.left, f.bottom-f.top
	return el("svg", at("x", num(f.left), "y", num(f.top), "width", num(w), "height", num(h),
		"viewBox", num(f.left)+" "+num(f.top)+" "+num(w)+" "+num(h)), parts...)
}

// axes draws the two axes with as many of their ticks' texts as have room.
func (f frame) axes() markup.HTML {
	parts := []markup.HTML{path("axis", "M"+num(f.left)+" "+num(f.top)+"V"+num(f.bottom)+"H"+num(f.right)),
		words("aside", "start", fitted(f.y.Label, plotWidth), 0, lineHeight/2),
		words("aside", "end", fitted(f.x.Label, plotWidth), plotWidth, f.bottom+lineHeight*2)}
	last := math.Inf(-1)
	for _, t := range f.x.Ticks {
		x, _ := f.at(Point{t.At, f.y.from()})
		text := fitted(t.Text, plotWidth)
		half := textWidth(text) / 2
		if middle := max(half, min(x, plotWidth-half)); middle-half > last && isFinite(x) {
			parts = append(parts, line("grid", x, f.bottom, x, f.bottom+4), words("", "middle", text, middle, f.bottom+lineHeight))
			last = middle + half + 4
		}
	}
	last = math.Inf(1)
	for _, t := range f.y.Ticks {
		_, y := f.at(Point{f.x.from(), t.At})
		if y+lineHeight/2 <= last && isFinite(y) {
			parts = append(parts, line("grid", f.left, y, f.right, y), words("", "end", fitted(t.Text, f.left-4), f.left-4, y))
			last = y - lineHeight/2
		}
	}
	return markup.Join(parts...)
}
