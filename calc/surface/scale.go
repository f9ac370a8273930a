package surface

import "math"

// sizes is what a sketch is drawn from.
type sizes struct {
	lengths []float64 // of the dims that are lengths, in their order: in metres, or the usual proportions
	in      *Input    // all that was measured; nil: not yet, or it gives no area
}

// slimmest is the smallest share of a sketch's largest measure at which another is
// drawn: less would be a line with no room for a letter.
const slimmest = 1. / 16

// thicken lengthens what is too slim beside the largest, and says whether
// anything was.
func thicken(lengths ...*float64) (isOff bool) {
	largest := 0.
	for _, l := range lengths {
		largest = max(largest, *l)
	}
	for _, l := range lengths {
		if *l < slimmest*largest {
			*l, isOff = slimmest*largest, true
		}
	}
	return isOff
}

// room is where on the sketch a shape may stand, its marks beside it.
type room struct{ left, top, right, bottom float64 }

// Where marks stand below and on the right alone, and where above or left too.
var (
	belowRight      = room{2, 1, 23.8, 13.8}
	aboveBelowRight = room{2, 4, 23.8, 13.8}
	allAround       = room{4.2, 4, 23.8, 13.8}
)

// place fits a width and a height into the middle of the room, as large as can be.
// It gives the upper left corner, and how many of the sketch's units are one of
// theirs. What would be too slim to see is thickened, and isOff says so.
func (r room) place(width, height *float64) (x, y, scale float64, isOff bool) {
	for _, l := range []*float64{width, height} {
		if least := slimmest * max(*width, *height); *l < least {
			*l, isOff = least, true
		}
	}
	scale = min((r.right-r.left) / *width, (r.bottom-r.top) / *height)
	return (r.left + r.right - scale**width) / 2, (r.top + r.bottom - scale**height) / 2, scale, isOff
}

// least is half the length of a dimension line for what is zero, or nearly.
const least = 0.25

// quarter is the way along a quarter of an ellipse, by chords.
func quarter(rx, ry float64) float64 {
	const pieces = 64
	way := 0.
	for i := range pieces {
		a, b := math.Pi/2*float64(i)/pieces, math.Pi/2*float64(i+1)/pieces
		way += math.Hypot(rx*(math.Cos(b)-math.Cos(a)), ry*(math.Sin(b)-math.Sin(a)))
	}
	return way
}
