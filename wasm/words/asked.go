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

// Unlikely asks about a figure outside its usual band.
func Unlikely(ask *plan.Ask) string {
	band := ask.Band
	return Capital(band.Key) + " comes to " + unit.Write(ask.Value, band.Scale, 3) + ", outside the usual " +
		unit.Write(band.Low, band.Scale, 3) + " to " + unit.Write(band.High, band.Scale, 3) + ". Is that right?"
}

// IfThatWas names the slip that would make a figure usual, and the figure then.
func IfThatWas(slip, then string) string { return "If that was " + slip + ", it is " + then + "." }

// Jumped asks about a temperature far from the last cup's.
func Jumped(is, was string) string {
	return "That is " + is + "; at the last cup it was " + was + ". Is that right?"
}

// RestsOn names the source of a finding.
func RestsOn(source string) string { return "Rests on: " + source }

// OfStep begins a finding that is told away from its step.
func OfStep(step string) string { return "step " + step + ". " }
