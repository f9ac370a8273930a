package words

import (
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Questions about unlikely figures.
const (
	ItIsReal = "It is right"
	OnlyOn   = "Only on "
)

// UnusualArea marks a surface of a list whose area is asked about on its sheet.
const UnusualArea = "unusual area: is it right?"

// Unlikely asks about a figure outside its usual band.
func Unlikely(ask *plan.Ask) string {
	band := ask.Band
	return Capital(band.Key) + " comes to " + unit.Write(ask.Value, band.Scale, 3) + ", outside the usual " +
		unit.Write(band.Low, band.Scale, 3) + " to " + unit.Write(band.High, band.Scale, 3) + ". Is that right?"
}

// IfThatWas names the slip that would make a figure usual, and the figure then.
func IfThatWas(slip, then string) string { return "If that was " + slip + ", it is " + then + "." }

// TheyWereIn reads sizes in the unit that they were meant in: the figure then.
func TheyWereIn(symbol, then string) string { return "They are in " + symbol + ": " + then }

// SizesAreIn says how bare sizes are read from now on.
func SizesAreIn(symbol string) string {
	return "A size without a unit is read in " + symbol + " from now on. Settings has the units."
}

// Jumped asks about a temperature far from the last cup's.
func Jumped(is, was string) string {
	return "That is " + is + "; at the last cup it was " + was + ". Is that right?"
}

// RestsOn names the source of a finding.
func RestsOn(source string) string { return "Rests on: " + source }

// OfStep begins a finding that is told away from its step.
func OfStep(step string) string { return "step " + step + ". " }
