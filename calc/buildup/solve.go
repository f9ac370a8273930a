package buildup

import (
	"fmt"
	"math"
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// FilmNeeded is the method of Need: backwards from every later point of the
// layer. With c the step's own spread, S the spread of all else and z the
// deviate of the chosen share, the film F at which only that share lies below l
// after R was taken is the larger root of (F − R − l)² = z²(c²F² + S²).
// Source: our own method, from Left, Spread and ThinSide.
var FilmNeeded = &working.Rule{Formula: "least film with which every later point keeps its least mean, and all but the chosen share of the area its thinnest", Source: source.Ref{Document: &source.House, Place: "film budget, backwards"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "f", Meaning: "film to put on, each round", Scale: unit.InMicrometre, Min: 0, Max: mostFilm}, IsProse: true}

// Need is the film that a step has to add.
type Need struct {
	Film   working.Figure[unit.DryFilm] // each round
	By     int                          // index of the step that needs most
	IsThin bool                         // for the thin side's sake; false: for the mean's
}

// TooUnevenError says that no film is thick enough for the chosen share, because it
// grows uneven as fast as it grows thick; a more even one is.
type TooUnevenError struct {
	Step  int
	Reach float64    // z × CV, 1 or more
	CV    unit.Share // the step's
	Below unit.Share // a CV that can work lies below this
}

// Error names the spread.
func (e *TooUnevenError) Error() string {
	return fmt.Sprintf("buildup: step %d: at a spread of %g no film is enough, below %g one is", e.Step, float64(e.CV), float64(e.Below))
}

// Needed solves the build-up backwards: the film that the step at index at has to
// add in each round, the other steps as they are. What the step adds now doesn't
// matter; its CV does. A film over 50 mm is refused. Errors: *StepError, *ShareError, *TooUnevenError.
func Needed(steps []Step, at int, terms Terms) (Need, error) {
	z, err := solvable(steps, at, terms)
	if err != nil {
		return Need{}, err
	}
	need := Need{By: -1}
	most := math.Inf(-1)
	for _, m := range moments(steps) {
		a, err := m.openAt(steps, at, float64(terms.Unfairness.Value))
		if err != nil {
			return Need{}, outOfRange(m.step, err)
		}
		if a.n == 0 {
			continue
		}
		film, isThin, ok := a.film(z, m.least(steps), m.isTaking)
		if !ok {
			cv := steps[at].Film.AddsCV.Value
			return Need{}, &TooUnevenError{at, z * float64(cv), cv, unit.Share(1 / z)}
		}
		if film > most {
			most, need.By, need.IsThin = film, m.step, isThin
		}
	}
	if need.By < 0 {
		return Need{}, &StepError{Step: at, Cause: NoLaterPoint}
	}
	if n := unit.InMicrometre.From(most); n > mostFilm {
		return Need{}, outOfRange(at, &working.RangeError{Rule: FilmNeeded, Arg: FilmNeeded.Result, Value: n})
	}
	need.Film = working.By(FilmNeeded, unit.DryFilm(max(most, 0)), needSteps(steps, at, terms)...)
	return need, nil
}

// solvable checks what Needed was given, and gives the deviate of the chosen
// share.
func solvable(steps []Step, at int, terms Terms) (float64, error) {
	if err := checkSteps(steps); err != nil {
		return 0, err
	}
	if at < 0 || at >= len(steps) || !steps[at].Film.adds() {
		return 0, &StepError{Step: at, Cause: NotACoat}
	}
	spread, err := StepSpread.Of(steps[at].Film.AddsCV.Value, unit.DryFilm(unit.Millimetre))
	if err == nil {
		_, err = Spread.Of(spread, 0, terms.Unfairness.Value)
	}
	if err != nil {
		return 0, outOfRange(at, err)
	}
	z, err := deviate(terms.Thin)
	return float64(z.Value), err
}

// needSteps are the figures that a need was worked out from.
func needSteps(steps []Step, at int, terms Terms) []*working.Step {
	list := []*working.Step{steps[at].Film.AddsCV.Step, terms.Thin.Step, terms.Unfairness.Step}
	for i, s := range steps {
		f := s.Film
		for _, step := range []*working.Step{f.Adds.Step, f.Takes.Step, f.TakesCV.Step, f.Least.Mean.Step, f.Least.Thinnest.Step, f.Found.Step} {
			if step != nil && !(i == at && step == f.Adds.Step) {
				list = append(list, step)
			}
		}
	}
	return list
}

// openStep is a moment with one step's film left open: n × x is that film.
type openStep struct {
	n, cv         float64
	others, taken float64 // film put on by other steps; film taken
	otherSpread   float64
	rest          float64 // spread of all but the film put on
}

// openAt divides a moment's totals into the open step's film and the rest; n is
// zero where the open step has added nothing.
func (m moment) openAt(steps []Step, at int, unfairness float64) (openStep, error) {
	a := openStep{cv: float64(steps[at].Film.AddsCV.Value)}
	rest := moment{done: slices.Clone(m.done)}
	for i, d := range rest.done {
		if d.step == at {
			a.n = float64(d.added)
			rest.done[i].added = 0
		}
	}
	t, err := rest.total(steps)
	a.others, a.taken, a.otherSpread = float64(t.on.Value), float64(t.off.Value), float64(t.onSpread.Value)
	a.rest = math.Hypot(float64(t.offSpread.Value), unfairness)
	return a, err
}

// film is the open film, in each round, that leaves the least; false where none
// does. Films of other steps count as the amount of the open one that has their
// spread, since spreads within a layer add. The thin side doesn't matter where
// nothing was taken and nothing is asked of it.
func (a openStep) film(z float64, least Least, isTaking bool) (x float64, isThin, ok bool) {
	mean := (float64(least.Mean.Value) + a.taken - a.others) / a.n
	if !isTaking && least.Thinnest.Step == nil {
		return mean, false, true
	}
	even := a.otherSpread / a.cv
	whole, ok := forShare(a.taken+float64(least.Thinnest.Value)-a.others+even, a.cv, z, a.rest)
	if !ok {
		return 0, false, false
	}
	if thin := (whole - even) / a.n; thin > mean {
		return thin, true, true
	}
	return mean, false, true
}

// forShare is the larger root of (F − m)² = z²(c²F² + s²); false where z × c is 1
// or more, since F − m then never catches up with z × c × F.
func forShare(m, c, z, s float64) (float64, bool) {
	w, e := z*c, z*s
	if !(w < 1) {
		return 0, false
	}
	return (m + math.Sqrt(e*e*(1-w*w)+w*w*m*m)) / (1 - w*w), true
}
