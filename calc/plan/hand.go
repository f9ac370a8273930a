package plan

import (
	"errors"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// families is a card's keys as the sums name them.
var families = map[string]cure.Family{
	material.Ketone: cure.Ketone, material.KetoneLow: cure.KetoneLowHydrogenPeroxide, material.Cumene: cure.Cumene,
	material.Acetylacetone: cure.Acetylacetone, material.Benzoyl: cure.BenzoylPaste,
}

// hand settles temperatures, table and gel time, and from them the time in hand
// and the largest cup.
func (b *bencher) hand() {
	card := b.out.Card
	b.cup.Shed = cure.Shed{Product: b.typed.Product, Surface: b.typed.Surface, ColdestAhead: b.out.Air.ColdestAhead}
	b.cup.Card = cure.Card{
		Floor:   chain.OnCard(card, card.Floor, "least catalyst, of all that cures", unit.InPercent),
		Ceiling: chain.OnCard(card, card.Ceiling, "most catalyst, of the product alone", unit.InPercent),
		Limits:  cure.Limits{Coldest: card.SurfaceLeast.Value, Warmest: card.SurfaceMost.Value},
		Takes:   cure.Takes{Promoted: card.Promoted},
	}
	for _, key := range card.Families {
		b.cup.Card.Takes.Families = append(b.cup.Card.Takes.Families, families[key])
	}
	if catalyst := b.plan.Job.CardByKey(b.catalystKey()); catalyst != nil {
		b.cup.Peroxide = cure.Peroxide{Family: families[catalyst.Family], Density: chain.DensityOf(catalyst)}
	}
	if b.typed.Product.Step == nil {
		b.wait("product-temp")
	}
	if b.typed.Surface.Step == nil {
		b.wait("surface-temp")
	}
	gel, ok := b.gel()
	if b.out.Gel = gel; !ok || len(b.out.Waiting) > 0 {
		return
	}
	b.timeInHand(gel)
}

func (b *bencher) timeInHand(gel cure.Gel) {
	var share working.Figure[unit.ByMass]
	if !b.out.IsRatio {
		var err error
		if b.cup.Card.Table, err = chain.DoseTable(b.out.Card); err != nil {
			b.refuse(err)
			return
		}
		if share, err = b.cup.Card.Table.At(b.typed.Surface); err != nil {
			b.refuse(b.cup.Card.Takes.Check(b.cup.Peroxide.Family))
			b.refuse(b.cup.Shed.Check(b.cup.Card.Limits))
			b.refuse(err)
			b.offers(gel)
			return
		}
	}
	batch, err := b.largestBatch()
	if err != nil {
		b.refuse(err)
		return
	}
	hand, err := b.work.InHand(gel, b.cup.Shed, share, batch, b.out.Tested)
	if err != nil {
		b.refuse(err)
		return
	}
	b.out.Hand, b.out.HasHand = hand, true
	b.out.Usable = working.Sum(usableSum, b.work.Mixing, working.Figure[unit.Time]{Value: max(0, hand.Spreading.Value), Step: hand.Spreading.Step})
	b.dayInCups()
}

var usableSum = working.SumRule("usable minutes, from catalyst in", unit.InMinute)

// offers lists what would help while there is no dose at all.
func (b *bencher) offers(gel cure.Gel) {
	c := b.cup
	c.Mix = b.out.Mix
	b.out.Offers = cure.Situation{Cup: c, Gel: gel, Work: b.work}.Remedies(b.means())
}

// batchAt is the temperature up to which a card's largest batch is stated.
var batchAt = working.Given(unit.Of[unit.Temperature](25, unit.InCelsius), "temperature of the largest batch", unit.InCelsius, "", source.CommonPractice)

func (b *bencher) largestBatch() (cure.Batch, error) {
	card := b.out.Card
	var share working.Figure[unit.ByMass]
	if !b.out.IsRatio {
		var err error
		if share, err = b.cup.Card.Table.At(batchAt); err != nil {
			share = chain.OnCard(card, card.GelWith, "catalyst of the timed cup", unit.InPercent)
		}
	}
	band, err := shippedGel(card).At(batchAt, share)
	return cure.Batch{Most: chain.OnCard(card, card.BatchMost, "largest batch", unit.InGram), Gel: band.Early}, err
}

// gel is the card's gel time, moved by the builder's own cup tests.
func (b *bencher) gel() (cure.Gel, bool) {
	card := b.out.Card
	gel := shippedGel(card)
	var tests []cure.CupTest
	for _, t := range b.plan.Job.Tests {
		if t.Card != card.Key || b.typed.Tin != "" && t.Tin != b.typed.Tin || t.Gel.Step == nil || t.Temperature.Step == nil {
			continue
		}
		test := cure.CupTest{Gel: t.Gel, Temperature: t.Temperature, Mass: t.Mass}
		if !b.out.IsRatio {
			test.Catalyst = t.Catalyst
		}
		tests = append(tests, test)
	}
	tested, err := gel.Tested(tests...)
	if err != nil {
		b.refuse(err)
		return gel, false
	}
	b.out.Tested = len(tests) > 0 || card.GelTime.Mark == source.Typed && b.typed.Tin == ""
	return tested, true
}

// shippedGel is what a card says of its gel time. A time that the builder typed
// keeps the card's usual spread.
func shippedGel(card *job.Card) cure.Gel {
	time := card.GelTime
	if time.Mark == source.Typed {
		if shipped, found := material.Find(card.ShippedKey()); found && shipped.GelTime.Value > 0 {
			ratio := card.GelTime.Value / shipped.GelTime.Value
			time.Low, time.High = shipped.GelTime.Low*ratio, shipped.GelTime.High*ratio
		}
	}
	g := cure.Gel{
		Time:        around(card, time, "gel time", unit.InMinute),
		Temperature: chain.OnCard(card, card.GelAt, "temperature of the timed cup", unit.InCelsius),
		Energy:      around(card, card.GelEnergy, "activation energy", unit.InKilojoulePerMole),
		Mass:        chain.OnCard(card, card.GelMass, "mass of the timed cup", unit.InGram),
	}
	if len(card.Families) > 0 {
		g.Catalyst = chain.OnCard(card, card.GelWith, "catalyst of the timed cup", unit.InPercent)
		g.Order = around(card, card.GelOrder, "power of the catalyst", unit.InPure)
	}
	return g
}

func around[Q unit.Quantity](card *job.Card, s material.Spec[Q], name string, scale unit.Scale) cure.Range[Q] {
	at := func(v Q, name string) working.Figure[Q] { return working.Given(v, name, scale, card.Name, s.Mark) }
	return cure.Range[Q]{Low: at(min(s.Low, s.Value), name+", least"), Mid: at(s.Value, name), High: at(max(s.High, s.Value), name+", most")}
}

// dayInCups shares a coat out to cups, where the bench mixes for a step.
func (b *bencher) dayInCups() {
	if !b.typed.ForStep {
		return
	}
	s := b.step()
	if s == nil || s.Coat == nil || s.Coat.Mix.Step == nil {
		b.wait("step")
		return
	}
	var q chain.Run
	perCoat := chain.Do2(&q, mixOfOneCoat, s.Coat.Mix, s.Coat.AllCoats)
	need := chain.Do2(&q, massOfVolume, perCoat, b.work.Density)
	smallest := working.Given(unit.Mass(0), "smallest cup", unit.InGram, "", source.Exact)
	if q.Err == nil {
		cups, err := cure.CupsFor(need, b.out.Hand.Largest, smallest, b.work.Leftover)
		if q.Err = err; err == nil {
			b.out.Cups, b.out.HasCups = cups, true
			b.out.Whole = cups.Each
			b.mix(b.shares())
		}
	}
	var short *cure.CupsError
	if errors.As(q.Err, &short) && b.out.Hand.Bound == cure.Untested {
		q.Err = ErrTestFirst
	}
	b.refuse(q.Err)
}

var mixOfOneCoat = working.Of2("V = M ÷ n", source.Geometry.At("equal coats"), source.Exact,
	working.In("V", "mix for one coat", unit.InLitre, 0, 1e5),
	[]working.Arg{working.In("M", "mix for all coats", unit.InLitre, 0, 1e5), working.In("n", "coats", unit.InPure, 1, 50)},
	func(m unit.Volume, n unit.Factor) unit.Volume { return m / unit.Volume(n) })
