package buildup

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// EdgeArea is the strip along edges, where films run thin and boards dwell:
// e = l × w. Range: edge to 2 km, strip 1 to 200 mm. Source: common practice.
var EdgeArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "e = l × w", Source: source.Ref{Document: &source.Practice, Place: "coarse paper off the last 20–25 mm"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "e", Meaning: "edge strips", Scale: unit.InSquareMetre, Min: 0, Max: 400},
	Args: []working.Arg{
		{Symbol: "l", Meaning: "length of the edges", Scale: unit.InMetre, Min: 0, Max: 2000},
		{Symbol: "w", Meaning: "width of the strip", Scale: unit.InMetre, Min: 0.001, Max: 0.2},
	}},
	Code: func(l, w unit.Length) unit.Area { return unit.Area(l * w) }}

// FlatArea is what is left of an area inside its edge strips: f = A − e.
// Source: elementary geometry.
var FlatArea = working.Rule2[unit.Area, unit.Area, unit.Area]{Rule: &working.Rule{Formula: "f = A − e", Source: source.Ref{Document: &source.Geometry, Place: "difference"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "f", Meaning: "area inside the edge strips", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
		{Symbol: "e", Meaning: "edge strips", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
	}},
	Code: func(area, edge unit.Area) unit.Area { return area - edge }}

// Scaled is a film in another region: g = f × x. Range: x 0.1 to 10.
// Source: assumption.
var Scaled = working.Rule2[unit.DryFilm, unit.Factor, unit.DryFilm]{Rule: &working.Rule{Formula: "g = f × x", Source: source.Ref{Document: &source.House, Place: "edge strips"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "g", Meaning: "film in the region", Scale: unit.InMicrometre, Max: mostFilm},
	Args:   []working.Arg{{Symbol: "f", Meaning: "film elsewhere", Scale: unit.InMicrometre, Min: 0, Max: mostFilm / 10}, {Symbol: "x", Meaning: "film of the region ÷ film elsewhere", Scale: unit.InPure, Min: 0.1, Max: 10}}},
	Code: func(f unit.DryFilm, x unit.Factor) unit.DryFilm { return f * unit.DryFilm(x) }}

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
