package chain

import (
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// GelOf is what a card says of its gel time, without the builder's cup tests. A
// time that the builder typed keeps the card's usual spread, earlier and later in
// the same ratio.
func GelOf(card *job.Card) cure.Gel {
	time := card.GelTime
	if time.Mark == source.Typed {
		if shipped, found := material.Find(card.ShippedKey()); found {
			ratio := card.GelTime.Value / shipped.GelTime.Value
			time.Low, time.High = shipped.GelTime.Low*ratio, shipped.GelTime.High*ratio
		}
	}
	g := cure.Gel{
		Time:        around(card, time, "gel time", unit.InMinute),
		Temperature: OnCard(card, card.GelAt, "temperature of the timed cup", unit.InCelsius),
		Energy:      around(card, card.GelEnergy, "activation energy", unit.InKilojoulePerMole),
		Mass:        OnCard(card, card.GelMass, "mass of the timed cup", unit.InGram),
	}
	if len(card.Families) > 0 {
		g.Catalyst = OnCard(card, card.GelWith, "catalyst of the timed cup", unit.InPercent)
		g.Order = around(card, card.GelOrder, "power of the catalyst", unit.InPure)
	}
	return g
}

func around[Q unit.Quantity](card *job.Card, s material.Spec[Q], name string, scale unit.Scale) cure.Range[Q] {
	at := func(v Q, name string) working.Figure[Q] { return working.Given(v, name, scale, card.Name, s.Mark) }
	return cure.Range[Q]{Low: at(min(s.Low, s.Value), name+", least"), Mid: at(s.Value, name), High: at(max(s.High, s.Value), name+", most")}
}
