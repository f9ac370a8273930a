package bench

import (
	"errors"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// A putty mixed by hand is weighed by its recipe, for the size of the cup: the
// resin, then each filler, and last the hardener, which starts the clock and is a
// share of the resin alone. Its minutes are those of the bought filler that it is
// compared with, as of a tin that was never timed.

// Why no cup of a putty mixed by hand is weighed.
var (
	ErrPuttyRecipe   = errors.New("bench: the putty's recipe isn't complete, or can't be mixed")
	ErrPuttyResin    = errors.New("bench: a putty without resin")
	ErrPuttyHardener = errors.New("bench: a putty without a hardener, by the ratio on its tin")
	ErrPuttyCatalyst = errors.New("bench: a putty whose limits are those of a filler that takes a catalyst")
)

// handMixed takes the recipe where the step is mixed by hand.
func (b chooser) handMixed() {
	if b.step == nil || !isHandMixed(b.step) {
		return
	}
	b.out.IsRatio, b.out.Putty = true, new(plan.Putty)
	putties := b.plan.Putties()
	for i := range putties {
		if putties[i].Path == b.step.Job.Putty {
			b.out.Putty = &putties[i]
		}
	}
	has := func(kind fairing.Kind) bool {
		for _, part := range b.out.Putty.Parts {
			if part.Kind == kind && part.Mass.Value > 0 {
				return true
			}
		}
		return false
	}
	switch {
	case !b.out.Putty.Known:
		b.refuse(ErrPuttyRecipe)
	case len(b.out.Card.Families) > 0: // no catalyst table is known of a resin: what holds for a filler ready mixed doesn't
		b.refuse(ErrPuttyCatalyst)
	case !has(fairing.Resin):
		b.refuse(ErrPuttyResin)
	case !has(fairing.Hardener):
		b.refuse(ErrPuttyHardener)
	}
}

// inPutty is what goes into the cup of each kind of part, in the recipe's order.
func (b weighing) inPutty(q *chain.Run, is func(fairing.Kind) bool) (parts []plan.PuttyPart) {
	p := b.out.Putty
	volume := chain.Do2(q, plan.VolumeOf, b.out.Whole, p.Made.Density)
	for _, part := range p.Parts {
		if is(part.Kind) && part.Mass.Value > 0 {
			part.Weigh = chain.Do3(q, fairing.ToWeigh, part.Mass, volume, p.Made.Volume)
			parts = append(parts, part)
		}
	}
	return parts
}

func isResin(k fairing.Kind) bool    { return k == fairing.Resin }
func isHardener(k fairing.Kind) bool { return k == fairing.Hardener }
func isFiller(k fairing.Kind) bool   { return !isResin(k) && !isHardener(k) }

var (
	resinInCup    = working.SumRule("resin in the cup", unit.InGram)
	hardenerInCup = working.SumRule("hardener in the cup", unit.InGram)
)

// puttyParts is the resin and the hardener of the cup.
func (b weighing) puttyParts() (parts cure.Parts, err error) {
	if len(b.out.Reasons) > 0 || b.out.Whole.Step == nil {
		return parts, nil
	}
	var q chain.Run
	sum := func(rule *working.Rule, is func(fairing.Kind) bool) working.Figure[unit.Mass] {
		var list []working.Figure[unit.Mass]
		for _, part := range b.inPutty(&q, is) {
			list = append(list, part.Weigh)
		}
		return working.Sum(rule, list...)
	}
	parts.A.Mass, parts.B.Mass = sum(resinInCup, isResin), sum(hardenerInCup, isHardener)
	return parts, q.Err
}

// puttyLines lists resin and fillers as the scale shows them, and the hardener.
func (b weighing) puttyLines(w *display) {
	var q chain.Run
	for i, is := range []func(fairing.Kind) bool{isResin, isFiller} {
		for _, part := range b.inPutty(&q, is) {
			as := Filler
			if i == 0 {
				as = Resin
			}
			w.add(as, b.plan.Job.CardByKey(part.Card), float64(part.Weigh.Value), working.Figure[unit.ByMass]{})
			w.lines[len(w.lines)-1].Name = part.Name
		}
	}
	hardener := b.rounded[1]
	then := w.shows.Add(hardener)
	w.lines = append(w.lines, Line{Part: PartB, Card: b.out.Card, Own: Measured{hardener, w.scale}, Shows: Measured{then, w.scale}})
	b.out.Pour = &Pour{Amount: Measured{hardener, w.scale}, Then: Measured{then, w.scale}}
}

// PuttyTakes is what goes into the cup of the parts that ship, by their card.
func (b *Bench) PuttyTakes() map[string]unit.Mass {
	if b.Putty == nil || !b.HasParts {
		return nil
	}
	takes := map[string]unit.Mass{}
	for _, part := range b.Putty.Parts {
		if part.Card != "" && b.Putty.Made.Mass.Value > 0 {
			takes[part.Card] += part.Mass.Value / b.Putty.Made.Mass.Value * b.Whole.Value
		}
	}
	return takes
}
