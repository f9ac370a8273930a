package chance

import (
	"slices"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Confidence is how likely a line is to be enough: what it may take, the two ways
// to buy it, and the one that the list takes.
type Confidence struct {
	Low, High     float64 // 5 % and 95 % of the simulated jobs lie below; SI
	Way                   // that the list goes: before the start, or all at once where the card says so
	Start, AtOnce Way
	Choices       []Choice // from little to much
	Effects       []Effect // what moves the amount most, first
}

// Choice is a purchase and the chance that the job doesn't run out with it.
type Choice struct {
	Packs    []PackCount
	Bought   order.Purchase
	Chance   unit.Share
	Left     decimal.Decimal     // most likely left over, stock counted
	Worth    decimal.NullDecimal // of what is left over, at the price paid now
	IsChosen bool
}

// The simulation of an order.
const (
	Draws = 10_000
	seed  = 1 // any: the same job gives the same order
)

// Simulation finds out in slices how likely an order is to be enough. It belongs to
// one plan.
type Simulation struct {
	uncertainty *uncertainty
	drawing     *order.Simulation
	order       Order
	finished    int            // lines
	outcome     *order.Outcome // of the line at hand; nil: not put in order yet
	isWhole     bool
}

// Simulate starts the simulation of a plan's order. Errors: *order.ModelError.
func Simulate(p *plan.Plan, o Order) (*Simulation, error) {
	d := uncertaintyOf(p, &o)
	drawing, err := d.model().Simulate(Draws, seed)
	if err != nil {
		return nil, err
	}
	s := &Simulation{uncertainty: d, drawing: drawing, order: o}
	s.order.Lines = slices.Clone(o.Lines)
	return s, nil
}

// causeWork is how many multiplications the draw of one cause is worth.
const causeWork = 4

// Step does about the given number of multiplications, or one of the two halves of
// finishing a line, and says if all is done. The answer doesn't depend on the
// slices.
func (s *Simulation) Step(work int) bool {
	if s.drawing.Drawn() < Draws {
		each := len(s.uncertainty.terms) + causeWork*len(s.uncertainty.causes)
		s.drawing.Step(max(1, work/max(each, 1)))
		return false
	}
	if s.finished < len(s.uncertainty.lines) {
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
	finished := float64(s.finished) / float64(len(s.uncertainty.lines)+1)
	return unit.Share((float64(s.drawing.Drawn())/Draws + finished) / 2)
}

// Order is the plan's order with every simulated line bought for its card's
// chance. It is whole once Step has said so.
func (s *Simulation) Order() Order { return s.order }

// finish puts a line's draws in order, and the next time settles the line.
func (s *Simulation) finish() {
	if s.outcome == nil {
		outcome, _ := s.drawing.Outcome(s.finished) // all is drawn by now
		s.outcome = &outcome
		return
	}
	line := &s.order.Lines[s.uncertainty.lines[s.finished]]
	if line.settleWays(*s.outcome); line.Confidence != nil {
		line.Confidence.Effects = s.uncertainty.effects(s.finished)
	}
	s.finished, s.outcome = s.finished+1, nil
}

func (l *Line) offered(p order.Purchase) bool {
	return slices.ContainsFunc(l.Confidence.Choices, func(c Choice) bool { return c.Bought.Bought.Equal(p.Bought) })
}
