package plan

import (
	"errors"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Putty is a recipe worked out, beside a bought filler.
type Putty struct {
	Path    string
	Known   bool
	Made    fairing.Putty
	Parts   []PuttyPart
	Cost    decimal.NullDecimal // of a litre
	Against *job.Card           // the bought filler
	Bought  decimal.NullDecimal // of a litre of it, in its cheapest priced pack
}

// PuttyPart is what goes in, and what to weigh for the putty wanted.
type PuttyPart struct {
	Name  string
	Kind  fairing.Kind
	Card  string // key; empty: none ships
	Mass  working.Figure[unit.Mass]
	Weigh working.Figure[unit.Mass] // without a step: no volume is wanted
}

// ErrNoRecipe says that a putty has yet to get its parts.
var ErrNoRecipe = errors.New("plan: the recipe isn't complete yet")

// puttyMaker works out a putty that is mixed by hand.
type puttyMaker struct{ *maker }

// mixedAs gives the putty that a fill is mixed as; nil: it is bought. False:
// the recipe isn't whole.
func (m puttyMaker) mixedAs(s *Step) (*Putty, bool) {
	if s.Job.Putty == "" {
		return nil, true
	}
	putties := m.plan.Putties()
	for i := range putties {
		switch p := &putties[i]; {
		case p.Path != s.Job.Putty:
		case p.Known:
			return p, true
		default:
			m.wait(s.Path+".putty", ErrNoRecipe)
			return nil, false
		}
	}
	m.refuse(s.Path+".putty", ErrWrong)
	return nil, false
}

// uses adds what a mass of the putty takes of its parts.
func (p *Putty) uses(q *chain.Run, s *Step, card func(key string) *job.Card, mixed working.Figure[unit.Mass]) {
	volume := chain.Do2(q, VolumeOf, mixed, p.Made.Density)
	for i := range p.Parts {
		card := card(p.Parts[i].Card)
		mass := chain.Do3(q, fairing.ToWeigh, p.Parts[i].Mass, volume, p.Made.Volume)
		if card != nil && q.Err == nil {
			s.Used = append(s.Used, Use{Name: p.Parts[i].Name, Card: card, Mass: mass})
		}
	}
}

var kindOfPart = map[string]fairing.Kind{
	"resin": fairing.Resin, "hardener": fairing.Hardener, "balloons": fairing.Balloons, "silica": fairing.Silica, "other": fairing.OtherPart,
}

// Putties is the recipes worked out, in their order.
func (p *Plan) Putties() []Putty {
	return ask(p, "putties", func(m *maker) []Putty {
		typed := m.job("putty").Putties
		var list []Putty
		for i := range typed {
			list = append(list, puttyMaker{m}.putty(&typed[i]))
		}
		return list
	})
}

func (m puttyMaker) putty(p *job.Putty) Putty {
	out := Putty{Path: p.Path, Against: m.card(p.Against)}
	if out.Against == nil || !canFill(out.Against) {
		out.Against = m.card("epoxy-filler")
	}
	out.Bought = litreOf(out.Against, m.shop(out.Against.Key))
	recipe, ok := m.recipe(p)
	if !ok {
		return out
	}
	made, err := recipe.Mix()
	if err != nil {
		m.badPutty(p, err)
		return out
	}
	out.Made, out.Known = made, true
	for i, part := range recipe.Parts {
		out.Parts = append(out.Parts, PuttyPart{Name: p.Parts[i].Kind.Name, Kind: part.Kind, Card: p.Parts[i].Kind.Card, Mass: part.Mass})
	}
	if p.Wanted.Step != nil {
		weigh, err := recipe.For(p.Wanted)
		if err != nil {
			m.refuse(p.Path+".wanted", err)
			return out
		}
		for i := range weigh {
			out.Parts[i].Weigh = weigh[i]
		}
	}
	out.Cost = m.costOf(p, recipe)
	return out
}

// badPutty reports an error of a recipe: one that adds up to nothing is waited for.
func (m puttyMaker) badPutty(p *job.Putty, err error) {
	if errors.Is(err, fairing.ErrNothing) {
		m.wait(p.Path+".part", err)
		return
	}
	m.refuse(p.Path+".part", err)
}

// recipe turns the parts as typed into masses; false: some wait.
func (m puttyMaker) recipe(p *job.Putty) (r fairing.Recipe, ok bool) {
	ok = true
	r.Air = p.Air
	if r.Air.Step == nil {
		r.Air = working.Given(unit.Share(0), "share of air", unit.InPercent, "not typed", source.Assumption)
	}
	var q chain.Run
	for i := range p.Parts {
		part := &p.Parts[i]
		density := typedOr(part.True, part.Kind.True, "true density of "+part.Kind.Name, unit.InKilogramPerLitre)
		mass := part.Mass
		if part.IsBulk {
			ok = m.needsTyped(part.Path, "volume", part.Volume.Step) && ok
			bulk := typedOr(part.Bulk, part.Kind.Bulk, "bulk density of "+part.Kind.Name, unit.InKilogramPerLitre)
			mass = chain.Do2(&q, fairing.MassOf, part.Volume, bulk)
		} else {
			ok = m.needsTyped(part.Path, "mass", mass.Step) && ok
		}
		r.Parts = append(r.Parts, fairing.Part{Kind: kindOfPart[part.Kind.Key], Mass: mass, Density: density})
	}
	if q.Err != nil {
		m.refuse(p.Path+".part", q.Err)
		return r, false
	}
	if ok && len(r.Parts) == 0 {
		m.wait(p.Path+".part", fairing.ErrNothing)
		return r, false
	}
	return r, ok
}

// costOf is what a litre costs, where every part has its price.
func (m puttyMaker) costOf(p *job.Putty, r fairing.Recipe) (cost decimal.NullDecimal) {
	var prices []decimal.Decimal
	for _, part := range p.Parts {
		price, err := unit.ReadDecimal(part.Price)
		if err != nil {
			return cost
		}
		prices = append(prices, price)
	}
	litre, err := r.CostPerLitre(prices)
	return decimal.NullDecimal{Decimal: litre, Valid: err == nil}
}

// litreOf is what a litre of a card's material costs in its cheapest priced pack.
func litreOf(c *job.Card, shop *job.Shop) (best decimal.NullDecimal) {
	for _, p := range shop.Packs {
		price, err := unit.ReadDecimal(p.Price)
		size := InBasis(c, p.Size)
		if !p.HasPrice || err != nil || !size.IsPositive() {
			continue
		}
		litre := price.Div(size)
		if c.SoldBy == material.ByMass {
			litre = price.Mul(decimal.NewFromFloat(unit.InKilogramPerLitre.From(float64(c.Density.Value)))).Div(size)
		}
		if !best.Valid || litre.LessThan(best.Decimal) {
			best = decimal.NullDecimal{Decimal: litre, Valid: true}
		}
	}
	return best
}

// fillerLike is the bought filler whose limits hold for a putty mixed by hand,
// where the step names none; nil: no such putty.
func (m puttyMaker) fillerLike(putty string) *job.Card {
	for _, p := range m.plan.Putties() {
		if p.Path == putty {
			return p.Against
		}
	}
	return nil
}

// Parts gives what a step takes of each part of its putty mixed by hand.
func (s *Step) Parts() []Use {
	var list []Use
	for _, use := range s.Used {
		if use.Mass.Step != nil && use.Card.Kind == material.Ingredient {
			list = append(list, use)
		}
	}
	return list
}
