package surface

import (
	"errors"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Measured is a surface in figures.
type Measured struct {
	Area  working.Figure[unit.Area]   // of one side
	Edge  working.Figure[unit.Length] // where the surface ends; zero: none, or NoEdge
	Notes []Note
}

// Note is something to say beside a measured surface.
type Note int

// The notes.
const (
	EdgeAtLeast     Note = iota + 1 // the edge is the shortest that the measures allow
	NoEdge                          // no edge was given: no tape and no edge strip can be reckoned
	ByFirstRule                     // girths taken by Simpson's first rule
	BySecondRule                    // girths taken by Simpson's second (3/8) rule
	ByTrapezoids                    // girths, or some of them, taken by trapezoids
	GirthsReadLow                   // stations measured straight: 1–2 % low on beamy ends
	CornersNotEdges                 // inside a box, corners are hollow: only open rims are counted as edge
)

// bounded refuses an area or edge that no builder has. The comparisons refuse
// NaN too.
func (m Measured) bounded() (Measured, error) {
	switch area, edge := float64(m.Area.Value), float64(m.Edge.Value); {
	case !(area >= minArea):
		return Measured{}, limit(AreaKey, TooSmall, minArea)
	case !(area <= maxArea):
		return Measured{}, limit(AreaKey, TooLarge, maxArea)
	case !(edge <= maxEdge):
		return Measured{}, limit(EdgeKey, TooLarge, maxEdge)
	}
	return m, nil
}

// resultError turns the error of a formula whose result is out of range into the
// one that bounded gives for a whole surface.
func resultError(err error) error {
	var out *working.RangeError
	switch {
	case !errors.As(err, &out):
		return err
	case out.Arg.Scale != unit.InSquareMetre:
		return limit(EdgeKey, TooLarge, maxEdge)
	case out.Value < out.Arg.Min:
		return limit(AreaKey, TooSmall, minArea)
	}
	return limit(AreaKey, TooLarge, maxArea)
}

// The dims that a surface of any shape has.
var (
	CountDim = Dim{Key: "count", Name: "how many alike", Letter: "N", Kind: Count, Min: 1, Max: maxCount}
	SidesDim = Dim{Key: "sides", Name: "sides", Letter: "n", Kind: Count, Min: 1, Max: 2}
)

var (
	countArg = working.Arg{Symbol: "N", Meaning: "how many alike", Scale: unit.InPure, Min: 1, Max: maxCount}

	totalArea = working.Rule4[unit.Factor, unit.Factor, unit.Area, unit.Area, unit.Area]{Rule: &working.Rule{Formula: "T = N × n × (A − C)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "T", Meaning: "total area", Scale: unit.InSquareMetre, Min: 0, Max: 2 * maxCount * maxArea}, // before it is held to its limits
		Args: []working.Arg{
			countArg,
			{Symbol: "n", Meaning: "sides", Scale: unit.InPure, Min: 1, Max: 2},
			{Symbol: "A", Meaning: "area of one side", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
			{Symbol: "C", Meaning: "cut-outs", Scale: unit.InSquareMetre, Min: 0, Max: maxArea},
		}},
		Code: func(many, sides unit.Factor, area, cut unit.Area) unit.Area {
			return unit.Area(many*sides) * (area - cut)
		}}

	totalEdge = working.Rule3[unit.Factor, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "T = N × (E + F)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "T", Meaning: "total edge", Scale: unit.InMetre, Min: 0, Max: maxCount * maxEdge},
		Args: []working.Arg{
			countArg,
			{Symbol: "E", Meaning: "edge", Scale: unit.InMetre, Min: 0, Max: maxCount * maxEdge},
			{Symbol: "F", Meaning: "edges of cut-outs", Scale: unit.InMetre, Min: 0, Max: maxCount * maxEdge},
		}},
		Code: func(many unit.Factor, edge, cut unit.Length) unit.Length {
			return unit.Length(many) * (edge + cut)
		}}

	cutOutArea = working.SumRule("cut-outs", unit.InSquareMetre)
	cutOutEdge = working.SumRule("edges of cut-outs", unit.InMetre)
)

// Total gives the area that is coated and its edge: T = N × n × (A − C), and
// for the edge T = N × (E + F), since a thin part has one edge for both sides.
// N is CountDim, n is SidesDim (1 or 2), A and E the surface's, C and F the
// sums of the cut-outs'.
//
// Errors: *Error, for cut-outs that leave nothing, and for a count, sides or a
// total out of range.
//
// Source: elementary geometry.
func Total(m Measured, cutouts []Measured, many, sides working.Figure[unit.Factor]) (Measured, error) {
	if err := CountDim.check(float64(many.Value), true); err != nil {
		return Measured{}, err
	}
	if err := SidesDim.check(float64(sides.Value), true); err != nil {
		return Measured{}, err
	}
	if len(cutouts) == 0 && many.Value == 1 && sides.Value == 1 {
		return m.bounded()
	}
	cutArea, cutEdge, err := sumCutOuts(m, cutouts)
	if err != nil {
		return Measured{}, err
	}
	area, err := totalArea.Figure(many, sides, m.Area, cutArea)
	if err != nil {
		return Measured{}, err
	}
	edge, err := totalEdge.Figure(many, m.Edge, cutEdge)
	if err != nil {
		return Measured{}, err
	}
	return Measured{area, edge, allNotes(m, cutouts)}.bounded()
}

func sumCutOuts(m Measured, cutouts []Measured) (area working.Figure[unit.Area], edge working.Figure[unit.Length], err error) {
	if len(cutouts) == 0 {
		return working.Given(unit.Area(0), "cut-outs", unit.InSquareMetre, "none", source.Exact),
			working.Given(unit.Length(0), "edges of cut-outs", unit.InMetre, "none", source.Exact), nil
	}
	var areas []working.Figure[unit.Area]
	var edges []working.Figure[unit.Length]
	var cut unit.Area
	for i, c := range cutouts {
		if cut += c.Area.Value; !(cut < m.Area.Value) {
			return area, edge, limit(CutOutsKey, TooLarge, float64(m.Area.Value)).in(i)
		}
		areas, edges = append(areas, c.Area), append(edges, c.Edge)
	}
	return sum(cutOutArea, areas), sum(cutOutEdge, edges), nil
}

func allNotes(m Measured, cutouts []Measured) []Note {
	notes := slices.Clone(m.Notes)
	for _, c := range cutouts {
		for _, n := range c.Notes {
			notes = addNote(notes, n)
		}
	}
	return notes
}

// addNote adds a note once.
func addNote(notes []Note, n Note) []Note {
	if slices.Contains(notes, n) {
		return notes
	}
	return append(notes, n)
}
