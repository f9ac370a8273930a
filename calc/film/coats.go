package film

import (
	"fmt"
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
	working.Arg{Symbol: "n", Meaning: "coats", Scale: unit.InPure},
	[]working.Arg{wft, working.In("W", "largest wet film in one coat", unit.InMicrometre, 10, 20000)},
	func(wft, most unit.WetFilm) unit.Factor {
		n := math.Ceil((unit.InMicrometre.From(float64(wft)) - 1) / unit.InMicrometre.From(float64(most)))
		return unit.Factor(math.Max(1, n))
	})

// FilmPerCoat is the wet film of each of n equal coats, WFT_n = WFT ÷ n.
// Range: WFT 1 µm–20 mm, n 1–2000. Errors: *working.RangeError.
// Source: definition.
var FilmPerCoat = working.Of2("WFT_n = WFT ÷ n", source.House.At("equal coats"), source.Exact,
	working.Arg{Symbol: "WFT_n", Meaning: "wet film of each coat", Scale: unit.InMicrometre},
	[]working.Arg{wft, working.In("n", "coats", unit.InPure, 1, 2000)},
	func(wft unit.WetFilm, n unit.Factor) unit.WetFilm { return wft / unit.WetFilm(n) })

// Coats is a wet film laid on in equal coats.
type Coats struct {
	Count working.Figure[unit.Factor]
	Each  working.Figure[unit.WetFilm]
}

// ThinCoatError says that the coats that hold a film would each be thinner than
// the card allows: a film that thin doesn't cure.
type ThinCoatError struct {
	Count       int          // the fewest coats that hold the film
	Each, Least unit.WetFilm // what each would be, and must be
	Most        unit.WetFilm // what a coat may be
}

// Error names the films.
func (e *ThinCoatError) Error() string {
	return fmt.Sprintf("film: %d coats of %.0f µm are thinner than the %.0f µm that cure",
		e.Count, unit.InMicrometre.From(float64(e.Each)), unit.InMicrometre.From(float64(e.Least)))
}

// InCoats divides a wet film into the fewest equal coats of at most the card's
// largest wet film. A coat, unlike a pass, is left to gel.
// Errors: *ThinCoatError under the card's least wet film (0: none is known),
// *working.RangeError.
func InCoats(total, most working.Figure[unit.WetFilm], least unit.WetFilm) (Coats, error) {
	count, err := CoatCount.Figure(total, most)
	if err != nil {
		return Coats{}, err
	}
	each, err := FilmPerCoat.Figure(total, count)
	if err != nil {
		return Coats{}, err
	}
	if each.Value < least-slack {
		return Coats{}, &ThinCoatError{int(count.Value), each.Value, least, most.Value}
	}
	return Coats{count, each}, nil
}

// slack is a wet film too small to matter: no gauge shows it.
const slack = unit.WetFilm(unit.Micrometre)
