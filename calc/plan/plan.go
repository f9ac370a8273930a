package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Plan is what follows from a job, as far as it is asked for.
type Plan struct {
	Job job.Job

	doc     job.Document
	reading *job.Reading
	book    *book
	whole   *whole
}

// whole is what a plan puts together from its answers.
type whole struct {
	plan     *Plan
	buildups []Buildup
	follows  map[string]followed
}

// followed is something that was worked out from a plan, and what for.
type followed struct{ of, value any }

// Once gives what follows from a plan under a name, and from of, whatever else it
// depends on: it is worked out when first asked for, and again only for another
// plan or another of.
func Once[T any, K comparable](p *Plan, name string, of K, work func(*Plan) T) T {
	w := p.whole
	if f, known := w.follows[name]; known && f.of == any(of) {
		return f.value.(T)
	}
	value := work(w.plan)
	if w.follows == nil {
		w.follows = map[string]followed{}
	}
	w.follows[name] = followed{of, value}
	return value
}

// IsEmpty says if nothing was ever planned.
func (p *Plan) IsEmpty() bool { return len(p.Job.Cards) == 0 }

// Lines is the job as it was typed. They must not be changed.
func (p *Plan) Lines() []job.Line { return p.doc.Lines() }

// Make plans the job in the document, as far as it goes.
func Make(d job.Document) Plan { return new(Plan).Next(d) }

// Next plans another document, as Make does. Answers of this plan and of those
// before it are kept, as long as nothing differs that they came from.
func (p *Plan) Next(d job.Document) Plan {
	before, b := p.reading, p.book
	if before == nil {
		before = new(job.Reading)
	}
	if b == nil || len(b.answers) > mostAnswers {
		b = &book{answers: map[string]*answer{}}
	}
	r := before.Next(d)
	next := &Plan{Job: r.Job, doc: d, reading: r, book: b}
	next.whole = &whole{plan: next}
	return *next
}

var (
	sumOfAreas = working.SumRule("area in all", unit.InSquareMetre)
	sumOfEdges = working.SumRule("edge in all", unit.InMetre)
	sumOfKept  = working.SumRule("mass on the boat", unit.InKilogram)
)

// Area is that of all surfaces.
func (p *Plan) Area() working.Figure[unit.Area] {
	return ask(p, "area", func(m *maker) working.Figure[unit.Area] {
		var areas []working.Figure[unit.Area]
		for _, s := range m.plan.Surfaces() {
			if s.Known {
				areas = append(areas, s.Area)
			}
		}
		return working.Sum(sumOfAreas, areas...)
	})
}

// Kept is the mass that stays on the boat.
func (p *Plan) Kept() working.Figure[unit.Mass] {
	return ask(p, "kept", func(m *maker) working.Figure[unit.Mass] {
		var kept []working.Figure[unit.Mass]
		for _, b := range m.plan.Buildups() {
			for _, s := range b.Steps {
				kept = chain.AppendKnown(kept, s.Kept)
			}
		}
		return working.Sum(sumOfKept, kept...)
	})
}
