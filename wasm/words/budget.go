package words

import (
	"strconv"
)

// The film budget.
const (
	NoFilmYet         = "No film yet: add a coat, and fill in what each step still needs."
	EndMean           = "Left at the end, mean"
	EndThin           = "Left at the end, thin side"
	SandedThrough     = "Expected to be sanded through"
	ThatIs            = "That is"
	EdgeMean          = "Edge strips: left, mean"
	EdgeSandedThrough = "Edge strips: expected to be sanded through"
	KeepOffEdges      = "Keep coarse paper off these strips, or tape the edges while the boards are out."
	WetThatIs         = "Wet, that is"
	NumberOfCoats     = "Number of coats"
	PointByPoint      = "Step by step"
	SandedBack        = ", sanded back"
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
	return "Step " + step + ": with " + left + " at the thin side, every grade of it takes too much. Put on more first."
}

// GradeIsAffordable says that a sanding can begin as it is planned.
func GradeIsAffordable(step, grade, takes string) string {
	return "Step " + step + ": there is film enough for " + grade + ", which takes " + takes + ", counting what follows."
}

// BeginNoCoarser says with which grade a sanding can begin.
func BeginNoCoarser(step, grade, takes string) string {
	return "Step " + step + ": start with " + grade + ", no coarser. It takes " + takes + ", counting what follows."
}

// MoreEven says that only a more even film helps.
func MoreEven(step, is, under string) string {
	return step + ": more film won't do it, a more even one will. Bring its unevenness down from " + is + " to under " + under + ", or allow a larger share to go thinner."
}

// MayCrack says that a film that survives sanding gets too thick.
func MayCrack(over string) string {
	return "With that much put on, the mean left is over " + over + ": it may crack. Sand off less, or put it on more evenly."
}
