package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	area   = working.In("A", "area", unit.InSquareMetre, 0, 1e5)
	volume = working.In("V", "mix as thinned", unit.InLitre, 0, 1e5)
	rho    = working.In("ρ", "density", unit.InKilogramPerLitre, 0.1, 3)
)

// Mix is the volume of mix, as thinned, that an area takes,
// V = A × (WFT + S) ÷ 1000 ÷ (1 − loss) (L, m², µm). S is what a rough or
// porous ground swallows below the film, as wet film.
// Range: A 0–1e5 m², WFT 1 µm–20 mm, S 0–5 mm, loss 0–0.9.
// Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5, and adding up volumes.
var Mix = working.Of4("V = A × (WFT + S) ÷ 1000 ÷ (1 − loss)", source.UFC319006.At("2.1.5"), source.Published,
	volume,
	[]working.Arg{area, wft, working.In("S", "wet film that the ground swallows", unit.InMicrometre, 0, 5000), loss},
	func(a unit.Area, wft, swallowed unit.WetFilm, loss unit.Share) unit.Volume {
		return unit.Volume(float64(a) * float64(wft+swallowed) / (1 - float64(loss)))
	})

// AsSold is the product as sold in a mix, V_s = V ÷ (1 + t).
// Range: V 0–1e5 L, t 0–0.5. Errors: *working.RangeError.
// Source: definition of t; volumes are taken to add up.
var AsSold = working.Of2("V_s = V ÷ (1 + t)", source.House.At("volumes add up"), source.Calculated,
	working.In("V_s", "product as sold", unit.InLitre, 0, 1e5),
	[]working.Arg{volume, thin},
	func(v unit.Volume, t unit.ByVolume) unit.Volume { return v / unit.Volume(1+t) })

// Thinner is the thinner that goes into a product, V_t = V_s × t.
// Range: V_s 0–1e5 L, t 0–0.5. Errors: *working.RangeError.
// Source: definition of t.
var Thinner = working.Of2("V_t = V_s × t", source.House.At("definition of t"), source.Exact,
	working.In("V_t", "thinner", unit.InLitre, 0, 5e4),
	[]working.Arg{working.In("V_s", "product as sold", unit.InLitre, 0, 1e5), thin},
	func(v unit.Volume, t unit.ByVolume) unit.Volume { return v * unit.Volume(t) })

// Weight is the mass of a volume, m = V × ρ (kg, L, kg/L).
// Range: V 0–1e5 L, ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var Weight = working.Of2("m = V × ρ", source.House.At("definition of density"), source.Exact,
	working.In("m", "mass", unit.InKilogram, 0, 3e5),
	[]working.Arg{working.In("V", "volume", unit.InLitre, 0, 1e5), rho},
	func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) })

// MassPerArea is the mass of a wet film, g = WFT × ρ (g/m², µm, kg/L).
// Range: WFT 1 µm–20 mm, ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var MassPerArea = working.Of2("g = WFT × ρ", source.House.At("definition of density"), source.Exact,
	working.In("g", "mass per area", unit.InGramPerSquareMetre, 0.1, 60000),
	[]working.Arg{wft, rho},
	func(wft unit.WetFilm, rho unit.Density) unit.MassPerArea {
		return unit.MassPerArea(float64(wft) * float64(rho))
	})

// FilmOfMass is the mean wet film of a mass spread over an area,
// WFT = g ÷ ρ (µm, g/m², kg/L).
// Range: g 1–20 000 g/m², ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var FilmOfMass = working.Of2("WFT = g ÷ ρ", source.House.At("definition of density"), source.Exact,
	wft,
	[]working.Arg{working.In("g", "mass per area", unit.InGramPerSquareMetre, 1, 20000), rho},
	func(g unit.MassPerArea, rho unit.Density) unit.WetFilm {
		return unit.WetFilm(float64(g) / float64(rho))
	})

// CuredDensity is the density of what stays once cured, ρ_c = ρ × SM ÷ VS. All
// three must be of one product at one thinning: two makers' sheets differ more
// than curing changes the figure.
// Range: ρ 0.1–3 kg/L, SM 0.05–1, VS 0.02–1. Errors: *working.RangeError.
// Source: definitions of solids by mass and by volume.
var CuredDensity = working.Of3("ρ_c = ρ × SM ÷ VS", source.House.At("definition of solids"), source.Calculated,
	working.In("ρ_c", "density once cured", unit.InKilogramPerLitre, 0.1, 3),
	[]working.Arg{
		rho,
		working.In("SM", "cured share by mass", unit.InPure, 0.05, 1),
		working.In("VS", "cured share by volume", unit.InPure, 0.02, 1),
	},
	func(rho unit.Density, sm unit.SolidsByMass, vs unit.SolidsByVolume) unit.Density {
		return rho * unit.Density(sm) / unit.Density(vs)
	})

// Kept is the cured mass that stays on the boat, m_c = A × DFT × ρ_c ÷ 1000
// (kg, m², µm, kg/L). DFT is the mean of what is left after sanding, with what
// the ground swallowed added.
// Range: A 0–1e5 m², DFT 1 µm–20 mm, ρ_c 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var Kept = working.Of3("m_c = A × DFT × ρ_c ÷ 1000", source.House.At("definition of density"), source.Exact,
	working.In("m_c", "cured mass on the boat", unit.InKilogram, 0, 6e6),
	[]working.Arg{area, dft, working.In("ρ_c", "density once cured", unit.InKilogramPerLitre, 0.1, 3)},
	func(a unit.Area, dft unit.DryFilm, rho unit.Density) unit.Mass {
		return unit.Mass(float64(a) * float64(dft) * float64(rho))
	})
