package plan

import (
	"cmp"
	"errors"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Sanding is what a run of grades comes to.
type Sanding struct {
	Grades  []sanding.Grade
	Usual   bool                         // the run is the usual one, none was typed
	Flatten working.Figure[unit.DryFilm] // what the first grade takes
	Stages  []Stage
	Jumps   []sanding.Jump // steps that may leave scratches
	Hours   working.Figure[unit.Time]
	Dust    working.Figure[unit.Mass]
	Fewest  []sanding.Grade              // the shortest run without a wide step
	FewTake working.Figure[unit.DryFilm] // film that it takes

	turns []sanding.Turn
	k     working.Figure[unit.Factor]
}

// Stage is one grade of a run over the whole area.
type Stage struct {
	sanding.Stage
	IsOwn    bool // the film is the builder's own figure
	IsWet    bool
	Abrasive *job.Card
	Pieces   working.Figure[unit.Factor]
	Hours    working.Figure[unit.Time]
}

// GradesError says that the first grade of a run is finer than the last.
type GradesError struct{ First, Last sanding.Grade }

// Error names both.
func (e *GradesError) Error() string {
	return "plan: a run from " + e.First.String() + " to " + e.Last.String()
}

// ErrNoGrades says that a run has neither grades nor a first and a last.
var ErrNoGrades = errors.New("plan: no grades typed")

var (
	runTakes  = working.SumRule("film taken by the run", unit.InMicrometre)
	runHours  = working.SumRule("hours of the run", unit.InHour)
	wetHours  = working.SumRule("hours of wet sanding", unit.InHour)
	scratchOf = working.Given(material.ScratchFactor.Value, "scratch depth ÷ grain", unit.InPure, "not typed", material.ScratchFactor.Mark)
	noFlatten = working.Given(unit.DryFilm(0), "texture", unit.InMicrometre, "no film before it", source.Exact)
)

// sander works out the film that grades and polish take, and the abrasives and
// hours for it.
type sander struct{ *maker }

// runOfGrades plans a sanding step that is given by its grades.
func (m sander) runOfGrades(s *Step) {
	grades, ok := m.grades(s)
	if !ok {
		return
	}
	var q chain.Run
	r := &Sanding{Grades: grades, Usual: len(s.Job.Sanding.Grades) == 0, k: scratchOf}
	if s.Job.Sanding.Scratch.Step != nil {
		r.k = s.Job.Sanding.Scratch
	}
	r.Flatten = m.flatten(&q, s)
	r.turns = m.turns(grades)
	takes := r.stages(&q)
	r.fewest(m.maker)
	jumps, err := sanding.Validate(grades, material.AskStep)
	if err = cmp.Or(q.Err, err); err != nil {
		m.refuse(s.Path+".grades", err)
		return
	}
	r.Jumps = jumps
	s.Sand, s.Taken, s.Known = r, takes, true
	s.face.scratches = r.Stages[len(r.Stages)-1].Leaves
}

// grades gives the run of a step: as typed, or the usual grades from the first
// to the last.
func (m sander) grades(s *Step) ([]sanding.Grade, bool) {
	typed := s.Job.Sanding
	switch {
	case len(typed.Grades) > 0:
		return typed.Grades, true
	case typed.First == 0:
		m.waitUnlessRefused(s.Path + ".first")
	case typed.Last == 0:
		m.waitUnlessRefused(s.Path + ".last")
	case typed.Last < typed.First:
		m.refuse(s.Path+".last", &GradesError{typed.First, typed.Last})
	default:
		return usualRun(typed.First, typed.Last), true
	}
	return nil, false
}

func (m sander) waitUnlessRefused(path string) {
	if !m.isRefused(path) {
		m.wait(path, ErrNoGrades)
	}
}

// usualRun is every usual grade from the first to the last.
func usualRun(first, last sanding.Grade) []sanding.Grade {
	run := []sanding.Grade{first}
	for _, n := range material.UsualGrades {
		if g := sanding.Grade(n); g > first && g < last {
			run = append(run, g)
		}
	}
	if last > first {
		run = append(run, last)
	}
	return run
}

// flatten is what the first grade takes: the texture of the coat before, or
// the scratches of the sanding before.
func (m sander) flatten(q *chain.Run, s *Step) working.Figure[unit.DryFilm] {
	share := sanding.OfMean
	if s.Job.Sanding.IsPeak {
		share = sanding.OfPeak
	}
	if s.Job.Sanding.Texture.Step != nil {
		return chain.Do2(q, sanding.Texture, share, s.Job.Sanding.Texture)
	}
	found := m.faceBelow()
	switch {
	case found.texture != nil:
		t := found.texture.Texture
		depth := material.Spec[unit.Length]{Value: unit.Length(t.Value), Mark: t.Mark}
		return chain.Do2(q, sanding.Texture, share, chain.OfMethod(found.texture, depth, "texture, peak to valley", unit.InMicrometre))
	case found.scratches.Step != nil:
		return found.scratches
	}
	return noFlatten
}

// turns adds the builder's measured removals to the grades.
func (m sander) turns(grades []sanding.Grade) []sanding.Turn {
	list := make([]sanding.Turn, len(grades))
	removals := m.plan.removals()
	for i, g := range grades {
		list[i].Grade = g
		if own, known := removals.of[g]; known {
			list[i].Own = &own
		}
	}
	return list
}

// stages walks the run and gives the film that it takes.
func (r *Sanding) stages(q *chain.Run) working.Figure[unit.DryFilm] {
	if q.Err != nil {
		return working.Figure[unit.DryFilm]{}
	}
	stages, err := sanding.Ladder(r.turns, r.k, r.Flatten)
	if q.Err = err; err != nil {
		return working.Figure[unit.DryFilm]{}
	}
	var takes []working.Figure[unit.DryFilm]
	for i, stage := range stages {
		r.Stages = append(r.Stages, Stage{Stage: stage, IsOwn: r.turns[i].Own != nil})
		takes = append(takes, stage.Takes)
	}
	return working.Sum(runTakes, takes...)
}

// fewest proposes the shortest run between the same ends, where one is shorter.
func (r *Sanding) fewest(m *maker) {
	if len(r.Grades) < 3 {
		return
	}
	few, err := sanding.Propose(r.Grades[0], r.Grades[len(r.Grades)-1], nil, material.ProposedStep)
	if err != nil || len(few) >= len(r.Grades) {
		return
	}
	other := Sanding{turns: sander{m}.turns(few), k: r.k, Flatten: r.Flatten}
	var q chain.Run
	if takes := other.stages(&q); q.Err == nil {
		r.Fewest, r.FewTake = few, takes
	}
}

// sandAmounts works out the abrasives, hours and dust of the run over the area.
func sandAmounts(m *maker, s *Step, area working.Figure[unit.Area]) {
	r := s.Sand
	if r == nil || area.Value <= 0 {
		return
	}
	var q chain.Run
	var hours []working.Figure[unit.Time]
	for i := range r.Stages {
		stage := &r.Stages[i]
		from := s.Job.Sanding.WetFrom
		stage.IsWet = from > 0 && stage.Grade >= from
		per, speed, how := sander{m}.abrasive(stage, s.Job.Sanding.Tool)
		stage.Pieces = chain.Do2(&q, sanding.Sheets, area, per)
		stage.Hours = chain.Do2(&q, sanding.Hours, area, working.Given(speed.Value, "area sanded in an hour", unit.InSquareMetrePerHour, how, speed.Mark))
		hours = append(hours, stage.Hours)
	}
	r.Hours = working.Sum(runHours, hours...)
	r.Dust = chain.Do3(&q, sanding.Dust, area, s.Taken, sander{m}.sandedDensity())
	if q.Err != nil {
		m.refuse(s.Path+".grades", q.Err)
	}
}

// run adds the abrasives of a run by grade, and gloves for its wet hours.
func (u *sundryAdder) run(r *Sanding) {
	gloves := u.card("gloves")
	var wet []working.Figure[unit.Time]
	for _, stage := range r.Stages {
		u.add(Use{Name: stage.Abrasive.Name, Card: stage.Abrasive, Grade: stage.Grade, Pieces: stage.Pieces})
		if stage.IsWet {
			wet = append(wet, stage.Hours)
		} else if u.q.Err == nil {
			u.step.sanded = append(u.step.sanded, stage.Hours)
		}
	}
	if len(wet) == 0 {
		return
	}
	u.add(Use{Name: gloves.Name, Card: gloves, Pieces: chain.Do2(&u.q, piecesOfHours, working.Sum(wetHours, wet...), chain.OnCard(gloves, gloves.EachHour, "pairs for each hour of wet sanding", unit.InPure))})
}

// abrasive settles what a stage is sanded with.
func (m sander) abrasive(stage *Stage, tool string) (per working.Figure[unit.Factor], speed material.Spec[unit.SpreadingSpeed], how string) {
	key, speed, how := "disc", material.DiscOnFilm, "by machine"
	switch {
	case stage.IsWet:
		key, speed, how = "wet-sheet", material.WetByHand, "wet by hand"
	case tool == job.ByBoard:
		key, speed, how = "strip", material.BoardOnFiller, "with the long board"
	}
	stage.Abrasive = m.card(key)
	uses := stage.Abrasive.OnFilm
	if key == "wet-sheet" && stage.Grade <= material.FinestCoarseSheet && uses.Mark != source.Typed {
		uses = material.SheetsCoarse
	}
	return chain.OnCard(stage.Abrasive, uses, "used for a square metre", unit.InPure), speed, how
}

// sandedDensity is that of what lies on top.
func (m sander) sandedDensity() working.Figure[unit.Density] {
	for i := len(m.below) - 1; i >= 0; i-- {
		if s := &m.below[i]; s.Card != nil && (s.Coat != nil || s.Fill != nil) {
			return curedDensity(s)
		}
	}
	return working.Given(1300*unit.Density(1), "density once cured", unit.InKilogramPerLitre, "no coat below it", source.Assumption)
}

// lastGrade is the grade that a step leaves the surface with; 0: not known.
func (s *Step) lastGrade() sanding.Grade {
	if s.Sand != nil {
		return s.Sand.Grades[len(s.Sand.Grades)-1]
	}
	return s.Job.Sanding.Last
}

// polishTakes is the film that a polish takes where none was typed: below the
// scratches of the last grade, and never less than its own.
func (m sander) polishTakes(q *chain.Run, s *Step) working.Figure[unit.DryFilm] {
	own := chain.OnCard(s.Card, s.Card.Takes, "least film that it takes", unit.InMicrometre)
	if scratches := m.faceBelow().scratches; scratches.Step != nil {
		return chain.Do2(q, sanding.Cutting, scratches, own)
	}
	return own
}
