package surface

import (
	"math"
	"slices"
)

// SketchWidth and SketchHeight are the box that a sketch is drawn in, x to the
// right and y down. Text on it is about 1.2 high.
const (
	SketchWidth  = 28
	SketchHeight = 18
)

// Sketch shows a shape and which measure is which. It isn't to scale.
type Sketch struct {
	Strokes []Stroke
	Marks   []Mark
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

// Sketch gives the shape's sketch, with every letter in its place.
func (s *Shape) Sketch() Sketch { return s.lettered(s.sketch) }

// SketchWith gives the sketch as the answer about girths has it, GirthKey's.
func (s *Shape) SketchWith(girth string) Sketch {
	if girth == Round && s.round != nil {
		return s.lettered(s.round)
	}
	return s.Sketch()
}

func (s *Shape) lettered(make func() Sketch) Sketch {
	sketch := make()
	for i, m := range sketch.Marks {
		sketch.Marks[i].Text = s.letter(m.Key)
	}
	return sketch
}

// letter gives what stands on the sketch for a dim, a column or a face.
func (s *Shape) letter(key string) string {
	dims := s.Dims
	if s.Rows != nil {
		dims = append(slices.Clone(dims), s.Rows.Columns...)
	}
	for _, d := range dims {
		if d.Key == key {
			return d.Letter
		}
	}
	for _, f := range s.Faces {
		if f.Key == key {
			return f.Name
		}
	}
	return ""
}

// path is an open line through points given as x, y, x, y, …
func path(xy ...float64) Stroke {
	var s Stroke
	for i := 0; i+1 < len(xy); i += 2 {
		s.Points = append(s.Points, Point{xy[i], xy[i+1]})
	}
	return s
}

func outline(xy ...float64) Stroke {
	s := path(xy...)
	s.Closed = true
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
	letterOff = 1.2
)

// beside marks a measure by a line beside the shape, to the right of the way
// from the first point to the second.
func beside(key string, x1, y1, x2, y2 float64) Mark {
	rx, ry := right(x1, y1, x2, y2, lineOff)
	return across(key, x1+rx, y1+ry, x2+rx, y2+ry)
}

// across marks a measure by a line between the points themselves, its letter to
// the right of the way from the first to the second.
func across(key string, x1, y1, x2, y2 float64) Mark {
	rx, ry := right(x1, y1, x2, y2, letterOff)
	line := path(x1, y1, x2, y2)
	return Mark{Key: key, Line: &line, At: Point{(x1+x2)/2 + rx, (y1+y2)/2 + ry}}
}

// along marks a measure that follows a curve.
func along(key string, line Stroke, x, y float64) Mark {
	return Mark{Key: key, Line: &line, At: Point{x, y}}
}

func label(key string, x, y float64) Mark { return Mark{Key: key, At: Point{x, y}} }

// right gives the way of the given length to the right of the way between two
// points, as seen on the sketch.
func right(x1, y1, x2, y2, length float64) (x, y float64) {
	dx, dy := x2-x1, y2-y1
	scale := length / math.Hypot(dx, dy)
	return -dy * scale, dx * scale
}
