package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	area   = working.Arg{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5}
	volume = working.Arg{Symbol: "V", Meaning: "mix as thinned", Scale: unit.InLitre, Min: 0, Max: 1e5}
	rho    = working.Arg{Symbol: "ρ", Meaning: "density", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3}
)

// Mix is the volume of mix, as thinned, that an area takes,
// V = A × (WFT + S) ÷ 1000 ÷ (1 − loss) (L, m², µm). S is what a rough or
// porous ground swallows below the film, as wet film.
// Range: A 0–1e5 m², WFT 1 µm–20 mm, S 0–5 mm, loss 0–0.9.
// Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5, and adding up volumes.
var Mix = working.Rule4[unit.Area, unit.WetFilm, unit.WetFilm, unit.Share, unit.Volume]{Rule: &working.Rule{Formula: "V = A × (WFT + S) ÷ 1000 ÷ (1 − loss)", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: volume,
	Args:   []working.Arg{area, wft, {Symbol: "S", Meaning: "wet film that the ground swallows", Scale: unit.InMicrometre, Min: 0, Max: 5000}, loss}},
	Code: func(a unit.Area, wft, swallowed unit.WetFilm, loss unit.Share) unit.Volume {
		return unit.Volume(float64(a) * float64(wft+swallowed) / (1 - float64(loss)))
	}}

// AsSold is the product as sold in a mix, V_s = V ÷ (1 + t).
// Range: V 0–1e5 L, t 0–0.5. Errors: *working.RangeError.
// Source: definition of t; volumes are taken to add up.
var AsSold = working.Rule2[unit.Volume, unit.ByVolume, unit.Volume]{Rule: &working.Rule{Formula: "V_s = V ÷ (1 + t)", Source: source.Ref{Document: &source.House, Place: "volumes add up"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "V_s", Meaning: "product as sold", Scale: unit.InLitre, Min: 0, Max: 1e5},
	Args:   []working.Arg{volume, thin}},
	Code: func(v unit.Volume, t unit.ByVolume) unit.Volume { return v / unit.Volume(1+t) }}

// Thinner is the thinner that goes into a product, V_t = V_s × t.
// Range: V_s 0–1e5 L, t 0–0.5. Errors: *working.RangeError.
// Source: definition of t.
var Thinner = working.Rule2[unit.Volume, unit.ByVolume, unit.Volume]{Rule: &working.Rule{Formula: "V_t = V_s × t", Source: source.Ref{Document: &source.House, Place: "definition of t"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V_t", Meaning: "thinner", Scale: unit.InLitre, Min: 0, Max: 5e4},
	Args:   []working.Arg{{Symbol: "V_s", Meaning: "product as sold", Scale: unit.InLitre, Min: 0, Max: 1e5}, thin}},
	Code: func(v unit.Volume, t unit.ByVolume) unit.Volume { return v * unit.Volume(t) }}

// Weight is the mass of a volume, m = V × ρ (kg, L, kg/L).
// Range: V 0–1e5 L, ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var Weight = working.Rule2[unit.Volume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m = V × ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "mass", Scale: unit.InKilogram, Min: 0, Max: 3e5},
	Args:   []working.Arg{{Symbol: "V", Meaning: "volume", Scale: unit.InLitre, Min: 0, Max: 1e5}, rho}},
	Code: func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) }}

// MassPerArea is the mass of a wet film, g = WFT × ρ (g/m², µm, kg/L).
// Range: WFT 1 µm–20 mm, ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var MassPerArea = working.Rule2[unit.WetFilm, unit.Density, unit.MassPerArea]{Rule: &working.Rule{Formula: "g = WFT × ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "g", Meaning: "mass per area", Scale: unit.InGramPerSquareMetre, Min: 0.1, Max: 60000},
	Args:   []working.Arg{wft, rho}},
	Code: func(wft unit.WetFilm, rho unit.Density) unit.MassPerArea {
		return unit.MassPerArea(float64(wft) * float64(rho))
	}}

// FilmOfMass is the mean wet film of a mass spread over an area,
// WFT = g ÷ ρ (µm, g/m², kg/L).
// Range: g 1–20 000 g/m², ρ 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var FilmOfMass = working.Rule2[unit.MassPerArea, unit.Density, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT = g ÷ ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: wft,
	Args:   []working.Arg{{Symbol: "g", Meaning: "mass per area", Scale: unit.InGramPerSquareMetre, Min: 1, Max: 20000}, rho}},
	Code: func(g unit.MassPerArea, rho unit.Density) unit.WetFilm {
		return unit.WetFilm(float64(g) / float64(rho))
	}}

// CuredDensity is the density of what stays once cured, ρ_c = ρ × SM ÷ VS. All
// three must be of one product at one thinning: two makers' sheets differ more
// than curing changes the figure.
// Range: ρ 0.1–3 kg/L, SM 0.05–1, VS 0.02–1. Errors: *working.RangeError.
// Source: definitions of solids by mass and by volume.
var CuredDensity = working.Rule3[unit.Density, unit.SolidsByMass, unit.SolidsByVolume, unit.Density]{Rule: &working.Rule{Formula: "ρ_c = ρ × SM ÷ VS", Source: source.Ref{Document: &source.House, Place: "definition of solids"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "ρ_c", Meaning: "density once cured", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3},
	Args: []working.Arg{
		rho,
		{Symbol: "SM", Meaning: "cured share by mass", Scale: unit.InPure, Min: 0.05, Max: 1},
		{Symbol: "VS", Meaning: "cured share by volume", Scale: unit.InPure, Min: 0.02, Max: 1},
	}},
	Code: func(rho unit.Density, sm unit.SolidsByMass, vs unit.SolidsByVolume) unit.Density {
		return rho * unit.Density(sm) / unit.Density(vs)
	}}

// Kept is the cured mass that stays on the boat, m_c = A × DFT × ρ_c ÷ 1000
// (kg, m², µm, kg/L). DFT is the mean of what is left after sanding, with what
// the ground swallowed added.
// Range: A 0–1e5 m², DFT 1 µm–20 mm, ρ_c 0.1–3 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var Kept = working.Rule3[unit.Area, unit.DryFilm, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m_c = A × DFT × ρ_c ÷ 1000", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m_c", Meaning: "cured mass on the boat", Scale: unit.InKilogram, Min: 0, Max: 6e6},
	Args:   []working.Arg{area, dft, {Symbol: "ρ_c", Meaning: "density once cured", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3}}},
	Code: func(a unit.Area, dft unit.DryFilm, rho unit.Density) unit.Mass {
		return unit.Mass(float64(a) * float64(dft) * float64(rho))
	}}
