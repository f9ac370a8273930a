package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Fill is what a fill step comes to.
type Fill struct {
	Left      working.Figure[unit.Volume] // stays on; without an area nothing
	Applied   working.Figure[unit.Volume] // put on, with what is sanded off again
	Depth     working.Figure[unit.Length] // applied, the mean
	Passes    working.Figure[unit.Factor]
	Sanded    working.Figure[unit.Factor] // passes that are sanded as part of the fill; a run that follows sands the last
	Dust      working.Figure[unit.Mass]
	Grid      *Grid                      // of a grid of readings
	SandedOff working.Figure[unit.Share] // off again, of what is put on

	field string // at which a failing sum is reported
	putty *Putty // that it is mixed as; nil: bought filler
}

// knife is how filler is put on.
var knife, _ = material.FindMethod("knife")

func canFill(c *job.Card) bool { return c.Kind == material.Filler }

func fill(m *maker, s *Step) {
	if s.Job.Card == "" {
		s.Card = puttyMaker{m}.fillerLike(s.Job.Putty)
	}
	if (s.Job.Card != "" || s.Card == nil) && !m.needsCard(s, canFill) {
		return
	}
	var q chain.Run
	what, known := hollowReader{m}.filling(&q, s)
	if !known {
		return
	}
	sanded := s.Job.SandedOff
	if sanded.Step == nil {
		sanded = chain.OnCard(s.Card, s.Card.SandedOff, "share sanded off", unit.InPercent)
	}
	f := &Fill{SandedOff: sanded, Left: what.left, Grid: what.grid, field: what.field, Depth: chain.Do2(&q, fairing.AppliedDepth, what.depth, sanded)}
	f.Passes = nothingToFill
	if f.Depth.Value > unit.Length(unit.Micrometre) {
		f.Passes = chain.Do2(&q, fairing.Passes, f.Depth, chain.OnCard(s.Card, asLength(s.Card.PassMost), "largest pass", unit.InMillimetre))
	}
	f.Sanded = m.boarded(&q, f.Passes)
	putty, whole := puttyMaker{m}.mixedAs(s)
	if f.putty = putty; !whole {
		return
	}
	if q.Err != nil {
		m.refuse(s.Path+"."+f.field, q.Err)
		return
	}
	s.Fill, s.Known = f, true
}

func fillAmounts(m *maker, s *Step, area working.Figure[unit.Area]) {
	f := s.Fill
	if f == nil {
		return
	}
	var q chain.Run
	if f.Left.Step == nil && area.Value > 0 {
		f.Left = chain.Do2(&q, fairing.Skim, area, s.Job.Thickness)
	}
	if q.Err == nil && f.Left.Value > 0 {
		hollowReader{m}.filler(&q, s, f, f.putty, area.Value > 0)
	}
	if q.Err != nil {
		m.refuse(s.Path+"."+f.field, q.Err)
		s.Fill, s.Known = nil, false
	}
}

var nothingToFill = working.Given(unit.Factor(1), "passes", unit.InPure, "nothing to fill", source.Exact)

// filler works out what the filling takes, and how much of it becomes dust. While
// the build-up is on no surface, nothing is bought and nothing stays on the boat.
func (m hollowReader) filler(q *chain.Run, s *Step, f *Fill, putty *Putty, isOnBoat bool) {
	density := chain.DensityOf(s.Card)
	if putty != nil {
		density = putty.Made.Density
	}
	f.Applied = chain.Do2(q, fairing.Applied, f.Left, f.SandedOff)
	f.Dust = chain.Do2(q, fairing.MassOf, chain.Do2(q, fairing.SandedOff, f.Applied, f.SandedOff), density)
	if !isOnBoat {
		return
	}
	loss := chain.OfMethod(knife, knife.Loss, "loss", unit.InPercent)
	s.Leaves = chain.Do2(q, withLoss, chain.Do2(q, film.Weight, f.Applied, density), loss)
	work := cupWorkOf(s.Card, knife, chain.As[unit.WetFilm](chain.Do2(q, onePass, f.Depth, f.Passes)), density)
	work.need, work.times, work.area = s.Leaves, f.Passes, chain.Do2(q, areaFilled, f.Applied, f.Depth)
	s.Cups = work.inCups(q)
	if mass := s.Cups.Mixed; putty != nil {
		putty.uses(q, s, m.card, mass)
	} else {
		s.Used = append(s.Used, Use{Name: "product", Card: s.Card, Mass: mass, Volume: chain.Do2(q, VolumeOf, mass, density)})
		coater(m).addByMass(q, s, s.Card.HardenerShare, s.Card.Hardener, "hardener", mass)
	}
	s.Kept = chain.Do2(q, film.Weight, f.Left, density)
	s.FilmOnly = s.Kept.Value
}

var (
	onePass = working.Rule2[unit.Length, unit.Factor, unit.Length]{Rule: &working.Rule{Formula: "d = D ÷ n", Source: source.Ref{Document: &source.Geometry, Place: "equal passes"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "d", Meaning: "one pass", Scale: unit.InMillimetre, Min: 0, Max: 1000},
		Args:   []working.Arg{{Symbol: "D", Meaning: "put on, the mean", Scale: unit.InMillimetre, Min: 0, Max: 1000}, {Symbol: "n", Meaning: "passes", Scale: unit.InPure, Min: 1, Max: 1000}}},
		Code: func(depth unit.Length, n unit.Factor) unit.Length { return depth / unit.Length(n) }}

	areaFilled = working.Rule2[unit.Volume, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = V ÷ D", Source: source.Ref{Document: &source.Geometry, Place: "volume by depth"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area that is filled", Scale: unit.InSquareMetre, Min: 0, Max: 1e8},
		Args:   []working.Arg{{Symbol: "V", Meaning: "put on", Scale: unit.InLitre, Min: 0, Max: 1e5}, {Symbol: "D", Meaning: "put on, the mean", Scale: unit.InMillimetre, Min: 1e-3, Max: 1000}}},
		Code: func(v unit.Volume, depth unit.Length) unit.Area { return unit.Area(float64(v) / float64(depth)) }}
)

// asLength reads a card's pass, a film, as a depth of filler.
func asLength(s material.Spec[unit.WetFilm]) material.Spec[unit.Length] {
	return material.Spec[unit.Length]{Value: unit.Length(s.Value), Low: unit.Length(s.Low), High: unit.Length(s.High), Mark: s.Mark, Known: s.Known}
}

func sand(m *maker, s *Step) {
	if s.Job.Sanding.IsRun {
		sander{m}.runOfGrades(s)
		return
	}
	if m.needsTyped(s.Path, "taken", s.Job.Taken.Step) {
		s.Taken, s.Known = s.Job.Taken, true
	}
}

func canPolish(c *job.Card) bool { return c.Kind == material.Polish }

func polish(m *maker, s *Step) {
	if !m.needsCard(s, canPolish) || m.isRefused(s.Path+".taken") {
		return
	}
	var q chain.Run
	if s.Taken = s.Job.Taken; s.Taken.Step == nil {
		s.Taken = sander{m}.polishTakes(&q, s)
	}
	if q.Err != nil {
		m.refuse(s.Path+".taken", q.Err)
		return
	}
	s.Known = true
}

func polishAmounts(m *maker, s *Step, area working.Figure[unit.Area]) {
	if !s.Known || area.Value <= 0 {
		return
	}
	var q chain.Run
	used := chain.Do2(&q, sanding.Compound, area, chain.OnCard(s.Card, s.Card.UsedPerArea, "used per area", unit.InGramPerSquareMetre))
	if q.Err != nil {
		m.refuse(s.Path+".card", q.Err)
		return
	}
	s.Used = append(s.Used, Use{Name: "product", Card: s.Card, Mass: used})
}

// wash is water, soap or a wipe: nothing of the film.
func wash(m *maker, s *Step) { s.Known, s.face.isAsBefore = true, true }
