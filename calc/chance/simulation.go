package chance

import (
	"cmp"
	"slices"
	"sort"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Sure is how sure a line is: what it may take, and what to have for the chance
// that its card wants.
type Sure struct {
	Low, High float64 // 5 % and 95 % of the simulated jobs lie below; SI
	Chance    unit.Share
	Enough    working.Figure[unit.Factor] // for that chance; SI of the line's scale
	Reserve   working.Figure[unit.Factor] // kept for repairs; without a step none
	Have      working.Figure[unit.Factor] // both together
	Choices   []Choice                    // from little to much
	Effects   []Effect                    // what moves the amount most, first
}

// Choice is a purchase and the chance that the job doesn't run out with it.
type Choice struct {
	Packs    []PackCount
	Bought   order.Purchase
	Chance   unit.Share
	Left     decimal.Decimal // most likely left over, stock counted
	IsChosen bool
}

// The simulation of an order.
const (
	Draws = 10_000
	seed  = 1 // any: the same job gives the same order
)

// Simulation finds out in slices how sure an order is. It belongs to one plan.
type Simulation struct {
	doubt    *doubt
	drawing  *order.Simulation
	order    Order
	finished int            // lines
	outcome  *order.Outcome // of the line at hand; nil: not put in order yet
	isWhole  bool
}

// Simulate starts the simulation of a plan's order. Errors: *order.ModelError.
func Simulate(p *plan.Plan, o Order) (*Simulation, error) {
	d := doubtOf(p, &o)
	drawing, err := d.model().Simulate(Draws, seed)
	if err != nil {
		return nil, err
	}
	s := &Simulation{doubt: d, drawing: drawing, order: o}
	s.order.Lines = slices.Clone(o.Lines)
	return s, nil
}

// causeWork is how many multiplications the draw of one cause is worth.
const causeWork = 4

// Step does about so many multiplications more, or one of the two halves of
// finishing a line, and says if all is done. The answer doesn't depend on the
// slices.
func (s *Simulation) Step(work int) bool {
	if s.drawing.Drawn() < Draws {
		each := len(s.doubt.terms) + causeWork*len(s.doubt.causes)
		s.drawing.Step(max(1, work/max(each, 1)))
		return false
	}
	if s.finished < len(s.doubt.lines) {
		s.finish()
		return false
	}
	s.order.total() // in a slice of its own: whoever asked has the order to show in it
	s.isWhole = true
	return true
}

// Done is the share of the work that is done.
func (s *Simulation) Done() unit.Share {
	if s.isWhole {
		return 1
	}
	finished := float64(s.finished) / float64(len(s.doubt.lines)+1)
	return unit.Share((float64(s.drawing.Drawn())/Draws + finished) / 2)
}

// Order is the plan's order with every simulated line bought for its card's
// chance. It is whole once Step has said so.
func (s *Simulation) Order() Order { return s.order }

// finish puts a line's draws in order, and the next time settles the line. One
// whose chance can't be had stays as planned, with the error.
func (s *Simulation) finish() {
	line := &s.order.Lines[s.doubt.lines[s.finished]]
	var err error
	if s.outcome == nil {
		var outcome order.Outcome
		if outcome, err = s.drawing.Outcome(s.finished); err == nil {
			s.outcome = &outcome
			return
		}
	} else if err = line.assure(*s.outcome); err == nil {
		line.Sure.Effects = s.doubt.effects(s.finished)
	}
	if err != nil {
		line.Err = err
	}
	s.finished, s.outcome = s.finished+1, nil
}

// assure buys a line for the chance that its card wants.
func (l *Line) assure(outcome order.Outcome) error {
	sure := &Sure{Chance: l.Card.Chance.Value}
	at := func(chance unit.Share) (si float64, err error) {
		amount, err := outcome.Enough(chance)
		return l.Scale.SI(amount), err
	}
	enough, err := at(sure.Chance)
	if err != nil {
		return err
	}
	sure.Low, _ = at(0.05)
	sure.High, _ = at(0.95)
	rule := order.ConfidenceByMass
	if l.Scale == unit.InLitre {
		rule = order.ConfidenceByVolume
	}
	chance := chain.OnCard(l.Card, l.Card.Chance, "wanted chance of not running out", unit.InPercent)
	sure.Enough = working.By(rule, unit.Factor(enough), l.Why(), chance.Step)
	if sure.Reserve, err = l.reserve(); err != nil {
		return err
	}
	sure.Have = sure.Enough
	if sure.Reserve.Step != nil {
		sum := map[unit.Scale]*working.Rule{unit.InKilogram: sumOfMass, unit.InLitre: sumOfVolume}[l.Scale]
		sure.Have = working.Sum(sum, sure.Enough, sure.Reserve)
	}
	l.Sure = sure
	l.settle(l.Scale.From(float64(sure.Have.Value)))
	l.choices(outcome)
	return nil
}

// reserve is what is kept of a colour for repairs.
func (l *Line) reserve() (working.Figure[unit.Factor], error) {
	if !(l.Card.Reserve.Value > 0) || l.Mass.Value <= 0 {
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

// choices lists what else could be bought, and how sure each is.
func (l *Line) choices(outcome order.Outcome) {
	median, _ := outcome.Enough(0.5)
	middle := decimal.NewFromFloat(median).Round(4)
	offer := func(bought Line, chosen bool) {
		have := bought.Stock.Add(bought.Bought.Bought)
		l.Sure.Choices = append(l.Sure.Choices, Choice{
			Packs: bought.Packs, Bought: bought.Bought, Chance: outcome.Chance(have.InexactFloat64()),
			Left: decimal.Max(have.Sub(middle), decimal.Zero), IsChosen: chosen})
	}
	if l.Err != nil {
		return
	}
	offer(*l, true)
	for _, chance := range []unit.Share{0.5, 0.7, 0.8, 0.9, 0.95, 0.99} {
		amount, _ := outcome.Enough(chance)
		other := *l
		if other.settle(amount); other.Err == nil && !l.offered(other.Bought) {
			offer(other, false)
		}
	}
	choices := l.Sure.Choices
	sort.SliceStable(choices, func(i, j int) bool {
		a, b := choices[i].Bought, choices[j].Bought
		return cmp.Or(a.Bought.Cmp(b.Bought), a.Cost.Cmp(b.Cost)) < 0
	})
}

func (l *Line) offered(p order.Purchase) bool {
	return slices.ContainsFunc(l.Sure.Choices, func(c Choice) bool { return c.Bought.Bought.Equal(p.Bought) })
}
