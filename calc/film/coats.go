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
var CoatCount = working.Of2("n = max(1, ceil((WFT − 1) ÷ W))", source.House.At("no coat thicker than its card allows"), source.Calculated,
	working.In("n", "coats", unit.InPure, 1, 2000),
	[]working.Arg{wft, working.In("W", "largest wet film in one coat", unit.InMicrometre, 10, 20000)},
	func(wft, most unit.WetFilm) unit.Factor {
		n := math.Ceil((unit.InMicrometre.From(float64(wft)) - 1) / unit.InMicrometre.From(float64(most)))
		return unit.Factor(math.Max(1, n))
	})

// FilmPerCoat is the wet film of each of n equal coats, WFT_n = WFT ÷ n.
// Range: WFT 1 µm–20 mm, n 1–2000. Errors: *working.RangeError.
// Source: definition.
var FilmPerCoat = working.Of2("WFT_n = WFT ÷ n", source.House.At("equal coats"), source.Exact,
	working.In("WFT_n", "wet film of each coat", unit.InMicrometre, 1.0/2000, 20000),
	[]working.Arg{wft, working.In("n", "coats", unit.InPure, 1, 2000)},
	func(wft unit.WetFilm, n unit.Factor) unit.WetFilm { return wft / unit.WetFilm(n) })
