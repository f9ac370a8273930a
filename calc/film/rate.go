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
var RateAsThinned = working.Rule1[unit.WetFilm, unit.SpreadingRate]{Rule: &working.Rule{Formula: "R' = 1000 ÷ WFT", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: working.Arg{Symbol: "R'", Meaning: "area per litre as thinned", Scale: unit.InSquareMetrePerLitre, Min: 0.05, Max: 1000},
	Args:   []working.Arg{wft}},
	Code: func(wft unit.WetFilm) unit.SpreadingRate { return unit.SpreadingRate(1 / wft) }}

// RateAsSold is the area that a litre of the product as sold covers with
// nothing lost, R = 1000 × (1 + t) ÷ WFT (m²/L, µm): it has become 1 + t
// litres of mix by then.
// Range: t 0–0.5, WFT 1 µm–20 mm. Errors: *working.RangeError.
// Source: UFC 3-190-06 par. 2.1.5.
var RateAsSold = working.Rule2[unit.ByVolume, unit.WetFilm, unit.SpreadingRate]{Rule: &working.Rule{Formula: "R = 1000 × (1 + t) ÷ WFT", Source: source.Ref{Document: &source.UFC319006, Place: "2.1.5"}, Mark: source.Published,
	Result: working.Arg{Symbol: "R", Meaning: "area per litre as sold", Scale: unit.InSquareMetrePerLitre, Min: 0.05, Max: 1500},
	Args:   []working.Arg{thin, wft}},
	Code: func(t unit.ByVolume, wft unit.WetFilm) unit.SpreadingRate {
		return unit.SpreadingRate((1 + float64(t)) / float64(wft))
	}}

// Practical is a rate with what never reaches the surface taken off,
// R_p = R × (1 − loss); a transfer efficiency is 1 − loss. R is as sold or as
// thinned, and so is the result.
// Range: R 0.01–1000 m²/L, loss 0–0.9. Errors: *working.RangeError.
// Source: coating inspection notes.
var Practical = working.Rule2[unit.SpreadingRate, unit.Share, unit.SpreadingRate]{Rule: &working.Rule{Formula: "R_p = R × (1 − loss)", Source: source.Ref{Document: &source.InspectionNotes, Place: "practical coverage"}, Mark: source.Published,
	Result: working.Arg{Symbol: "R_p", Meaning: "area per litre, losses taken off", Scale: unit.InSquareMetrePerLitre, Min: 0.001, Max: 1000},
	Args: []working.Arg{
		{Symbol: "R", Meaning: "area per litre, nothing lost", Scale: unit.InSquareMetrePerLitre, Min: 0.01, Max: 1000},
		loss,
	}},
	Code: func(r unit.SpreadingRate, loss unit.Share) unit.SpreadingRate {
		return r * unit.SpreadingRate(1-loss)
	}}
