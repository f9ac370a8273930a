package chance

import (
	"cmp"
	"sort"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Way is a way to buy a line. Bought before the start, it is what is enough in most
// jobs, and what the first cups teach decides on the rest, of the same batch.
// Bought all at once, it is what is enough in nearly all jobs, and a reserve for
// repairs.
type Way struct {
	Chance  unit.Share                  // wanted, of having enough
	Enough  working.Figure[unit.Factor] // for that chance; SI of the line's scale
	Reserve working.Figure[unit.Factor] // kept for repairs; without a step none
	Have    working.Figure[unit.Factor] // both together
	Buys    Choice
}

// settleWays finds the two ways to buy a line, and buys it in the one that its card
// says. One whose reserve can't be found stays as planned, with the error.
func (l *Line) settleWays(outcome order.Outcome) {
	reserve, err := l.reserve()
	if err != nil {
		l.Err = err
		return
	}
	low, _ := outcome.Enough(0.05) // it fails for no share that is typed here or on a card
	high, _ := outcome.Enough(0.95)
	found := &Confidence{Low: l.Scale.SI(low), High: l.Scale.SI(high)}
	none := working.Figure[unit.Factor]{}
	found.Start = l.way(outcome, l.Card.Chance, "wanted chance of having enough, bought before the start", none)
	found.AtOnce = l.way(outcome, l.Card.AtOnce, "wanted chance of having enough, all bought at once", reserve)
	found.Way = found.Start
	if l.Shop.BuysAtOnce {
		found.Way = found.AtOnce
	}
	l.Confidence = found
	l.settle(l.Scale.From(float64(found.Have.Value)))
	l.choices(outcome)
}

// way finds what to have for a wanted chance, and buys that.
func (l *Line) way(outcome order.Outcome, wanted material.Spec[unit.Share], name string, reserve working.Figure[unit.Factor]) Way {
	enough, _ := outcome.Enough(wanted.Value)
	rule := order.ConfidenceByMass
	if l.Scale == unit.InLitre {
		rule = order.ConfidenceByVolume
	}
	w := Way{Chance: wanted.Value, Reserve: reserve}
	w.Enough = working.By(rule, unit.Factor(l.Scale.SI(enough)), l.Why(), chain.OnCard(l.Card, wanted, name, unit.InPercent).Step)
	w.Have = w.Enough
	if reserve.Step != nil {
		sum := map[unit.Scale]*working.Rule{unit.InKilogram: sumOfMass, unit.InLitre: sumOfVolume}[l.Scale]
		w.Have = working.Sum(sum, w.Enough, reserve)
	}
	other := *l
	if other.settle(l.Scale.From(float64(w.Have.Value))); other.Err == nil {
		w.Buys = other.choice(outcome)
	}
	return w
}

// reserve is what is kept of a colour for repairs.
func (l *Line) reserve() (working.Figure[unit.Factor], error) {
	if l.Card.Reserve.Value <= 0 {
		return working.Figure[unit.Factor]{}, nil
	}
	var q chain.Run
	least := working.Given(material.RepairLeast.Value, "least kept for repairs", unit.InKilogram, "", material.RepairLeast.Mark)
	kept := chain.Do3(&q, order.Reserve, chain.OnCard(l.Card, l.Card.Reserve, "kept for repairs", unit.InPercent), l.Mass, least)
	if l.Scale == unit.InLitre {
		return chain.As[unit.Factor](chain.Do2(&q, plan.VolumeOf, kept, chain.DensityOf(l.Card))), q.Err
	}
	return chain.As[unit.Factor](kept), q.Err
}

// choice is what a line buys, how likely that is enough, and what of it is left.
func (l *Line) choice(outcome order.Outcome) Choice {
	median, _ := outcome.Enough(0.5)
	have := l.Stock.Add(l.Bought.Bought)
	c := Choice{Packs: l.Packs, Bought: l.Bought, Chance: outcome.Chance(have.InexactFloat64()),
		Left: decimal.Max(have.Sub(decimal.NewFromFloat(median).Round(4)), decimal.Zero)}
	if c.Bought.IsPriced {
		worth := c.Bought.Cost.Mul(c.Left).Div(c.Bought.Bought)
		c.Worth = decimal.NewNullDecimal(decimal.Min(worth, c.Bought.Cost)) // what was in stock is worth no more than what is paid now
	}
	return c
}

// choices lists what else could be bought, and how likely each is to be enough.
func (l *Line) choices(outcome order.Outcome) {
	if l.Err != nil {
		return
	}
	offer := func(c Choice) {
		if !l.offered(c.Bought) {
			l.Confidence.Choices = append(l.Confidence.Choices, c)
		}
	}
	shown := l.choice(outcome)
	shown.IsChosen = true
	offer(shown)
	offer(l.Confidence.Start.Buys)
	offer(l.Confidence.AtOnce.Buys)
	for _, chance := range []unit.Share{0.5, 0.7, 0.8, 0.9, 0.95, 0.99} {
		amount, _ := outcome.Enough(chance)
		other := *l
		if other.settle(amount); other.Err == nil {
			offer(other.choice(outcome))
		}
	}
	choices := l.Confidence.Choices
	sort.SliceStable(choices, func(i, j int) bool {
		a, b := choices[i].Bought, choices[j].Bought
		return cmp.Or(a.Bought.Cmp(b.Bought), a.Cost.Cmp(b.Cost)) < 0
	})
}
