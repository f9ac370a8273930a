package page

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// PerCoat is what one coat takes of a card, beside the trade's figure.
type PerCoat struct {
	Step  string // its path
	Takes string
	Text  string
	Asks  bool // it lies outside, and nobody said that it is intended
}

// Trade says of each coat of a card what it takes, beside the trade's figure, and asks where it lies outside.
func (s *State) Trade(card *job.Card) []PerCoat {
	var list []PerCoat
	for i := range s.Plan.Buildups() {
		b := &s.Plan.Buildups()[i]
		for j := range b.Steps {
			step := &b.Steps[j]
			takes, trade, known := step.CrossCheck()
			if !known || step.Card.Key != card.Key {
				continue
			}
			c := perCoat(s, step, float64(takes.Value), float64(trade.Low), float64(trade.High))
			switch v := takes.Value; {
			case v >= trade.Low && v <= trade.High:
			case s.Doc().Get(job.Real(perCoatOf(step))) == perCoatText(takes.Value):
				c.Text += " " + words.PerCoatIntended
			default:
				c.Asks, c.Text = true, c.Text+" "+words.PerCoatOdd(v > trade.High)
			}
			list = append(list, c)
		}
	}
	return list
}

// perCoatOf is the path under which it is noted that what a coat takes is intended, and perCoatText what is noted: the
// figure, so that another one is asked about again.
func perCoatOf(step *plan.Step) string { return step.Path + ".per-area" }

func perCoatText(takes unit.MassPerArea) string {
	return unit.Write(float64(takes), unit.InGramPerSquareMetre, 2)
}

// intended notes that what the coat at the path takes is as its builder wants it.
func intended(s *State, m Message) []Effect {
	step, _ := s.Plan.StepAt(m.Path)
	if step == nil {
		return nil
	}
	takes, _, known := step.CrossCheck()
	if !known {
		return nil
	}
	return edit(s, s.Doc().Set(job.Real(perCoatOf(step)), perCoatText(takes.Value)), "")
}

func perCoat(s *State, step *plan.Step, takes, low, high float64) PerCoat {
	scale := unit.InKilogramPerSquareMetre
	if s.Plan.Job.Units.Scale(unit.AreaWeights) != unit.InGramPerSquareMetre {
		scale = s.Plan.Job.Units.Scale(unit.AreaWeights)
	}
	write := func(v float64) string { return unit.Write(v, scale, 2) }
	return PerCoat{Step: step.Path, Takes: words.PerCoat(write(takes)),
		Text: words.PerCoatTrade(unit.Number(scale.From(low), 2), write(high), words.CommonPractice, s.StepName(step.Path))}
}
