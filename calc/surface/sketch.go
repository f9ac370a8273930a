package surface

import "math"

// SketchWidth and SketchHeight are the box that a sketch is drawn in, x to the
// right and y down. Text on it is about 1.7 high.
const (
	SketchWidth  = 28
	SketchHeight = 18
)

// Sketch shows a shape and which measure is which: to scale where its sizes are
// known, but for what would then be too slim to see or to write beside.
type Sketch struct {
	Strokes  []Stroke
	Marks    []Mark
	OffScale bool // something is drawn larger than it is
}

// Point is a place on the sketch.
type Point struct{ X, Y float64 }

// Stroke is a line through Points, or an Arc.
type Stroke struct {
	Points []Point
	Closed bool // back to the first point
	Hidden bool // behind the shape, or a guide: dashed
	Arc    *Arc // nil: Points
}

// Arc is a part of an upright ellipse. Angles are in degrees, 0 to the right
// and 90 down; From is less than To, a whole ellipse goes from 0 to 360.
type Arc struct {
	Centre   Point
	RadiusX  float64
	RadiusY  float64
	From, To float64
}

// At gives the arc's point at an angle in degrees.
func (a *Arc) At(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{a.Centre.X + a.RadiusX*cos, a.Centre.Y + a.RadiusY*sin}
}

// Mark shows where a measure is taken: a dimension line with its letter. A mark
// without a line is a letter or name only, for what has no direction.
type Mark struct {
	Key  string // of the dim, column or face
	Text string // the letter, or the face's name
	Line *Stroke
	At   Point // middle of the text
}

// Sketch gives the shape's sketch, with every letter in its place: of the sizes
// measured, or of usual proportions as long as they give no area.
func (s *Shape) Sketch(in Input) Sketch {
	z, draw, names := sizes{lengths: s.usual}, s.sketch, map[string]string{}
	_, err := s.Measure(in)
	if err == nil {
		z = sizes{in: &in}
	}
	for i := range s.Dims {
		d := &s.Dims[i]
		if names[d.Key] = d.Letter; err == nil && d.Kind == Length {
			z.lengths = append(z.lengths, float64(in.Lengths[d.Key].Value))
		}
	}
	if s.Rows != nil {
		for _, c := range s.Rows.Columns {
			names[c.Key] = c.Letter
		}
	}
	for _, f := range s.Faces {
		names[f.Key] = f.Name
	}
	if s.round != nil && in.Choices[GirthKey] == Round {
		draw = s.round
	}
	sketch := draw(z)
	for i, m := range sketch.Marks {
		sketch.Marks[i].Text = names[m.Key]
	}
	return sketch
}

// outline is a line through points given as x, y, x, y, … and back to the first.
func outline(xy ...float64) Stroke {
	points := make([]Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		points = append(points, Point{xy[i], xy[i+1]})
	}
	return Stroke{Points: points, Closed: true}
}

// path is the same, open.
func path(xy ...float64) Stroke {
	s := outline(xy...)
	s.Closed = false
	return s
}

func arc(x, y, rx, ry, from, to float64) Stroke {
	return Stroke{Arc: &Arc{Point{x, y}, rx, ry, from, to}}
}

func oval(x, y, rx, ry float64) Stroke { return arc(x, y, rx, ry, 0, 360) }

func hidden(s Stroke) Stroke { s.Hidden = true; return s }

// How far a dimension line stands off the shape, and its letter off the line.
const (
	lineOff   = 1.0
	letterOff = 1.4
)

// dimension marks a measure by a line that stands off the way from the first
// point to the second, to its right as seen on the sketch, its letter further.
func dimension(key string, off, x1, y1, x2, y2 float64) Mark {
	dx, dy := x2-x1, y2-y1
	long := math.Hypot(dx, dy)
	rx, ry := -dy/long, dx/long
	return Mark{Key: key, Line: &Stroke{Points: []Point{{x1 + off*rx, y1 + off*ry}, {x2 + off*rx, y2 + off*ry}}},
		At: Point{(x1+x2)/2 + (off+letterOff)*rx, (y1+y2)/2 + (off+letterOff)*ry}}
}

// within marks a height by a line inside the shape, its letter right of it,
// where the shape goes on so far at the foot and at the top; without room for
// the letter the mark stands right of the shape, at outer.
func within(key string, x, foot, top, footHalf, topHalf, outer float64) (Mark, []Stroke) {
	const letterHigh, letterEnd = 0.9, letterOff + 0.6
	share := (0.5*(foot-top) - letterHigh) / (foot - top)
	atLetter := min(topHalf+share*(footHalf-topHalf), footHalf+share*(topHalf-footHalf))
	if foot-top > 3*letterHigh && atLetter > letterEnd {
		return dimension(key, 0, x, foot, x, top), nil
	}
	return upright(key, outer, x+footHalf, foot, x+topHalf, top)
}

// upright marks a height by a line right of the shape, with guides to it from
// the right end of what it is the height of, at the foot and at the top.
func upright(key string, x, footX, footY, topX, topY float64) (Mark, []Stroke) {
	return dimension(key, lineOff, x, footY, x, topY), []Stroke{
		hidden(path(footX, footY, x+lineOff, footY)), hidden(path(topX, topY, x+lineOff, topY))}
}

// along marks a measure that follows a curve.
func along(key string, line Stroke, x, y float64) Mark {
	return Mark{Key: key, Line: &line, At: Point{x, y}}
}

func label(key string, x, y float64) Mark { return Mark{Key: key, At: Point{x, y}} }
