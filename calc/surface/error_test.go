package surface

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatDoesNotFitIsNamed(t *testing.T) {
	xy := []string{"x", "y"}
	square := [][]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	corners := func(cells ...[]float64) Input { return Input{Rows: rows(xy, cells...)} }
	of := func(values L) Input { return Input{Lengths: lengths(values)} }
	boxOf := func(faces ...string) Input {
		in := of(L{"length": 1, "width": 1, "height": 1})
		in.Faces = faces
		return in
	}
	for _, c := range []struct {
		name  string
		shape *Shape
		in    Input
		want  *Error
	}{
		{"nothing typed", rectangle, Input{}, fault("length", Missing)},
		{"not a number", rectangle, of(L{"length": math.NaN(), "width": 1}), fault("length", Missing)},
		{"nought", rectangle, of(L{"length": 0, "width": 1}), fault("length", NotPositive)},
		{"below nought", rectangle, of(L{"length": 1, "width": -1}), fault("width", NotPositive)},
		{"below nought, where nought may be", frustum, of(L{"large": 1, "small": -1, "height": 1}), limit("small", TooSmall, 0)},
		{"half a millimetre", rectangle, of(L{"length": 1, "width": 5e-4}), limit("width", TooSmall, 1e-3)},
		{"a 40 km hull", strip, of(L{"length": 40e3, "girth": 1}), limit("length", TooLarge, 100)},
		{"an area over all measure", ellipsoid, of(L{"length": 100, "width": 100, "height": 100}), limit("area", TooLarge, 1e4)},
		{"sides that lie flat", threeSides, of(L{"a": 1, "b": 3, "c": 2}), limit("b", CantClose, 3)},
		{"sides too short", threeSides, of(L{"a": 1, "b": 2, "c": 3.5}), limit("c", CantClose, 3)},
		{"a ring inside out", ring, of(L{"outer": 1, "inner": 1}), limit("inner", TooLarge, 1)},
		{"two corners", polygon, corners([]float64{0, 0}, []float64{1, 0}), limit("corners", TooFew, 3)},
		{"201 corners", polygon, corners(slices.Repeat(square, 51)[:201]...), limit("corners", TooMany, 200)},
		{"a bow tie", polygon, corners(square[0], square[2], square[1], square[3]), fault("corners", Crosses).in(0)},
		{"out and back", polygon, corners(square[0], square[1], []float64{0.5, 0}, square[3]), fault("corners", Crosses).in(0)},
		{"closed by hand", polygon, corners(append(slices.Clone(square), square[0])...), fault("corners", Repeated).in(4)},
		{"a corner twice", polygon, corners(square[0], square[1], square[1], square[2]), fault("corners", Repeated).in(2)},
		{"a corner on a side", polygon, corners([]float64{0, 0}, []float64{2, 0}, []float64{2, 1}, []float64{1, 0}, []float64{0, 1}), fault("corners", Crosses).in(0)},
		{"a corner off the map", polygon, corners(square[0], square[1], []float64{0, 101}), limit("y", TooLarge, 100).in(2)},
		{"no face", box, boxOf(), fault("faces", Missing)},
		{"a seventh face", box, boxOf("top", "lid"), fault("faces", NotAnOption)},
		{"half a piece", pieces, Input{Lengths: lengths(L{"length": 1, "width": 1}), Counts: counts(1.5, 1)}, fault("pieces", NotWhole)},
		{"no choice of ours", ellipsoid, Input{Lengths: lengths(L{"length": 1, "width": 1, "height": 1}),
			Choices: map[string]string{"part": "third"}}, fault("part", NotAnOption)},
		{"girths of nothing", girths, Input{Lengths: lengths(L{"length": 1}), Rows: rows([]string{"girth"}, []float64{0}, []float64{0})},
			limit("area", TooSmall, minArea)},
	} {
		_, err := c.shape.Measure(c.in)
		assert.Equal(t, c.want, err, c.name)
	}
}

func TestErrorsReadAsText(t *testing.T) {
	assert.EqualError(t, limit("position", NotAscending, 0.5).in(2), "surface: position in row 2: not ascending, limit 0.5")
	assert.EqualError(t, fault("length", Missing), "surface: length: missing")
	for r := Missing; r <= GivenTwice; r++ {
		assert.NotEmpty(t, r.String())
	}
	assert.Equal(t, "unknown", (GivenTwice + 1).String())
}
