package plan

import (
	"errors"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Buildup is a build-up on all the surfaces that get it.
type Buildup struct {
	Path     string
	Surfaces []string // names of the surfaces that get it
	Area     working.Figure[unit.Area]
	Edge     working.Figure[unit.Length]
	Steps    []Step
	Left     working.Figure[unit.DryFilm] // film left on top of the ground, fill not counted
	Findings []Finding                    // of the sequence, by step
	Budgets  []Budget                     // as planned, and as measured on surfaces; the thinnest first
}

// Step is a step planned.
type Step struct {
	Job   *job.Step
	Kind  *Kind
	Path  string
	Card  *job.Card // nil: none chosen
	Known bool      // the step's own figures are known; the amounts need an area as well
	Coat  *Coat     // of a coat
	Fill  *Fill     // of a fill
	Sand  *Sanding  // of a run of grades

	Added working.Figure[unit.DryFilm] // what the step adds to the film
	Taken working.Figure[unit.DryFilm] // what it takes
	After unit.DryFilm                 // film on the ground once the step is done
	Kept  working.Figure[unit.Mass]    // mass that stays on the boat
	Cups  Cups                         // what it is mixed in
	Used  []Use                        // materials that it takes, sundries among them

	Leaves   working.Figure[unit.Mass] // of mix: leaves the cups, at the base factors
	FilmOnly unit.Mass                 // of that what the film takes with nothing lost
	Learnt   *job.Learnt               // taken over from the log; nil: nothing
	Progress Progress

	face face
}

// face is what a step leaves for the next one to find.
type face struct {
	isAsBefore bool                         // the face of the step before
	texture    *material.Method             // of a coat as this lays it; nil: none is known
	scratches  working.Figure[unit.DryFilm] // of the last grade; without a step: none are known
}

// faceBelow is the face that the step at hand finds.
func (m *maker) faceBelow() face {
	for i := len(m.below) - 1; i >= 0; i-- {
		if f := m.below[i].face; !f.isAsBefore {
			return f
		}
	}
	return face{}
}

// Use is an amount of one material, in every measure that is known.
type Use struct {
	Name   string // what it is for: "product", "thinner"
	Card   *job.Card
	Grade  sanding.Grade // of an abrasive; else 0
	Mass   working.Figure[unit.Mass]
	Volume working.Figure[unit.Volume]
	Pieces working.Figure[unit.Factor]
	Length working.Figure[unit.Length]
}

// Missing says that a choice has yet to be made or a figure to be typed.
var (
	ErrNoCard  = errors.New("plan: no material chosen")
	ErrMissing = errors.New("plan: not typed yet")
	ErrWrong   = errors.New("plan: this material can't be used for this step")
)

func (m *maker) buildup(b *job.Buildup) Buildup {
	out := Buildup{Path: b.Path}
	var areas []working.Figure[unit.Area]
	var edges []working.Figure[unit.Length]
	for i, s := range m.plan.Job.Surfaces {
		if planned := m.plan.Surfaces[i]; s.Buildup == b.Path && planned.Known {
			out.Surfaces = append(out.Surfaces, s.Name)
			areas = append(areas, planned.Area)
			edges = append(edges, planned.Edge)
		}
	}
	out.Area, out.Edge = working.Sum(sumOfAreas, areas...), working.Sum(sumOfEdges, edges...)
	var film unit.DryFilm
	for i := range b.Steps {
		m.below, m.above = out.Steps, b.Steps[i+1:]
		step := m.step(&b.Steps[i], out.Area, out.Edge)
		film = max(film+step.Added.Value-step.Taken.Value, 0) // the budget says where there is none
		step.After = film
		out.Steps = append(out.Steps, step)
	}
	m.keep(out.Steps, out.Area)
	out.Left = working.By(filmLeft, film, filmSteps(out.Steps)...)
	walked := m.walked(b, out.Steps)
	m.sequence(b, &out, walked)
	m.budget(b, &out, walked)
	return out
}

func filmSteps(steps []Step) []*working.Step {
	var list []*working.Step
	for _, s := range steps {
		if s.Added.Step != nil {
			list = append(list, s.Added.Step)
		}
		if s.Taken.Step != nil {
			list = append(list, s.Taken.Step)
		}
	}
	return list
}

func (m *maker) step(s *job.Step, area working.Figure[unit.Area], edge working.Figure[unit.Length]) Step {
	out := Step{Job: s, Kind: KindOf(s.Kind), Path: s.Path, Card: m.plan.Job.CardByKey(s.Card)}
	out.Kind.reckon(m, &out, area)
	hours, sprayed := len(m.sanding), len(m.spraying)
	m.sundries(&out, area, edge)
	m.progress(&out, area)
	m.restHours(&out, m.sanding[hours:])
	m.restHours(&out, m.spraying[sprayed:])
	for _, use := range out.Used {
		m.need(m.rest(&out, use))
	}
	return out
}

// needsCard says if the step's material is chosen and fits; if not it is
// waited for or refused.
func (m *maker) needsCard(s *Step, fits func(*job.Card) bool) bool {
	switch {
	case s.Job.Card == "":
		m.wait(s.Path+".card", ErrNoCard)
	case s.Card == nil || !fits(s.Card):
		m.refuse(s.Path+".card", ErrWrong)
	default:
		return true
	}
	return false
}
