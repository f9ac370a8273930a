package film

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// CombMid is the middle of what a wet-film comb says, WFT = (L + F) ÷ 2: the film
// lies between the last tooth that was wetted and the first that stayed dry.
// Range: L 0–20 mm, F 1 µm–20 mm. Errors: *working.RangeError.
// Source: common practice, the way every comb is read.
var CombMid = working.Of2("WFT = (L + F) ÷ 2", source.Practice.At("reading a wet-film comb"), source.CommonPractice,
	wft,
	[]working.Arg{
		working.In("L", "last wet tooth", unit.InMicrometre, 0, 20000),
		working.In("F", "first dry tooth", unit.InMicrometre, 1, 20000),
	},
	func(lastWet, firstDry unit.WetFilm) unit.WetFilm { return (lastWet + firstDry) / 2 })

// Missing is the wet film still to be laid on, M = P − WFT; below zero it is how
// much too thick the film is.
// Range: P and WFT 1 µm–20 mm. Errors: *working.RangeError.
// Source: definition.
var Missing = working.Of2("M = P − WFT", source.House.At("definition"), source.Exact,
	working.In("M", "wet film missing", unit.InMicrometre, -20000, 20000),
	[]working.Arg{working.In("P", "wet film planned", unit.InMicrometre, 1, 20000), wft},
	func(planned, read unit.WetFilm) unit.WetFilm { return planned - read })

// Comb is what a wet-film comb shows, and whether it was read to the mean or to the
// peaks: on a texture the teeth meet the peaks.
type Comb struct {
	LastWet, FirstDry working.Figure[unit.WetFilm]
	Basis             Basis
}

// CombReading is what a comb says about a film.
type CombReading struct {
	Least, Most      unit.WetFilm // the film lies between
	Mid              working.Figure[unit.WetFilm]
	CuresTo          working.Figure[unit.DryFilm] // the mid, once cured
	CuresLeast       unit.DryFilm                 // the ends of what the film lies between, once cured
	CuresMost        unit.DryFilm
	Missing          working.Figure[unit.WetFilm] // to the planned film, from the mid
	IsCertainlyShort bool                         // even at its most, the film is under the plan
	Basis            Basis                        // of all the films above
}

// CombError says that the teeth can't be right: the first dry tooth must stand
// over the last wet one.
type CombError struct{ LastWet, FirstDry unit.WetFilm }

// Error names the teeth.
func (e *CombError) Error() string {
	return fmt.Sprintf("film: first dry tooth %.0f µm isn't over the last wet tooth %.0f µm",
		unit.InMicrometre.From(float64(e.FirstDry)), unit.InMicrometre.From(float64(e.LastWet)))
}

func curedFrom(wet unit.WetFilm, share unit.SolidsByVolume) unit.DryFilm {
	return unit.DryFilm(float64(wet) * float64(share))
}

// Read compares a comb with the planned wet film, both of the same basis, and says
// what the film will cure to at the mix's cured share.
// Errors: *CombError, *working.RangeError.
func (c Comb) Read(planned working.Figure[unit.WetFilm], curedShare working.Figure[unit.SolidsByVolume]) (CombReading, error) {
	if !(c.FirstDry.Value > c.LastWet.Value) {
		return CombReading{}, &CombError{c.LastWet.Value, c.FirstDry.Value}
	}
	mid, err := CombMid.Figure(c.LastWet, c.FirstDry)
	if err != nil {
		return CombReading{}, err
	}
	curesTo, err := Dry.Figure(mid, curedShare)
	if err != nil {
		return CombReading{}, err
	}
	missing, err := Missing.Figure(planned, mid)
	if err != nil {
		return CombReading{}, err
	}
	return CombReading{
		Least: c.LastWet.Value, Most: c.FirstDry.Value,
		CuresLeast: curedFrom(c.LastWet.Value, curedShare.Value), CuresMost: curedFrom(c.FirstDry.Value, curedShare.Value), Mid: mid, CuresTo: curesTo, Missing: missing,
		IsCertainlyShort: c.FirstDry.Value <= planned.Value, Basis: c.Basis,
	}, nil
}
