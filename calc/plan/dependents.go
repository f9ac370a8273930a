package plan

import (
	"math"

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
	piecesOf = working.Of2("P = n × p", source.Practice.At("sundries"), source.CommonPractice,
		working.In("P", "pieces", unit.InPure, 0, 1e9),
		[]working.Arg{working.In("n", "cups mixed", unit.InPure, 0, 1e8), working.In("p", "pieces for each cup", unit.InPure, 0, 10)},
		func(n, each unit.Factor) unit.Factor { return n * each })

	piecesOfHours = working.Of2("P = t × p", source.Practice.At("sundries"), source.CommonPractice,
		working.In("P", "pieces", unit.InPure, 0, 1e8),
		[]working.Arg{working.In("t", "hours of sanding", unit.InHour, 0, 1e6), working.In("p", "pieces for each hour", unit.InPure, 0, 10)},
		func(t unit.Time, each unit.Factor) unit.Factor { return unit.Factor(t/unit.Hour) * each })

	piecesWorn = working.Of2("P = ceil(t ÷ d − 0.000000001)", source.Practice.At("sundries"), source.CommonPractice,
		working.In("P", "pieces", unit.InPure, 0, 1e8),
		[]working.Arg{working.In("t", "hours of work", unit.InHour, 0, 1e6), working.In("d", "hours that one lasts", unit.InHour, 0.5, 1000)},
		func(t, lasts unit.Time) unit.Factor { return unit.Factor(math.Ceil(float64(t/lasts) - 1e-9)) })

	alongEdge = working.Of2("T = E × k", source.Practice.At("edge taped afresh for every coat step"), source.CommonPractice,
		working.In("T", "for one coat step", unit.InMetre, 0, 1e6),
		[]working.Arg{working.In("E", "edge in all", unit.InMetre, 0, 1e5), working.In("k", "bought for each one needed", unit.InPure, 1, 3)},
		func(edge unit.Length, spare unit.Factor) unit.Length { return edge * unit.Length(spare) })

	massWithSpare = working.Of2("m_b = m × k", source.Practice.At("test cups and what stays in the bottle"), source.CommonPractice,
		working.In("m_b", "in the bottle", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("m", "doses", unit.InKilogram, 0, 1e5), working.In("k", "bought for each one needed", unit.InPure, 1, 3)},
		func(m unit.Mass, spare unit.Factor) unit.Mass { return m * unit.Mass(spare) })

	forCleaning = working.Of2("V = n × w", source.Practice.At("cleaning solvent"), source.CommonPractice,
		working.In("V", "for cleaning", unit.InLitre, 0, 1e8),
		[]working.Arg{working.In("n", "times cleaned", unit.InPure, 0, 1e7), working.In("w", "solvent each time", unit.InLitre, 0, 5)},
		func(n unit.Factor, each unit.Volume) unit.Volume { return unit.Volume(n) * each })

	sprayTime = working.Of3("t = A × n ÷ v", source.Geometry.At("definition of speed"), source.Exact,
		working.In("t", "time at the gun", unit.InMinute, 0, 1e9),
		[]working.Arg{
			working.In("A", "area", unit.InSquareMetre, 0, 1e5),
			working.In("n", "coats", unit.InPure, 1, 50),
			working.In("v", "spreading speed", unit.InSquareMetrePerMinute, 0.005, 5),
		},
		func(a unit.Area, n unit.Factor, v unit.SpreadingSpeed) unit.Time {
			return unit.Time(float64(a) * float64(n) / float64(v))
		})

	sandingSum  = working.SumRule("hours of sanding", unit.InHour)
	sprayingSum = working.SumRule("hours of spraying", unit.InHour)
	oneTool     = working.Given(unit.Factor(1), "tools for the step", unit.InPure, "cleaned after each coat", source.CommonPractice)
	oneGo       = working.Given(unit.Factor(1), "times sanded", unit.InPure, "", source.Exact)
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

// sundries adds to a planned step what goes with it.
func (m *maker) sundries(s *Step, area working.Figure[unit.Area], edge working.Figure[unit.Length]) {
	if !s.Known || area.Value <= 0 {
		return
	}
	u := &user{m: m, step: s}
	switch {
	case s.Coat != nil:
		u.coat(area, edge)
	case s.Fill != nil:
		u.gloves()
		u.clean(s.Fill.Passes, false)
		u.sand(area, s.Fill.Passes, material.BoardOnFiller, "long board on filler", true)
	case s.Sand != nil:
		u.run(s.Sand)
	case s.Job.Kind.Key == "sand":
		u.sand(area, oneGo, material.DiscOnFilm, "machine on film", false)
	}
	if u.q.Err != nil {
		m.refuse(s.Path+".card", u.q.Err)
	}
}

// user adds sundries to a step. The first error ends it.
type user struct {
	m    *maker
	step *Step
	q    chain.Run
}

func (u *user) card(key string) *job.Card { return u.m.plan.Job.CardByKey(key) }

func (u *user) add(use Use) {
	if u.q.Err == nil {
		u.step.Used = append(u.step.Used, use)
	}
}

func (u *user) coat(area working.Figure[unit.Area], edge working.Figure[unit.Length]) {
	s := u.step
	u.eachCup("cup")
	u.gloves()
	u.tool()
	if goes := s.Job.Goes; s.Job.GoTakes.Value > 0 {
		if goes.Step == nil {
			goes = inOneGo
		}
		u.sand(area, goes, material.DiscOnFilm, "machine on film", false)
	}
	u.edge("tape", edge)
	if s.Job.Method.IsSpray {
		u.edge("sheeting", edge)
		u.spray(area)
	}
}

func (u *user) eachCup(key string) {
	card := u.card(key)
	if !card.EachCup.Known || u.step.Cups.Count.Step == nil {
		return
	}
	u.add(Use{Name: card.Name, Card: card, Pieces: chain.Do2(&u.q, piecesOf, u.step.Cups.Count, chain.OnCard(card, card.EachCup, "pieces for each cup mixed", unit.InPure))})
}

func (u *user) gloves() { u.eachCup("gloves") }

// gelsInTool says if the material gels in the tool while it is used: a roller
// is thrown away with each cup, and a gun flushed. Epoxy and two-pack goods
// leave time to clean the tool after each coat.
func gelsInTool(c *job.Card) bool {
	return c.Chemistry == material.Polyester || c.Chemistry == material.VinylEster
}

// tool adds rollers or brushes, and solvent for what is cleaned.
func (u *user) tool() {
	s, key := u.step, u.step.Job.Method.Tool
	gels := gelsInTool(s.Card)
	switch {
	case key != "" && gels:
		u.eachCup(key)
	case key != "":
		card := u.card(key)
		u.add(Use{Name: card.Name, Card: card, Pieces: oneTool})
		u.clean(s.Coat.AllCoats, false)
	case gels:
		u.clean(s.Cups.Count, s.Job.Method.IsSpray)
	default:
		u.clean(s.Coat.AllCoats, s.Job.Method.IsSpray)
	}
}

// clean adds solvent for so many washes of a tool, or flushes of a gun.
func (u *user) clean(times working.Figure[unit.Factor], isGun bool) {
	card := u.card("acetone")
	each := chain.OnCard(card, card.Wash, "solvent for one wash", unit.InLitre)
	if isGun {
		each = chain.OnCard(card, card.Flush, "solvent for one flush", unit.InLitre)
	}
	if times.Step != nil {
		u.add(Use{Name: "cleaning", Card: card, Volume: chain.Do2(&u.q, forCleaning, times, each)})
	}
}

func (u *user) edge(key string, edge working.Figure[unit.Length]) {
	card := u.card(key)
	u.add(Use{Name: card.Name, Card: card, Length: chain.Do2(&u.q, alongEdge, edge, spareOf(card))})
}

// spray notes the hours at the gun. No cartridge is a protection from a sprayed
// two-pack topcoat: only an air-fed set is, which isn't bought by the hour.
func (u *user) spray(area working.Figure[unit.Area]) {
	method := u.step.Job.Method
	t := chain.Do3(&u.q, sprayTime, area, u.step.Coat.AllCoats, chain.OfMethod(method, method.Speed, "spreading speed", unit.InSquareMetrePerMinute))
	if u.step.Card.Chemistry != material.TwoPack && u.q.Err == nil {
		u.m.spraying = append(u.m.spraying, t)
	}
}

// sand adds abrasives and gloves, and notes the hours.
func (u *user) sand(area working.Figure[unit.Area], goes working.Figure[unit.Factor], speed material.Spec[unit.SpreadingSpeed], how string, onFiller bool) {
	disc, gloves := u.card("disc"), u.card("gloves")
	sanded := chain.Do2(&u.q, sanding.Gone, area, goes)
	perArea := chain.OnCard(disc, disc.OnFilm, "discs for a square metre of film", unit.InPure)
	if onFiller {
		perArea = chain.OnCard(disc, disc.OnFiller, "discs for a square metre of filler", unit.InPure)
	}
	u.add(Use{Name: disc.Name, Card: disc, Pieces: chain.Do2(&u.q, sanding.Sheets, sanded, perArea)})
	t := chain.Do2(&u.q, sanding.Hours, sanded, working.Given(speed.Value, "area sanded in an hour", unit.InSquareMetrePerHour, how, speed.Mark))
	u.add(Use{Name: gloves.Name, Card: gloves, Pieces: chain.Do2(&u.q, piecesOfHours, t, chain.OnCard(gloves, gloves.EachHour, "pairs for each hour of sanding", unit.InPure))})
	if u.q.Err == nil {
		u.m.sanding = append(u.m.sanding, t)
	}
}

// wornOut adds what the hours of the whole job wear out, in whole pieces.
func (m *maker) wornOut() {
	m.worn("mask", sandingSum, m.sanding)
	m.worn("cartridges", sprayingSum, m.spraying)
}

func (m *maker) worn(key string, sum *working.Rule, hours []working.Figure[unit.Time]) {
	if len(hours) == 0 {
		return
	}
	card := m.plan.Job.CardByKey(key)
	pieces, err := piecesWorn.Figure(working.Sum(sum, hours...), chain.OnCard(card, card.Lasts, "hours that one lasts", unit.InHour))
	if err != nil {
		m.refuse(card.Path+".lasts", err)
		return
	}
	m.needs.add(Use{Name: card.Name, Card: card, Pieces: pieces})
}
