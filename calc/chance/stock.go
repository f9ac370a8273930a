package chance

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	stockLeftMass   = stockLeft[unit.Mass](unit.InKilogram)
	stockLeftVolume = stockLeft[unit.Volume](unit.InLitre)
)

func stockLeft[Q unit.Quantity](scale unit.Scale) working.Rule2[Q, Q, Q] {
	return working.Rule2[Q, Q, Q]{Rule: &working.Rule{Formula: "S = max(0, s − g)", Source: source.Ref{Document: &source.House, Place: "stock falls as cups are logged"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "S", Meaning: "in stock now", Scale: scale, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "s", Meaning: "in stock when it was counted", Scale: scale, Min: 0, Max: 1e6}, {Symbol: "g", Meaning: "in cups logged since", Scale: scale, Min: 0, Max: 1e6}}},
		Code: func(s, gone Q) Q { return max(0, s-gone) }}
}

// stock is what was counted of a material, less what went into cups since.
func (l *Line) stock(j *job.Job) {
	counted := l.Shop.Stock
	if l.Grade > 0 { // one grade is no use for another
		counted = l.Shop.ByGrade[l.Grade.String()]
	}
	l.Stock = plan.InBasis(l.Card, counted)
	if !l.Stock.IsPositive() {
		return
	}
	var taken unit.Mass
	for i := range j.Cups {
		if c := &j.Cups[i]; c.In > 0 && isAfter(c.Path, l.Shop.Counted) {
			taken += takenBy(j, c, l.Card)
		}
	}
	if taken > 0 {
		size := job.PackSize{Amount: decimal.NewFromFloat(float64(taken)).Round(6), Scale: unit.InKilogram}
		l.Taken = decimal.Min(l.Stock, plan.InBasis(l.Card, size))
		l.Stock = l.Stock.Sub(l.Taken)
	}
}

// takenBy is how much of a material went into a cup. A cup of an older job
// doesn't say what was added: all of it counts as product.
func takenBy(j *job.Job, c *job.Cup, card *job.Card) unit.Mass {
	switch product := j.CardByKey(c.Card); {
	case c.Parts != nil:
		return c.Parts[card.Key]
	case card.Key == c.Card && c.Product.Step == nil:
		return c.Mixed.Value
	case card.Key == c.Card:
		return c.Product.Value
	case card.Key == material.WaxKey:
		return c.Wax.Value
	case card.Key == c.Catalyst:
		return c.DoseMass.Value
	case product != nil && card.Key == product.Thinner:
		return c.Thinner.Value
	}
	return 0
}

// isAfter says if a cup was logged after the stock was counted. Cups are
// numbered as they come, and a number is never used twice.
func isAfter(cup, counted string) bool {
	number := func(path string) (int, error) { return strconv.Atoi(strings.TrimPrefix(path, "cup.")) }
	n, err := number(cup)
	last, err2 := number(counted)
	return err2 != nil || err == nil && n > last
}

// stockStep gives the working of what is in stock.
func (l *Line) stockStep() *working.Step {
	now := working.Given(unit.Factor(l.Scale.SI(l.Stock.InexactFloat64())), "in stock", l.Scale, "", source.Typed)
	if l.Taken.IsZero() {
		return now.Step
	}
	counted, taken := l.Scale.SI(l.Stock.Add(l.Taken).InexactFloat64()), l.Scale.SI(l.Taken.InexactFloat64())
	const name, gone, origin = "in stock when it was counted", "in cups logged since", "the log"
	var q chain.Run
	if l.Scale == unit.InKilogram {
		return chain.Do2(&q, stockLeftMass, working.Given(unit.Mass(counted), name, l.Scale, "", source.Typed), working.Given(unit.Mass(taken), gone, l.Scale, origin, source.Calculated)).Step
	}
	return chain.Do2(&q, stockLeftVolume, working.Given(unit.Volume(counted), name, l.Scale, "", source.Typed), working.Given(unit.Volume(taken), gone, l.Scale, origin, source.Calculated)).Step
}
