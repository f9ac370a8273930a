package fairing

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Applied is what has to be put on so that enough is left after sanding:
// a = v ÷ (1 − s), s the share of what is applied that is sanded off.
// Range: s 0 to 0.9. Source: common practice.
var Applied = working.Of2("a = v ÷ (1 − s)", source.Practice.At("share sanded off"), source.CommonPractice,
	working.In("a", "filler applied", unit.InLitre, 0, 1e6),
	[]working.Arg{
		working.In("v", "filler left on", unit.InLitre, 0, 1e5),
		working.In("s", "share of the applied that is sanded off", unit.InPure, 0, 0.9),
	},
	func(left unit.Volume, s unit.Share) unit.Volume { return left / unit.Volume(1-s) })

// AppliedDepth is the same for a depth: a = d ÷ (1 − s). Range: as Applied.
// Source: common practice.
var AppliedDepth = working.Of2("a = d ÷ (1 − s)", source.Practice.At("share sanded off"), source.CommonPractice,
	working.In("a", "depth applied", unit.InMillimetre, 0, 1e4),
	[]working.Arg{
		working.In("d", "depth to fill", unit.InMillimetre, 0, 500),
		working.In("s", "share of the applied that is sanded off", unit.InPure, 0, 0.9),
	},
	func(depth unit.Length, s unit.Share) unit.Length { return depth / unit.Length(1-s) })

// SandedOff is the filler that becomes dust: o = a × s. Range: as Applied.
// Source: common practice.
var SandedOff = working.Of2("o = a × s", source.Practice.At("share sanded off"), source.CommonPractice,
	working.In("o", "filler sanded off", unit.InLitre, 0, 1e6),
	[]working.Arg{
		working.In("a", "filler applied", unit.InLitre, 0, 1e6),
		working.In("s", "share of the applied that is sanded off", unit.InPure, 0, 0.9),
	},
	func(applied unit.Volume, s unit.Share) unit.Volume { return applied * unit.Volume(s) })

// Passes is how many passes a depth takes: n = ceil((a − 0.001) ÷ p). The
// micrometre of slack keeps 10 mm in passes of 5 mm at two. Range: largest
// pass 0.2 to 50 mm. Source: common practice.
var Passes = working.Of2("n = ceil((a − 0.001) ÷ p)", source.Practice.At("largest pass"), source.CommonPractice,
	working.In("n", "passes", unit.InPure, 0, 1e5),
	[]working.Arg{
		working.In("a", "depth applied at the deepest place", unit.InMillimetre, 0.001, 5000),
		working.In("p", "largest pass", unit.InMillimetre, 0.2, 50),
	},
	func(depth, largest unit.Length) unit.Factor {
		return unit.Factor(math.Ceil(float64(depth-unit.Micrometre) / float64(largest)))
	})

// MassOf is the mass of a volume: m = V × ρ; for filler left on the kilograms
// that stay on the boat, for filler sanded off the dust, for a bulk volume of
// powder what it weighs. Range: density 0.02 to 8 kg/L.
// Source: elementary geometry.
var MassOf = working.Of2("m = V × ρ", source.Geometry.At("mass by density"), source.Exact,
	working.In("m", "mass", unit.InKilogram, 0, 1e7),
	[]working.Arg{
		working.In("V", "volume", unit.InLitre, 0, 1e6),
		working.In("ρ", "density", unit.InKilogramPerLitre, 0.02, 8),
	},
	func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) })

// HardenerByMass is the hardener that a mass needs: h = m × x. Range: x 0.001
// to 2 kg per kg. Source: common practice; the ratio is the maker's.
var HardenerByMass = working.Of2("h = m × x", source.TM551905223.At("8-24"), source.Published,
	working.In("h", "hardener", unit.InGram, 0, 1e9),
	[]working.Arg{
		working.In("m", "resin or filler", unit.InGram, 0, 1e9),
		working.In("x", "hardener per resin, by mass", unit.InPure, 0.001, 2),
	},
	func(m unit.Mass, x unit.ByMass) unit.Mass { return m * unit.Mass(x) })

// HardenerByVolume is the mass of hardener for a ratio by volume:
// h = m ÷ ρ × x × η. Range: x 0.001 to 2 L per L, densities 0.3 to 2.5 kg/L.
// Source: elementary geometry; the ratio is the maker's.
var HardenerByVolume = working.Of4("h = m ÷ ρ × x × η", source.Geometry.At("mass by density"), source.Exact,
	working.In("h", "hardener", unit.InGram, 0, 1e9),
	[]working.Arg{
		working.In("m", "resin or filler", unit.InGram, 0, 1e9),
		working.In("ρ", "density of the resin", unit.InKilogramPerLitre, 0.3, 2.5),
		working.In("x", "hardener per resin, by volume", unit.InPure, 0.001, 2),
		working.In("η", "density of the hardener", unit.InKilogramPerLitre, 0.3, 2.5),
	},
	func(m unit.Mass, rho unit.Density, x unit.ByVolume, eta unit.Density) unit.Mass {
		return m / unit.Mass(rho) * unit.Mass(x) * unit.Mass(eta)
	})
