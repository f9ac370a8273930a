package plan

import (
	"slices"
	"strings"

	"shedreckoner/calc/job"
)

// The notes of a plan beside its figures. Each question keeps its own, so that
// asking about a path works out no more than what is there.

// Unreadable is what can't be read as it was typed, and measures from which no
// surface can be worked out.
func (p *Plan) Unreadable() []job.Problem {
	list := slices.Clone(p.reading.Problems)
	for _, n := range (noteReader{p}).at("surface") {
		list = append(list, n.refused...)
	}
	return list
}

// Refused is all that is wrong as typed.
func (p *Plan) Refused() []job.Problem {
	return Once(p, "refused", 0, func(p *Plan) []job.Problem {
		list := slices.Clone(p.reading.Problems)
		for _, n := range (noteReader{p}).all() {
			list = append(list, n.refused...)
		}
		return list
	})
}

// Waiting is all that has yet to be typed.
func (p *Plan) Waiting() []job.Problem {
	return Once(p, "waiting", 0, func(p *Plan) []job.Problem {
		var list []job.Problem
		for _, n := range (noteReader{p}).all() {
			list = append(list, n.waiting...)
		}
		return list
	})
}

// Asks is all that is unlikely but accepted.
func (p *Plan) Asks() []Ask {
	return Once(p, "asks", 0, func(p *Plan) []Ask {
		var list []Ask
		for _, n := range (noteReader{p}).all() {
			list = append(list, n.asks...)
		}
		return list
	})
}

// RefusedAt gives why the text at the path is refused; nil: it isn't.
func (p *Plan) RefusedAt(path string) error {
	if err := at(p.reading.Problems, path); err != nil {
		return err
	}
	for _, n := range (noteReader{p}).at(path) {
		if err := at(n.refused, path); err != nil {
			return err
		}
	}
	return nil
}

// WaitingAt gives what the path still waits for; nil: nothing.
func (p *Plan) WaitingAt(path string) error {
	for _, n := range (noteReader{p}).at(path) {
		if err := at(n.waiting, path); err != nil {
			return err
		}
	}
	return nil
}

// WaitingIn lists what the fields of an item wait for.
func (p *Plan) WaitingIn(item string) []job.Problem {
	_, waiting := noteReader{p}.problemsIn(item)
	return waiting
}

// noteReader gathers the notes of a plan by the path that they are about.
type noteReader struct{ *Plan }

// problemsIn lists what of an item is refused, and what it waits for.
func (p noteReader) problemsIn(item string) (refused, waiting []job.Problem) {
	in := func(list, from []job.Problem) []job.Problem {
		for _, problem := range from {
			if job.IsAtOrUnder(problem.Path, item) {
				list = append(list, problem)
			}
		}
		return list
	}
	refused = in(nil, p.reading.Problems)
	for _, n := range p.at(item) {
		refused, waiting = in(refused, n.refused), in(waiting, n.waiting)
	}
	return refused, waiting
}

// AskAt gives the question about the figure at the path; nil: none.
func (p *Plan) AskAt(path string) *Ask {
	for _, n := range (noteReader{p}).at(path) {
		for i := range n.asks {
			if n.asks[i].Path == path {
				return &n.asks[i]
			}
		}
	}
	return nil
}

func at(list []job.Problem, path string) error {
	for _, p := range list {
		if p.Path == path {
			return p.Err
		}
	}
	return nil
}

// parts is where the parts of a job begin, in the order in which they are planned.
var parts = []string{"surface", "removal", "cup", "putty", "buildup", "card", "bench", "test"}

// all is all that there is to say.
func (p noteReader) all() []*notes {
	var list []*notes
	for _, head := range parts {
		list = append(list, p.at(head)...)
	}
	return list
}

// at is what there is to say of a path and of what lies under it, and
// perhaps of more.
func (p noteReader) at(path string) []*notes {
	part := job.PartOf(path)
	head, id, _ := strings.Cut(part, ".")
	switch head {
	case "surface":
		return p.atSurfaces(id)
	case "removal":
		p.removals()
		return p.book.notesOf("removals")
	case "cup":
		p.log()
		return p.book.notesOf("log")
	case "putty":
		p.Putties()
		return p.book.notesOf("putties")
	case "buildup":
		return p.atBuildups(id)
	case "card", "shop":
		p.Needs()
		typedCards(p.Plan)
		return append(p.book.notesOf("needs"), p.book.notesOf("cards")...)
	case "bench":
		jumps(p.Plan)
		return p.book.notesOf("jumps")
	case "test":
		typedTests(p.Plan)
		return p.book.notesOf("tests")
	}
	return nil
}

// atSurfaces is what there is to say of a surface; without an id, of all.
func (p noteReader) atSurfaces(id string) (list []*notes) {
	path := "surface." + id
	for _, s := range p.Job.Surfaces {
		if id == "" || s.Path == path {
			p.measured(s)
			list = append(list, p.book.notesOf(s.Path)...)
		}
	}
	return list
}

func (p noteReader) atBuildups(id string) (list []*notes) {
	for i := range p.Job.Buildups {
		if b := &p.Job.Buildups[i]; id == "" || b.Path == "buildup."+id {
			p.layers(b.Path)
			p.amounts(b.Path)
			p.budgets(b.Path)
			list = append(list, p.book.notesOf("layers of "+b.Path)...)
			list = append(list, p.book.notesOf(b.Path)...)
			list = append(list, p.book.notesOf("budgets of "+b.Path)...)
		}
	}
	return list
}
