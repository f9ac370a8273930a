package surface

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// 200 stations or corners are measured, one more is refused, and the limit named.
func TestRowsAreBounded(t *testing.T) {
	stations := func(n int) Input {
		return Input{Lengths: lengths(L{"length": 10}), Rows: slices.Repeat(rows([]string{"girth"}, []float64{2}), n)}
	}
	m, err := girths.Measure(stations(200))
	assert.NoError(t, err)
	near(t, 20, float64(m.Area.Value), "2 m of girth over 10 m")
	_, err = girths.Measure(stations(201))
	assert.Equal(t, limit("stations", TooMany, 200), err)

	// A comb of 99 teeth, a metre wide: two corners each, and two for its back.
	comb := func(n int) (list [][]float64) {
		for i := range n - 2 {
			list = append(list, []float64{float64(i) / float64(n-3), 0.5 + 0.5*float64(i%2)})
		}
		return append(list, []float64{1, 0}, []float64{0, 0})
	}
	_, err = polygon.Measure(Input{Rows: rows([]string{"x", "y"}, comb(200)...)})
	assert.NoError(t, err)
	_, err = polygon.Measure(Input{Rows: rows([]string{"x", "y"}, comb(201)...)})
	assert.Equal(t, limit("corners", TooMany, 200), err)
}

// The area that comes out is held to its limits, at them it holds.
func TestTheAreaThatComesOutIsBounded(t *testing.T) {
	square := func(side float64, many float64) error {
		m, err := rectangle.Measure(Input{Lengths: lengths(L{"length": side, "width": side})})
		if err != nil {
			return err
		}
		_, err = Total(m, nil, number(many), number(1))
		return err
	}
	assert.NoError(t, square(100, 1), "a hectare")
	assert.Equal(t, limit("area", TooLarge, 1e4), square(100, 2))
	assert.NoError(t, square(0.001, 1), "a square millimetre")
	assert.Equal(t, limit("length", TooSmall, 1e-3), square(0.0009, 1))
	long, err := strip.Measure(Input{Lengths: lengths(L{"length": 100, "girth": 0.01})})
	assert.NoError(t, err)
	for many, want := range map[float64]error{499: nil, 500: limit("edge", TooLarge, 1e5)} {
		_, err := Total(long, nil, number(many), number(1))
		if want == nil {
			assert.NoError(t, err, "99.9 km of edge")
		} else {
			assert.Equal(t, want, err)
		}
	}
}

// Stations stand at least a millimetre apart.
func TestStationsStandApart(t *testing.T) {
	at := func(second float64) error {
		_, err := girths.Measure(Input{Lengths: lengths(L{}), Rows: rows([]string{"position", "girth"}, []float64{1, 2}, []float64{second, 2}, []float64{3, 2})})
		return err
	}
	assert.NoError(t, at(1.0011))
	assert.Equal(t, limit("position", NotAscending, 1).in(1), at(1.0009))
}

// Each face of a box is the one that its name says: length by width above and
// below, length by height before and behind, width by height at the sides.
func TestEachFaceOfABoxByItsName(t *testing.T) {
	for face, want := range map[string]float64{"top": 15, "bottom": 15, "front": 10, "back": 10, "left": 6, "right": 6} {
		m, err := box.Measure(Input{Lengths: lengths(L{"length": 5, "width": 3, "height": 2}), Faces: []string{face}})
		assert.NoError(t, err)
		near(t, want, float64(m.Area.Value), face)
		around := map[float64]float64{15: 16, 10: 14, 6: 10}[want]
		near(t, around, float64(m.Edge.Value), face+", its edge")
	}
}

// Polygons that touch themselves, from whichever corner they are begun and either way round: a corner on another side is a crossing.
func TestACornerOnAnotherSideCrosses(t *testing.T) {
	for _, corners := range [][][]float64{
		{{0, 0}, {4, 0}, {4, 3}, {2, 0}, {0, 3}},         // the fourth corner lies on the first side
		{{0, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 2}, {4, 2}}, // the sixth on the second
		{{0, 0}, {4, 0}, {1, 0}, {1, 3}},                 // back along the first side
		{{0, 0}, {4, 4}, {4, 0}, {0, 4}},                 // a bow tie
	} {
		for turn := range corners {
			walked := append(slices.Clone(corners[turn:]), corners[:turn]...)
			for range 2 {
				_, err := polygon.Measure(Input{Rows: rows([]string{"x", "y"}, walked...)})
				var refused *Error
				if assert.ErrorAs(t, err, &refused, walked) {
					assert.Equal(t, Crosses, refused.Reason, walked)
				}
				slices.Reverse(walked)
			}
		}
	}
}

// Sides in line with each other don't meet unless they overlap: a T, a U and a cross are measured from whichever corner they
// are begun and whichever way they are walked. (Areas and edges by hand.)
func TestSidesInLineDoNotMeet(t *testing.T) {
	for name, c := range map[string]struct {
		corners    [][]float64
		area, edge float64
	}{
		"T":     {[][]float64{{0, 0}, {3, 0}, {3, 1}, {2, 1}, {2, 3}, {1, 3}, {1, 1}, {0, 1}}, 5, 12},
		"U":     {[][]float64{{0, 0}, {3, 0}, {3, 2}, {2, 2}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, 5, 12},
		"cross": {[][]float64{{1, 0}, {2, 0}, {2, 1}, {3, 1}, {3, 2}, {2, 2}, {2, 3}, {1, 3}, {1, 2}, {0, 2}, {0, 1}, {1, 1}}, 5, 12},
	} {
		for turn := range c.corners {
			walked := append(slices.Clone(c.corners[turn:]), c.corners[:turn]...)
			for range 2 {
				m, err := polygon.Measure(Input{Rows: rows([]string{"x", "y"}, walked...)})
				if assert.NoError(t, err, "%s from %v", name, walked[0]) {
					assert.InDelta(t, c.area, float64(m.Area.Value), 1e-9, name)
					assert.InDelta(t, c.edge, float64(m.Edge.Value), 1e-9, name)
				}
				slices.Reverse(walked)
			}
		}
	}
}
