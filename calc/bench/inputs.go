package bench

import (
	"math"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Chosen is what a cup is mixed of, and for what.
type Chosen struct {
	Card    *job.Card                    // nil: none that can be mixed
	IsRatio bool                         // parts A and B instead of a catalyst
	Putty   *plan.Putty                  // that is mixed by hand; nil: bought
	Origin  Origin                       // where material, method and film come from
	Coat    string                       // path of the step that the cup is for; empty: none
	Method  *material.Method             // how it is put on
	Film    working.Figure[unit.WetFilm] // of one coat
}

// Choose says what the next cup is mixed of, which depends on no temperature.
func Choose(p *plan.Plan) Chosen {
	b := newBencher(p, Now{})
	chooser{b}.inputs()
	return b.out.Chosen
}

// chooser settles what a cup is mixed of, and for what.
type chooser struct{ *bencher }

// inputs settles material, method and film: as typed, or those of the next step
// that the job has to do, or of the last cup, or the card that ships. It is false
// where the material can't be mixed.
func (b chooser) inputs() bool {
	j := &b.plan.Job
	next := b.nextStep()
	last := lastCup(j)
	key := b.typed.Card
	switch {
	case key != "":
	case next != nil:
		key, b.out.Origin = next.Card.Key, FromStep
	case last != nil:
		key, b.out.Origin = last.Card, FromLastCup
	default:
		key, b.out.Origin = "gelcoat", FromShipped
	}
	card := j.CardByKey(key)
	if card == nil || !canMix(card) {
		return false
	}
	b.out.Card, b.out.IsRatio = card, len(card.Families) == 0
	if next != nil && next.Card == card {
		b.step, b.out.Coat = next, next.Path
	}
	b.handMixed()
	if b.typed.ForStep && b.step == nil {
		b.wait("step")
	}
	b.out.Method = b.method(last)
	b.out.Film = b.film()
	return true
}

func canMix(c *job.Card) bool { return plan.Fits("coat", c) || plan.Fits("fill", c) }

// nextStep is the step that the cup is for: the chosen one, or the first that
// isn't done; nil: none, or the cup is for no coat.
func (b chooser) nextStep() *plan.Step {
	if b.typed.HasAmount && b.typed.Step == "" {
		return nil
	}
	for i := range b.plan.Buildups() {
		built := &b.plan.Buildups()[i]
		for k := range built.Steps {
			s := &built.Steps[k]
			switch {
			case s.Card == nil || s.Coat == nil && s.Fill == nil && !isHandMixed(s):
			case b.typed.Step != "":
				if s.Path == b.typed.Step && !b.typed.HasAmount {
					return s
				}
			case len(built.Surfaces) > 0 && !s.Progress.IsDone():
				return s
			}
		}
	}
	return nil
}

// isHandMixed says if a step is filled with a putty mixed by hand: while that can't
// be mixed, the cup waits for it and holds nothing else.
func isHandMixed(s *plan.Step) bool { return s.Job != nil && s.Job.Putty != "" }

// lastCup is the last cup of the log whose card is known.
func lastCup(j *job.Job) *job.Cup {
	for i := len(j.Cups) - 1; i >= 0; i-- {
		if c := j.CardByKey(j.Cups[i].Card); c != nil && canMix(c) {
			return &j.Cups[i]
		}
	}
	return nil
}

// method is how the cup is put on: chosen, the step's, the last cup's of this
// card, or the card's usual one.
func (b chooser) method(last *job.Cup) *material.Method {
	card := b.out.Card
	switch {
	case b.typed.HasMethod:
		return b.typed.Method
	case b.step != nil && plan.MethodOf(b.step) != nil:
		return plan.MethodOf(b.step)
	case last != nil && last.Card == card.Key && last.Method != "":
		if m, found := material.FindMethod(last.Method); found {
			return m
		}
	}
	for _, key := range card.Methods {
		if m, found := material.FindMethod(key); found {
			return m
		}
	}
	if plan.Fits("fill", card) {
		m, _ := material.FindMethod("knife")
		return m
	}
	return b.typed.Method
}

// film is the wet film of one coat: typed, or the step's, or the card's usual
// film in its usual coats.
func (b chooser) film() working.Figure[unit.WetFilm] {
	card := b.out.Card
	switch {
	case b.typed.Film.Step != nil:
		return b.typed.Film
	case b.step != nil && b.step.Coat != nil && b.step.Coat.WetEach.Step != nil:
		return b.step.Coat.WetEach
	case plan.Fits("fill", card):
		return chain.OnCard(card, card.PassMost, "largest pass", unit.InMillimetre)
	}
	coats := math.Ceil(float64(card.UsualFilm.Value/card.CoatMost.Value) - 1e-9)
	return working.Given(card.UsualFilm.Value/unit.WetFilm(coats), "usual wet film of one coat", unit.InMicrometre, card.Name, card.UsualFilm.Mark)
}
