package draw

import (
	"math"

	"shedreckoner/wasm/markup"
)

// RingPlot is a ring that empties, clockwise from the top, and marks about it.
type RingPlot struct {
	Title string    // for those who don't see it
	Left  float64   // share of the whole that is left, 0 to 1: more and less are cut to it
	Marks []float64 // places on the ring, as shares of the whole
	Class string    // how far it has come: dresses the band
}

// The ring's own units: the whole is drawn at the size of its place.
const (
	ringSize   = 200.
	ringRadius = 84.
	ringMark   = 12. // half of a mark's length
)

// Ring draws what is left of a time. A share that isn't a number draws an empty ring.
func Ring(p RingPlot) markup.HTML {
	left := math.Min(1, math.Max(0, p.Left))
	if math.IsNaN(left) {
		left = 0
	}
	const middle = ringSize / 2
	circle := func(class string, more ...string) markup.HTML {
		return el("circle", at(append([]string{"class", class, "cx", num(middle), "cy", num(middle), "r", num(ringRadius)}, more...)...))
	}
	parts := []markup.HTML{circle("ring-all")}
	if left > 0 {
		around := 2 * math.Pi * ringRadius
		parts = append(parts, circle("ring-left "+p.Class, "stroke-dasharray", num(left*around)+" "+num(around),
			"transform", "rotate(-90 "+num(middle)+" "+num(middle)+")"))
	}
	for _, m := range p.Marks {
		if !isFinite(m) || m <= 0 || m >= 1 {
			continue
		}
		sin, cos := math.Sincos(2 * math.Pi * m)
		from, to := ringRadius-ringMark, ringRadius+ringMark
		parts = append(parts, line("ring-mark", middle+from*sin, middle-from*cos, middle+to*sin, middle-to*cos))
	}
	return el("svg", at("class", "ring-picture", "role", "img", "viewBox", "0 0 "+num(ringSize)+" "+num(ringSize), "aria-label", p.Title), parts...)
}
