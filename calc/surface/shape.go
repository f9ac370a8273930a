package surface

import (
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Shapes is every shape a surface can have, in the order in which they are offered.
var Shapes = []*Shape{
	rectangle, triangle, threeSides, trapezium, circle, ellipse, ring, polygon,
	tube, frustum, sphericalCap, ellipsoid, box, strip, girths, pieces, direct,
}

// Rules is every rule by which a shape is measured.
func Rules() []*working.Rule {
	return working.List(
		&rectangleArea, &rectangleEdge, &triangleArea, &triangleEdge,
		&perimeterOfThree, &halfPerimeter, &lessSide, &heron,
		&trapeziumArea, &trapeziumEdge, &circleArea, &circleEdge,
		&ellipseArea, &ellipseFlatness, &ellipseEdge, &ringArea, &ringEdge,
		shoelace, roundTheCorners, &tubeArea, &tubeEdge, &slant, &frustumArea, &frustumEdge,
		&capArea, ellipsoidArea, &halfArea, &lengthTimesHeight, &widthTimesHeight,
		boxArea, boxEdge, &stripArea, &stripEdge, &piecesArea, &piecesEdge,
		&evenSpacing, &overAll, &fromFirstToLast, firstRule, secondRule, trapezoids, girthsArea, &girthsEdge,
		&totalArea, &totalEdge, cutOutArea, cutOutEdge,
	)
}

// Shape is one way to measure a surface.
type Shape struct {
	Key   string // what is saved: "rectangle"
	Name  string // what the trade says: "rectangle"
	Dims  []Dim
	Rows  *Rows    // a list to be measured as well; nil: none
	Faces []Option // faces to choose from; nil: the shape is one face

	measure func(Input) (Measured, error)
	usual   []float64          // proportions of its lengths, for a sketch of nothing measured
	sketch  func(sizes) Sketch // made when it is shown
	round   func(sizes) Sketch // the same with girths the whole way round; nil: there are none
}

// Find gives the shape of that key, or nil.
func Find(key string) *Shape {
	for _, s := range Shapes {
		if s.Key == key {
			return s
		}
	}
	return nil
}

// Measure gives the area of one side and the edge length.
//
// Errors: *Error, naming the first measure that is missing, out of range or at
// odds with another.
func (s *Shape) Measure(in Input) (Measured, error) {
	if err := s.check(in); err != nil {
		return Measured{}, err
	}
	m, err := s.measure(in)
	if err != nil {
		return Measured{}, resultError(err)
	}
	return m.bounded()
}

// Kind says what a Dim takes.
type Kind int

// The kinds.
const (
	Length Kind = iota
	Area
	Count  // a whole number
	Choice // one of Options
)

// Dim is one thing to measure, count or choose.
type Dim struct {
	Key      string
	Name     string
	Letter   string // its name on the sketch and in the formulas; none for a choice
	Kind     Kind
	Optional bool
	Min, Max float64  // closed range in SI base units
	Options  []Option // of a choice; the first holds until another is chosen
}

// Option is one answer to a choice, or one face.
type Option struct{ Key, Name string }

// Rows is a list of like measures: corners, stations.
type Rows struct {
	Key, Name string // of the list: "corners"
	Row       string // of one line: "corner"
	Columns   []Dim  // all of them lengths
	Min, Max  int    // how many
}

// The limits of what can be measured. They stop slips of the finger and wrong
// units (a hull of 40 km); whether a surface is likely is asked elsewhere.
const (
	minLength = float64(unit.Millimetre)
	maxLength = 100 * float64(unit.Metre)
	maxEdge   = 1e5 * float64(unit.Metre)
	minArea   = 1e-7 * float64(unit.SquareMetre)
	maxArea   = 1e4 * float64(unit.SquareMetre)
	maxCount  = 10000
	maxRows   = 200
)
