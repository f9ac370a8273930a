package plan

import (
	"math"
	"slices"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// What goes with the materials. All of it is common practice: how much of it
// one shed uses differs widely.
var (
	piecesOf = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "P = n × p", Source: source.Ref{Document: &source.Practice, Place: "sundries"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "P", Meaning: "pieces", Scale: unit.InPure, Min: 0, Max: 1e10},
		Args:   []working.Arg{{Symbol: "n", Meaning: "cups or spells", Scale: unit.InPure, Min: 0, Max: 1e9}, {Symbol: "p", Meaning: "pieces for each", Scale: unit.InPure, Min: 0, Max: 10}}},
		Code: func(n, each unit.Factor) unit.Factor { return n * each }}

	piecesOfHours = working.Rule2[unit.Time, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "P = t × p", Source: source.Ref{Document: &source.Practice, Place: "sundries"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "P", Meaning: "pieces", Scale: unit.InPure, Min: 0, Max: 1e8},
		Args:   []working.Arg{{Symbol: "t", Meaning: "hours of wet sanding", Scale: unit.InHour, Min: 0, Max: 1e6}, {Symbol: "p", Meaning: "pieces for each hour", Scale: unit.InPure, Min: 0, Max: 10}}},
		Code: func(t unit.Time, each unit.Factor) unit.Factor { return unit.Factor(t/unit.Hour) * each }}

	piecesWorn = working.Rule2[unit.Time, unit.Time, unit.Factor]{Rule: &working.Rule{Formula: "P = ceil(t ÷ d − 0.000000001)", Source: source.Ref{Document: &source.Practice, Place: "sundries"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "P", Meaning: "pieces", Scale: unit.InPure, Min: 0, Max: 1e8},
		Args:   []working.Arg{{Symbol: "t", Meaning: "hours of work", Scale: unit.InHour, Min: 0, Max: 1e6}, {Symbol: "d", Meaning: "hours that one lasts", Scale: unit.InHour, Min: 0.5, Max: 1000}}},
		Code: func(t, lasts unit.Time) unit.Factor { return unit.Factor(math.Ceil(float64(t/lasts) - 1e-9)) }}

	alongEdge = working.Rule3[unit.Length, unit.Factor, unit.Factor, unit.Length]{Rule: &working.Rule{Formula: "T = E × k × g", Source: source.Ref{Document: &source.Practice, Place: "edge masked afresh for every session"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "T", Meaning: "for one coat step", Scale: unit.InMetre, Min: 0, Max: 1e8},
		Args: []working.Arg{
			{Symbol: "E", Meaning: "edge in all", Scale: unit.InMetre, Min: 0, Max: 1e5}, {Symbol: "k", Meaning: "bought for each one needed", Scale: unit.InPure, Min: 1, Max: 3},
			{Symbol: "g", Meaning: "sessions: times coated and sanded back", Scale: unit.InPure, Min: 1, Max: 50},
		}},
		Code: func(edge unit.Length, spare, sessions unit.Factor) unit.Length {
			return edge * unit.Length(spare) * unit.Length(sessions)
		}}

	overCoat = working.Rule2[unit.Area, unit.WetFilm, unit.Volume]{Rule: &working.Rule{Formula: "V = A × f ÷ 1000", Source: source.Ref{Document: &source.Geometry, Place: "film over an area"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "over the coat", Scale: unit.InLitre, Min: 0, Max: 1e7},
		Args:   []working.Arg{{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e6}, {Symbol: "f", Meaning: "wet film", Scale: unit.InMicrometre, Min: 1, Max: 1000}}},
		Code: func(a unit.Area, f unit.WetFilm) unit.Volume { return unit.Volume(float64(a) * float64(f)) }}

	massWithSpare = working.Rule2[unit.Mass, unit.Factor, unit.Mass]{Rule: &working.Rule{Formula: "m_b = m × k", Source: source.Ref{Document: &source.Practice, Place: "test cups and what stays in the bottle"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "m_b", Meaning: "in the bottle", Scale: unit.InKilogram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "m", Meaning: "doses", Scale: unit.InKilogram, Min: 0, Max: 1e5}, {Symbol: "k", Meaning: "bought for each one needed", Scale: unit.InPure, Min: 1, Max: 3}}},
		Code: func(m unit.Mass, spare unit.Factor) unit.Mass { return m * unit.Mass(spare) }}

	forCleaning = working.Rule2[unit.Factor, unit.Volume, unit.Volume]{Rule: &working.Rule{Formula: "V = n × w", Source: source.Ref{Document: &source.Practice, Place: "cleaning solvent"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "V", Meaning: "for cleaning", Scale: unit.InLitre, Min: 0, Max: 1e10},
		Args:   []working.Arg{{Symbol: "n", Meaning: "spells", Scale: unit.InPure, Min: 0, Max: 1e9}, {Symbol: "w", Meaning: "solvent each time", Scale: unit.InLitre, Min: 0, Max: 5}}},
		Code: func(n unit.Factor, each unit.Volume) unit.Volume { return unit.Volume(n) * each }}

	sprayTime = working.Rule3[unit.Area, unit.Factor, unit.SpreadingSpeed, unit.Time]{Rule: &working.Rule{Formula: "t = A × n ÷ v", Source: source.Ref{Document: &source.Geometry, Place: "definition of speed"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "t", Meaning: "time at the gun", Scale: unit.InMinute, Min: 0, Max: 1e9},
		Args: []working.Arg{
			{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
			{Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 50},
			{Symbol: "v", Meaning: "spreading speed", Scale: unit.InSquareMetrePerMinute, Min: 0.005, Max: 5},
		}},
		Code: func(a unit.Area, n unit.Factor, v unit.SpreadingSpeed) unit.Time {
			return unit.Time(float64(a) * float64(n) / float64(v))
		}}

	betweenPasses = working.Rule1[unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "n = p − 1", Source: source.Ref{Document: &source.House, Place: "the run of grades that follows sands the last"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "n", Meaning: "passes sanded before the last", Scale: unit.InPure, Min: 0, Max: 1000},
		Args:   []working.Arg{{Symbol: "p", Meaning: "passes", Scale: unit.InPure, Min: 1, Max: 1000}}},
		Code: func(passes unit.Factor) unit.Factor { return passes - 1 }}

	sandingSum  = working.SumRule("hours of dry sanding", unit.InHour)
	sprayingSum = working.SumRule("hours of spraying", unit.InHour)
	sandedOnce  = working.Given(unit.Factor(1), "times sanded", unit.InPure, "", source.Exact)
	oneEach     = working.Given(unit.Factor(1), "one for each catalyst", unit.InPure, "", source.CommonPractice)
)

// withSpare adds what the card says is bought beyond the need.
func withSpare(q *chain.Run, card *job.Card, mass working.Figure[unit.Mass]) working.Figure[unit.Mass] {
	if !card.Spare.Known {
		return mass
	}
	return chain.Do2(q, massWithSpare, mass, spareOf(card))
}

func spareOf(card *job.Card) working.Figure[unit.Factor] {
	return chain.OnCard(card, card.Spare, "bought for each one needed", unit.InPure)
}

// sundries adds the sundries of a planned step.
func (m *maker) sundries(s *Step, area working.Figure[unit.Area], edge working.Figure[unit.Length]) {
	if !s.Known || area.Value <= 0 {
		return
	}
	u := &sundryAdder{m: m, step: s}
	if s.Kind.extras != nil {
		s.Kind.extras(u, area, edge)
	}
	if u.q.Err != nil {
		m.refuse(s.Path+".card", u.q.Err)
	}
}

// sundryAdder adds sundries to a step. The first error ends it.
type sundryAdder struct {
	m    *maker
	step *Step
	q    chain.Run
}

func (u *sundryAdder) card(key string) *job.Card { return u.m.card(key) }

func (u *sundryAdder) add(use Use) {
	if u.q.Err == nil {
		u.step.Used = append(u.step.Used, use)
	}
}

func (u *sundryAdder) coat(area working.Figure[unit.Area], edge working.Figure[unit.Length]) {
	s := u.step
	u.cups()
	u.eachSpell("gloves")
	rounds := roundsOf(s.Job)
	if s.Job.Method.Tool != "" {
		u.eachSpell(s.Job.Method.Tool)
	}
	if s.Job.Method.IsSpray {
		u.eachSpell("filter")
	}
	u.clean(s.Job.Method.IsSpray)
	if s.Job.RoundTakes.Value > 0 {
		u.sand(area, rounds, material.DiscOnFilm, "machine on film", false)
	}
	if s.Job.IsUnderFilm {
		film := u.card("release-film")
		u.add(Use{Name: film.Name, Card: film, Volume: chain.Do2(&u.q, overCoat, chain.Do2(&u.q, areaOfRounds, area, rounds), chain.OnCard(film, film.OverCoat, "over a coat, wet", unit.InMicrometre))})
	}
	u.edge("tape", edge, rounds)
	if s.Job.Method.IsSpray {
		u.edge("sheeting", edge, rounds)
		u.spray(area)
	}
}

func (u *sundryAdder) fill(area working.Figure[unit.Area], _ working.Figure[unit.Length]) {
	u.eachSpell("gloves")
	u.clean(false)
	if passes := u.step.Fill.Sanded; passes.Value > 0 {
		u.sand(area, passes, material.BoardOnFiller, "long board on filler", true)
	}
}

// sandStep adds what a run of grades wears out, or a single grade where none was
// typed.
func (u *sundryAdder) sandStep(area working.Figure[unit.Area], _ working.Figure[unit.Length]) {
	if u.step.Sand != nil {
		u.run(u.step.Sand)
		return
	}
	u.sand(area, sandedOnce, material.DiscOnFilm, "machine on film", false)
}

func (u *sundryAdder) polish(area working.Figure[unit.Area], _ working.Figure[unit.Length]) {
	pad := u.card("pad")
	u.add(Use{Name: pad.Name, Card: pad, Pieces: chain.Do2(&u.q, sanding.Sheets, area, chain.OnCard(pad, pad.OnFilm, "pads for a square metre", unit.InPure))})
}

// pieces adds a number of pieces of a card for each of n things.
func (u *sundryAdder) pieces(key string, n working.Figure[unit.Factor], each material.Spec[unit.Factor], meaning string) {
	if card := u.card(key); n.Step != nil {
		u.add(Use{Name: card.Name, Card: card, Pieces: chain.Do2(&u.q, piecesOf, n, chain.OnCard(card, each, meaning, unit.InPure))})
	}
}

// cups adds what the step is mixed in. What is left of polyester snaps out of the
// cup once it is hard, and the cup is used again.
func (u *sundryAdder) cups() {
	each := u.card("cup").EachCup
	if u.step.Card.Chemistry.IsPolyester() {
		each = u.card("cup").EachPolyesterCup
	}
	u.pieces("cup", u.step.Cups.Count, each, "cups for each mix")
}

func (u *sundryAdder) eachSpell(key string) {
	u.pieces(key, u.step.Cups.Spells, u.card(key).EachSpell, "pieces for each spell")
}

// clean adds solvent for each spell's hands and tool, or for its gun.
func (u *sundryAdder) clean(isGun bool) {
	card := u.card("acetone")
	each := chain.OnCard(card, card.Wash, "solvent for hands and tool, a spell", unit.InLitre)
	if isGun {
		each = chain.OnCard(card, card.Flush, "solvent for a gun, a spell", unit.InLitre)
	}
	if spells := u.step.Cups.Spells; spells.Step != nil {
		u.add(Use{Name: "cleaning", Card: card, Volume: chain.Do2(&u.q, forCleaning, spells, each)})
	}
}

func (u *sundryAdder) edge(key string, edge working.Figure[unit.Length], sessions working.Figure[unit.Factor]) {
	card := u.card(key)
	u.add(Use{Name: card.Name, Card: card, Length: chain.Do3(&u.q, alongEdge, edge, spareOf(card), sessions)})
}

// spray notes the hours at the gun. No cartridge protects from a sprayed two-pack
// topcoat: only an air-fed set does, and that isn't bought by the hour.
func (u *sundryAdder) spray(area working.Figure[unit.Area]) {
	method := u.step.Job.Method
	t := chain.Do3(&u.q, sprayTime, area, u.step.Coat.AllCoats, chain.OfMethod(method, method.Speed, "spreading speed", unit.InSquareMetrePerMinute))
	if u.step.Card.Chemistry != material.TwoPack && u.q.Err == nil {
		u.step.sprayed = append(u.step.sprayed, t)
	}
}

// sand adds abrasives of one grade, and notes the hours.
func (u *sundryAdder) sand(area working.Figure[unit.Area], rounds working.Figure[unit.Factor], speed material.Spec[unit.SpreadingSpeed], how string, onFiller bool) {
	disc := u.card("disc")
	sanded := chain.Do2(&u.q, sanding.RepeatedArea, area, rounds)
	perArea := chain.OnCard(disc, disc.OnFilm, "discs for a square metre of film", unit.InPure)
	if onFiller {
		perArea = chain.OnCard(disc, disc.OnFiller, "discs for a square metre of filler", unit.InPure)
	}
	u.add(Use{Name: disc.Name, Card: disc, Grade: u.grade(onFiller), Pieces: chain.Do2(&u.q, sanding.Sheets, sanded, perArea)})
	t := chain.Do2(&u.q, sanding.Hours, sanded, working.Given(speed.Value, "area sanded in an hour", unit.InSquareMetrePerHour, how, speed.Mark))
	if u.q.Err == nil {
		u.step.sanded = append(u.step.sanded, t)
	}
}

// boarded is how many passes of filler are sanded with the abrasives ordered for
// the fill itself: a run of grades that comes next sands the last of them.
func (m *maker) boarded(q *chain.Run, passes working.Figure[unit.Factor]) working.Figure[unit.Factor] {
	for _, next := range m.above {
		if next.Kind.LeavesAll {
			continue // it leaves the filler as it is
		}
		if next.Sanding.IsRun && passes.Value >= 1 {
			return chain.Do1(q, betweenPasses, passes)
		}
		return passes
	}
	return passes
}

// grade is the grade ordered for sanding where no run of grades was typed.
func (u *sundryAdder) grade(onFiller bool) sanding.Grade {
	switch {
	case u.step.Job.Sanding.Last > 0:
		return u.step.Job.Sanding.Last
	case onFiller:
		return material.GradeOnFiller
	}
	return material.GradeOnFilm
}

// once adds in whole pieces what the job needs once, whatever its size, and what it
// wears out by the hour.
func (n *needs) once(sanded, sprayed []working.Figure[unit.Time]) {
	n.worn("mask", sandingSum, sanded)
	n.worn("cartridges", sprayingSum, sprayed)
	syringe := n.card("syringe")
	for _, of := range n.list {
		if card := of.Card; card.Kind == material.Catalyst && card.Family != material.Benzoyl && slices.ContainsFunc(of.Mass, func(m working.Figure[unit.Mass]) bool { return m.Value > 0 }) {
			n.add(Use{Name: syringe.Name, Card: syringe, Pieces: oneEach})
		}
	}
}

func (n *needs) worn(key string, sum *working.Rule, hours []working.Figure[unit.Time]) {
	if len(hours) == 0 {
		return
	}
	card := n.card(key)
	pieces, err := piecesWorn.Figure(working.Sum(sum, hours...), chain.OnCard(card, card.Lasts, "hours that one lasts", unit.InHour))
	if err != nil {
		n.refuse(card.Path+".lasts", err)
		return
	}
	n.add(Use{Name: card.Name, Card: card, Pieces: pieces})
}
