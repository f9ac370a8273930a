package film

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Dead is the method of DeadFilm.
var Dead = &working.Rule{Formula: "film that fills the profile of a blasted or coarsely sanded ground, by steps of the profile: up to 50 µm 10, to 100 µm 35, to 150 µm 60, to 300 µm 125 µm",
	Source: source.Ref{Document: &source.BlastProfile, Place: "dead volume"}, Mark: source.Published,
	Result: working.Arg{Symbol: "D", Meaning: "dry film that the ground swallows", Scale: unit.InMicrometre, Min: 0, Max: 125}, IsProse: true}

// profiles is the published table, each step up to and with its profile.
var profiles = []struct {
	upTo unit.Length
	lost unit.DryFilm
}{
	{50 * unit.Micrometre, unit.DryFilm(10 * unit.Micrometre)},
	{100 * unit.Micrometre, unit.DryFilm(35 * unit.Micrometre)},
	{150 * unit.Micrometre, unit.DryFilm(60 * unit.Micrometre)},
	{300 * unit.Micrometre, unit.DryFilm(125 * unit.Micrometre)},
}

// ProfileError says that a profile is outside the published table, 0–300 µm.
type ProfileError struct{ Profile, Most unit.Length }

// Error names the profile and the table's end.
func (e *ProfileError) Error() string {
	return fmt.Sprintf("film: profile of %.0f µm is outside 0 to %.0f µm",
		unit.InMicrometre.From(float64(e.Profile)), unit.InMicrometre.From(float64(e.Most)))
}

// DeadFilm is the dry film that fills a ground's roughness and doesn't stand
// above its peaks. Taken to its wet film (Wet), it is the term S of Mix.
// Range: profile (peak to valley) 0–300 µm; a smooth ground has none.
// Errors: *ProfileError.
// Source: a coating maker's note on dead volume, as a table; not interpolated.
func DeadFilm(profile working.Figure[unit.Length]) (working.Figure[unit.DryFilm], error) {
	if profile.Value == 0 {
		return working.By(Dead, unit.DryFilm(0), profile.Step), nil
	}
	for _, p := range profiles {
		if 0 < profile.Value && profile.Value <= p.upTo {
			return working.By(Dead, p.lost, profile.Step), nil
		}
	}
	return working.Figure[unit.DryFilm]{}, &ProfileError{profile.Value, profiles[len(profiles)-1].upTo}
}
