package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var coatLeft = &working.Rule{Formula: "film of the coat, less what later sanding and polishing take of it, the uppermost film first",
	Source: source.Ref{Document: &source.House, Place: "film budget"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "F", Meaning: "film left of the coat", Scale: unit.InMicrometre, Min: 0, Max: 1e6}, IsProse: true}

// keep works out what stays on the boat of each coat.
func (m *maker) keep(steps []Step, area working.Figure[unit.Area]) {
	for i, left := range coatsLeft(steps) {
		s := &steps[i]
		if s.Coat == nil || area.Value == 0 || left.Value < unit.DryFilm(unit.Micrometre) {
			continue
		}
		var q chain.Run
		s.Kept = chain.Do3(&q, film.Kept, area, left, curedDensity(s))
		if q.Err != nil {
			m.refuse(s.Path+".film", q.Err)
		}
	}
}

// coatsLeft gives what is left of the film of each step once all are done.
func coatsLeft(steps []Step) []working.Figure[unit.DryFilm] {
	left := make([]unit.DryFilm, len(steps))
	from := make([][]*working.Step, len(steps))
	for i, s := range steps {
		left[i], from[i] = s.Added.Value, []*working.Step{s.Added.Step}
		rest := s.Taken.Value
		for under := i - 1; under >= 0 && rest > 0; under-- {
			if off := min(rest, left[under]); off > 0 {
				left[under], rest = left[under]-off, rest-off
				from[under] = append(from[under], s.Taken.Step)
			}
		}
	}
	figures := make([]working.Figure[unit.DryFilm], len(steps))
	for i := range steps {
		figures[i] = working.By(coatLeft, left[i], from[i]...)
	}
	return figures
}

// curedDensity is that of the card; where it has none, the density as sold, named
// as such.
func curedDensity(s *Step) working.Figure[unit.Density] {
	if s.Card.CuredDensity.Known {
		return chain.OnCard(s.Card, s.Card.CuredDensity, "density once cured", unit.InKilogramPerLitre)
	}
	return chain.OnCard(s.Card, s.Card.Density, "density as sold, the cured one not being known", unit.InKilogramPerLitre)
}
