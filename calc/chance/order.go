package chance

import (
	"cmp"
	"slices"
	"sort"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Order is what to buy.
type Order struct {
	Lines    []Line                      // materials first, then what goes with them
	Cost     decimal.Decimal             // of the lines that have prices
	Unpriced int                         // lines to buy without a price
	PutOn    working.Figure[unit.Volume] // of coats as mixed and of filler: on the surface, or lost on the way
	Bought   working.Figure[unit.Mass]   // of what is bought and has a density
	LeftOut  []plan.LeftOut              // what the lines are without
}

// Line is one material: what the plan needs, what is there, what to buy.
type Line struct {
	Card   *job.Card
	Shop   *job.Shop     // of the card
	Grade  sanding.Grade // of an abrasive; else 0
	Scale  unit.Scale    // of the decimals below: kg, L, m or pieces
	Mass   working.Figure[unit.Mass]
	Volume working.Figure[unit.Volume]
	Length working.Figure[unit.Length]
	Pieces working.Figure[unit.Factor]
	Need   decimal.Decimal // rounded up to what a scale shows
	Stock  decimal.Decimal // what was counted, less what logged cups took since
	Taken  decimal.Decimal // by these cups; at most what was counted
	ToBuy  decimal.Decimal
	Packs  []PackCount
	Bought order.Purchase
	// SomePriced: other sizes have no price, so that they weren't looked at.
	SomePriced bool
	Err        error       // packs could not be chosen, or a *plan.WaitsError: the need isn't known
	Confidence *Confidence // nil: as planned, with no allowance for what may turn out differently
}

// IsPartial says if what a line needs or buys isn't known: then nor is any total.
func (o *Order) IsPartial() bool {
	return slices.ContainsFunc(o.LeftOut, func(out plan.LeftOut) bool { return out.IsRefused }) ||
		slices.ContainsFunc(o.Lines, func(l Line) bool { return l.Waits() != nil })
}

// Waits gives what the line's need or its packs wait for; nil: they are known.
func (l *Line) Waits() *plan.WaitsError {
	waits, _ := l.Err.(*plan.WaitsError)
	return waits
}

// Key names a line: its card's key, and of an abrasive the grade.
func (l *Line) Key() string {
	if l.Grade == 0 {
		return l.Card.Key
	}
	return l.Card.Key + "-" + l.Grade.String()
}

// Name is what to ask for.
func (l *Line) Name() string {
	if l.Grade == 0 {
		return l.Card.Name
	}
	return l.Card.Name + ", " + l.Grade.String()
}

// PackCount is a number of packs of one size.
type PackCount struct {
	Count int
	Size  job.PackSize
	Price decimal.NullDecimal
}

// OrderOf buys what a plan needs, with no allowance for what may turn out
// differently.
func OrderOf(p *plan.Plan) Order {
	o := Order{LeftOut: p.LeftOut()}
	first := map[*job.Card]int{}
	for i := range p.Needs() {
		n := &p.Needs()[i]
		o.Lines = append(o.Lines, line(p, n, o.LeftOut))
		if _, known := first[n.Card]; !known {
			first[n.Card] = i
		}
	}
	sort.SliceStable(o.Lines, func(i, j int) bool { // grades of one abrasive stand together, from coarse to fine
		a, b := &o.Lines[i], &o.Lines[j]
		return cmp.Or(cmp.Compare(place(a.Card), place(b.Card)), cmp.Compare(first[a.Card], first[b.Card]), cmp.Compare(a.Grade, b.Grade)) < 0
	})
	o.PutOn = putOn(p)
	o.total()
	return o
}

// total adds up what is bought.
func (o *Order) total() {
	o.Cost, o.Unpriced = decimal.Zero, 0
	var bought []working.Figure[unit.Mass]
	for i := range o.Lines {
		line := &o.Lines[i]
		if line.ToBuy.IsZero() {
			continue
		}
		if line.Bought.IsPriced {
			o.Cost = o.Cost.Add(line.Bought.Cost)
		} else {
			o.Unpriced++
		}
		if mass, known := line.boughtMass(); known {
			bought = append(bought, mass)
		}
	}
	o.Bought = working.Sum(sumOfBought, bought...)
}

// place keeps materials before what goes with them.
func place(c *job.Card) int {
	if c.Kind == material.Sundry || c.Kind == material.Solvent {
		return 1
	}
	return 0
}

var (
	sumOfBought = working.SumRule("mass bought", unit.InKilogram)
	sumPutOn    = working.SumRule("put on", unit.InLitre)
	sumOfMass   = working.SumRule("need", unit.InKilogram)
	sumOfVolume = working.SumRule("need", unit.InLitre)
	sumOfLength = working.SumRule("need", unit.InMetre)
	sumOfPieces = working.SumRule("need", unit.InPure)
)

// putOn is the volume of all that is mixed for the boat.
func putOn(p *plan.Plan) working.Figure[unit.Volume] {
	var volumes []working.Figure[unit.Volume]
	for _, b := range p.Buildups() {
		for _, s := range b.Steps {
			switch {
			case s.Coat != nil:
				volumes = chain.AppendKnown(volumes, s.Coat.Mix)
			case s.Fill != nil:
				volumes = chain.AppendKnown(volumes, s.Fill.Applied)
			}
		}
	}
	return working.Sum(sumPutOn, volumes...)
}

func line(p *plan.Plan, n *plan.Need, out []plan.LeftOut) Line {
	shop := p.Job.ShopByKey(n.Card.Key)
	if waits := p.Withheld(n.Card.Key, out); waits != nil {
		return Line{Card: n.Card, Shop: shop, Grade: n.Grade, Scale: plan.BasisScale(n.Card), Err: waits}
	}
	line := Line{
		Card:   n.Card,
		Shop:   shop,
		Grade:  n.Grade,
		Scale:  plan.BasisScale(n.Card),
		Mass:   working.Sum(sumOfMass, n.Mass...),
		Volume: working.Sum(sumOfVolume, n.Volume...),
		Length: working.Sum(sumOfLength, n.Length...),
		Pieces: working.Sum(sumOfPieces, n.Pieces...),
	}
	line.stock(&p.Job)
	line.settle(line.Planned())
	return line
}

// settle works out what is bought for a need, in the line's scale.
func (l *Line) settle(need float64) {
	step := order.Tenth
	if l.Card.SoldBy == material.ByPiece {
		step = decimal.NewFromInt(1)
	}
	if l.Need, l.Err = order.RoundUp(unit.Factor(l.Scale.SI(need)), l.Scale, step); l.Err != nil {
		return
	}
	l.ToBuy = order.ToBuy(l.Need, l.Stock)
	l.buy()
}

// Planned is the planned need in the line's scale, with no allowance for what may
// turn out differently.
func (l *Line) Planned() float64 {
	si := float64(l.Pieces.Value)
	switch l.Card.SoldBy {
	case material.ByMass:
		si = float64(l.Mass.Value)
	case material.ByVolume, material.BySet:
		si = float64(l.Volume.Value)
	case material.ByLength:
		si = float64(l.Length.Value)
	}
	return l.Scale.From(si)
}

// Why gives the working of the need.
func (l *Line) Why() *working.Step {
	if l.Confidence != nil {
		return l.Confidence.Have.Step
	}
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

// buy chooses the packs. Where the builder has typed prices only the priced
// sizes are for sale.
func (l *Line) buy() {
	l.Packs, l.Bought, l.SomePriced, l.Err = nil, order.Purchase{}, false, nil
	if l.ToBuy.IsZero() {
		return
	}
	if by := l.Shop.Unread; by != "" {
		l.Err = &plan.WaitsError{LeftOut: plan.LeftOut{Path: l.Card.Path, Name: l.Card.Name, By: by, IsRefused: true}}
		return
	}
	sold := priced(l.Shop.Packs)
	if l.SomePriced = len(sold) > 0 && len(sold) < len(l.Shop.Packs); len(sold) == 0 {
		sold = l.Shop.Packs
	}
	var packs []order.Pack
	for _, p := range sold {
		pack := order.Pack{Size: plan.InBasis(l.Card, p.Size)}
		if p.HasPrice {
			price, err := unit.ReadDecimal(p.Price)
			pack.Price = decimal.NullDecimal{Decimal: price, Valid: err == nil}
		}
		packs = append(packs, pack)
	}
	l.Bought, l.Err = order.Choose(l.ToBuy, packs)
	for i, count := range l.Bought.Counts {
		if count > 0 {
			l.Packs = append(l.Packs, PackCount{count, sold[i].Size, packs[i].Price})
		}
	}
}

func priced(packs []job.Pack) []job.Pack {
	var list []job.Pack
	for _, p := range packs {
		if p.HasPrice {
			list = append(list, p)
		}
	}
	return list
}

// Buying gives the working of what is bought: how the packs were chosen.
func (l *Line) Buying() *working.Step {
	rule := map[unit.Scale]*working.Rule{unit.InKilogram: order.PacksByMass, unit.InLitre: order.PacksByVolume, unit.InMetre: order.PacksByLength, unit.InPure: order.PacksByCount}[l.Scale]
	return working.By(rule, unit.Factor(l.Scale.SI(l.Bought.Bought.InexactFloat64())), l.Why(), l.stockStep()).Step
}

// boughtMass is the mass of what is bought, where the card tells it.
func (l *Line) boughtMass() (working.Figure[unit.Mass], bool) {
	if l.Err != nil {
		return working.Figure[unit.Mass]{}, false
	}
	amount := l.Bought.Bought.InexactFloat64()
	switch l.Scale {
	case unit.InKilogram:
		return working.Given(unit.Of[unit.Mass](amount, l.Scale), "bought", l.Scale, l.Card.Name, source.Calculated), true
	case unit.InLitre:
		mass, err := film.Weight.Figure(working.Given(unit.Of[unit.Volume](amount, l.Scale), "bought", l.Scale, l.Card.Name, source.Calculated), chain.DensityOf(l.Card))
		return mass, err == nil
	}
	return working.Figure[unit.Mass]{}, false
}
