package surface

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// sketches is every sketch that a shape has.
func sketches(s *Shape) []Sketch {
	list := []Sketch{s.Sketch()}
	if s.round != nil {
		list = append(list, s.SketchWith(Round))
	}
	return list
}

// A girth over one side and one the whole way round are drawn apart, and the
// word changes no figure: nothing is doubled by it.
func TestAGirthSaysHowFarItGoes(t *testing.T) {
	for _, s := range []*Shape{strip, girths} {
		assert.NotEqual(t, s.Sketch(), s.SketchWith(Round), s.Key)
		assert.Equal(t, s.Sketch(), s.SketchWith("side"), s.Key)
	}
	in := Input{Lengths: lengths(L{"length": 7.3, "girth": 0.62})}
	one, err := strip.Measure(in)
	assert.NoError(t, err)
	in.Choices = map[string]string{GirthKey: Round}
	round, err := strip.Measure(in)
	assert.NoError(t, err)
	assert.Equal(t, one.Area.Value, round.Area.Value)
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
		for _, sketch := range sketches(s) {
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

// At 280 × 180 px a unit is 10 px, and text 12 to 14 px high: letters must stand
// clear of lines and of each other, and all of it inside.
func TestSketchesAreReadable(t *testing.T) {
	for _, s := range Shapes {
		for _, sketch := range sketches(s) {
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
			assert.True(t, p.X >= 0.5 && p.X <= SketchWidth-0.5 && p.Y >= 0.5 && p.Y <= SketchHeight-0.5, "%s: %v is outside", s.Key, p)
		}
	}
	for i, m := range sketch.Marks {
		halfWidth, halfHeight := 0.4*float64(len(m.Text)), 0.7
		assert.True(t, m.At.X >= halfWidth && m.At.X <= SketchWidth-halfWidth && m.At.Y >= halfHeight && m.At.Y <= SketchHeight-halfHeight,
			"%s: %s is outside", s.Key, m.Text)
		for _, line := range lines {
			for _, p := range points(line) {
				assert.False(t, math.Abs(p.X-m.At.X) < halfWidth && math.Abs(p.Y-m.At.Y) < halfHeight, "%s: %s on a line at %v", s.Key, m.Text, p)
			}
		}
		for _, other := range sketch.Marks[i+1:] {
			assert.False(t, math.Abs(other.At.X-m.At.X) < halfWidth+0.4*float64(len(other.Text)) && math.Abs(other.At.Y-m.At.Y) < 2*halfHeight,
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
