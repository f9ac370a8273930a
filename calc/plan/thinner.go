package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// keptThinner gives what part of the thinner stays and how much it shrinks.
func (m coater) keptThinner(s *Step) (stays, shrinks working.Figure[unit.Share]) {
	if t := m.card(s.Card.Thinner); t != nil {
		return chain.OnCard(t, t.Stays, "share that stays in the film", unit.InPercent), chain.OnCard(t, t.Shrinks, "shrinkage of what stays", unit.InPercent)
	}
	none := working.Given(unit.Share(0), "thinner that stays", unit.InPercent, "none is added", source.Exact)
	return none, none
}

var (
	noThinner = working.Given(unit.ByVolume(0), "thinner", unit.InPure, "none", source.Exact)

	extraRule = working.Rule2[unit.ByVolume, unit.ByVolume, unit.ByVolume]{Rule: &working.Rule{Formula: "t = t_s + t_w", Source: source.Ref{Document: &source.Practice, Place: "styrene and wax solution count together"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "t", Meaning: "thinner and wax solution per volume of product", Scale: unit.InPure, Min: 0, Max: 0.5},
		Args:   []working.Arg{{Symbol: "t_s", Meaning: "thinner", Scale: unit.InPure, Min: 0, Max: 0.5}, {Symbol: "t_w", Meaning: "wax solution", Scale: unit.InPure, Min: 0, Max: 0.1}}},
		Code: func(thinner, wax unit.ByVolume) unit.ByVolume { return thinner + wax }}
)

// extra gives thinner and wax solution per volume of product, within the
// card's limit on both together.
func (m coater) extra(s *Step) (working.Figure[unit.ByVolume], error) {
	if err := CheckThinner(s.Job, s.Card, m.card(s.Card.Thinner)); err != nil {
		return noThinner, err
	}
	var q chain.Run
	thinner := noThinner
	if share := s.Job.Thinner; share.Value > 0 {
		thinner = chain.As[unit.ByVolume](share)
		if s.Job.ThinnerByMass {
			thinner = m.byVolume(&q, s.Card, s.Card.Thinner, chain.As[unit.ByMass](share))
		}
	}
	if !s.Card.Wax.Known {
		return thinner, q.Err
	}
	wax := m.byVolume(&q, s.Card, material.WaxKey, chain.OnCard(s.Card, s.Card.Wax, "wax solution", unit.InPercent))
	return chain.Do2(&q, extraRule, thinner, wax), q.Err
}

// byVolume converts an addition per mass of product to one per volume.
func (m coater) byVolume(q *chain.Run, product *job.Card, key string, share working.Figure[unit.ByMass]) working.Figure[unit.ByVolume] {
	added := m.card(key)
	return chain.Do3(q, film.ThinnerByVolume, share, chain.DensityOf(product), chain.DensityOf(added))
}

// CheckThinner compares thinner and wax solution with a card's limit, both in the
// limit's basis. Added is the card of the thinner; nil: there is none.
// Errors: ErrNoThinner, *ThinnerError.
func CheckThinner(s *job.Step, c, added *job.Card) error {
	if s.Thinner.Value == 0 {
		return nil
	}
	share, err := thinnerShare(s, c, added)
	if share > c.ThinnerRefuse.Value+1e-9 {
		return &ThinnerError{share, c.ThinnerRefuse.Value, c.ThinnerBasis == material.ByMass, c.Wax.Known}
	}
	return err
}

// thinnerShare gives thinner and wax solution in the basis of the card's limit.
func thinnerShare(s *job.Step, c, added *job.Card) (unit.Share, error) {
	if added == nil || !c.ThinnerRefuse.Known {
		return 0, ErrNoThinner
	}
	limitByMass := c.ThinnerBasis == material.ByMass
	share := s.Thinner.Value
	if limitByMass != s.ThinnerByMass {
		ratio := unit.Share(c.Density.Value / added.Density.Value)
		if limitByMass {
			share /= ratio
		} else {
			share *= ratio
		}
	}
	if limitByMass {
		share += unit.Share(c.Wax.Value)
	}
	return share, nil
}
