package plan

import (
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Plan is everything that follows from a job.
type Plan struct {
	Job      job.Job
	Surfaces []Surface
	Buildups []Buildup
	Needs    []Need // of what is left to do, by material
	Removals []Removal
	Putties  []Putty
	Area     working.Figure[unit.Area] // of all surfaces
	Kept     working.Figure[unit.Mass] // what stays on the boat

	Refused []job.Problem // wrong as typed
	Waiting []job.Problem // yet to be typed
	Asks    []Ask         // taken, but unlikely

	log      logged
	doc      job.Document
	reading  *job.Reading
	measured []measured // by surface
}

// IsEmpty says if nothing was ever planned.
func (p *Plan) IsEmpty() bool { return len(p.Job.Cards) == 0 }

// RefusedAt gives why the text at the path is refused; nil: it isn't.
func (p *Plan) RefusedAt(path string) error { return at(p.Refused, path) }

// WaitingAt gives what the path still waits for; nil: nothing.
func (p *Plan) WaitingAt(path string) error { return at(p.Waiting, path) }

func at(list []job.Problem, path string) error {
	for _, p := range list {
		if p.Path == path {
			return p.Err
		}
	}
	return nil
}

// AskAt gives the question about the figure at the path; nil: none.
func (p *Plan) AskAt(path string) *Ask {
	for i := range p.Asks {
		if p.Asks[i].Path == path {
			return &p.Asks[i]
		}
	}
	return nil
}

// Make plans the job in the document, as far as it goes.
func Make(d job.Document) Plan { return new(Plan).Next(d) }

// Next plans another document, as Make does. It is quick where the document is
// much like this plan's: what was read and measured then is taken over as far as
// nothing differs that it came from. The two plans share it.
func (p *Plan) Next(d job.Document) Plan {
	if p.reading == nil {
		p = &Plan{reading: new(job.Reading)}
	}
	r := p.reading.Next(d)
	m := &maker{plan: Plan{Job: r.Job, Refused: slices.Clone(r.Problems), doc: d, reading: r}, before: p, doc: d}
	m.surfaces()
	m.removals()
	m.readLog()
	m.putties()
	for i := range m.plan.Job.Buildups {
		m.plan.Buildups = append(m.plan.Buildups, m.buildup(&m.plan.Job.Buildups[i]))
	}
	m.totals()
	m.once()
	m.askJumps()
	m.askTyped()
	return m.plan
}

// maker makes one plan.
type maker struct {
	plan     Plan
	before   *Plan
	doc      job.Document
	sanding  []working.Figure[unit.Time] // of all steps
	spraying []working.Figure[unit.Time]
	below    []Step                                         // the steps before the one that is planned
	above    []job.Step                                     // the steps after it
	own      map[sanding.Grade]working.Figure[unit.DryFilm] // the builder's own removals
}

func (m *maker) refuse(path string, err error) {
	m.plan.Refused = append(m.plan.Refused, job.Problem{Path: path, Err: err})
}

func (m *maker) wait(path string, err error) {
	m.plan.Waiting = append(m.plan.Waiting, job.Problem{Path: path, Err: err})
}

var (
	sumOfAreas  = working.SumRule("area in all", unit.InSquareMetre)
	sumOfEdges  = working.SumRule("edge in all", unit.InMetre)
	sumOfKept   = working.SumRule("mass on the boat", unit.InKilogram)
	sumOfMass   = working.SumRule("need", unit.InKilogram)
	sumOfVolume = working.SumRule("need", unit.InLitre)
	sumOfLength = working.SumRule("need", unit.InMetre)
	sumOfPieces = working.SumRule("need", unit.InPure)
)

func (m *maker) totals() {
	var areas []working.Figure[unit.Area]
	for _, s := range m.plan.Surfaces {
		if s.Known {
			areas = append(areas, s.Area)
		}
	}
	m.plan.Area = working.Sum(sumOfAreas, areas...)
	var kept []working.Figure[unit.Mass]
	for _, b := range m.plan.Buildups {
		for _, s := range b.Steps {
			if s.Kept.Step != nil {
				kept = append(kept, s.Kept)
			}
		}
	}
	m.plan.Kept = working.Sum(sumOfKept, kept...)
}
