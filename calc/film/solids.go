package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The arguments that several rules share.
var (
	wft   = working.Arg{Symbol: "WFT", Meaning: "wet film", Scale: unit.InMicrometre, Min: 1, Max: 20000}
	dft   = working.Arg{Symbol: "DFT", Meaning: "dry film", Scale: unit.InMicrometre, Min: 1, Max: 20000}
	cured = working.Arg{Symbol: "VS'", Meaning: "share of the wet film that stays once cured", Scale: unit.InPure, Min: 0.02, Max: 1}
	thin  = working.Arg{Symbol: "t", Meaning: "thinner per volume of product as sold", Scale: unit.InPure, Min: 0, Max: 0.5}
	loss  = working.Arg{Symbol: "loss", Meaning: "share that never reaches the surface", Scale: unit.InPure, Min: 0, Max: 0.9}
)

// Thinned is the share of a thinned wet film that stays once cured,
// VS' = (VS + f·t·(1−s)) ÷ (1 + t): VS is that of the product as sold, t the
// volume of thinner per volume of product, f the share of the thinner that
// stays in the film (0 for a solvent), s how much that part shrinks in curing.
// Range: VS 0.05–1, f and s 0–1, t 0–0.5. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5 for f = 0; the part that stays follows from
// adding up volumes.
var Thinned = working.Rule4[unit.SolidsByVolume, unit.Share, unit.ByVolume, unit.Share, unit.SolidsByVolume]{Rule: &working.Rule{Formula: "VS' = (VS + f × t × (1 − s)) ÷ (1 + t)", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5, with the thinner that stays added"}, Mark: source.Calculated,
	Result: cured,
	Args: []working.Arg{
		{Symbol: "VS", Meaning: "cured share of the product as sold", Scale: unit.InPure, Min: 0.05, Max: 1},
		{Symbol: "f", Meaning: "share of the thinner that stays", Scale: unit.InPure, Min: 0, Max: 1},
		thin,
		{Symbol: "s", Meaning: "shrinkage of the thinner that stays", Scale: unit.InPure, Min: 0, Max: 1},
	}},
	Code: func(vs unit.SolidsByVolume, f unit.Share, t unit.ByVolume, s unit.Share) unit.SolidsByVolume {
		return (vs + unit.SolidsByVolume(float64(f)*float64(t)*(1-float64(s)))) / unit.SolidsByVolume(1+t)
	}}

// Wet is the wet film that cures to a dry film, WFT = DFT ÷ VS'.
// Range: DFT 1 µm–20 mm, VS' 0.02–1. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var Wet = working.Rule2[unit.DryFilm, unit.SolidsByVolume, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT = DFT ÷ VS'", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: wft, Args: []working.Arg{dft, cured}},
	Code: func(dft unit.DryFilm, vs unit.SolidsByVolume) unit.WetFilm {
		return unit.WetFilm(float64(dft) / float64(vs))
	}}

// Dry is what a wet film cures to, DFT = WFT × VS'.
// Range: WFT 1 µm–20 mm, VS' 0.02–1. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var Dry = working.Rule2[unit.WetFilm, unit.SolidsByVolume, unit.DryFilm]{Rule: &working.Rule{Formula: "DFT = WFT × VS'", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: dft, Args: []working.Arg{wft, cured}},
	Code: func(wft unit.WetFilm, vs unit.SolidsByVolume) unit.DryFilm {
		return unit.DryFilm(float64(wft) * float64(vs))
	}}

// Basis says what a film's thickness was measured to.
type Basis int

// The bases: a film by weight or area covered is a mean; a gauge that rests on
// the tops of a texture reads peaks.
const (
	Mean Basis = iota
	Peak
)

// String names the basis as it stands beside a film.
func (b Basis) String() string {
	if b == Peak {
		return "peak"
	}
	return "mean"
}

// MeanOfPeak is the mean of a film that was read on the tops of its texture,
// DFT = P − T ÷ 2, T from peak to valley.
// Range: P 1 µm–20 mm, T 0–1 mm. Errors: *working.RangeError.
// Source: assumption: a rolled or sprayed texture has as much above its mean as below.
var MeanOfPeak = working.Rule2[unit.DryFilm, unit.Length, unit.DryFilm]{Rule: &working.Rule{Formula: "DFT = P − T ÷ 2", Source: source.Ref{Document: &source.House, Place: "texture even about its mean"}, Mark: source.Assumption,
	Result: dft,
	Args: []working.Arg{
		{Symbol: "P", Meaning: "dry film at the peaks", Scale: unit.InMicrometre, Min: 1, Max: 20000},
		{Symbol: "T", Meaning: "texture, peak to valley", Scale: unit.InMicrometre, Min: 0, Max: 1000},
	}},
	Code: func(peak unit.DryFilm, texture unit.Length) unit.DryFilm { return peak - unit.DryFilm(texture)/2 }}
