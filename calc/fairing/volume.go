package fairing

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Skim is the volume of an even layer: V = A × t. Range: A to 500 m², mean
// thickness 0 to 50 mm. Source: elementary geometry.
var Skim = working.Of2("V = A × t", source.Geometry.At("prism"), source.Exact,
	working.In("V", "filler left on", unit.InLitre, 0, 25000),
	[]working.Arg{
		working.In("A", "area", unit.InSquareMetre, 0, 500),
		working.In("t", "mean thickness", unit.InMillimetre, 0, 50),
	},
	func(area unit.Area, t unit.Length) unit.Volume { return unit.Volume(float64(area) * float64(t)) })

// BattenHollow is the volume of a hollow under a batten, taken as a paraboloid
// over an ellipse: V = π ÷ 8 × L × W × d, full axes. Range: axes to 20 m, depth
// to 500 mm. Source: elementary geometry, half of the elliptic cylinder around it.
var BattenHollow = working.Of3("V = π ÷ 8 × L × W × d", source.Geometry.At("elliptic paraboloid"), source.Exact,
	working.In("V", "filler left on", unit.InCubicMetre, 0, 100),
	[]working.Arg{
		working.In("L", "length of the hollow", unit.InMetre, 0, 20),
		working.In("W", "width of the hollow", unit.InMetre, 0, 20),
		working.In("d", "greatest depth", unit.InMetre, 0, 0.5),
	},
	func(l, w, d unit.Length) unit.Volume {
		return unit.Volume(math.Pi / 8 * float64(l) * float64(w) * float64(d))
	})

// Trough is the volume of a long hollow of parabolic section:
// V = 2 ÷ 3 × c × d × l. Range: as BattenHollow. Source: elementary geometry
// (Archimedes, quadrature of the parabola).
var Trough = working.Of3("V = 2 ÷ 3 × c × d × l", source.Geometry.At("segment of a parabola"), source.Exact,
	working.In("V", "filler left on", unit.InCubicMetre, 0, 100),
	[]working.Arg{
		working.In("c", "chord across the trough", unit.InMetre, 0, 20),
		working.In("d", "greatest depth", unit.InMetre, 0, 0.5),
		working.In("l", "length of the trough", unit.InMetre, 0, 50),
	},
	func(c, d, l unit.Length) unit.Volume {
		return unit.Volume(2. / 3 * float64(c) * float64(d) * float64(l))
	})

// Fillet is the volume of a rounded inside corner:
// V = r² × (cot(θ ÷ 2) − (π − θ) ÷ 2) × l. Range: radius to 200 mm, inside
// angle 20° to 160°. Source: elementary geometry, kite less sector.
var Fillet = working.Of3("V = r² × (cot(θ ÷ 2) − (π − θ) ÷ 2) × l", source.Geometry.At("kite less sector"), source.Exact,
	working.In("V", "filler left on", unit.InCubicMetre, 0, 100),
	[]working.Arg{
		working.In("r", "radius", unit.InMetre, 0, 0.2),
		working.In("θ", "inside angle", unit.InRadian, math.Pi/9, math.Pi*8/9),
		working.In("l", "length of the fillet", unit.InMetre, 0, 200),
	},
	func(r unit.Length, theta unit.Angle, l unit.Length) unit.Volume {
		t := float64(theta)
		return unit.Volume(float64(r) * float64(r) * (1/math.Tan(t/2) - (math.Pi-t)/2) * float64(l))
	})
