package plan

import (
	"slices"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Grades gives for each run of grades the one with which it can still begin: the
// coarsest after which the thin side keeps its least. It is worked out when asked
// for.
func (w *Budget) Grades() []Affordable {
	var list []Affordable
	for i := range w.steps {
		r := w.steps[i].Sand
		before, ok := filmBefore(w.Flat, i)
		if r == nil || !ok || w.walked[i].Film.Found.Step != nil {
			continue
		}
		alone, err := sanding.Runs(r.turns, r.k, r.Flatten)
		if err != nil {
			continue
		}
		whole, err := sanding.Runs(r.turns, r.k, r.Flatten, w.polishAfter(i+1)...)
		if err != nil {
			continue
		}
		a := Affordable{Step: i, Left: before.Thin}
		for at := range r.turns {
			if keepsThinSide(w.walked, i, alone[at], w.terms) {
				a.Grade, a.Takes, a.OK = r.turns[at].Grade, whole[at], true
				break
			}
		}
		list = append(list, a)
	}
	return list
}

// keepsThinSide says if the thin side keeps its least to the end of the layer when
// a step takes the given film.
func keepsThinSide(walked []buildup.Step, at int, takes working.Figure[unit.DryFilm], terms buildup.Terms) bool {
	steps := slices.Clone(walked)
	steps[at].Film.Takes = takes
	end := len(steps)
	for i := at + 1; i < len(steps); i++ {
		if steps[i].Kind == buildup.Coat || steps[i].Kind == buildup.Fill {
			end = i
			break
		}
	}
	points, err := buildup.Walk(steps[:end], terms)
	if err != nil {
		return false
	}
	least := leastAfter(steps[at:end])
	for _, p := range points {
		if p.Step >= at && p.Thin.Value < least {
			return false
		}
	}
	return true
}

// filmBefore is the film as a step finds it.
func filmBefore(points []buildup.Point, step int) (last buildup.Point, ok bool) {
	for _, p := range points {
		if p.Step >= step {
			break
		}
		last, ok = p, true
	}
	return last, ok
}

// polishAfter is the films of the polishing that follows, from a step on.
func (w *Budget) polishAfter(from int) []working.Figure[unit.DryFilm] {
	var list []working.Figure[unit.DryFilm]
	for i := from; i < len(w.steps) && w.walked[i].Kind == buildup.Polish && w.steps[i].Card != nil; i++ {
		card := w.steps[i].Card
		list = append(list, chain.OnCard(card, card.Takes, "least film that it takes", unit.InMicrometre))
	}
	return list
}

// leastAfter is the thinnest film that may be left by what follows in the layer.
func leastAfter(steps []buildup.Step) unit.DryFilm {
	for i, s := range steps {
		if i > 0 && (s.Kind == buildup.Coat || s.Kind == buildup.Fill) {
			break
		}
		if s.Film.Least.Thinnest.Step != nil {
			return s.Film.Least.Thinnest.Value
		}
	}
	return 0
}
