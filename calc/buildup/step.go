package buildup

import (
	"fmt"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Kind is what is done in a step.
type Kind int

// The kinds of step.
const (
	Coat   Kind = iota // a film is put on; with Takes, a round of coating and sanding back
	Fill               // filler: the film above it is counted from zero
	Sand               // film is taken
	Polish             // film is taken
	Wash               // water, soap, solvent wipe
	Other              // anything else: it leaves the ground as it finds it, sanded or not
)

// Step is one step of a build-up, on one surface.
type Step struct {
	Kind   Kind
	Rounds int // how often it is done; 0 and 1: once
	Film   Film
	Layer  Layer     // of a coat or fill
	Grit   int       // of sanding: the last P grade; 0: not said
	Wait   unit.Time // since the step before, at 20 °C; 0: not said
}

// MaxSteps and MaxRounds bound a build-up.
const (
	MaxSteps  = 40
	MaxRounds = 50
)

// Film is what a step does to the film in each round. A figure without a step is
// nothing.
type Film struct {
	Adds     working.Figure[unit.DryFilm] // mean over the area
	AddsCV   working.Figure[unit.Share]   // from point to point, sd ÷ mean
	Takes    working.Figure[unit.DryFilm]
	TakesCV  working.Figure[unit.Share]
	Least    Least
	NewLayer bool // of a coat: another material, its film counts from zero

	// Found is the whole film of the layer as measured when the step is done; it
	// replaces everything counted until then.
	Found   working.Figure[unit.DryFilm]
	FoundCV working.Figure[unit.Share]
}

// Least is the least film that a step may leave; a figure without a step: none is
// asked for.
type Least struct {
	Mean     working.Figure[unit.DryFilm] // over the area
	Thinnest working.Figure[unit.DryFilm] // on the thin side
}

// rounds is how often the step is done.
func (s Step) rounds() int { return max(s.Rounds, 1) }

// adds says if the step adds film, takes if it takes some.
func (f Film) adds() bool  { return f.Adds.Step != nil }
func (f Film) takes() bool { return f.Takes.Step != nil }

// StepError says that a step can't be walked.
type StepError struct {
	Step  int
	Cause StepCause
	Range error // by OutOfRange: the *working.RangeError
}

// StepCause says why.
type StepCause int

// The causes of a StepError.
const (
	TooManySteps StepCause = iota
	TooManyRounds
	NotACoat     // asked how much film it must add, but it adds none
	NoLaterPoint // nothing after the step depends on its film
	OutOfRange   // a figure, or a sum of figures up to the step
)

// Error names the step.
func (e *StepError) Error() string {
	return fmt.Sprintf("buildup: step %d can't be used (cause %d)", e.Step, e.Cause)
}

// Unwrap gives the *working.RangeError.
func (e *StepError) Unwrap() error { return e.Range }

func outOfRange(step int, err error) error {
	return &StepError{step, OutOfRange, err}
}

func checkSteps(steps []Step) error {
	if len(steps) > MaxSteps {
		return &StepError{Step: MaxSteps, Cause: TooManySteps}
	}
	for i, s := range steps {
		if s.Rounds > MaxRounds {
			return &StepError{Step: i, Cause: TooManyRounds}
		}
		if _, err := Left.Of(s.Film.Least.Mean.Value, s.Film.Least.Thinnest.Value); err != nil {
			return outOfRange(i, err) // neither least may be a film that none is
		}
	}
	return nil
}
