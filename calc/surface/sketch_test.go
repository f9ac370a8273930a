package surface

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// stretched is measures of a shape that give an area, each from a hundredth to
// a hundred times what is usual.
func stretched(s *Shape, random *rand.Rand) Input {
	for {
		in := draw(s, random)
		for key, f := range in.Lengths {
			in.Lengths[key] = metres(float64(f.Value) * math.Pow(10, 4*random.Float64()-2))
		}
		if _, err := s.Measure(in); err == nil {
			return in
		}
	}
}

// sketches is sketches of a shape of no measures, usual ones and wild ones.
func sketches(t *testing.T, s *Shape) []Sketch {
	random := rand.New(rand.NewPCG(53, 59))
	list := []Sketch{s.Sketch(Input{}), s.Sketch(Input{Choices: map[string]string{GirthKey: Round}})}
	for range 100 {
		in, _ := drawGood(t, s, random)
		list = append(list, s.Sketch(in), s.Sketch(stretched(s, random)))
	}
	return list
}

// A girth over one side and one the whole way round are drawn apart, and the
// word changes no figure: nothing is doubled by it.
func TestAGirthSaysHowFarItGoes(t *testing.T) {
	for _, s := range []*Shape{strip, girths} {
		girthIs := func(answer string) Sketch { return s.Sketch(Input{Choices: map[string]string{GirthKey: answer}}) }
		assert.NotEqual(t, s.Sketch(Input{}), girthIs(Round), s.Key)
		assert.Equal(t, s.Sketch(Input{}), girthIs("side"), s.Key)
	}
	in := Input{Lengths: lengths(L{"length": 7.3, "girth": 0.62})}
	one, err := strip.Measure(in)
	assert.NoError(t, err)
	in.Choices = map[string]string{GirthKey: Round}
	round, err := strip.Measure(in)
	assert.NoError(t, err)
	assert.Equal(t, one.Area.Value, round.Area.Value)
}

// A height is marked inside its shape where three of its letters fit below each other and the letter beside the
// line, else right of it, with two guides.
func TestAHeightStandsInsideWhereItsLetterFits(t *testing.T) {
	for _, c := range []struct {
		high, footHalf, topHalf float64
		isInside                bool
	}{{2.8, 5, 5, true}, {2.6, 5, 5, false}, {10, 2.1, 2.1, true}, {10, 1.9, 1.9, false}, {10, 5, 0, true}, {10, 0, 5, true}, {10, 3, 0, false}, {10, 0, 3, false}} {
		_, guides := within("h", 20, c.high, 0, c.footHalf, c.topHalf, 30)
		assert.Equal(t, c.isInside, len(guides) == 0, "%+v", c)
		assert.True(t, c.isInside || len(guides) == 2)
	}
}

func TestEveryMeasureIsOnTheSketch(t *testing.T) {
	for _, s := range Shapes {
		var want []string
		for _, d := range s.Dims {
			if d.Kind != Choice {
				want = append(want, d.Key)
			}
		}
		if s.Rows != nil {
			for _, c := range s.Rows.Columns {
				want = append(want, c.Key)
			}
		}
		for _, sketch := range sketches(t, s) {
			var marked []string
			for _, m := range sketch.Marks {
				assert.NotEmpty(t, m.Text, "%s: %s", s.Key, m.Key)
				if !hasOption(s.Faces, m.Key) {
					marked = append(marked, m.Key)
				}
			}
			assert.ElementsMatch(t, want, marked, s.Key)
			assert.NotEmpty(t, sketch.Strokes, s.Key)
		}
	}
}

// At 200 px a unit is 7 px, and text 13 px high: letters must stand clear of lines
// and of each other, and all of it inside, whatever the sizes are.
func TestSketchesAreReadable(t *testing.T) {
	for _, s := range Shapes {
		for _, sketch := range sketches(t, s) {
			readable(t, s, sketch)
		}
	}
}

func readable(t *testing.T, s *Shape, sketch Sketch) {
	t.Helper()
	lines := slices.Clone(sketch.Strokes)
	for _, m := range sketch.Marks {
		if m.Line != nil {
			lines = append(lines, *m.Line)
		}
	}
	for _, line := range lines {
		for _, p := range points(line) {
			assert.True(t, p.X >= 0.4 && p.X <= SketchWidth-0.4 && p.Y >= 0.4 && p.Y <= SketchHeight-0.4, "%s: %v is outside", s.Key, p)
		}
	}
	for i, m := range sketch.Marks {
		halfWidth, halfHeight := 0.48*float64(len(m.Text)), 0.9
		assert.True(t, m.At.X >= halfWidth && m.At.X <= SketchWidth-halfWidth && m.At.Y >= halfHeight && m.At.Y <= SketchHeight-halfHeight,
			"%s: %s is outside", s.Key, m.Text)
		for _, line := range lines {
			for _, p := range points(line) {
				assert.False(t, math.Abs(p.X-m.At.X) < halfWidth && math.Abs(p.Y-m.At.Y) < halfHeight, "%s: %s on a line at %v", s.Key, m.Text, p)
			}
		}
		for _, other := range sketch.Marks[i+1:] {
			assert.False(t, math.Abs(other.At.X-m.At.X) < halfWidth+0.48*float64(len(other.Text)) && math.Abs(other.At.Y-m.At.Y) < 2*halfHeight,
				"%s: %s on %s", s.Key, m.Text, other.Text)
		}
	}
}

// points samples a stroke finely.
func points(s Stroke) (list []Point) {
	if s.Arc != nil {
		for i := range 181 {
			list = append(list, s.Arc.At(s.Arc.From+(s.Arc.To-s.Arc.From)*float64(i)/180))
		}
		return list
	}
	corners := s.Points
	if s.Closed {
		corners = append(slices.Clone(corners), corners[0])
	}
	for i, a := range corners[:len(corners)-1] {
		b := corners[i+1]
		for k := range 101 {
			f := float64(k) / 100
			list = append(list, Point{a.X + f*(b.X-a.X), a.Y + f*(b.Y-a.Y)})
		}
	}
	return list
}

// way is how long a stroke is.
func way(s Stroke) (sum float64) {
	list := points(s)
	for i, p := range list[1:] {
		sum += math.Hypot(p.X-list[i].X, p.Y-list[i].Y)
	}
	return sum
}

// seen is how much of a measure a sketch shows that looks at it aslant; the girth
// of a strip is drawn as its edge, with the dimension line outside.
var seen = map[string]float64{"box width": 0.5, "ellipsoid width": 0.5, "ellipsoid height": math.Cos(math.Pi / 6)}

// Unless a sketch says that it is off scale, every dimension line on it is as
// much longer than another as its measure is; a measure next to nothing is a dot.
func TestSketchesFollowTheSizes(t *testing.T) {
	random := rand.New(rand.NewPCG(61, 67))
	for _, s := range Shapes {
		toScale := 0
		for range 400 {
			in, _ := drawGood(t, s, random)
			if random.IntN(2) == 0 {
				in = stretched(s, random)
			}
			sketch := s.Sketch(in)
			if sketch.OffScale {
				continue
			}
			toScale++
			var scales []float64
			for _, m := range sketch.Marks {
				measure, isMeasured := in.Lengths[m.Key]
				if !isMeasured || m.Line == nil || m.Key == EdgeKey {
					continue
				}
				long := way(*m.Line)
				if m.Key == "girth" {
					long = way(sketch.Strokes[0])
				}
				if aslant := seen[s.Key+" "+m.Key]; aslant > 0 {
					long /= aslant
				}
				if long > 2*least {
					scales = append(scales, long/float64(measure.Value))
				}
			}
			if len(scales) > 1 {
				assert.InEpsilon(t, slices.Max(scales), slices.Min(scales), 1e-3, "%s: %v, %v", s.Key, in.Lengths, scales)
			}
		}
		assert.Greater(t, toScale, 100, s.Key)
	}
}

// extent is how wide and high a sketch's shape is.
func extent(sketch Sketch) (wide, high float64) {
	low, far := bounds(sketch.Strokes)
	return far.X - low.X, far.Y - low.Y
}

// bounds are the upper left and the lower right end of what can be seen.
func bounds(strokes []Stroke) (low, far Point) {
	low, far = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, stroke := range strokes {
		if stroke.Hidden {
			continue
		}
		for _, p := range points(stroke) {
			low, far = Point{min(low.X, p.X), min(low.Y, p.Y)}, Point{max(far.X, p.X), max(far.Y, p.Y)}
		}
	}
	return low, far
}

// A flat trapezium looks flat, a strip ten times as long as it is wide looks so,
// a dome of 2 m by 0.5 m is four times as wide as high. (Exact.)
func TestWhatIsFlatLooksFlat(t *testing.T) {
	for _, c := range []struct {
		shape      *Shape
		sizes      L
		wide, high float64
	}{
		{trapezium, L{"long-side": 2, "short-side": 1, "height": 0.25}, 8, 1},
		{trapezium, L{"long-side": 1, "short-side": 2, "height": 4}, 1, 2},
		{rectangle, L{"length": 6, "width": 0.6}, 10, 1},
		{rectangle, L{"length": 0.6, "width": 6}, 1, 10},
		{triangle, L{"base": 3, "height": 0.5}, 6, 1},
		{threeSides, L{"a": 3, "b": 5, "c": 4}, 5, 2.4},
		{ellipse, L{"length": 3, "width": 1}, 3, 1},
		{tube, L{"diameter": 0.1, "length": 1}, 1.04, 0.1},
		{box, L{"length": 4, "width": 1, "height": 2}, 4.4, 2.3},
	} {
		in := Input{Lengths: lengths(c.sizes), Faces: keys(c.shape.Faces)}
		sketch := c.shape.Sketch(in)
		wide, high := extent(sketch)
		assert.InEpsilon(t, c.wide/c.high, wide/high, 1e-3, "%s: %v", c.shape.Key, c.sizes)
		assert.False(t, sketch.OffScale, c.shape.Key)
	}
	assert.True(t, rectangle.Sketch(Input{Lengths: lengths(L{"length": 40, "width": 0.1})}).OffScale, "a hair can't be seen beside a hull")
	assert.False(t, rectangle.Sketch(Input{}).OffScale, "of nothing there is no scale")
}

// The hull hangs from its stations: the skin is as deep as each girth, to the
// scale of the length. (Exact.)
func TestGirthsHangToScale(t *testing.T) {
	in := Input{Lengths: lengths(L{"spacing": 2}), Rows: rows([]string{"girth"}, []float64{0.5}, []float64{1}, []float64{1.5})}
	wide, high := 0., 0.
	for _, stroke := range girths.Sketch(in).Strokes {
		if len(stroke.Points) == 3 {
			wide, high = stroke.Points[2].X-stroke.Points[0].X, stroke.Points[2].Y-stroke.Points[0].Y
		}
	}
	assert.InEpsilon(t, 4., wide/high, 1e-9)
}

// A polygon is drawn corner by corner, with what is up above.
func TestAPolygonIsDrawnAsItIs(t *testing.T) {
	in := Input{Rows: rows([]string{"x", "y"}, []float64{0, 0}, []float64{4, 0}, []float64{4, 1}, []float64{0, 2})}
	list := polygon.Sketch(in).Strokes[0].Points
	assert.InEpsilon(t, 2., (list[1].X-list[0].X)/(list[0].Y-list[3].Y), 1e-9)
	assert.Less(t, list[3].Y, list[2].Y)
}
