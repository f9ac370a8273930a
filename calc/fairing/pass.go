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
var Applied = working.Rule2[unit.Volume, unit.Share, unit.Volume]{Rule: &working.Rule{Formula: "a = v ÷ (1 − s)", Source: source.Ref{Document: &source.Practice, Place: "share sanded off"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "a", Meaning: "filler applied", Scale: unit.InLitre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "v", Meaning: "filler left on", Scale: unit.InLitre, Min: 0, Max: 1e5},
		{Symbol: "s", Meaning: "share of the applied that is sanded off", Scale: unit.InPure, Min: 0, Max: 0.9},
	}},
	Code: func(left unit.Volume, s unit.Share) unit.Volume { return left / unit.Volume(1-s) }}

// AppliedDepth is the same for a depth: a = d ÷ (1 − s). Range: as Applied.
// Source: common practice.
var AppliedDepth = working.Rule2[unit.Length, unit.Share, unit.Length]{Rule: &working.Rule{Formula: "a = d ÷ (1 − s)", Source: source.Ref{Document: &source.Practice, Place: "share sanded off"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "a", Meaning: "depth applied", Scale: unit.InMillimetre, Min: 0, Max: 1e4},
	Args: []working.Arg{
		{Symbol: "d", Meaning: "depth to fill", Scale: unit.InMillimetre, Min: 0, Max: 500},
		{Symbol: "s", Meaning: "share of the applied that is sanded off", Scale: unit.InPure, Min: 0, Max: 0.9},
	}},
	Code: func(depth unit.Length, s unit.Share) unit.Length { return depth / unit.Length(1-s) }}

// SandedOff is the filler that becomes dust: o = a × s. Range: as Applied.
// Source: common practice.
var SandedOff = working.Rule2[unit.Volume, unit.Share, unit.Volume]{Rule: &working.Rule{Formula: "o = a × s", Source: source.Ref{Document: &source.Practice, Place: "share sanded off"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "o", Meaning: "filler sanded off", Scale: unit.InLitre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "a", Meaning: "filler applied", Scale: unit.InLitre, Min: 0, Max: 1e6},
		{Symbol: "s", Meaning: "share of the applied that is sanded off", Scale: unit.InPure, Min: 0, Max: 0.9},
	}},
	Code: func(applied unit.Volume, s unit.Share) unit.Volume { return applied * unit.Volume(s) }}

// Passes is how many passes a depth takes: n = ceil((a − 0.001) ÷ p). The
// micrometre of slack keeps 10 mm in passes of 5 mm at two. Range: largest
// pass 0.2 to 50 mm. Source: common practice.
var Passes = working.Rule2[unit.Length, unit.Length, unit.Factor]{Rule: &working.Rule{Formula: "n = ceil((a − 0.001) ÷ p)", Source: source.Ref{Document: &source.Practice, Place: "largest pass"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "n", Meaning: "passes", Scale: unit.InPure, Min: 0, Max: 1e5},
	Args: []working.Arg{
		{Symbol: "a", Meaning: "depth applied at the deepest place", Scale: unit.InMillimetre, Min: 0.001, Max: 5000},
		{Symbol: "p", Meaning: "largest pass", Scale: unit.InMillimetre, Min: 0.2, Max: 50},
	}},
	Code: func(depth, largest unit.Length) unit.Factor {
		return unit.Factor(math.Ceil(float64(depth-unit.Micrometre) / float64(largest)))
	}}

// MassOf is the mass of a volume: m = V × ρ; for filler left on the kilograms
// that stay on the boat, for filler sanded off the dust, for a bulk volume of
// powder what it weighs. Range: density 0.02 to 8 kg/L.
// Source: elementary geometry.
var MassOf = working.Rule2[unit.Volume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m = V × ρ", Source: source.Ref{Document: &source.Geometry, Place: "mass by density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "mass", Scale: unit.InKilogram, Min: 0, Max: 1e7},
	Args: []working.Arg{
		{Symbol: "V", Meaning: "volume", Scale: unit.InLitre, Min: 0, Max: 1e6},
		{Symbol: "ρ", Meaning: "density", Scale: unit.InKilogramPerLitre, Min: 0.02, Max: 8},
	}},
	Code: func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) }}

// HardenerByMass is the hardener that a mass needs: h = m × x. Range: x 0.001
// to 2 kg per kg. Source: common practice; the ratio is the maker's.
var HardenerByMass = working.Rule2[unit.Mass, unit.ByMass, unit.Mass]{Rule: &working.Rule{Formula: "h = m × x", Source: source.Ref{Document: &source.TM551905223, Place: "8-24"}, Mark: source.Published,
	Result: working.Arg{Symbol: "h", Meaning: "hardener", Scale: unit.InGram, Min: 0, Max: 1e9},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "resin or filler", Scale: unit.InGram, Min: 0, Max: 1e9},
		{Symbol: "x", Meaning: "hardener per resin, by mass", Scale: unit.InPure, Min: 0.001, Max: 2},
	}},
	Code: func(m unit.Mass, x unit.ByMass) unit.Mass { return m * unit.Mass(x) }}

// HardenerByVolume is the mass of hardener for a ratio by volume:
// h = m ÷ ρ × x × η. Range: x 0.001 to 2 L per L, densities 0.3 to 2.5 kg/L.
// Source: elementary geometry; the ratio is the maker's.
var HardenerByVolume = working.Rule4[unit.Mass, unit.Density, unit.ByVolume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "h = m ÷ ρ × x × η", Source: source.Ref{Document: &source.Geometry, Place: "mass by density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "h", Meaning: "hardener", Scale: unit.InGram, Min: 0, Max: 1e9},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "resin or filler", Scale: unit.InGram, Min: 0, Max: 1e9},
		{Symbol: "ρ", Meaning: "density of the resin", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5},
		{Symbol: "x", Meaning: "hardener per resin, by volume", Scale: unit.InPure, Min: 0.001, Max: 2},
		{Symbol: "η", Meaning: "density of the hardener", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5},
	}},
	Code: func(m unit.Mass, rho unit.Density, x unit.ByVolume, eta unit.Density) unit.Mass {
		return m / unit.Mass(rho) * unit.Mass(x) * unit.Mass(eta)
	}}
