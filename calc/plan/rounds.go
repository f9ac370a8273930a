package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	areaOfRounds = working.Of2("a = A × g", source.Geometry.At("repeated area"), source.Exact,
		working.In("a", "area coated over all goes", unit.InSquareMetre, 0, 1e6),
		[]working.Arg{working.In("A", "area", unit.InSquareMetre, 0, 1e5), working.In("g", "goes", unit.InPure, 1, 50)},
		func(a unit.Area, n unit.Factor) unit.Area { return a * unit.Area(n) })

	coatsOfRounds = working.Of2("N = n × g", source.Geometry.At("equal goes"), source.Exact,
		working.In("N", "coats over all goes", unit.InPure, 1, 2500),
		[]working.Arg{working.In("n", "coats in one go", unit.InPure, 1, 50), working.In("g", "goes", unit.InPure, 1, 50)},
		func(n, goes unit.Factor) unit.Factor { return n * goes })

	filmOfRounds = working.Of3("F = g × (f − r)", source.Geometry.At("equal goes"), source.Exact,
		working.In("F", "film added by all goes", unit.InMicrometre, 0, 1e6),
		[]working.Arg{
			working.In("g", "goes", unit.InPure, 1, 50),
			working.In("f", "film put on in one go", unit.InMicrometre, 0, 1e5),
			working.In("r", "sanded back after each go", unit.InMicrometre, 0, 1e5),
		},
		func(n unit.Factor, f, r unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * (f - r) })
)

// GoTakesError says that each go is sanded back by more than it puts on.
type GoTakesError struct{ Takes, Adds unit.DryFilm }

// Error names both films.
func (e *GoTakesError) Error() string {
	return "plan: each go takes " + unit.Write(float64(e.Takes), unit.InMicrometre, 3) + " of " + unit.Write(float64(e.Adds), unit.InMicrometre, 3)
}

// goes works out what a coat comes to that is done several times, sanded back
// in between: the film it adds, and its coats. False: it is refused.
func (m coater) goes(s *Step, c *Coat) bool {
	s.Added, c.AllCoats = c.Cured, c.Coats
	n, takes := s.Job.Rounds, s.Job.GoTakes
	if takes.Value > c.Cured.Value {
		m.refuse(s.Path+".go-takes", &GoTakesError{takes.Value, c.Cured.Value})
		return false
	}
	if n.Step == nil && takes.Step == nil {
		return true
	}
	field := ".goes"
	if n.Step == nil {
		n, field = inOneGo, ".film"
	}
	if takes.Step == nil {
		takes = nothingTaken
	}
	var q chain.Run
	s.Added = chain.Do3(&q, filmOfRounds, n, c.Cured, takes)
	c.AllCoats = chain.Do2(&q, coatsOfRounds, c.Coats, n)
	if q.Err != nil {
		m.refuse(s.Path+field, q.Err)
	}
	return q.Err == nil
}

// overRounds is the area that a coat goes over, each time counted.
func overRounds(q *chain.Run, s *job.Step, area working.Figure[unit.Area]) working.Figure[unit.Area] {
	n := s.Rounds
	switch {
	case n.Step == nil && s.GoTakes.Step == nil:
		return area
	case n.Step == nil:
		n = inOneGo
	}
	return chain.Do2(q, areaOfRounds, area, n)
}

var (
	inOneGo      = working.Given(unit.Factor(1), "goes", unit.InPure, "not typed", source.Assumption)
	nothingTaken = working.Given(unit.DryFilm(0), "sanded back after each go", unit.InMicrometre, "not typed", source.Assumption)
)
