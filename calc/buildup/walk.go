package buildup

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Terms is what a budget is worked out with besides its steps.
type Terms struct {
	Thin       working.Figure[unit.Share]   // share of the area that may lie below the thin side
	Unfairness working.Figure[unit.DryFilm] // sd of the ground from the plane that the board sands to
}

// The shares that can be chosen: beyond a thousandth the tails of a normal
// distribution say nothing about a film.
const (
	leastShare unit.Share = 0.001
	mostShare  unit.Share = 0.5
)

// ShareError says that a chosen share of the area lies outside 0.001 to 0.5.
type ShareError struct{ Share unit.Share }

// Error names the share.
func (e *ShareError) Error() string {
	return fmt.Sprintf("buildup: chosen share %g outside %g to %g", float64(e.Share), float64(leastShare), float64(mostShare))
}

// Point is the state of the film after something was added or taken.
type Point struct {
	Step     int  // index
	Round    int  // from 1
	IsTaking bool // film was taken, not added
	Mean     working.Figure[unit.DryFilm]
	Thin     working.Figure[unit.DryFilm]
	Through  working.Figure[unit.Share] // where film is taken; without a step elsewhere
	Least    Least                      // that must be left here
}

// isMeanShort says if the mean is short of its least; one below zero always is.
func (p Point) isMeanShort() bool { return p.Mean.Value < p.Least.Mean.Value-filmSlack }

func (p Point) isThinShort() bool {
	return p.Least.Thinnest.Step != nil && p.Thin.Value < p.Least.Thinnest.Value-filmSlack
}

// filmSlack is a film too thin to matter.
const filmSlack = unit.DryFilm(0.01 * unit.Micrometre)

// moment is what has been done to the layer at a point.
type moment struct {
	step, round int
	isTaking    bool
	done        []done
}

// done is how often a step of the layer has added and taken, or the fact that its
// film was measured.
type done struct {
	step, added, taken int
	isFound            bool
}

// moments lists the points of a build-up in order. Sanding where no film lies
// yet, on the ground or on filler, is no point of the budget.
func moments(steps []Step) []moment {
	var list []moment
	var layer []done
	open := false
	point := func(i, n int, isTaking bool, d done) {
		list = append(list, moment{i, n, isTaking, append(layer[:len(layer):len(layer)], d)})
	}
	for i, s := range steps {
		switch {
		case s.Kind == Fill:
			layer, open = nil, false
		case s.Kind == Coat && (s.Film.NewLayer || !open):
			layer, open = nil, true
		}
		if !open {
			continue
		}
		if s.Film.Found.Step != nil {
			layer = nil
			point(i, s.rounds(), s.Film.takes(), done{step: i, isFound: true})
			layer = []done{{step: i, isFound: true}}
			continue
		}
		now := done{step: i}
		for n := 1; n <= s.rounds(); n++ {
			if s.Film.adds() {
				now.added = n
				point(i, n, false, now)
			}
			if s.Film.takes() {
				now.taken = n
				point(i, n, true, now)
			}
		}
		layer = append(layer, now)
	}
	return list
}

// The sums of a budget.
var (
	filmOn     = working.SumRule("film put on", unit.InMicrometre)
	filmOff    = working.SumRule("film taken", unit.InMicrometre)
	onSpreads  = working.SumRule("spread of the film put on", unit.InMicrometre)
	offSpreads = working.SumRule("spread of the film taken", unit.InMicrometre)
)

// totals is the film of a layer at a moment, its parts summed.
type totals struct {
	on, off, onSpread, offSpread working.Figure[unit.DryFilm]
}

// total sums what a moment's steps have done.
func (m moment) total(steps []Step) (t totals, err error) {
	var on, off, spreadOn, spreadOff []working.Figure[unit.DryFilm]
	for _, d := range m.done {
		f := steps[d.step].Film
		if d.isFound {
			f = Film{Adds: f.Found, AddsCV: f.FoundCV}
			d.added, d.taken = 1, 0
		}
		if on, spreadOn, err = part(on, spreadOn, d.added, f.Adds, f.AddsCV); err != nil {
			return t, err
		}
		if off, spreadOff, err = part(off, spreadOff, d.taken, f.Takes, f.TakesCV); err != nil {
			return t, err
		}
	}
	return totals{working.Sum(filmOn, on...), working.Sum(filmOff, off...),
		working.Sum(onSpreads, spreadOn...), working.Sum(offSpreads, spreadOff...)}, nil
}

// part adds a step's film and spread over its rounds to the lists.
func part(films, spreads []working.Figure[unit.DryFilm], times int, film working.Figure[unit.DryFilm], cv working.Figure[unit.Share]) (f, s []working.Figure[unit.DryFilm], err error) {
	if times == 0 {
		return films, spreads, nil
	}
	if times > 1 {
		n := working.Given(unit.Factor(times), "rounds", unit.InPure, "", source.Typed)
		if film, err = Rounds.Figure(n, film); err != nil {
			return nil, nil, err
		}
	}
	spread, err := StepSpread.Figure(cv, film)
	return append(films, film), append(spreads, spread), err
}

// Walk follows the film through the steps, from the substrate up.
// Errors: *StepError, *ShareError.
func Walk(steps []Step, terms Terms) ([]Point, error) {
	if err := checkSteps(steps); err != nil {
		return nil, err
	}
	z, err := deviate(terms.Thin)
	if err != nil {
		return nil, err
	}
	var points []Point
	for _, m := range moments(steps) {
		p, err := m.point(steps, z, terms.Unfairness)
		if err != nil {
			return nil, outOfRange(m.step, err)
		}
		points = append(points, p)
	}
	return points, nil
}

func (m moment) point(steps []Step, z working.Figure[unit.Factor], unfairness working.Figure[unit.DryFilm]) (p Point, err error) {
	p = Point{Step: m.step, Round: m.round, IsTaking: m.isTaking, Least: m.least(steps)}
	t, err := m.total(steps)
	if err != nil {
		return p, err
	}
	if p.Mean, err = Left.Figure(t.on, t.off); err != nil {
		return p, err
	}
	sigma, err := Spread.Figure(t.onSpread, t.offSpread, unfairness)
	if err != nil {
		return p, err
	}
	if p.Thin, err = ThinSide.Figure(p.Mean, z, sigma); err != nil || !m.isTaking {
		return p, err
	}
	p.Through, err = Through.Figure(t.off, toGround, t.on, sigma)
	return p, err
}

var toGround = working.Given(unit.DryFilm(0), "least film left", unit.InMicrometre, "down to what lies below", source.Exact)

// least is what must be left at the moment: a step that takes must leave it
// each time it has taken, any other once it is on.
func (m moment) least(steps []Step) Least {
	f := steps[m.step].Film
	if f.takes() && !m.isTaking {
		return Least{}
	}
	return f.Least
}
