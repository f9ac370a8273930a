package bench

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// shares is what goes into a cup per mass of product, besides the catalyst.
type shares struct{ thinner, wax, pigment working.Figure[unit.ByMass] }

var (
	noShare = working.Given(unit.ByMass(0), "none", unit.InPercent, "", source.Exact)

	productOfWhole = working.Rule4[unit.Mass, unit.ByMass, unit.ByMass, unit.ByMass, unit.Mass]{Rule: &working.Rule{Formula: "P = m ÷ (1 + t + x + p)", Source: source.Ref{Document: &source.Geometry, Place: "parts of a whole"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "P", Meaning: "product", Scale: unit.InGram, Min: 0, Max: 1e6},
		Args: []working.Arg{
			{Symbol: "m", Meaning: "all in the cup but the catalyst", Scale: unit.InGram, Min: 0, Max: 1e6},
			{Symbol: "t", Meaning: "thinner by mass of product", Scale: unit.InPure, Min: 0, Max: 1},
			{Symbol: "x", Meaning: "wax solution by mass of product", Scale: unit.InPure, Min: 0, Max: 0.1},
			{Symbol: "p", Meaning: "pigment paste by mass of product", Scale: unit.InPure, Min: 0, Max: 0.3},
		}},
		Code: func(m unit.Mass, t, x, p unit.ByMass) unit.Mass { return m / unit.Mass(1+t+x+p) }}

	partOfProduct = working.Rule2[unit.Mass, unit.ByMass, unit.Mass]{Rule: &working.Rule{Formula: "m_a = P × a ÷ 100", Source: source.Ref{Document: &source.Geometry, Place: "definition of a share"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "m_a", Meaning: "addition", Scale: unit.InGram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "P", Meaning: "product", Scale: unit.InGram, Min: 0, Max: 1e6}, {Symbol: "a", Meaning: "addition by mass of product", Scale: unit.InPercent, Min: 0, Max: 100}}},
		Code: func(p unit.Mass, share unit.ByMass) unit.Mass { return p * unit.Mass(share) }}

	massOfVolume = working.Rule2[unit.Volume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m = V × ρ", Source: source.Ref{Document: &source.Geometry, Place: "definition of density"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "m", Meaning: "all in the cup but the catalyst", Scale: unit.InGram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "V", Meaning: "all in the cup but the catalyst", Scale: unit.InMillilitre, Min: 0, Max: 1e6}, {Symbol: "ρ", Meaning: "density of the mix", Scale: unit.InKilogramPerLitre, Min: 0.1, Max: 3}}},
		Code: func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) }}
)

// PigmentError says that there is more pigment paste than the card allows.
type PigmentError struct{ Share, Limit unit.ByMass }

// Error names both shares.
func (e *PigmentError) Error() string {
	return "bench: pigment paste over the card's limit"
}

// mixer settles what goes into the cup, and how it is put on.
type mixer struct{ *bencher }

// shares gives the additions, refusing what goes past the card's limits.
func (b mixer) shares() shares {
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

// thinner is what was typed at the bench, even zero, or else at the step that the
// cup is for.
func (b mixer) thinner() *job.Step {
	if b.typed.Thinner.Step == nil && b.step != nil && b.step.Coat != nil {
		return b.step.Job
	}
	return &job.Step{Thinner: b.typed.Thinner, ThinnerByMass: b.typed.ThinnerByMass}
}

// byMass is thinner per mass of product, refused past the card's limit.
func (b mixer) byMass(added *job.Step) working.Figure[unit.ByMass] {
	card := b.out.Card
	if err := plan.CheckThinner(added, card, b.plan.Job.CardByKey(card.Thinner)); err != nil {
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

// density is that of the mix of product and thinner; wax solution counts as
// thinner, and pigment paste, near the product's own, as product.
func (b mixer) density(s shares) working.Figure[unit.Density] {
	card := b.out.Card
	if p := b.out.Putty; p != nil && p.Known {
		return p.Made.Density
	}
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

// recipe settles what goes in, and how it is put on.
func (b mixer) recipe() {
	b.share = b.shares()
	density := b.density(b.share)
	method := b.out.Method
	layOff := chain.OfMethod(method, method.LayOff, "minutes to lay off a stretch", unit.InMinute)
	if b.typed.Stretch.Step != nil {
		layOff = b.typed.Stretch
	}
	b.work = cure.Work{
		Speed:    chain.OfMethod(method, method.Speed, "spreading speed", unit.InSquareMetrePerMinute),
		Stretch:  layOff,
		Mixing:   b.mixing(),
		Usable:   chain.OfMethod(method, method.Usable, "usable share of the early gel time", unit.InPercent),
		Film:     b.out.Film,
		Density:  density,
		Loss:     chain.OfMethod(method, method.Loss, "loss", unit.InPercent),
		Leftover: b.leftover(density),
	}
}

// mixing is how long the cup is stirred, from catalyst in: as typed, or as usual.
// Kneading a filler is in the speed of the knife.
func (b mixer) mixing() working.Figure[unit.Time] {
	switch {
	case b.typed.Mixing.Step != nil:
		return b.typed.Mixing
	case b.out.Card.Kind == material.Filler:
		return working.Given(unit.Time(0), "minutes to mix", unit.InMinute, "kneading is in the speed", source.CommonPractice)
	}
	return working.Given(material.Mixing.Value, "minutes to mix", unit.InMinute, "not typed", material.Mixing.Mark)
}

// leftover is what stays on the cup's wall, and in a tool that isn't wet yet.
func (b mixer) leftover(density working.Figure[unit.Density]) working.Figure[unit.Mass] {
	amount := b.typed.Amount.Value
	if amount == 0 {
		amount = b.out.Card.BatchMost.Value
	}
	held := chain.OfMethod(b.out.Method, b.out.Method.Leftover, "held by the wet tool", unit.InGram)
	if b.out.Method.IsKnife && b.out.Card.Kind == material.Filler { // mixed on a board
		return held
	}
	spec := material.CupWall(unit.Volume(float64(amount) / float64(density.Value)))
	wall := working.Given(spec.Value, "left on the wall of the cup", unit.InGram, "", spec.Mark)
	if b.isWet() {
		return wall
	}
	return working.Sum(leftoverSum, held, wall)
}

// isWet says if the tool is wet from a cup of the same spell.
func (b mixer) isWet() bool {
	spell := float64(b.out.Card.Chemistry.Spell().Value)
	for i := range b.plan.Job.Cups {
		c := &b.plan.Job.Cups[i]
		if c.Card == b.out.Card.Key && c.Method == b.out.Method.Key && c.In > 0 && b.now.Unix >= c.In && b.now.Unix-c.In < spell {
			return true
		}
	}
	return false
}

var leftoverSum = working.SumRule("left in cup and tool", unit.InGram)

// fill sets the mass of the cup, and divides it among its parts.
func (b *bencher) fill(whole working.Figure[unit.Mass]) {
	b.out.Whole = whole
	s := b.share
	var q chain.Run
	product := chain.Do4(&q, productOfWhole, whole, s.thinner, s.wax, s.pigment)
	part := func(share working.Figure[unit.ByMass]) working.Figure[unit.Mass] {
		if share.Value == 0 {
			return working.Figure[unit.Mass]{}
		}
		return chain.Do2(&q, partOfProduct, product, share)
	}
	b.out.Mix = cure.Mix{Product: product, Thinner: part(s.thinner), Wax: part(s.wax), Pigment: part(s.pigment)}
	b.refuse(q.Err)
}
