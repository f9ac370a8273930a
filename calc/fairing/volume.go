package fairing

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Skim is the volume of an even layer: V = A × t. Range: A to 500 m², mean
// thickness 0 to 50 mm. Source: elementary geometry.
var Skim = working.Rule2[unit.Area, unit.Length, unit.Volume]{Rule: &working.Rule{Formula: "V = A × t", Source: source.Ref{Document: &source.Geometry, Place: "prism"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "filler left on", Scale: unit.InLitre, Min: 0, Max: 25000},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 500},
		{Symbol: "t", Meaning: "mean thickness", Scale: unit.InMillimetre, Min: 0, Max: 50},
	}},
	Code: func(area unit.Area, t unit.Length) unit.Volume { return unit.Volume(float64(area) * float64(t)) }}

// BattenHollow is the volume of a hollow under a batten, taken as a paraboloid
// over an ellipse: V = π ÷ 8 × L × W × d, full axes. Range: axes to 20 m, depth
// to 500 mm. Source: elementary geometry, half of the elliptic cylinder around it.
var BattenHollow = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Volume]{Rule: &working.Rule{Formula: "V = π ÷ 8 × L × W × d", Source: source.Ref{Document: &source.Geometry, Place: "elliptic paraboloid"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "filler left on", Scale: unit.InCubicMetre, Min: 0, Max: 100},
	Args: []working.Arg{
		{Symbol: "L", Meaning: "length of the hollow", Scale: unit.InMetre, Min: 0, Max: 20},
		{Symbol: "W", Meaning: "width of the hollow", Scale: unit.InMetre, Min: 0, Max: 20},
		{Symbol: "d", Meaning: "greatest depth", Scale: unit.InMetre, Min: 0, Max: 0.5},
	}},
	Code: func(l, w, d unit.Length) unit.Volume {
		return unit.Volume(math.Pi / 8 * float64(l) * float64(w) * float64(d))
	}}

// Trough is the volume of a long hollow of parabolic section:
// V = 2 ÷ 3 × c × d × l. Range: as BattenHollow. Source: elementary geometry
// (Archimedes, quadrature of the parabola).
var Trough = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Volume]{Rule: &working.Rule{Formula: "V = 2 ÷ 3 × c × d × l", Source: source.Ref{Document: &source.Geometry, Place: "segment of a parabola"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "filler left on", Scale: unit.InCubicMetre, Min: 0, Max: 100},
	Args: []working.Arg{
		{Symbol: "c", Meaning: "chord across the trough", Scale: unit.InMetre, Min: 0, Max: 20},
		{Symbol: "d", Meaning: "greatest depth", Scale: unit.InMetre, Min: 0, Max: 0.5},
		{Symbol: "l", Meaning: "length of the trough", Scale: unit.InMetre, Min: 0, Max: 50},
	}},
	Code: func(c, d, l unit.Length) unit.Volume {
		return unit.Volume(2. / 3 * float64(c) * float64(d) * float64(l))
	}}

// Fillet is the volume of a rounded inside corner:
// V = r² × (cot(θ ÷ 2) − (π − θ) ÷ 2) × l. Range: radius to 200 mm, inside
// angle 20° to 160°. Source: elementary geometry, kite less sector.
var Fillet = working.Rule3[unit.Length, unit.Angle, unit.Length, unit.Volume]{Rule: &working.Rule{Formula: "V = r² × (cot(θ ÷ 2) − (π − θ) ÷ 2) × l", Source: source.Ref{Document: &source.Geometry, Place: "kite less sector"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "filler left on", Scale: unit.InCubicMetre, Min: 0, Max: 100},
	Args: []working.Arg{
		{Symbol: "r", Meaning: "radius", Scale: unit.InMetre, Min: 0, Max: 0.2},
		{Symbol: "θ", Meaning: "inside angle", Scale: unit.InRadian, Min: math.Pi / 9, Max: math.Pi * 8 / 9},
		{Symbol: "l", Meaning: "length of the fillet", Scale: unit.InMetre, Min: 0, Max: 200},
	}},
	Code: func(r unit.Length, theta unit.Angle, l unit.Length) unit.Volume {
		t := float64(theta)
		return unit.Volume(float64(r) * float64(r) * (1/math.Tan(t/2) - (math.Pi-t)/2) * float64(l))
	}}
