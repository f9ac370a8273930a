package plan

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// oiled is what a made-up kind of step uses, by a made-up figure of its card.
var oiled = working.Rule2[unit.Area, unit.MassPerArea, unit.Mass]{Rule: &working.Rule{Formula: "m = A × o", Source: source.Ref{Document: &source.House, Place: "made up for a test"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "m", Meaning: "made-up oil", Scale: unit.InKilogram, Min: 0, Max: 1e5},
	Args:   []working.Arg{{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5}, {Symbol: "o", Meaning: "thirst", Scale: unit.InKilogramPerSquareMetre, Min: 0, Max: 1}}},
	Code: func(a unit.Area, thirst unit.MassPerArea) unit.Mass { return unit.Mass(float64(a) * float64(thirst)) }}

// oil is a kind of step that there isn't: a row is all that it takes. It takes
// 3 µm of the film, and is neither sanding nor washing.
var oil = &Kind{Key: "oil", Drawing: DrawnPolished, Fits: canPolish, Fresh: []job.Line{{Path: "wait", Text: "2 h"}},
	films: (*maker).oil, amounts: (*maker).oilUsed, walk: (*maker).walkOil, tasks: oilTasks}

func (m *maker) oil(s *Step) {
	if !m.needsCard(s, canPolish) {
		return
	}
	s.Known, s.Taken = true, working.Given(3*unit.DryFilm(unit.Micrometre), "made-up film taken", unit.InMicrometre, "", source.Assumption)
}

func (m *maker) oilUsed(s *Step, area working.Figure[unit.Area]) {
	if !s.Known {
		return
	}
	var q chain.Run
	used := chain.Do2(&q, oiled, area, chain.OnCard(s.Card, s.Card.Thirst, "thirst", unit.InGramPerSquareMetre))
	if q.Err == nil && area.Value > 0 {
		s.Used = append(s.Used, Use{Name: "oil", Card: s.Card, Mass: used})
	}
}

func (m *maker) walkOil(s *Step, cv working.Figure[unit.Share]) buildup.Step {
	return s.taking(buildup.Step{Kind: buildup.Other}, cv)
}

func oilTasks(s *Step, area unit.Area) []Task {
	return []Task{{Kind: OtherWork, Step: s, Takes: unit.Time(area) * 10 * unit.Minute}}
}
