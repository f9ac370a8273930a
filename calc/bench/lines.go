package bench

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// weighing works out what the tool in the hand shows.
type weighing struct{ *bencher }

// lines lists what is weighed out in the order in which it goes in, and then the
// catalyst, or the hardener that starts the clock.
func (b weighing) lines() {
	w := display{step: b.displayStep(), scale: unit.InGram}
	if b.isByVolume() {
		w.scale = unit.InMillilitre
	}
	switch {
	case b.out.HasDose:
		b.additions(&w, Product, b.out.Mix.Product)
		b.pour(w.shows)
	case b.out.HasParts && b.out.Putty != nil:
		b.puttyLines(&w)
	case b.out.HasParts:
		b.partLines(&w)
	}
	b.out.Weigh = w.lines
	b.out.Facts = Facts{Covers: b.out.Covers, Comb: b.out.Film}
	if b.out.HasCups {
		b.out.Facts.Cups, b.out.Facts.CupsLeft = b.out.Cups.Count, int(b.out.Cups.Count.Value)
	}
}

// gramStep is the step to which product is weighed where the catalyst isn't
// weighed.
var gramStep = decimal.NewFromInt(1)

// displayStep is the step of the scale under the cup, or the marks of the graduated
// cup.
func (b weighing) displayStep() decimal.Decimal {
	if b.isByVolume() || b.typed.Tool == job.ByScale && b.cup.Tool.Kind() == cure.Scale {
		return b.cup.Tool.Step()
	}
	return gramStep
}

// display adds lines as the scale's display shows them, so that rounding doesn't
// accumulate.
type display struct {
	step  decimal.Decimal
	scale unit.Scale
	exact float64 // in scale
	shows decimal.Decimal
	lines []Line
}

func (w *display) add(part Part, card *job.Card, amount float64, share working.Figure[unit.ByMass]) {
	w.exact += w.scale.From(amount)
	shows := cure.NearestStep(decimal.NewFromFloat(w.exact).Round(6), w.step)
	w.lines = append(w.lines, Line{Part: part, Card: card, Own: Measured{shows.Sub(w.shows), w.scale}, Shows: Measured{shows, w.scale}, Share: share})
	w.shows = shows
}

// additions adds product, by mass, and what goes into it.
func (b weighing) additions(w *display, first Part, amount working.Figure[unit.Mass]) {
	card, m := b.out.Card, b.out.Mix
	w.add(first, card, float64(amount.Value), working.Figure[unit.ByMass]{})
	for _, more := range []struct {
		part  Part
		card  *job.Card
		mass  working.Figure[unit.Mass]
		share working.Figure[unit.ByMass]
	}{
		{Thinner, b.plan.Job.CardByKey(card.Thinner), m.Thinner, b.share.thinner},
		{Wax, b.waxSolution(), m.Wax, b.share.wax},
		{Pigment, nil, m.Pigment, b.share.pigment},
	} {
		if more.mass.Step == nil {
			continue
		}
		w.add(more.part, more.card, float64(more.mass.Value), more.share)
	}
}

// waxSolution is the card of the wax solution that goes into flow coat.
func (b weighing) waxSolution() *job.Card {
	for i := range b.plan.Job.Cards {
		if c := b.plan.Job.Cards[i]; c.Kind == material.WaxSolution {
			return c
		}
	}
	return nil
}

// pour is the catalyst, in the unit of the tool in the hand.
func (b weighing) pour(inCup decimal.Decimal) {
	d := b.out.Dose
	p := Pour{
		Amount: Measured{d.Grams.Number(), unit.InGram}, Other: Measured{d.Millilitres.Number(), unit.InMillilitre},
		Drops: d.Drops, Share: d.OfWhole, Error: d.Error,
	}
	if b.cup.Tool.Kind() == cure.Scale {
		p.Then = Measured{inCup.Add(d.Grams.Number()), unit.InGram}
	} else {
		p.Amount, p.Other = p.Other, p.Amount
	}
	b.out.Pour = &p
}

// partLines lists the parts of a fixed ratio, rounded to the tool: what the
// display shows in the end is their sum.
func (b weighing) partLines(w *display) {
	card := b.out.Card
	a, of := b.rounded[0], b.rounded[1]
	w.lines = []Line{{Part: PartA, Card: card, Own: Measured{a, w.scale}, Shows: Measured{a, w.scale}}}
	w.shows, w.exact = a, a.InexactFloat64()
	if thinner := b.out.Mix.Thinner; thinner.Step != nil {
		of := b.plan.Job.CardByKey(card.Thinner)
		amount := float64(thinner.Value)
		if w.scale == unit.InMillilitre && of != nil {
			amount /= float64(of.Density.Value)
		}
		w.add(Thinner, of, amount, b.share.thinner)
	}
	then := w.shows.Add(of)
	w.lines = append(w.lines, Line{Part: PartB, Card: card, Own: Measured{of, w.scale}, Shows: Measured{then, w.scale}})
	b.out.Pour = &Pour{Amount: Measured{of, w.scale}, Then: Measured{then, w.scale}}
}

// roundParts rounds both parts to the tool's steps; a part of too few steps is
// refused.
func (b weighing) roundParts(p cure.Parts) error {
	if b.isByVolume() {
		for i, v := range []working.Figure[unit.Volume]{p.A.Volume, p.B.Volume} {
			ml, err := b.cup.Tool.Draw(v)
			if err != nil {
				return err
			}
			b.rounded[i] = ml.Number()
		}
		return nil
	}
	for i, m := range []working.Figure[unit.Mass]{p.A.Mass, p.B.Mass} {
		g, err := b.cup.Tool.Weigh(m)
		if err != nil {
			return err
		}
		b.rounded[i] = g.Number()
	}
	return nil
}

var usableSum = working.SumRule("usable minutes, from catalyst in", unit.InMinute)

// minutes is the bar of time of the cup as it is.
func (b weighing) minutes() {
	if !b.out.HasHand {
		return
	}
	h := &b.out.Hand
	spread := h.Spreading
	if spread.Value < 0 {
		spread = working.Given(unit.Time(0), "spreading minutes", unit.InMinute, "none are left", source.Calculated)
	}
	b.out.Usable = working.Sum(usableSum, b.work.Mixing, spread)
	b.out.Minutes = &Minutes{Mix: b.work.Mixing, Spread: b.out.Usable, GelsFrom: h.Cup.Early, GelsUntil: h.Cup.Late}
}

// spreads is how long the cup takes from catalyst in until it is spread.
func (b *bencher) spreads() unit.Time {
	var q chain.Run
	if b.out.Covers.Step == nil {
		return b.out.Usable.Value
	}
	t := chain.Do2(&q, timeToSpread, b.out.Covers, b.work.Speed)
	return b.work.Mixing.Value + t.Value
}

var timeToSpread = working.Rule2[unit.Area, unit.SpreadingSpeed, unit.Time]{Rule: &working.Rule{Formula: "t = A ÷ v", Source: source.Ref{Document: &source.House, Place: "area at the spreading speed"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "t", Meaning: "time to spread the cup", Scale: unit.InMinute, Min: 0, Max: 1e7},
	Args:   []working.Arg{{Symbol: "A", Meaning: "area that the cup covers", Scale: unit.InSquareMetre, Min: 0, Max: 1e4}, {Symbol: "v", Meaning: "spreading speed", Scale: unit.InSquareMetrePerMinute, Min: 0.005, Max: 5}}},
	Code: func(a unit.Area, v unit.SpreadingSpeed) unit.Time { return unit.Time(float64(a) / float64(v)) }}
