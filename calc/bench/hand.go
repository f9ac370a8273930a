package bench

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// families gives the family for each key on a card.
var families = map[string]cure.Family{
	material.Ketone: cure.Ketone, material.KetoneLow: cure.KetoneLowHydrogenPeroxide, material.Cumene: cure.Cumene,
	material.Acetylacetone: cure.Acetylacetone, material.Benzoyl: cure.BenzoylPaste,
}

// gelling settles what is known of how fast the cup gels.
type gelling struct{ *bencher }

// knowledge settles what is known about card, peroxide, gel time and tin.
func (b gelling) knowledge() {
	card := b.out.Card
	b.cup.Shed = cure.Shed{Product: b.out.Product, Surface: b.out.Surface, ColdestAhead: b.out.Air.ColdestAhead}
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
	if !b.out.IsRatio {
		var err error
		b.cup.Card.Table, err = chain.DoseTable(card)
		b.refuse(err)
	}
	b.gel()
	var err error
	b.batch, err = b.largestBatch()
	b.refuse(err)
}

// batchAt is the temperature up to which a card's largest batch is stated.
var batchAt = working.Given(unit.Of[unit.Temperature](25, unit.InCelsius), "temperature of the largest batch", unit.InCelsius, "", source.CommonPractice)

func (b gelling) largestBatch() (cure.Batch, error) {
	card := b.out.Card
	var share working.Figure[unit.ByMass]
	if !b.out.IsRatio {
		var err error
		if share, err = b.cup.Card.Table.At(batchAt); err != nil {
			share = chain.OnCard(card, card.GelWith, "catalyst of the timed cup", unit.InPercent)
		}
	}
	band, err := chain.GelOf(card).At(batchAt, share)
	return cure.Batch{Most: chain.OnCard(card, card.BatchMost, "largest batch", unit.InGram), Gel: band.Early}, err
}

// gel is the card's gel time, corrected by the builder's cup tests of this tin. A
// time typed on the card is the sheet's: it doesn't make the tin a timed one.
func (b gelling) gel() {
	gel := chain.GelOf(b.out.Card)
	var tests []cure.CupTest
	for i := range b.plan.Job.Tests {
		if t := &b.plan.Job.Tests[i]; b.isOfTin(t) {
			tests = append(tests, b.cupTest(t))
		}
	}
	tested, err := gel.Tested(tests...)
	if err != nil {
		b.refuse(err)
		b.out.Gel = gel
		return
	}
	b.out.Gel, b.out.Tests = tested, tests
	if len(tests) > 0 || b.out.IsRatio && b.out.Putty == nil { // two parts of a maker's ratio are what its sheet timed
		b.out.Tin = cure.Timed
	}
}

// isOfTin says if a cup test is complete, and of the tin on the bench; while no tin
// is named, of this card.
func (b gelling) isOfTin(t *job.Test) bool {
	tin := b.typed.Tin
	if b.tin != nil {
		tin = *b.tin
	}
	return b.out.Putty == nil && t.Card == b.out.Card.Key && (tin == "" || t.Tin == tin) && t.Gel.Step != nil && t.Temperature.Step != nil
}

func (b gelling) cupTest(t *job.Test) cure.CupTest {
	test := cure.CupTest{Gel: t.Gel, Temperature: t.Temperature, Mass: t.Mass}
	if !b.out.IsRatio {
		test.Catalyst = t.Catalyst
	}
	return test
}

// opened looks for a timed test of today and of this tin that allows cups over the
// table's end, the warmest; the minutes then follow from that test alone. Of two that
// allow as much the sooner counts.
func (b gelling) opened() {
	_, end := b.cup.Card.Table.Ends()
	if b.out.IsRatio || b.out.Surface.Step == nil || b.out.Surface.Value <= end || !mayTestHot(b.out.Card) {
		return
	}
	soonest := unit.Time(0)
	for i := range b.plan.Job.Tests {
		t := &b.plan.Job.Tests[i]
		if !b.isOfTin(t) || t.Day != b.now.Date || t.Temperature.Value < end-1e-9 || t.Mass.Value > cure.TestCup*(1+1e-9) {
			continue
		}
		opened, err := b.work.OpenedBy(chain.GelOf(b.out.Card), b.cupTest(t))
		if err != nil {
			continue
		}
		opened.UpTo = min(opened.UpTo, testMost(b.out.Card))
		if was := b.out.Opened; was != nil && (opened.UpTo < was.UpTo || opened.UpTo == was.UpTo && t.Gel.Value >= soonest) {
			continue
		}
		b.out.Opened, soonest = &opened, t.Gel.Value
		if max(b.out.Surface.Value, b.out.Product.Value) > opened.UpTo+1e-9 {
			continue
		}
		if gel, err := chain.GelOf(b.out.Card).Tested(b.cupTest(t)); err == nil {
			b.out.Gel, b.out.Tin, b.cup.Opened = gel, cure.TimedToday, &opened
		}
	}
}

// mayTestHot says if the card's material may be timed over its table's end: gel
// coat and flow coat on polyester.
func mayTestHot(c *job.Card) bool {
	k := c.Kind
	return c.Chemistry == material.Polyester && (k == material.GelCoat || k == material.FlowCoat)
}

// testMost is the warmest at which a card's material may be timed.
func testMost(c *job.Card) unit.Temperature {
	if c.Kind == material.FlowCoat {
		return flowCoatMost
	}
	return cure.HotMost
}
