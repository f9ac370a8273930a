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
		working.In("a", "area coated in all rounds", unit.InSquareMetre, 0, 1e6),
		[]working.Arg{working.In("A", "area", unit.InSquareMetre, 0, 1e5), working.In("g", "rounds", unit.InPure, 1, 50)},
		func(a unit.Area, n unit.Factor) unit.Area { return a * unit.Area(n) })

	coatsOfRounds = working.Of2("N = n × g", source.Geometry.At("equal rounds"), source.Exact,
		working.In("N", "coats in all rounds", unit.InPure, 1, 2500),
		[]working.Arg{working.In("n", "coats in one round", unit.InPure, 1, 50), working.In("g", "rounds", unit.InPure, 1, 50)},
		func(n, rounds unit.Factor) unit.Factor { return n * rounds })

	filmOfRounds = working.Of3("F = g × (f − r)", source.Geometry.At("equal rounds"), source.Exact,
		working.In("F", "film added by all rounds", unit.InMicrometre, 0, 1e6),
		[]working.Arg{
			working.In("g", "rounds", unit.InPure, 1, 50),
			working.In("f", "film put on in one round", unit.InMicrometre, 0, 1e5),
			working.In("r", "sanded back after each round", unit.InMicrometre, 0, 1e5),
		},
		func(n unit.Factor, f, r unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * (f - r) })
)

// RoundTakesError says that each round is sanded back by more than it puts on.
type RoundTakesError struct{ Takes, Adds unit.DryFilm }

// Error names both films.
func (e *RoundTakesError) Error() string {
	return "plan: each round takes " + unit.Write(float64(e.Takes), unit.InMicrometre, 3) + " of " + unit.Write(float64(e.Adds), unit.InMicrometre, 3)
}

// rounds works out what a coat comes to that is done several times, sanded back
// in between: the film it adds, and its coats. False: it is refused.
func (m coater) rounds(s *Step, c *Coat) bool {
	s.Added, c.AllCoats = c.Cured, c.Coats
	n, takes := roundsOf(s.Job), s.Job.RoundTakes
	if takes.Value > c.Cured.Value {
		m.refuse(s.Path+".go-takes", &RoundTakesError{takes.Value, c.Cured.Value})
		return false
	}
	if s.Job.Rounds.Step == nil && takes.Step == nil {
		return true
	}
	field := ".goes"
	if s.Job.Rounds.Step == nil {
		field = ".film"
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
	if s.Rounds.Step == nil && s.RoundTakes.Step == nil {
		return area
	}
	return chain.Do2(q, areaOfRounds, area, roundsOf(s))
}

// roundsOf is how many rounds a coat is done in: as typed, or one.
func roundsOf(s *job.Step) working.Figure[unit.Factor] {
	if s.Rounds.Step != nil {
		return s.Rounds
	}
	return oneRound
}

var (
	oneRound     = working.Given(unit.Factor(1), "rounds", unit.InPure, "not typed", source.Assumption)
	nothingTaken = working.Given(unit.DryFilm(0), "sanded back after each round", unit.InMicrometre, "not typed", source.Assumption)
)
