package surface

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func area(t *testing.T, s *Shape, values L) float64 {
	t.Helper()
	return float64(measured(t, s, values).Area.Value)
}

func edge(t *testing.T, s *Shape, values L) float64 {
	t.Helper()
	return float64(measured(t, s, values).Edge.Value)
}

func TestTriangleByItsSidesAndByItsHeight(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 37))
	for range 200 {
		base, height, foot := 0.2+5*random.Float64(), 0.2+5*random.Float64(), 6*random.Float64()-3
		left, right := math.Hypot(foot, height), math.Hypot(base-foot, height)
		sides := measured(t, threeSides, L{"a": base, "b": left, "c": right})
		near(t, area(t, triangle, L{"base": base, "height": height}), float64(sides.Area.Value), "area")
		near(t, base+left+right, float64(sides.Edge.Value), "edge")
		assert.LessOrEqual(t, edge(t, triangle, L{"base": base, "height": height}), float64(sides.Edge.Value)*(1+1e-12))
	}
	near(t, 3+2*math.Sqrt(4+2.25), edge(t, triangle, L{"base": 3, "height": 2}), "equal sides")
}

func TestOneShapeInTheFormOfAnother(t *testing.T) {
	near(t, area(t, rectangle, L{"length": 2, "width": 3}),
		area(t, trapezium, L{"long-side": 2, "short-side": 2, "height": 3}), "trapezium with equal sides")
	near(t, edge(t, rectangle, L{"length": 2, "width": 3}),
		edge(t, trapezium, L{"long-side": 2, "short-side": 2, "height": 3}), "its edge")
	near(t, area(t, circle, L{"diameter": 2}), area(t, ellipse, L{"length": 2, "width": 2}), "round ellipse")
	near(t, edge(t, circle, L{"diameter": 2}), edge(t, ellipse, L{"length": 2, "width": 2}), "its edge")
	near(t, area(t, circle, L{"diameter": 5})-area(t, circle, L{"diameter": 3}),
		area(t, ring, L{"outer": 5, "inner": 3}), "ring as two circles")
	near(t, area(t, tube, L{"diameter": 2, "length": 3}),
		area(t, frustum, L{"large": 2, "small": 2, "height": 3}), "cone with equal ends")
	near(t, area(t, ellipsoid, L{"length": 2, "width": 2, "height": 2}),
		area(t, sphericalCap, L{"diameter": 2, "height": 1})*2, "ball as two domes")
	near(t, area(t, tube, L{"diameter": 2, "length": 2}),
		area(t, ellipsoid, L{"length": 2, "width": 2, "height": 2}), "Archimedes: a ball has the area of the tube round it")
	near(t, math.Pi*3*5, area(t, frustum, L{"large": 6, "small": 0, "height": 4}), "cone to a point: π r s")
}

// A ball cut in two has the area of the ball, wherever it is cut.
func TestDomesOfOneBallAddUp(t *testing.T) {
	const r = 2.5
	for _, h := range []float64{0.1, 1, 2.5, 4, 4.9} {
		rim := 2 * math.Sqrt(2*r*h-h*h)
		sum := area(t, sphericalCap, L{"diameter": rim, "height": h}) + area(t, sphericalCap, L{"diameter": rim, "height": 2*r - h})
		near(t, 4*math.Pi*r*r, sum, "ball")
	}
}

// Ramanujan's approximation against the arc length, summed along 200 000
// chords: never long, short by at most 0.041 %.
func TestEdgeOfAnEllipse(t *testing.T) {
	for _, width := range []float64{1, 0.9, 0.5, 0.2, 0.05, 0.01} {
		const n = 200000
		around := 0.0
		for i := range n {
			a, b := 2*math.Pi*float64(i)/n, 2*math.Pi*float64(i+1)/n
			around += math.Hypot((math.Cos(b)-math.Cos(a))/2, (math.Sin(b)-math.Sin(a))*width/2)
		}
		off := edge(t, ellipse, L{"length": 1, "width": width})/around - 1
		assert.Less(t, off, 1e-9, "width %v", width)
		assert.Greater(t, off, -4.1e-4, "width %v", width)
		if width >= 0.5 {
			assert.Greater(t, off, -1e-6, "width %v", width)
		}
	}
}

func TestSpheroidsByTheirClosedForms(t *testing.T) {
	for _, ratio := range []float64{1.001, 1.5, 3, 20, 1000} {
		c := 0.03 * ratio // half the axis of rotation; the other two 0.03
		e := math.Sqrt(1 - 1/(ratio*ratio))
		prolate := 2 * math.Pi * 0.03 * 0.03 * (1 + ratio/e*math.Asin(e))
		near(t, prolate, area(t, ellipsoid, L{"length": 2 * c, "width": 0.06, "height": 0.06}), "prolate")
		oblate := 2 * math.Pi * c * c * (1 + (1-e*e)/e*math.Atanh(e))
		near(t, oblate, area(t, ellipsoid, L{"length": 2 * c, "width": 0.06, "height": 2 * c}), "oblate")
	}
}

// Any ellipsoid against the mean over all directions n of √(Σ (bc·n₁)² …), of
// which the area is 4π times.
func TestEllipsoidAgainstTheIntegral(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 43))
	for range 20 {
		l, w, h := 1+random.Float64(), 1+random.Float64(), 1+random.Float64()
		const n = 400
		sum := 0.0
		for i := range n {
			cos := (2*float64(i)+1)/n - 1
			sin := math.Sqrt(1 - cos*cos)
			for k := range n {
				turn := 2 * math.Pi * (float64(k) + 0.5) / n
				x, y, z := w*h*sin*math.Cos(turn), l*h*sin*math.Sin(turn), l*w*cos
				sum += math.Sqrt(x*x+y*y+z*z) / 4
			}
		}
		want := 4 * math.Pi * sum / (n * n)
		assert.InEpsilon(t, want, area(t, ellipsoid, L{"length": l, "width": w, "height": h}), 2e-6)
	}
}

func TestHalfAnEllipsoidHasARim(t *testing.T) {
	values := L{"length": 3, "width": 2, "height": 1}
	half, err := ellipsoid.Measure(Input{Lengths: lengths(values), Choices: map[string]string{"part": "half"}})
	require.NoError(t, err)
	near(t, area(t, ellipsoid, values)/2, float64(half.Area.Value), "area")
	near(t, edge(t, ellipse, L{"length": 3, "width": 2}), float64(half.Edge.Value), "edge")
	assert.Zero(t, measured(t, ellipsoid, values).Edge.Value)
}

func TestBoxFacesAndEdges(t *testing.T) {
	take := func(side string, faces ...string) (area, edge float64) {
		m, err := box.Measure(Input{Lengths: lengths(L{"length": 10, "width": 6, "height": 4}), Faces: faces,
			Choices: map[string]string{"side": side}})
		require.NoError(t, err)
		assert.Equal(t, side == "inside", slices.Contains(m.Notes, CornersNotEdges))
		return float64(m.Area.Value), float64(m.Edge.Value)
	}
	for _, c := range []struct {
		side       string
		faces      []string
		area, edge float64
	}{
		{"outside", keys(box.Faces), 248, 80}, // all twelve edges
		{"inside", keys(box.Faces), 248, 0},   // closed: hollow corners only
		{"outside", []string{"top"}, 60, 32},
		{"inside", []string{"top"}, 60, 32},
		{"outside", []string{"bottom", "front", "back", "left", "right"}, 188, 80},
		{"inside", []string{"bottom", "front", "back", "left", "right"}, 188, 32}, // the open rim
		{"outside", []string{"front", "right"}, 64, 44},                           // the corner between them once
		{"outside", []string{"front", "front"}, 40, 28},                           // chosen twice is chosen once
	} {
		area, edge := take(c.side, c.faces...)
		assert.InDelta(t, c.area, area, 1e-9, "%v", c)
		assert.InDelta(t, c.edge, edge, 1e-9, "%v", c)
	}
}

func TestPolygonAgainstOtherShapes(t *testing.T) {
	corners := func(cells ...[]float64) Measured {
		m, err := polygon.Measure(Input{Rows: rows([]string{"x", "y"}, cells...)})
		require.NoError(t, err)
		return m
	}
	for _, shift := range []float64{0, 90, -90} {
		m := corners([]float64{shift, 1}, []float64{shift + 4, 1}, []float64{shift + 4, 3}, []float64{shift, 3})
		near(t, 8, float64(m.Area.Value), "rectangle")
		near(t, 12, float64(m.Edge.Value), "its edge")
	}
	near(t, area(t, triangle, L{"base": 4, "height": 3}), float64(corners([]float64{0, 0}, []float64{4, 0}, []float64{1, 3}).Area.Value), "triangle")
	near(t, area(t, triangle, L{"base": 4, "height": 3}), float64(corners([]float64{1, 3}, []float64{4, 0}, []float64{0, 0}).Area.Value), "the other way round")
	near(t, 3, float64(corners([]float64{0, 0}, []float64{2, 0}, []float64{2, 1}, []float64{1, 1}, []float64{1, 2}, []float64{0, 2}).Area.Value), "L")

	var round [][]float64
	for i := range 200 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 200)
		round = append(round, []float64{cos, sin})
	}
	near(t, 100*math.Sin(2*math.Pi/200), float64(corners(round...).Area.Value), "200 corners on a circle: n/2·sin(2π/n)")
}

func TestStripAndPieces(t *testing.T) {
	near(t, 7.3*0.62, area(t, strip, L{"length": 7.3, "girth": 0.62}), "strip")
	in := Input{Lengths: lengths(L{"length": 0.2, "width": 0.1}), Counts: counts(12, 2)}
	m, err := pieces.Measure(in)
	require.NoError(t, err)
	near(t, 12*2*0.02, float64(m.Area.Value), "pieces")
	near(t, 12*0.6, float64(m.Edge.Value), "an edge is counted once, not for every face")
}

// Rows have the name of all of them, and that of one.
func TestRowsAreNamedTogetherAndOneByOne(t *testing.T) {
	for _, s := range Shapes {
		if s.Rows != nil {
			assert.True(t, strings.HasPrefix(s.Rows.Name, s.Rows.Row+"s"), "%s: %s", s.Rows.Row, s.Rows.Name)
		}
	}
}
