package plan

import (
	"errors"
	"slices"

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

	plan *Plan
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
	Learnt   *job.Learnt               // adopted from the log; nil: nothing
	Progress Progress

	face            face
	sanded, sprayed []working.Figure[unit.Time] // dry, at the gun: the hours that are left
}

// face is the surface that a step leaves for the next one.
type face struct {
	isAsBefore bool                         // the face of the step before
	texture    *material.Method             // of a coat as this lays it; nil: none is known
	scratches  working.Figure[unit.DryFilm] // of the last grade; without a step: none are known
}

// faceBelow is the face that the current step finds.
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

// Why a step can't be planned yet.
var (
	ErrNoCard  = errors.New("plan: no material chosen")
	ErrMissing = errors.New("plan: not typed yet")
	ErrWrong   = errors.New("plan: this material can't be used for this step")
)

// Buildups is the build-ups planned, in their order.
func (p *Plan) Buildups() []Buildup {
	list := ask(p, "build-ups", func(m *maker) []Buildup {
		var list []Buildup
		for _, b := range m.job("buildup").Buildups {
			list = append(list, m.plan.amounts(b.Path))
		}
		return list
	})
	if p.whole.buildups == nil {
		for _, b := range list {
			b.plan = p.whole.plan
			p.whole.buildups = append(p.whole.buildups, b)
		}
	}
	return p.whole.buildups
}

// Films is a build-up without what its steps take over their area; a zero one
// where there is none.
func (p *Plan) Films(path string) Buildup {
	for i := range p.Job.Buildups {
		if p.Job.Buildups[i].Path == path {
			return Buildup{Path: path, Steps: p.layers(path), plan: p.whole.plan}
		}
	}
	return Buildup{}
}

// typedBuildup finds a build-up as it was typed; an empty one: there is none.
func (m *maker) typedBuildup(path string) *job.Buildup {
	list := m.job(path).Buildups
	for i := range list {
		if list[i].Path == path {
			return &list[i]
		}
	}
	return &job.Buildup{Path: path}
}

// layers is a build-up's steps with their films, whatever area they go over.
func (p *Plan) layers(path string) []Step {
	return ask(p, "layers of "+path, func(m *maker) []Step {
		b := m.typedBuildup(path)
		var film unit.DryFilm
		for i := range b.Steps {
			s := &b.Steps[i]
			m.above = b.Steps[i+1:]
			out := Step{Job: s, Kind: KindOf(s.Kind), Path: s.Path, Card: m.card(s.Card)}
			out.Kind.films(m, &out)
			film = max(film+out.Added.Value-out.Taken.Value, 0) // the budget says where there is none
			out.After = film
			m.below = append(m.below, out)
		}
		return m.below
	})
}

// amounts is a build-up on all the surfaces that get it.
func (p *Plan) amounts(path string) Buildup {
	return ask(p, path, func(m *maker) Buildup {
		out := Buildup{Path: path}
		var areas []working.Figure[unit.Area]
		var edges []working.Figure[unit.Length]
		on := m.typedOn(path)
		for _, s := range on {
			if planned := m.plan.measured(s); planned.Known {
				m.look(s.Path)
				out.Surfaces = append(out.Surfaces, s.Name)
				areas = append(areas, planned.Area)
				edges = append(edges, planned.Edge)
			}
		}
		out.Area, out.Edge = working.Sum(sumOfAreas, areas...), working.Sum(sumOfEdges, edges...)
		for _, step := range m.plan.layers(path) {
			step.detach()
			m.step(&step, on, out.Area, out.Edge)
			m.below = append(m.below, step)
		}
		out.Steps = m.below
		m.keep(out.Steps, out.Area)
		var film unit.DryFilm
		if n := len(out.Steps); n > 0 {
			film = out.Steps[n-1].After
		}
		out.Left = working.By(filmLeft, film, filmSteps(out.Steps)...)
		return out
	})
}

// detach copies what the amounts of a step are written into.
func (s *Step) detach() {
	if s.Coat != nil {
		c := *s.Coat
		s.Coat = &c
	}
	if s.Fill != nil {
		f := *s.Fill
		s.Fill = &f
	}
	if s.Sand != nil {
		r := *s.Sand
		r.Stages = slices.Clone(r.Stages)
		s.Sand = &r
	}
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

func (m *maker) step(s *Step, on []*job.Surface, area working.Figure[unit.Area], edge working.Figure[unit.Length]) {
	if s.Kind.amounts != nil {
		s.Kind.amounts(m, s, area)
	}
	m.sundries(s, area, edge)
	workLeft{m}.progress(s, on, area)
	workLeft{m}.restHours(s, s.sanded)
	workLeft{m}.restHours(s, s.sprayed)
}

// needsCard says if the step's material is chosen and fits; if not, it is waited
// for or refused.
func (m *maker) needsCard(s *Step, fits func(*job.Card) bool) bool {
	switch {
	case s.Job.Card == "":
		m.wait(s.Path+".card", ErrNoCard)
	case s.Card == nil || !fits(s.Card):
		m.refuse(s.Path+".card", ErrWrong)
	case s.Card.Unread != "": // the figure that ships can't replace a refused one: the card says so
	default:
		return true
	}
	return false
}
