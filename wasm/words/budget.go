package words

import (
	"strconv"
)

// The film budget.
const (
	NoFilmYet           = "No film yet: add a coat, and type what every step still lacks."
	EndMean             = "Left in the end, mean"
	EndThin             = "Left in the end, thin side"
	ExpectedToGoThrough = "Expected to go through"
	ThatIs              = "That is"
	EdgeMean            = "Edge strips: left, mean"
	EdgeThrough         = "Edge strips: expected to go through"
	KeepOffEdges        = "Keep coarse paper off these strips, or tape the edges while the boards are out."
	WetThatIs           = "Wet, that is"
	InSoManyCoats       = "In so many coats"
	PointByPoint        = "Step by step"
	SandedBack          = ", sanded back"
)

// AsMeasured names the budget of a surface whose film was measured.
func AsMeasured(surface string) string { return surface + ", as measured" }

// MeanOf labels the mean film after a step.
func MeanOf(step string) string { return step + ", mean" }

// Round names which of several rounds of a step is meant.
func Round(n int) string { return ", round " + strconv.Itoa(n) }

// PutOnAtLeast labels the film that a coat has to add.
func PutOnAtLeast(step string) string { return step + ": put on at least" }

// NoGradeLeft says that no grade of a sanding is affordable.
func NoGradeLeft(step, left string) string {
	return "Step " + step + ": with " + left + " on the thin side none of its grades is still affordable. Put on more first."
}

// GradeIsAffordable says that a sanding can begin as it is planned.
func GradeIsAffordable(step, grade, takes string) string {
	return "Step " + step + ": " + grade + " is affordable, " + takes + " with what follows."
}

// BeginNoCoarser says with which grade a sanding can begin.
func BeginNoCoarser(step, grade, takes string) string {
	return "Step " + step + ": begin with " + grade + ", no coarser. It takes " + takes + " with what follows."
}

// MoreEven says that only a more even film helps.
func MoreEven(step, is, under string) string {
	return step + ": not by more film, by a more even one. Its unevenness, " + is + ", must come under " + under + ", or choose a larger share that may go thinner."
}

// MayCrack says that a film that survives sanding gets too thick.
func MayCrack(over string) string {
	return "With so much put on, more than " + over + " is left in the mean: it may crack. Take less, or put it on more evenly."
}
