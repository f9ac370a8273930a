package buildup

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// EdgeArea is the strip along edges, where films run thin and boards dwell:
// e = l × w. Range: edge to 2 km, strip 1 to 200 mm. Source: common practice.
var EdgeArea = working.Of2("e = l × w", source.Practice.At("coarse paper off the last 20–25 mm"), source.CommonPractice,
	working.In("e", "edge strips", unit.InSquareMetre, 0, 400),
	[]working.Arg{
		working.In("l", "length of the edges", unit.InMetre, 0, 2000),
		working.In("w", "width of the strip", unit.InMetre, 0.001, 0.2),
	},
	func(l, w unit.Length) unit.Area { return unit.Area(l * w) })

// FlatArea is what is left of an area inside its edge strips: f = A − e.
// Source: elementary geometry.
var FlatArea = working.Of2("f = A − e", source.Geometry.At("difference"), source.Exact,
	working.In("f", "area inside the edge strips", unit.InSquareMetre, 0, 1e5),
	[]working.Arg{
		working.In("A", "area", unit.InSquareMetre, 0, 1e5),
		working.In("e", "edge strips", unit.InSquareMetre, 0, 1e5),
	},
	func(area, edge unit.Area) unit.Area { return area - edge })

// Scaled is a film in another region: g = f × x. Range: x 0.1 to 10.
// Source: assumption.
var Scaled = working.Of2("g = f × x", source.House.At("edge strips"), source.Assumption,
	film("g", "film in the region"),
	[]working.Arg{working.In("f", "film elsewhere", unit.InMicrometre, 0, mostFilm/10), working.In("x", "film of the region ÷ film elsewhere", unit.InPure, 0.1, 10)},
	func(f unit.DryFilm, x unit.Factor) unit.DryFilm { return f * unit.DryFilm(x) })

// Regions is a surface divided into its flat and its edge strips. A piece so narrow
// that its strips meet is all edge: its flat has no figure.
type Regions struct{ Flat, Edge working.Figure[unit.Area] }

// SplitRegions divides an area by the length of its edges and the width of a strip.
// Errors: *working.RangeError.
func SplitRegions(area working.Figure[unit.Area], edges, width working.Figure[unit.Length]) (Regions, error) {
	edge, err := EdgeArea.Figure(edges, width)
	if err != nil {
		return Regions{}, err
	}
	if edge.Value >= area.Value {
		return Regions{Edge: area}, nil
	}
	flat, err := FlatArea.Figure(area, edge)
	return Regions{flat, edge}, err
}

// InRegion gives the steps as they are in a region where films and removals are
// multiples of those elsewhere. What was measured stays as it is.
// Errors: *StepError.
func InRegion(steps []Step, adds, takes working.Figure[unit.Factor]) ([]Step, error) {
	out := make([]Step, len(steps))
	for i, s := range steps {
		var err error
		if s.Film.adds() {
			if s.Film.Adds, err = Scaled.Figure(s.Film.Adds, adds); err != nil {
				return nil, outOfRange(i, err)
			}
		}
		if s.Film.takes() {
			if s.Film.Takes, err = Scaled.Figure(s.Film.Takes, takes); err != nil {
				return nil, outOfRange(i, err)
			}
		}
		out[i] = s
	}
	return out, nil
}
