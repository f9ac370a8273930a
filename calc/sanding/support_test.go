package sanding_test

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// given makes a figure as plan would, in a scale's own unit.
func given[Q unit.Quantity](n float64, s unit.Scale) working.Figure[Q] {
	return working.Given(unit.Of[Q](n, s), "given", s, "test", source.Typed)
}

func micrometres(n float64) working.Figure[unit.DryFilm] {
	return given[unit.DryFilm](n, unit.InMicrometre)
}
