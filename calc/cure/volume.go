package cure

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var shareByVolume = working.Arg{Symbol: "c_v", Meaning: "catalyst by volume of product", Scale: unit.InPercent, Min: 0.1, Max: 6}

// VolumeOfVolume is a dose that is stated by volume, V_c = c_v × V ÷ 100 (mL).
// It says nothing of grams.
// Range: c_v 0.1–6 %, V 1 mL–20 L. Errors: *working.RangeError.
// Source: definition of a share by volume.
var VolumeOfVolume = working.Rule2[unit.ByVolume, unit.Volume, unit.Volume]{Rule: &working.Rule{Formula: "V_c = c_v × V ÷ 100", Source: source.Ref{Document: &source.House, Place: "definition of a share by volume"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V_c", Meaning: "catalyst by volume", Scale: unit.InMillilitre, Min: 1e-3, Max: 1200},
	Args:   []working.Arg{shareByVolume, {Symbol: "V", Meaning: "product", Scale: unit.InMillilitre, Min: 1, Max: 20000}}},
	Code: func(c unit.ByVolume, v unit.Volume) unit.Volume { return unit.Volume(c) * v }}

// ShareByMass takes a catalyst share by volume, as some sheets state it, to the
// share by mass of a table's rows, c = c_v × ρ_c ÷ ρ: 8 % less in gel coat at
// 1.25 kg/L, 17 % more in a resin at 1.0.
// Range: c_v 0.1–6 %, ρ_c 0.9–1.4 kg/L, ρ 0.3–2.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ShareByMass = working.Rule3[unit.ByVolume, unit.Density, unit.Density, unit.ByMass]{Rule: &working.Rule{Formula: "c = c_v × ρ_c ÷ ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: share,
	Args:   []working.Arg{shareByVolume, rhoCat, {Symbol: "ρ", Meaning: "density of the product", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5}}},
	Code: func(c unit.ByVolume, rhoC, rho unit.Density) unit.ByMass {
		return unit.ByMass(float64(c) * float64(rhoC) / float64(rho))
	}}
