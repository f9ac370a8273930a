package film

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// RateAsThinned is the area that a litre of the thinned mix covers with
// nothing lost, R' = 1000 ÷ WFT (m²/L, µm).
// Range: WFT 1 µm–20 mm. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5; a litre spread 1 mm thick is 1 m².
var RateAsThinned = working.Of1("R' = 1000 ÷ WFT", source.UFC319006.At("2.1.5"), source.Published,
	working.In("R'", "area per litre as thinned", unit.InSquareMetrePerLitre, 0.05, 1000),
	[]working.Arg{wft},
	func(wft unit.WetFilm) unit.SpreadingRate { return unit.SpreadingRate(1 / wft) })

// RateAsSold is the area that a litre of the product as sold covers with
// nothing lost, R = 1000 × (1 + t) ÷ WFT (m²/L, µm): it has become 1 + t
// litres of mix by then.
// Range: t 0–0.5, WFT 1 µm–20 mm. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var RateAsSold = working.Of2("R = 1000 × (1 + t) ÷ WFT", source.UFC319006.At("2.1.5"), source.Published,
	working.In("R", "area per litre as sold", unit.InSquareMetrePerLitre, 0.05, 1500),
	[]working.Arg{thin, wft},
	func(t unit.ByVolume, wft unit.WetFilm) unit.SpreadingRate {
		return unit.SpreadingRate((1 + float64(t)) / float64(wft))
	})

// Practical is a rate with what never reaches the surface taken off,
// R_p = R × (1 − loss); a transfer efficiency is 1 − loss. R is as sold or as
// thinned, and so is the result.
// Range: R 0.01–1000 m²/L, loss 0–0.9. Errors: *working.RangeError.
// Source: coating inspection notes.
var Practical = working.Of2("R_p = R × (1 − loss)", source.InspectionNotes.At("practical coverage"), source.Published,
	working.In("R_p", "area per litre, losses taken off", unit.InSquareMetrePerLitre, 0.001, 1000),
	[]working.Arg{
		working.In("R", "area per litre, nothing lost", unit.InSquareMetrePerLitre, 0.01, 1000),
		loss,
	},
	func(r unit.SpreadingRate, loss unit.Share) unit.SpreadingRate {
		return r * unit.SpreadingRate(1-loss)
	})
