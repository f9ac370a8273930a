package page

import (
	"errors"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

// fairingSentence is Sentence for what belongs to fairing, sanding and the film
// budget; empty for anything else.
func fairingSentence(err error, units job.Units) string {
	if errors.Is(err, plan.ErrNoGrades) {
		return "Type the first and the last grade."
	}
	return ""
}
