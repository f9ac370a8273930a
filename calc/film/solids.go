package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The arguments that several rules share.
var (
	wft   = working.In("WFT", "wet film", unit.InMicrometre, 1, 20000)
	dft   = working.In("DFT", "dry film", unit.InMicrometre, 1, 20000)
	cured = working.In("VS'", "share of the wet film that stays once cured", unit.InPure, 0.02, 1)
	thin  = working.In("t", "thinner per volume of product as sold", unit.InPure, 0, 0.5)
	loss  = working.In("loss", "share that never reaches the surface", unit.InPure, 0, 0.9)
)

// Thinned is the share of a thinned wet film that stays once cured,
// VS' = (VS + f·t·(1−s)) ÷ (1 + t): VS is that of the product as sold, t the
// volume of thinner per volume of product, f the share of the thinner that
// stays in the film (0 for a solvent), s how much that part shrinks in curing.
// Range: VS 0.05–1, f and s 0–1, t 0–0.5. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5 for f = 0; the part that stays follows from
// adding up volumes.
var Thinned = working.Of4("VS' = (VS + f × t × (1 − s)) ÷ (1 + t)", source.UFC319006.At("2.1.5, with the thinner that stays added"), source.Calculated,
	cured,
	[]working.Arg{
		working.In("VS", "cured share of the product as sold", unit.InPure, 0.05, 1),
		working.In("f", "share of the thinner that stays", unit.InPure, 0, 1),
		thin,
		working.In("s", "shrinkage of the thinner that stays", unit.InPure, 0, 1),
	},
	func(vs unit.SolidsByVolume, f unit.Share, t unit.ByVolume, s unit.Share) unit.SolidsByVolume {
		return (vs + unit.SolidsByVolume(float64(f)*float64(t)*(1-float64(s)))) / unit.SolidsByVolume(1+t)
	})

// Wet is the wet film that cures to a dry film, WFT = DFT ÷ VS'.
// Range: DFT 1 µm–20 mm, VS' 0.02–1. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var Wet = working.Of2("WFT = DFT ÷ VS'", source.UFC319006.At("2.1.5"), source.Published,
	wft, []working.Arg{dft, cured},
	func(dft unit.DryFilm, vs unit.SolidsByVolume) unit.WetFilm {
		return unit.WetFilm(float64(dft) / float64(vs))
	})

// Dry is what a wet film cures to, DFT = WFT × VS'.
// Range: WFT 1 µm–20 mm, VS' 0.02–1. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var Dry = working.Of2("DFT = WFT × VS'", source.UFC319006.At("2.1.5"), source.Published,
	dft, []working.Arg{wft, cured},
	func(wft unit.WetFilm, vs unit.SolidsByVolume) unit.DryFilm {
		return unit.DryFilm(float64(wft) * float64(vs))
	})

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
var MeanOfPeak = working.Of2("DFT = P − T ÷ 2", source.House.At("texture even about its mean"), source.Assumption,
	dft,
	[]working.Arg{
		working.In("P", "dry film at the peaks", unit.InMicrometre, 1, 20000),
		working.In("T", "texture, peak to valley", unit.InMicrometre, 0, 1000),
	},
	func(peak unit.DryFilm, texture unit.Length) unit.DryFilm { return peak - unit.DryFilm(texture)/2 })
