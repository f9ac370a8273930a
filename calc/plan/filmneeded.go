package plan

import (
	"errors"
	"slices"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// FilmNeed is the film that a coat has to add for the budget to hold.
type FilmNeed struct {
	Step  int                          // index
	Cured working.Figure[unit.DryFilm] // each round
	Wet   working.Figure[unit.WetFilm]
	Coats working.Figure[unit.Factor]
	By    int                          // index of the step that asks for it
	Thin  bool                         // for the thin side's sake
	Over  working.Figure[unit.DryFilm] // the card's most that may be left, where the need leaves more

	Uneven *buildup.TooUnevenError // no film is enough
}

// Needs is the film that coats have to add for the budget to hold as planned,
// worked out when asked for.
func (b *Buildup) Needs() []FilmNeed {
	budgets := b.Budgets()
	for i := range budgets {
		if w := &budgets[i]; w.Surface == "" {
			return w.needs()
		}
	}
	return nil
}

// needs solves the build-up backwards for each of its coats.
func (w *Budget) needs() []FilmNeed {
	steps, terms := w.walked, w.terms
	var list []FilmNeed
	for i := range steps {
		if steps[i].Kind != buildup.Coat || steps[i].Film.Adds.Step == nil || steps[i].Film.Found.Step != nil {
			continue
		}
		need, err := buildup.Needed(steps, i, terms)
		n := FilmNeed{Step: i, Cured: need.Film, By: need.By, Thin: need.IsThin}
		switch {
		case errors.As(err, &n.Uneven):
		case err != nil || need.Film.Value <= 0:
			continue
		default:
			n.inCoats(&w.steps[i])
			n.cracks(steps, &w.steps[i], terms)
		}
		list = append(list, n)
	}
	return list
}

func (n *FilmNeed) inCoats(s *Step) {
	var q chain.Run
	n.Wet = chain.Do2(&q, film.Wet, n.Cured, s.Coat.CuredShare)
	if s.Card.CoatMost.Known {
		n.Coats = chain.Do2(&q, film.CoatCount, n.Wet, chain.OnCard(s.Card, s.Card.CoatMost, "largest wet film in one coat", unit.InMicrometre))
	}
}

// cracks checks if the film that the budget needs would be left too thick.
func (n *FilmNeed) cracks(steps []buildup.Step, s *Step, terms buildup.Terms) {
	steps = slices.Clone(steps)
	steps[n.Step].Film.Adds = n.Cured
	points, err := buildup.Walk(steps, terms)
	if err != nil {
		return
	}
	for _, f := range buildup.Shortfalls(steps, points, terms) {
		if f.Rule == buildup.CrackLimit && s.Card.LeftMost.Known {
			n.Over = chain.OnCard(s.Card, s.Card.LeftMost, "most film left", unit.InMicrometre)
		}
	}
}
