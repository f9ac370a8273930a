package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// CoatLimit is one of a card's limits on the wet film of one coat.
type CoatLimit int

// The limits, beginning with the one for what is sprayed lying flat.
const (
	MostFlat CoatLimit = iota
	MostRolled
	MostWall
	MostOverhead
)

// String names the limit as the card does.
func (l CoatLimit) String() string {
	return [...]string{"largest wet film in one coat", "largest wet film in one coat, rolled or brushed",
		"largest wet film in one coat, on a wall", "largest wet film in one coat, overhead"}[l]
}

// coatLimits is what the card allows the wet film of one coat to be, by the step's
// method and by the orientation of its surfaces.
type coatLimits struct {
	least, ask, most material.Spec[unit.WetFilm]
	limit            CoatLimit // that the most comes from
}

// filmSlack is a film that no comb shows.
const filmSlack = unit.WetFilm(unit.Micrometre)

// oneCoat gives the limits of a step's coats.
func (m *maker) oneCoat(s *Step) coatLimits {
	isWall, isOverhead := m.orientations(s.Path)
	return limitsOn(s.Card, !s.Job.Method.IsSpray, isWall, isOverhead)
}

// limitsOn gives a card's limits on one coat: of several that hold, the tightest.
func limitsOn(card *job.Card, isRolled, isWall, isOverhead bool) coatLimits {
	c := &card.CoatLimits
	l := coatLimits{least: c.CoatLeast, ask: c.CoatAsk, most: c.CoatMost}
	tighter := func(holds bool, most material.Spec[unit.WetFilm], limit CoatLimit) {
		if holds && most.Known && (!l.most.Known || most.Value < l.most.Value) {
			l.most, l.limit = most, limit
		}
	}
	tighter(isRolled, c.CoatMostRolled, MostRolled)
	tighter(isWall, c.CoatMostWall, MostWall)
	tighter(isOverhead, c.CoatMostOverhead, MostOverhead)
	return l
}

// MostInOneCoat is the largest wet film of one coat that lies flat.
func MostInOneCoat(card *job.Card, isRolled bool) material.Spec[unit.WetFilm] {
	return limitsOn(card, isRolled, false, false).most
}

// orientations says if a surface that gets the step is a wall, and if one lies overhead.
func (m *maker) orientations(step string) (isWall, isOverhead bool) {
	steps, _ := job.Split(step)
	b, _ := job.Split(steps)
	l := orientationsOf(m.plan, b)
	return l.isWall, l.isOverhead
}

type orientations struct{ isWall, isOverhead bool }

func orientationsOf(p *Plan, buildup string) orientations {
	return askSmall(p, "how lies "+buildup, func(m *maker) (l orientations) {
		for _, s := range m.surfaces() {
			if m.look(s.Path + ".buildup"); s.Buildup != buildup {
				continue
			}
			m.look(s.Path + ".lies")
			l.isWall, l.isOverhead = l.isWall || s.Orientation == job.OnWall, l.isOverhead || s.Orientation == job.Overhead
		}
		return l
	})
}

func (l *coatLimits) mostOn(c *job.Card) working.Figure[unit.WetFilm] {
	return chain.OnCard(c, l.most, l.limit.String(), unit.InMicrometre)
}

func (l *coatLimits) tooThick(each unit.WetFilm, coats int) error {
	if l.most.Known && each > l.most.Value+filmSlack {
		return &CoatTooThickError{each, l.most.Value, coats, l.limit}
	}
	return nil
}
