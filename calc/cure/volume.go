package cure

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var shareByVolume = working.In("c_v", "catalyst by volume of product", unit.InPercent, 0.1, 6)

// VolumeOfVolume is a dose that is stated by volume, V_c = c_v × V ÷ 100 (mL).
// It says nothing of grams.
// Range: c_v 0.1–6 %, V 1 mL–20 L. Errors: *working.RangeError.
// Source: definition of a share by volume.
var VolumeOfVolume = working.Of2("V_c = c_v × V ÷ 100", source.House.At("definition of a share by volume"), source.Exact,
	working.In("V_c", "catalyst by volume", unit.InMillilitre, 1e-3, 1200),
	[]working.Arg{shareByVolume, working.In("V", "product", unit.InMillilitre, 1, 20000)},
	func(c unit.ByVolume, v unit.Volume) unit.Volume { return unit.Volume(c) * v })

// ShareByMass takes a catalyst share by volume, as some sheets state it, to the
// share by mass of a table's rows, c = c_v × ρ_c ÷ ρ: 8 % less in gel coat at
// 1.25 kg/L, 17 % more in a resin at 1.0.
// Range: c_v 0.1–6 %, ρ_c 0.9–1.4 kg/L, ρ 0.3–2.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ShareByMass = working.Of3("c = c_v × ρ_c ÷ ρ", source.House.At("definition of density"), source.Exact,
	share,
	[]working.Arg{shareByVolume, rhoCat, working.In("ρ", "density of the product", unit.InKilogramPerLitre, 0.3, 2.5)},
	func(c unit.ByVolume, rhoC, rho unit.Density) unit.ByMass {
		return unit.ByMass(float64(c) * float64(rhoC) / float64(rho))
	})
