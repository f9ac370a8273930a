package words

import "strconv"

// How a figure was worked out.
const (
	NothingWorkedOut = "Nothing to work out yet."
	LastStepOnly     = "The last step only"
)

// StepsBefore offers the steps that lead to the last one.
func StepsBefore(n int) string {
	if n == 1 {
		return "All of it: one step before"
	}
	return "All of it: " + strconv.Itoa(n) + " steps before"
}
