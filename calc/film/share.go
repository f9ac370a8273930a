package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	byMass     = working.Arg{Symbol: "w", Meaning: "thinner per mass of product", Scale: unit.InPure, Min: 0, Max: 0.5}
	rhoProduct = working.Arg{Symbol: "ρ", Meaning: "density of the product", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3}
	rhoThinner = working.Arg{Symbol: "ρ_t", Meaning: "density of the thinner", Scale: unit.InKilogramPerLitre, Min: 0.5, Max: 1.5}
)

// ThinnerByVolume takes thinner per mass of product to thinner per volume,
// t = w × ρ ÷ ρ_t: 5 % by mass of styrene (0.906 kg/L) in gel coat (1.25 kg/L)
// is 6.9 % by volume.
// Range: w 0–0.5, ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ThinnerByVolume = working.Rule3[unit.ByMass, unit.Density, unit.Density, unit.ByVolume]{Rule: &working.Rule{Formula: "t = w × ρ ÷ ρ_t", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: thin, Args: []working.Arg{byMass, rhoProduct, rhoThinner}},
	Code: func(w unit.ByMass, rho, rhoT unit.Density) unit.ByVolume {
		return unit.ByVolume(float64(w) * float64(rho) / float64(rhoT))
	}}

// ThinnerByMass takes thinner per volume of product to thinner per mass,
// w = t × ρ_t ÷ ρ.
// Range: t 0–0.5, ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var ThinnerByMass = working.Rule3[unit.ByVolume, unit.Density, unit.Density, unit.ByMass]{Rule: &working.Rule{Formula: "w = t × ρ_t ÷ ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: byMass, Args: []working.Arg{thin, rhoProduct, rhoThinner}},
	Code: func(t unit.ByVolume, rho, rhoT unit.Density) unit.ByMass {
		return unit.ByMass(float64(t) * float64(rhoT) / float64(rho))
	}}

// MixDensity is the density of product and thinner together,
// ρ' = (ρ + t × ρ_t) ÷ (1 + t).
// Range: ρ 0.1–3 kg/L, ρ_t 0.5–1.5 kg/L, t 0–0.5. Errors: *working.RangeError.
// Source: rule of mixtures; volumes are taken to add up.
var MixDensity = working.Rule3[unit.Density, unit.ByVolume, unit.Density, unit.Density]{Rule: &working.Rule{Formula: "ρ' = (ρ + t × ρ_t) ÷ (1 + t)", Source: source.Ref{Document: &source.House, Place: "rule of mixtures"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "ρ'", Meaning: "density of the mix", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3},
	Args:   []working.Arg{rhoProduct, thin, rhoThinner}},
	Code: func(rho unit.Density, t unit.ByVolume, rhoT unit.Density) unit.Density {
		return (rho + unit.Density(t)*rhoT) / unit.Density(1+t)
	}}

// Thinners is the sum of all that thins a product, styrene and wax solution
// alike, per mass of product: together they stay under the card's limit.
var Thinners = working.SumRule("thinner and wax solution together, per mass of product", unit.InPercent)
