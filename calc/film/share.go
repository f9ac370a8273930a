package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	byMass     = working.In("w", "thinner per mass of product", unit.InPure, 0, 0.5)
	rhoProduct = working.In("ρ", "density of the product", unit.InKilogramPerLitre, 0.1, 3)
	rhoThinner = working.In("ρ_t", "density of the thinner", unit.InKilogramPerLitre, 0.5, 1.5)
)

// ThinnerByVolume takes thinner per mass of product to thinner per volume,
// t = w × ρ ÷ ρ_t: 5 % by mass of styrene (0.906 kg/L) in gel coat (1.25 kg/L)
// is 6.9 % by volume.
// Range: w 0–0.5, ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ThinnerByVolume = working.Of3("t = w × ρ ÷ ρ_t", source.House.At("definition of density"), source.Exact,
	thin, []working.Arg{byMass, rhoProduct, rhoThinner},
	func(w unit.ByMass, rho, rhoT unit.Density) unit.ByVolume {
		return unit.ByVolume(float64(w) * float64(rho) / float64(rhoT))
	})

// ThinnerByMass takes thinner per volume of product to thinner per mass,
// w = t × ρ_t ÷ ρ.
// Range: t 0–0.5, ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ThinnerByMass = working.Of3("w = t × ρ_t ÷ ρ", source.House.At("definition of density"), source.Exact,
	byMass, []working.Arg{thin, rhoProduct, rhoThinner},
	func(t unit.ByVolume, rho, rhoT unit.Density) unit.ByMass {
		return unit.ByMass(float64(t) * float64(rhoT) / float64(rho))
	})

// MixDensity is the density of product and thinner together,
// ρ' = (ρ + t × ρ_t) ÷ (1 + t).
// Range: ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L, t 0–0.5. Errors: *working.RangeError.
// Source: rule of mixtures; volumes are taken to add up.
var MixDensity = working.Of3("ρ' = (ρ + t × ρ_t) ÷ (1 + t)", source.House.At("rule of mixtures"), source.Calculated,
	working.In("ρ'", "density of the mix", unit.InKilogramPerLitre, 0.1, 3),
	[]working.Arg{rhoProduct, thin, rhoThinner},
	func(rho unit.Density, t unit.ByVolume, rhoT unit.Density) unit.Density {
		return (rho + unit.Density(t)*rhoT) / unit.Density(1+t)
	})

// Thinners is the sum of all that thins a product, styrene and wax solution
// alike, per mass of product: together they stay under the card's limit.
var Thinners = working.SumRule("thinner and wax solution together, per mass of product", unit.InPercent)
