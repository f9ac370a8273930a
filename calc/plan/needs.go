package plan

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// needs gathers what all steps take, by material, in the order in which the
// materials are first needed.
type needs struct{ list []*need }

type need struct {
	card   *job.Card
	grade  sanding.Grade // of an abrasive, else 0: one is no use for the other
	mass   []working.Figure[unit.Mass]
	volume []working.Figure[unit.Volume]
	pieces []working.Figure[unit.Factor]
	length []working.Figure[unit.Length]
}

func (n *needs) add(u Use) {
	entry := n.of(u.Card, u.Grade)
	entry.mass = appendKnown(entry.mass, u.Mass)
	entry.volume = appendKnown(entry.volume, u.Volume)
	entry.pieces = appendKnown(entry.pieces, u.Pieces)
	entry.length = appendKnown(entry.length, u.Length)
}

func appendKnown[Q unit.Quantity](list []working.Figure[Q], f working.Figure[Q]) []working.Figure[Q] {
	if f.Step == nil {
		return list
	}
	return append(list, f)
}

func (n *needs) of(card *job.Card, grade sanding.Grade) *need {
	for _, entry := range n.list {
		if entry.card == card && entry.grade == grade {
			return entry
		}
	}
	n.list = append(n.list, &need{card: card, grade: grade})
	return n.list[len(n.list)-1]
}
