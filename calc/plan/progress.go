package plan

import (
	"slices"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Progress is how far a step has come, by the log.
type Progress struct {
	Done  []string                   // paths of the surfaces on which it is finished
	Open  []string                   // and of those on which it isn't
	Cups  []string                   // ended cups that belong to no finished work yet
	PutOn working.Figure[unit.Mass]  // of mix, by these and by running ones
	Rest  working.Figure[unit.Share] // still to be done; without a step nothing is logged
}

// IsDone says if the step is finished wherever its build-up goes.
func (p *Progress) IsDone() bool { return len(p.Done) > 0 && len(p.Open) == 0 }

var (
	leftToDo = working.Rule2[unit.Area, unit.Area, unit.Share]{Rule: &working.Rule{Formula: "r = max(0, (A − D) ÷ A)", Source: source.Ref{Document: &source.House, Place: "what is left to do"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "r", Meaning: "share left to do", Scale: unit.InPure, Min: 0, Max: 1},
		Args:   []working.Arg{{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 1e-6, Max: 1e5}, {Symbol: "D", Meaning: "area done", Scale: unit.InSquareMetre, Min: 0, Max: 1e5}}},
		Code: func(a, done unit.Area) unit.Share { return unit.Share(max(0, (a-done)/a)) }}

	leftToPutOn = working.Rule4[unit.Area, unit.Area, unit.Mass, unit.Mass, unit.Share]{Rule: &working.Rule{Formula: "r = max(0, (A − D) ÷ A − U ÷ N)", Source: source.Ref{Document: &source.House, Place: "what is left to do"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "r", Meaning: "share left to do", Scale: unit.InPure, Min: 0, Max: 1},
		Args: []working.Arg{
			{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 1e-6, Max: 1e5}, {Symbol: "D", Meaning: "area done", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
			{Symbol: "U", Meaning: "put on by cups of work that isn't finished", Scale: unit.InKilogram, Min: 0, Max: 1e6},
			{Symbol: "N", Meaning: "mix for all of it, as learned", Scale: unit.InKilogram, Min: 1e-3, Max: 1e7},
		}},
		Code: func(a, done unit.Area, u, n unit.Mass) unit.Share {
			return unit.Share(max(0, float64((a-done)/a)-float64(u/n)))
		}}

	asLearnt = working.Rule2[unit.Mass, unit.Factor, unit.Mass]{Rule: &working.Rule{Formula: "N = n × f", Source: source.Ref{Document: &source.House, Place: "used ÷ planned"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "mix for all of it, as learned", Scale: unit.InKilogram, Min: 0, Max: 1e7},
		Args:   []working.Arg{{Symbol: "n", Meaning: "mix for all of it, as planned", Scale: unit.InKilogram, Min: 0, Max: 1e6}, factorLearnt}},
		Code: func(n unit.Mass, f unit.Factor) unit.Mass { return n * unit.Mass(f) }}

	factorLearnt = working.Arg{Symbol: "f", Meaning: "used ÷ planned, as learned", Scale: unit.InPure, Min: 0.1, Max: 10}
	restShare    = working.Arg{Symbol: "r", Meaning: "share left to do", Scale: unit.InPure, Min: 0, Max: 1}

	restMass   = restLearnt[unit.Mass](unit.InKilogram)
	restVolume = restLearnt[unit.Volume](unit.InLitre)
	restPieces = restOf[unit.Factor](unit.InPure)
	restLength = restOf[unit.Length](unit.InMetre)
	restTime   = restOf[unit.Time](unit.InHour)

	putOnRule = working.Rule2[unit.Mass, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "U = max(0, m − L)", Source: source.Ref{Document: &source.House, Place: "what leaves the cup"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "U", Meaning: "put on", Scale: unit.InGram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "m", Meaning: "all in the cup", Scale: unit.InGram, Min: 0, Max: 1e6}, {Symbol: "L", Meaning: "left over in cup and tool", Scale: unit.InGram, Min: 0, Max: 1e6}}},
		Code: func(m, left unit.Mass) unit.Mass { return max(0, m-left) }}

	doneSum = working.SumRule("area done", unit.InSquareMetre)

	notLearnt   = working.Given(unit.Factor(1), "used ÷ planned", unit.InPure, "nothing adopted from the log", source.Exact)
	nothingDone = working.Given(unit.Share(1), "share left to do", unit.InPure, "nothing logged", source.Exact)
	noneLeft    = working.Given(unit.Mass(0), "left over", unit.InGram, "nothing known of the method", source.Assumption)
)

func restLearnt[Q unit.Quantity](scale unit.Scale) working.Rule3[Q, unit.Share, unit.Factor, Q] {
	return working.Rule3[Q, unit.Share, unit.Factor, Q]{Rule: &working.Rule{Formula: "N = n × r × f", Source: source.Ref{Document: &source.House, Place: "what is left to do"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "need for the rest", Scale: scale, Min: 0, Max: 1e10},
		Args:   []working.Arg{{Symbol: "n", Meaning: "need for all of it, as planned", Scale: scale, Min: 0, Max: 1e9}, restShare, factorLearnt}},
		Code: func(n Q, r unit.Share, f unit.Factor) Q { return n * Q(r) * Q(f) }}
}

func restOf[Q unit.Quantity](scale unit.Scale) working.Rule2[Q, unit.Share, Q] {
	return working.Rule2[Q, unit.Share, Q]{Rule: &working.Rule{Formula: "N = n × r", Source: source.Ref{Document: &source.House, Place: "what is left to do"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "need for the rest", Scale: scale, Min: 0, Max: 1e9},
		Args:   []working.Arg{{Symbol: "n", Meaning: "need for all of it", Scale: scale, Min: 0, Max: 1e9}, restShare}},
		Code: func(n Q, r unit.Share) Q { return n * Q(r) }}
}

// workLeft works out from the log how much of a step is still to be done.
type workLeft struct{ *maker }

// progress looks up in the log how far a step has come, and what is left of it.
func (m workLeft) progress(s *Step, on []*job.Surface, area working.Figure[unit.Area]) {
	p, log := &s.Progress, m.plan.log()
	finished := log.done[s.Path]
	var done []working.Figure[unit.Area]
	for _, surface := range on {
		if !finished[surface.Path] {
			p.Open = append(p.Open, surface.Path)
			continue
		}
		p.Done = append(p.Done, surface.Path)
		if planned := m.plan.measured(surface); planned.Known {
			done = append(done, planned.Area)
		}
	}
	var cups []working.Figure[unit.Mass]
	for _, c := range log.of[s.Path] {
		if log.claimed[c.Path] {
			continue
		}
		if c.End != "" {
			p.Cups = append(p.Cups, c.Path)
		}
		cups = chain.AppendKnown(cups, log.putOn[c.Path])
	}
	p.PutOn = working.Sum(PutOnSum, cups...)
	if s.Card != nil && (s.Coat != nil || s.Fill != nil) {
		s.Learnt = m.job("learn").LearntOf(MethodOf(s), s.Card.Key)
	}
	if area.Value > 0 && (len(done) > 0 || p.PutOn.Value > 0) {
		m.left(s, area, working.Sum(doneSum, done...))
	}
}

// left works out the share of a step that is still to be done.
func (m workLeft) left(s *Step, area, done working.Figure[unit.Area]) {
	var q chain.Run
	if s.Leaves.Value > unit.Gram {
		s.Progress.Rest = chain.Do4(&q, leftToPutOn, area, done, s.Progress.PutOn, chain.Do2(&q, asLearnt, s.Leaves, learntFactor(s.Learnt)))
	} else {
		s.Progress.Rest = chain.Do2(&q, leftToDo, area, done)
	}
	if q.Err != nil {
		m.refuse(s.Path+".card", q.Err)
	}
}

// MethodOf is the method of a coat or fill.
func MethodOf(s *Step) *material.Method {
	if s.Fill != nil {
		return knife
	}
	return s.Job.Method
}

// MethodOfCup is the method by which a cup of the log was put on; false: not known.
// Filler goes on with the knife, whatever was recorded.
func MethodOfCup(c *job.Cup, card *job.Card) (*material.Method, bool) {
	if card != nil && canFill(card) {
		return knife, true
	}
	return material.FindMethod(c.Method)
}

// learntFactor is used ÷ planned as it was adopted; 1 where nothing was.
func learntFactor(l *job.Learnt) working.Figure[unit.Factor] {
	if l == nil {
		return notLearnt
	}
	entries := working.Given(unit.Factor(l.Entries), "entries in the log", unit.InPure, "adopted by you", source.Typed)
	return working.By(order.Learning, order.Belief{Mean: l.Mean}.Factor(), entries.Step)
}

// rest is what is still needed of a use, with the learnt factor.
func (m workLeft) rest(s *Step, u Use) Use {
	left := s.Progress.Rest
	if left.Step == nil && s.Learnt == nil {
		return u
	}
	if left.Step == nil {
		left = nothingDone
	}
	var q chain.Run
	f := learntFactor(s.Learnt)
	if u.Mass.Step != nil {
		u.Mass = chain.Do3(&q, restMass, u.Mass, left, f)
	}
	if u.Volume.Step != nil {
		u.Volume = chain.Do3(&q, restVolume, u.Volume, left, f)
	}
	if u.Pieces.Step != nil {
		u.Pieces = chain.Do2(&q, restPieces, u.Pieces, left)
	}
	if u.Length.Step != nil {
		u.Length = chain.Do2(&q, restLength, u.Length, left)
	}
	if q.Err != nil {
		m.refuse(s.Path+".card", q.Err)
	}
	return u
}

// restHours reduces the hours that a step added to what is still to be done.
func (m workLeft) restHours(s *Step, hours []working.Figure[unit.Time]) {
	for i, h := range hours {
		if left := s.Progress.Rest; left.Step != nil {
			var q chain.Run
			hours[i] = chain.Do2(&q, restTime, h, left)
		}
	}
}

// OpenShare is the share of the open surfaces' work that is still to be done:
// less than one where cups have gone on that belong to no finished work yet.
func (p *Plan) OpenShare(s *Step, openArea, area unit.Area) float64 {
	if s.Progress.Rest.Step == nil || openArea <= 0 {
		return 1
	}
	return min(1, float64(s.Progress.Rest.Value)*float64(area/openArea))
}

// PlannedOn is what a step was planned to put on the surfaces, at the base factors:
// all the mix that leaves the cups, the film's part of it, and the wet film of each
// coat. It is false for a step that puts on nothing, and while its amounts aren't
// known.
func (p *Plan) PlannedOn(step string, surfaces []string) (planned, film unit.Mass, each unit.WetFilm, known bool) {
	s, b := p.StepAt(step)
	if s == nil || s.Leaves.Value <= 0 || b.Area.Value <= 0 {
		return 0, 0, 0, false
	}
	var area unit.Area
	for _, s := range p.Surfaces() {
		if slices.Contains(surfaces, s.Path) && s.Known {
			area += s.Area.Value
		}
	}
	share := unit.Mass(area / b.Area.Value)
	if s.Coat != nil {
		each = s.Coat.WetEach.Value
	}
	return s.Leaves.Value * share, s.FilmOnly * share, each, share > 0
}

// StepAt finds a planned step and its build-up; nil: there is none.
func (p *Plan) StepAt(path string) (*Step, *Buildup) {
	buildups := p.Buildups()
	for i := range buildups {
		b := &buildups[i]
		for j := range b.Steps {
			if b.Steps[j].Path == path {
				return &b.Steps[j], b
			}
		}
	}
	return nil, nil
}
