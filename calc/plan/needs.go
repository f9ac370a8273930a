package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Need is what all steps still take of one material, use by use, in every
// measure that is known.
type Need struct {
	Card   *job.Card
	Grade  sanding.Grade // of an abrasive, else 0: one is no use for the other
	Mass   []working.Figure[unit.Mass]
	Volume []working.Figure[unit.Volume]
	Pieces []working.Figure[unit.Factor]
	Length []working.Figure[unit.Length]
}

// need adds a use to what is needed of its material. The materials stand in the
// order in which they are first needed.
func (m *maker) need(u Use) {
	n := m.needOf(u.Card, u.Grade)
	n.Mass = chain.AppendKnown(n.Mass, u.Mass)
	n.Volume = chain.AppendKnown(n.Volume, u.Volume)
	n.Pieces = chain.AppendKnown(n.Pieces, u.Pieces)
	n.Length = chain.AppendKnown(n.Length, u.Length)
}

func (m *maker) needOf(card *job.Card, grade sanding.Grade) *Need {
	list := &m.plan.Needs
	for i := range *list {
		if (*list)[i].Card == card && (*list)[i].Grade == grade {
			return &(*list)[i]
		}
	}
	*list = append(*list, Need{Card: card, Grade: grade})
	return &(*list)[len(*list)-1]
}
