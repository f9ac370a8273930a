package plan

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Order is what to buy.
type Order struct {
	Lines    []Line
	Cost     decimal.Decimal // of the lines that have prices
	Unpriced int             // lines to buy without a price
}

// Line is one material: what the plan needs, what is there, what to buy.
type Line struct {
	Card   *job.Card
	Scale  *unit.Scale // of the decimals below: kg, L, m or pieces
	Mass   working.Figure[unit.Mass]
	Volume working.Figure[unit.Volume]
	Length working.Figure[unit.Length]
	Pieces working.Figure[unit.Factor]
	Need   decimal.Decimal // rounded up to what a scale shows
	Stock  decimal.Decimal
	ToBuy  decimal.Decimal
	Packs  []PackCount
	Bought order.Purchase
	Err    error // packs could not be chosen
}

// PackCount is so many packs of a size.
type PackCount struct {
	Count int
	Size  job.PackSize
	Price decimal.NullDecimal
}

func (m *maker) order() {
	for _, n := range m.needs.list {
		line := m.line(n)
		m.plan.Order.Lines = append(m.plan.Order.Lines, line)
		if line.ToBuy.IsZero() {
			continue
		}
		if line.Bought.IsPriced {
			m.plan.Order.Cost = m.plan.Order.Cost.Add(line.Bought.Cost)
		} else {
			m.plan.Order.Unpriced++
		}
	}
}

func (m *maker) line(n *need) Line {
	line := Line{
		Card:   n.card,
		Scale:  basisScale[n.card.SoldBy],
		Mass:   working.Sum(sumOfMass, n.mass...),
		Volume: working.Sum(sumOfVolume, n.volume...),
		Length: working.Sum(sumOfLength, n.length...),
		Pieces: working.Sum(sumOfPieces, n.pieces...),
	}
	line.Need = door(line.Scale.From(line.amount()), n.card.SoldBy)
	line.Stock = inBasis(n.card, n.card.Stock)
	line.ToBuy = decimal.Max(line.Need.Sub(line.Stock), decimal.Zero)
	line.buy()
	return line
}

// basisScale is what a material's need is counted in.
var basisScale = map[material.Basis]*unit.Scale{
	material.ByMass: unit.InKilogram, material.ByVolume: unit.InLitre, material.BySet: unit.InLitre,
	material.ByLength: unit.InMetre, material.ByPiece: unit.InPure,
}

// door takes a computed need to what is bought by: to 0.1 mL or 0.1 g, then
// up, so that the last bits of a float never buy a pack.
func door(n float64, basis material.Basis) decimal.Decimal {
	places := int32(4)
	if basis == material.ByPiece {
		places = 0
	}
	return decimal.NewFromFloat(n).Round(places + 5).RoundUp(places)
}

// amount is the need in SI base units, by the card's basis.
func (l *Line) amount() float64 {
	switch l.Card.SoldBy {
	case material.ByMass:
		return float64(l.Mass.Value)
	case material.ByVolume, material.BySet:
		return float64(l.Volume.Value)
	case material.ByLength:
		return float64(l.Length.Value)
	}
	return float64(l.Pieces.Value)
}

// Why gives the working of the need.
func (l *Line) Why() *working.Step {
	switch l.Card.SoldBy {
	case material.ByMass:
		return l.Mass.Step
	case material.ByVolume, material.BySet:
		return l.Volume.Step
	case material.ByLength:
		return l.Length.Step
	}
	return l.Pieces.Step
}

// inBasis takes a typed size to the card's basis, exactly where both are of
// one dimension, by the card's density where they aren't.
func inBasis(c *job.Card, size job.PackSize) decimal.Decimal {
	to := basisScale[c.SoldBy]
	if size.Scale == nil || size.Scale == to {
		return size.Amount
	}
	per := decimal.NewFromFloat(size.Scale.SI(1)).Div(decimal.NewFromFloat(to.SI(1)))
	switch {
	case size.Scale.Measure == to.Measure:
	case size.Scale.Measure == unit.VolumeDim && to.Measure == unit.MassDim:
		per = per.Mul(decimal.NewFromFloat(float64(c.Density.Value)))
	case size.Scale.Measure == unit.MassDim && to.Measure == unit.VolumeDim && c.Density.Value > 0:
		per = per.Div(decimal.NewFromFloat(float64(c.Density.Value)))
	default:
		return decimal.Zero
	}
	return size.Amount.Mul(per)
}

// buy chooses the packs. Where the builder has typed prices only the priced
// sizes are for sale.
func (l *Line) buy() {
	if l.ToBuy.IsZero() {
		return
	}
	var packs []order.Pack
	var sold []job.Pack
	for _, p := range forSale(l.Card.Packs) {
		pack := order.Pack{Size: inBasis(l.Card, p.Size)}
		if p.HasPrice {
			price, err := unit.ReadDecimal(p.Price)
			pack.Price = decimal.NullDecimal{Decimal: price, Valid: err == nil}
		}
		packs, sold = append(packs, pack), append(sold, p)
	}
	l.Bought, l.Err = order.Choose(l.ToBuy, packs)
	for i, count := range l.Bought.Counts {
		if count > 0 {
			l.Packs = append(l.Packs, PackCount{count, sold[i].Size, packs[i].Price})
		}
	}
}

func forSale(packs []job.Pack) []job.Pack {
	var priced []job.Pack
	for _, p := range packs {
		if p.HasPrice {
			priced = append(priced, p)
		}
	}
	if len(priced) > 0 {
		return priced
	}
	return packs
}
