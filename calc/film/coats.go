package film

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// CoatCount is the fewest coats that hold a wet film,
// n = max(1, ceil((WFT − 1) ÷ W)), W the most that one coat may be. The micrometre of
// slack keeps 2 × 400 µm from becoming three coats.
// Range: WFT 1 µm–20 mm, W 10 µm–20 mm. Errors: *working.RangeError.
// Source: definition of a card's largest wet film in one coat.
var CoatCount = working.Rule2[unit.WetFilm, unit.WetFilm, unit.Factor]{Rule: &working.Rule{Formula: "n = max(1, ceil((WFT − 1) ÷ W))", Source: source.Ref{Document: &source.House, Place: "no coat thicker than its card allows"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 2000},
	Args:   []working.Arg{wft, {Symbol: "W", Meaning: "largest wet film in one coat", Scale: unit.InMicrometre, Min: 10, Max: 20000}}},
	Code: func(wft, most unit.WetFilm) unit.Factor {
		n := math.Ceil((unit.InMicrometre.From(float64(wft)) - 1) / unit.InMicrometre.From(float64(most)))
		return unit.Factor(math.Max(1, n))
	}}

// FilmPerCoat is the wet film of each of n equal coats, WFT_n = WFT ÷ n.
// Range: WFT 1 µm–20 mm, n 1–2000. Errors: *working.RangeError.
// Source: definition.
var FilmPerCoat = working.Rule2[unit.WetFilm, unit.Factor, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT_n = WFT ÷ n", Source: source.Ref{Document: &source.House, Place: "equal coats"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "WFT_n", Meaning: "wet film of each coat", Scale: unit.InMicrometre, Min: 1.0 / 2000, Max: 20000},
	Args:   []working.Arg{wft, {Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 2000}}},
	Code: func(wft unit.WetFilm, n unit.Factor) unit.WetFilm { return wft / unit.WetFilm(n) }}
