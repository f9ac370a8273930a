package surface

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

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
		var marked []string
		for _, m := range s.Sketch().Marks {
			assert.NotEmpty(t, m.Text, "%s: %s", s.Key, m.Key)
			if !hasOption(s.Faces, m.Key) {
				marked = append(marked, m.Key)
			}
		}
		assert.ElementsMatch(t, want, marked, s.Key)
		assert.NotEmpty(t, s.Sketch().Strokes, s.Key)
	}
}

// At 280 × 180 px a unit is 10 px, and text 12 to 14 px high: letters must stand
// clear of lines and of each other, and all of it inside.
func TestSketchesAreReadable(t *testing.T) {
	for _, s := range Shapes {
		sketch := s.Sketch()
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
