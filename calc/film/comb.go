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
var CombMid = working.Rule2[unit.WetFilm, unit.WetFilm, unit.WetFilm]{Rule: &working.Rule{Formula: "WFT = (L + F) ÷ 2", Source: source.Ref{Document: &source.Practice, Place: "reading a wet-film comb"}, Mark: source.CommonPractice,
	Result: wft,
	Args: []working.Arg{
		{Symbol: "L", Meaning: "last wet tooth", Scale: unit.InMicrometre, Min: 0, Max: 20000},
		{Symbol: "F", Meaning: "first dry tooth", Scale: unit.InMicrometre, Min: 1, Max: 20000},
	}},
	Code: func(lastWet, firstDry unit.WetFilm) unit.WetFilm { return (lastWet + firstDry) / 2 }}

// Missing is the wet film still to be laid on, M = P − WFT; below zero it is how
// much too thick the film is.
// Range: P and WFT 1 µm–20 mm. Errors: *working.RangeError.
// Source: definition.
var Missing = working.Rule2[unit.WetFilm, unit.WetFilm, unit.WetFilm]{Rule: &working.Rule{Formula: "M = P − WFT", Source: source.Ref{Document: &source.House, Place: "definition"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "M", Meaning: "wet film missing", Scale: unit.InMicrometre, Min: -20000, Max: 20000},
	Args:   []working.Arg{{Symbol: "P", Meaning: "wet film planned", Scale: unit.InMicrometre, Min: 1, Max: 20000}, wft}},
	Code: func(planned, read unit.WetFilm) unit.WetFilm { return planned - read }}

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
