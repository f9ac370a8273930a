package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	areaOfRounds = working.Rule2[unit.Area, unit.Factor, unit.Area]{Rule: &working.Rule{Formula: "a = A × g", Source: source.Ref{Document: &source.Geometry, Place: "repeated area"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "a", Meaning: "area coated in all rounds", Scale: unit.InSquareMetre, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5}, {Symbol: "g", Meaning: "rounds", Scale: unit.InPure, Min: 1, Max: 50}}},
		Code: func(a unit.Area, n unit.Factor) unit.Area { return a * unit.Area(n) }}

	coatsOfRounds = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "N = n × g", Source: source.Ref{Document: &source.Geometry, Place: "equal rounds"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "N", Meaning: "coats in all rounds", Scale: unit.InPure, Min: 1, Max: 2500},
		Args:   []working.Arg{{Symbol: "n", Meaning: "coats in one round", Scale: unit.InPure, Min: 1, Max: 50}, {Symbol: "g", Meaning: "rounds", Scale: unit.InPure, Min: 1, Max: 50}}},
		Code: func(n, rounds unit.Factor) unit.Factor { return n * rounds }}

	filmOfRounds = working.Rule3[unit.Factor, unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "F = g × (f − r)", Source: source.Ref{Document: &source.Geometry, Place: "equal rounds"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "F", Meaning: "film added by all rounds", Scale: unit.InMicrometre, Min: 0, Max: 1e6},
		Args: []working.Arg{
			{Symbol: "g", Meaning: "rounds", Scale: unit.InPure, Min: 1, Max: 50},
			{Symbol: "f", Meaning: "film put on in one round", Scale: unit.InMicrometre, Min: 0, Max: 1e5},
			{Symbol: "r", Meaning: "sanded back after each round", Scale: unit.InMicrometre, Min: 0, Max: 1e5},
		}},
		Code: func(n unit.Factor, f, r unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * (f - r) }}
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
