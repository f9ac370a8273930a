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
	Grade  sanding.Grade // of an abrasive, else 0: one can't replace another
	Mass   []working.Figure[unit.Mass]
	Volume []working.Figure[unit.Volume]
	Pieces []working.Figure[unit.Factor]
	Length []working.Figure[unit.Length]
}

// Needs is what the work left to do takes, by material, in the order in which they
// are first needed.
func (p *Plan) Needs() []Need {
	return ask(p, "needs", func(m *maker) []Need {
		n := &needs{maker: m}
		var sanded, sprayed []working.Figure[unit.Time]
		for _, b := range m.plan.Buildups() {
			for i := range b.Steps {
				s := &b.Steps[i]
				for _, use := range s.Used {
					n.add(workLeft{m}.rest(s, use))
				}
				sanded, sprayed = append(sanded, s.sanded...), append(sprayed, s.sprayed...)
			}
		}
		n.once(sanded, sprayed)
		return n.list
	})
}

// needs gathers what is needed.
type needs struct {
	*maker
	list []Need
}

// add adds a use to what is needed of its material.
func (n *needs) add(u Use) {
	need := n.of(u.Card, u.Grade)
	need.Mass = chain.AppendKnown(need.Mass, u.Mass)
	need.Volume = chain.AppendKnown(need.Volume, u.Volume)
	need.Pieces = chain.AppendKnown(need.Pieces, u.Pieces)
	need.Length = chain.AppendKnown(need.Length, u.Length)
}

func (n *needs) of(card *job.Card, grade sanding.Grade) *Need {
	for i := range n.list {
		if n.list[i].Card == card && n.list[i].Grade == grade {
			return &n.list[i]
		}
	}
	n.list = append(n.list, Need{Card: card, Grade: grade})
	return &n.list[len(n.list)-1]
}
