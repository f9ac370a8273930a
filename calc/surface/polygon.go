package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var polygon = &Shape{
	Key: "polygon", Name: "polygon, by its corners",
	Rows: &Rows{
		Key: "corners", Name: "corners, in the order round the edge", Row: "corner",
		Columns: []Dim{{Key: "x", Name: "along", Letter: "x", Min: -maxLength, Max: maxLength}, {Key: "y", Name: "up", Letter: "y", Min: -maxLength, Max: maxLength}},
		Min:     3, Max: maxRows,
	},
	measure: measurePolygon,
	sketch:  sketchPolygon,
}

var (
	shoelace = &working.Rule{Formula: "half the sum, round the corners, of x × next y − next x × y, without its sign",
		Source: source.Ref{Document: &source.Geometry, Place: "shoelace formula"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a polygon", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea}, IsProse: true}
	roundTheCorners = &working.Rule{Formula: "the ways from corner to corner, and back to the first, added up",
		Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a polygon", Scale: unit.InMetre, Min: 0, Max: maxEdge}, IsProse: true}
)

// sketchPolygon draws the corners about the place that they are measured from.
// The marks go to the corners that are farthest along and up.
func sketchPolygon(z sizes) Sketch {
	corners := []corner{{4, 2}, {7, 10}, {15, 11}, {19, 5}, {13, 1}}
	if z.in != nil {
		corners = nil
		for _, row := range z.in.Rows {
			corners = append(corners, corner{float64(row["x"].Value), float64(row["y"].Value)})
		}
	}
	var low, high, far, up corner
	for _, c := range corners {
		low, high = corner{min(low.x, c.x), min(low.y, c.y)}, corner{max(high.x, c.x), max(high.y, c.y)}
		if math.Abs(c.x) > math.Abs(far.x) {
			far = c
		}
		if math.Abs(c.y) > math.Abs(up.y) {
			up = c
		}
	}
	wide, tall := high.x-low.x, high.y-low.y
	x, y, k, _ := belowRight.place(&wide, &tall)
	at := func(c corner) (px, py float64) { return x + k*(c.x-low.x), y + k*(high.y-c.y) }
	edge := Stroke{Closed: true}
	for _, c := range corners {
		px, py := at(c)
		edge.Points = append(edge.Points, Point{px, py})
	}
	zeroX, zeroY := at(corner{})
	farX, farY := at(far)
	upX, upY := at(up)
	right, foot := x+k*wide, y+k*tall
	return Sketch{
		Strokes: []Stroke{
			edge, hidden(path(zeroX, y, zeroX, foot+lineOff)), hidden(path(x, zeroY, right+lineOff, zeroY)),
			hidden(path(farX, farY, farX, foot+lineOff)), hidden(path(upX, upY, right+lineOff, upY)),
		},
		Marks: []Mark{dimension("x", lineOff, min(zeroX, farX), foot, max(zeroX, farX), foot), dimension("y", lineOff, right, max(zeroY, upY), right, min(zeroY, upY))},
	}
}

type corner struct{ x, y float64 }

func (a corner) minus(b corner) corner { return corner{a.x - b.x, a.y - b.y} }

// cross is twice the area of the triangle between a and b, positive if b lies
// to the left of a.
func (a corner) cross(b corner) float64 { return a.x*b.y - a.y*b.x }

func (a corner) dot(b corner) float64 { return a.x*b.x + a.y*b.y }

func (a corner) distance(b corner) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }

func measurePolygon(in Input) (Measured, error) {
	corners := make([]corner, len(in.Rows))
	var steps []*working.Step
	for i, row := range in.Rows {
		corners[i] = corner{float64(row["x"].Value), float64(row["y"].Value)}
		steps = append(steps, row["x"].Step, row["y"].Step)
	}
	if err := checkSimple(corners); err != nil {
		return Measured{}, err
	}
	var twice, edge float64
	for i, c := range corners {
		next := corners[(i+1)%len(corners)]
		twice += c.minus(corners[0]).cross(next.minus(corners[0]))
		edge += c.distance(next)
	}
	return Measured{
		Area: working.By(shoelace, unit.Area(math.Abs(twice)/2), steps...),
		Edge: working.By(roundTheCorners, unit.Length(edge), steps...),
	}, nil
}

// checkSimple refuses a polygon that has a corner twice, or that touches or crosses
// itself: its area would be counted with two signs.
func checkSimple(corners []corner) error {
	n := len(corners)
	for i := range corners {
		if next := (i + 1) % n; corners[i].distance(corners[next]) < minLength {
			return fault("corners", Repeated).in(max(i, next))
		}
	}
	for i := range corners {
		a, b := corners[i], corners[(i+1)%n]
		c := corners[(i+2)%n]
		if ab, bc := b.minus(a), c.minus(b); ab.cross(bc) == 0 && ab.dot(bc) < 0 {
			return fault("corners", Crosses).in(i)
		}
		for j := i + 2; j < n; j++ {
			if (j+1)%n != i && meet(a, b, corners[j], corners[(j+1)%n]) {
				return fault("corners", Crosses).in(i)
			}
		}
	}
	return nil
}

// meet says if the line from a to b and the one from c to d have a point in common.
func meet(a, b, c, d corner) bool {
	ab, cd := b.minus(a), d.minus(c)
	left, right := ab.cross(c.minus(a)), ab.cross(d.minus(a))
	before, after := cd.cross(a.minus(c)), cd.cross(b.minus(c))
	if apart(left, right) && apart(before, after) {
		return true
	}
	return left == 0 && between(a, b, c) || right == 0 && between(a, b, d) ||
		before == 0 && between(c, d, a) || after == 0 && between(c, d, b)
}

// apart says if two points lie on opposite sides of a line, given their distances
// from it.
func apart(p, q float64) bool { return p < 0 && q > 0 || p > 0 && q < 0 }

// between says if p, which is in line with a and b, lies between them.
func between(a, b, p corner) bool { return p.minus(a).dot(p.minus(b)) <= 0 }
