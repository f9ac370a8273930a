package plan

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// shares is what goes into a cup per mass of product, besides the catalyst.
type shares struct{ thinner, wax, pigment working.Figure[unit.ByMass] }

var (
	noShare = working.Given(unit.ByMass(0), "none", unit.InPercent, "", source.Exact)

	productOfWhole = working.Of4("P = m ÷ (1 + t + x + p)", source.Geometry.At("parts of a whole"), source.Exact,
		working.In("P", "product", unit.InGram, 0, 1e6),
		[]working.Arg{
			working.In("m", "all in the cup but the catalyst", unit.InGram, 0, 1e6),
			working.In("t", "thinner by mass of product", unit.InPure, 0, 1),
			working.In("x", "wax solution by mass of product", unit.InPure, 0, 0.1),
			working.In("p", "pigment paste by mass of product", unit.InPure, 0, 0.3),
		},
		func(m unit.Mass, t, x, p unit.ByMass) unit.Mass { return m / unit.Mass(1+t+x+p) })

	massOfVolume = working.Of2("m = V × ρ", source.Geometry.At("definition of density"), source.Exact,
		working.In("m", "all in the cup but the catalyst", unit.InGram, 0, 1e6),
		[]working.Arg{working.In("V", "all in the cup but the catalyst", unit.InMillilitre, 0, 1e6), working.In("ρ", "density of the mix", unit.InKilogramPerLitre, 0.1, 3)},
		func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) })
)

// PigmentError says that there is more pigment paste than the card allows.
type PigmentError struct{ Share, Limit unit.ByMass }

// Error names both shares.
func (e *PigmentError) Error() string {
	return "plan: pigment paste over the card's limit"
}

// shares gives the additions, refusing what goes past the card's limits.
func (b *bencher) shares() shares {
	card, s := b.out.Card, shares{noShare, noShare, noShare}
	if card.Wax.Known {
		s.wax = chain.OnCard(card, card.Wax, "wax solution", unit.InPercent)
	}
	if b.typed.Pigment.Value > 0 {
		s.pigment = b.typed.Pigment
		if !card.PigmentMost.Known || s.pigment.Value > card.PigmentMost.Value+1e-9 {
			b.refuse(&PigmentError{s.pigment.Value, card.PigmentMost.Value})
		}
	}
	if added := b.thinner(); added.Thinner.Value > 0 {
		s.thinner = b.byMass(added)
	}
	return s
}

// thinner is what was typed at the bench, nought too, or else stands in the
// step that the cup is for.
func (b *bencher) thinner() *job.Step {
	if step := b.step(); b.typed.Thinner.Step == nil && step != nil && step.Coat != nil {
		return step.Job
	}
	return &job.Step{Thinner: b.typed.Thinner, ThinnerByMass: b.typed.ThinnerByMass}
}

// byMass is thinner per mass of product, refused past the card's limit.
func (b *bencher) byMass(added *job.Step) working.Figure[unit.ByMass] {
	m, card := maker{plan: *b.plan}, b.out.Card
	if err := m.checkThinner(added, card); err != nil {
		b.refuse(err)
		return noShare
	}
	if added.ThinnerByMass {
		return chain.As[unit.ByMass](added.Thinner)
	}
	var q chain.Run
	f := chain.Do3(&q, film.ThinnerByMass, chain.As[unit.ByVolume](added.Thinner), chain.DensityOf(card), chain.DensityOf(b.plan.Job.CardByKey(card.Thinner)))
	b.refuse(q.Err)
	return f
}

// density of the mix: product and thinner; wax solution counts as thinner, and
// pigment paste, near the product's own, as product.
func (b *bencher) density(s shares) working.Figure[unit.Density] {
	card := b.out.Card
	thinner := b.plan.Job.CardByKey(card.Thinner)
	added := s.thinner.Value + s.wax.Value
	if thinner == nil || added == 0 {
		return chain.DensityOf(card)
	}
	var q chain.Run
	byMass := working.Given(added, "thinner and wax solution by mass", unit.InPercent, "", source.Calculated)
	t := chain.Do3(&q, film.ThinnerByVolume, byMass, chain.DensityOf(card), chain.DensityOf(thinner))
	mixed := chain.Do3(&q, film.MixDensity, chain.DensityOf(card), t, chain.DensityOf(thinner))
	b.refuse(q.Err)
	return mixed
}

// mixAndWork settles what goes in, and how it is put on.
func (b *bencher) mixAndWork() {
	s := b.shares()
	density := b.density(s)
	method := b.method()
	wall := material.CupWall(unit.Volume(float64(b.nominal()) / float64(density.Value)))
	b.work = cure.Work{
		Speed:   chain.OfMethod(method, method.Speed, "spreading speed", unit.InSquareMetrePerMinute),
		Stretch: typedOr(b.typed.Stretch, method.LayOff, "minutes to lay off a stretch", unit.InMinute),
		Mixing:  typedOr(b.typed.Mixing, material.Mixing, "minutes to mix", unit.InMinute),
		Usable:  chain.OfMethod(method, method.Usable, "usable share of the early gel time", unit.InPercent),
		Film:    b.out.Film,
		Density: density,
		Loss:    chain.OfMethod(method, method.Loss, "loss", unit.InPercent),
		Leftover: working.Sum(leftoverSum, chain.OfMethod(method, method.Leftover, "left in the tool", unit.InGram),
			working.Given(wall.Value, "left on the wall of the cup", unit.InGram, "", wall.Mark)),
	}
	b.out.Whole = b.whole(density)
	if b.out.Whole.Step == nil {
		return
	}
	b.mix(s)
}

// nominal is the cup that its wall is reckoned for: the amount typed, or the
// card's largest batch.
func (b *bencher) nominal() unit.Mass {
	if b.typed.Amount.Step != nil && !b.typed.ForStep {
		return b.typed.Amount.Value
	}
	return b.out.Card.BatchMost.Value
}

var leftoverSum = working.SumRule("left in cup and tool", unit.InGram)

// mix shares all in the cup out to its parts.
func (b *bencher) mix(s shares) {
	var q chain.Run
	product := chain.Do4(&q, productOfWhole, b.out.Whole, s.thinner, s.wax, s.pigment)
	part := func(share working.Figure[unit.ByMass]) working.Figure[unit.Mass] {
		if share.Value == 0 {
			return working.Figure[unit.Mass]{}
		}
		return chain.Do2(&q, shareOfMass, product, share)
	}
	b.out.Mix = cure.Mix{Product: product, Thinner: part(s.thinner), Wax: part(s.wax), Pigment: part(s.pigment)}
	b.refuse(q.Err)
}

// whole is the amount typed, or the cup of a day's cups.
func (b *bencher) whole(density working.Figure[unit.Density]) working.Figure[unit.Mass] {
	if b.typed.ForStep {
		return working.Figure[unit.Mass]{} // once the largest cup is known
	}
	if b.typed.Volume.Step != nil {
		var q chain.Run
		m := chain.Do2(&q, massOfVolume, b.typed.Volume, density)
		b.refuse(q.Err)
		return m
	}
	if b.typed.Amount.Step == nil {
		b.wait("amount")
	}
	return b.typed.Amount
}
