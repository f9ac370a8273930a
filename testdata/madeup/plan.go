package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// oiled is what a made-up kind of step uses, by a made-up figure of its card.
var oiled = working.Of2("m = A × o", source.House.At("made up for a test"), source.Assumption,
	working.In("m", "made-up oil", unit.InKilogram, 0, 1e5),
	[]working.Arg{working.In("A", "area", unit.InSquareMetre, 0, 1e5), working.In("o", "thirst", unit.InKilogramPerSquareMetre, 0, 1)},
	func(a unit.Area, thirst unit.MassPerArea) unit.Mass { return unit.Mass(float64(a) * float64(thirst)) })

func (m *maker) oil(s *Step, area working.Figure[unit.Area], _ working.Figure[unit.Length]) {
	if !m.needsCard(s, canPolish) {
		return
	}
	s.Known = true
	var q chain.Run
	used := chain.Do2(&q, oiled, area, chain.OnCard(s.Card, s.Card.Thirst, "thirst", unit.InGramPerSquareMetre))
	if q.Err == nil && area.Value > 0 {
		s.Used = append(s.Used, Use{Name: "oil", Card: s.Card, Mass: used})
	}
}
