package surface

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// away is how far a point lies from a stroke.
func away(p Point, s Stroke) float64 {
	if s.Arc != nil {
		a, nearest := s.Arc, math.Inf(1)
		if a.RadiusX > 0 && a.RadiusY > 0 {
			for turn := -1.; turn < 2; turn++ { // the same place of the ellipse, once round and not
				at := math.Atan2((p.Y-a.Centre.Y)/a.RadiusY, (p.X-a.Centre.X)/a.RadiusX)*180/math.Pi + 360*turn
				q := a.At(min(max(at, a.From), a.To))
				nearest = min(nearest, math.Hypot(p.X-q.X, p.Y-q.Y))
			}
		}
		return nearest
	}
	corners, nearest := s.Points, math.Inf(1)
	if s.Closed {
		corners = append(append([]Point(nil), corners...), corners[0])
	}
	for i, a := range corners[:len(corners)-1] {
		dx, dy := corners[i+1].X-a.X, corners[i+1].Y-a.Y
		share := 0.
		if long := dx*dx + dy*dy; long > 0 {
			share = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/long, 0), 1)
		}
		nearest = min(nearest, math.Hypot(p.X-a.X-share*dx, p.Y-a.Y-share*dy))
	}
	return nearest
}

// ends gives both ends of an open stroke.
func ends(s Stroke) []Point {
	switch {
	case s.Arc != nil && s.Arc.To-s.Arc.From < 360:
		return []Point{s.Arc.At(s.Arc.From), s.Arc.At(s.Arc.To)}
	case s.Arc == nil && !s.Closed:
		return []Point{s.Points[0], s.Points[len(s.Points)-1]}
	}
	return nil
}

// No line of a sketch ends in the air: an edge meets another edge, a guide goes from the shape to its dimension line,
// straight across or straight down. And an arc goes forward, as its From and To say.
func TestNoLineOfASketchEndsInTheAir(t *testing.T) {
	for _, s := range Shapes {
		for n, sketch := range sketches(t, s) {
			lines := append([]Stroke(nil), sketch.Strokes...)
			for _, m := range sketch.Marks {
				if m.Line != nil {
					lines = append(lines, *m.Line)
				}
			}
			if s == ellipsoid { // seen from above, its top and its bottom lie inside its outline
				o := sketch.Strokes[0].Arc
				lines = append(lines, path(o.Centre.X, o.Centre.Y-o.RadiusY, o.Centre.X, o.Centre.Y+o.RadiusY))
			}
			for i, stroke := range sketch.Strokes {
				if stroke.Arc != nil {
					assert.Less(t, stroke.Arc.From, stroke.Arc.To, s.Key)
				}
				if stroke.Hidden && len(stroke.Points) == 2 && !stroke.Closed {
					a, b := stroke.Points[0], stroke.Points[1]
					assert.Less(t, min(math.Abs(a.X-b.X), math.Abs(a.Y-b.Y)), 1e-6, "%s, %d: a guide runs aslant, %v", s.Key, n, stroke.Points)
				}
				for e, end := range ends(stroke) {
					if s == polygon && stroke.Hidden && e == 0 || s == girths && stroke.Hidden {
						continue // a polygon's zero lines and a section's middle line run across the whole
					}
					nearest := math.Inf(1)
					for j, other := range lines {
						if j != i {
							nearest = min(nearest, away(end, other))
						}
					}
					if !assert.Less(t, nearest, 1e-6, "%s, %d: stroke %d ends in the air at %v", s.Key, n, i, end) {
						return
					}
				}
			}
		}
	}
}

// A sketch is as large as its room lets it be: it fills it from side to side or from top to bottom, and stands in the
// middle of it, whatever its sizes are.
func TestASketchFillsItsRoom(t *testing.T) {
	for s, r := range map[*Shape]room{
		rectangle: belowRight, triangle: belowRight, ellipse: belowRight, tube: belowRight, sphericalCap: belowRight,
		trapezium: aboveBelowRight, frustum: aboveBelowRight, ellipsoid: allAround, box: {4.2, 1, 23.8, 13.8}, threeSides: {4.2, 3.2, 23.8, 13.8}, strip: {4, 4, 25.5, 14.5},
	} {
		random := rand.New(rand.NewPCG(71, 73))
		for range 100 {
			in := stretched(s, random)
			sketch := s.Sketch(in)
			switch {
			case sketch.OffScale, in.Choices[GirthKey] == Round: // which is drawn aslant
				continue
			case in.Lengths["small"].Value > in.Lengths["large"].Value: // the upper end hangs lower than the foot
				continue
			}
			low, far := bounds(sketch.Strokes)
			wide, high := (far.X-low.X)/(r.right-r.left), (far.Y-low.Y)/(r.bottom-r.top)
			assert.InDelta(t, 1, max(wide, high), 2e-3, "%s: %v", s.Key, in.Lengths)
			assert.InDelta(t, (r.left+r.right)/2, (low.X+far.X)/2, 0.02, "%s: %v", s.Key, in.Lengths)
			assert.InDelta(t, (r.top+r.bottom)/2, (low.Y+far.Y)/2, 0.3, "%s: %v", s.Key, in.Lengths)
		}
	}
}

// Many small pieces are drawn as five rectangles of one shape, four of them beside the one that is measured.
func TestPiecesAreDrawnAlike(t *testing.T) {
	random := rand.New(rand.NewPCG(79, 83))
	for range 50 {
		sketch := pieces.Sketch(stretched(pieces, random))
		assert.Len(t, sketch.Strokes, 5)
		var ratios []float64
		for i, stroke := range sketch.Strokes {
			low, far := bounds(sketch.Strokes[i : i+1])
			ratios = append(ratios, (far.X-low.X)/(far.Y-low.Y))
			assert.InDelta(t, (far.X-low.X)*(far.Y-low.Y), inside(stroke.Points), 1e-9, "a rectangle")
			assert.True(t, low.X >= 2-1e-9 && low.Y >= 1.5-1e-9 && far.X <= 26+1e-9, "%v to %v", low, far)
		}
		assert.InEpsilon(t, slices.Max(ratios), slices.Min(ratios), 1e-9)
	}
}

// inside is the area inside a line, by cross products.
func inside(corners []Point) (area float64) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		area += (a.X*b.Y - b.X*a.Y) / 2
	}
	return math.Abs(area)
}

// A dome's height is marked inside it where the letter stands clear of its rim, else beside it with two guides; a box with room for
// its names has those of the three faces that are seen, and a flat one has none on its side.
func TestWhereMarksStandOnADomeAndABox(t *testing.T) {
	guides := func(height float64) (n int) {
		for _, stroke := range sphericalCap.Sketch(Input{Lengths: lengths(L{"diameter": 2, "height": height})}).Strokes {
			if len(stroke.Points) == 2 {
				n++
			}
		}
		return n
	}
	assert.Equal(t, 0, guides(1), "half a ball")
	assert.Equal(t, 2, guides(0.3), "a lens")

	names := func(l, w, h float64) (list []string) {
		for _, m := range box.Sketch(Input{Lengths: lengths(L{"length": l, "width": w, "height": h}), Faces: keys(box.Faces)}).Marks {
			if hasOption(box.Faces, m.Key) {
				list = append(list, m.Key)
			}
		}
		return list
	}
	assert.Equal(t, []string{"top", "front", "right"}, names(1.4, 1.4, 0.9))
	assert.NotContains(t, names(2, 1, 0.2), "right")
}
