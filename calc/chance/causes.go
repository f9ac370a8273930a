package chance

import (
	"math"
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Cause is one reason why an amount may be off: an area, which errs on its own, or
// a hand with its tool and material, which errs the same way over the whole job.
type Cause struct {
	Kind    CauseKind
	Surface *job.Surface     // of an area
	Method  *material.Method // of a film or a loss
	Card    *job.Card        // of all but an area
	Spread  order.Spread
}

// CauseKind is what a cause is about.
type CauseKind int

// The kinds of cause.
const (
	AreaCause      CauseKind = iota // how the area was measured
	FilmCause                       // the mean film of the whole job
	LossCause                       // what the hand loses against the plan
	SandedOffCause                  // the share of filler that is sanded off
	UseCause                        // what a polish takes for an area
	LearntCause                     // used ÷ planned, as it was adopted from the log
)

// term is an amount of one line that varies with some of the causes.
type term struct {
	line   int
	amount float64 // in the line's scale
	causes []int
}

// uncertainty is a plan's order as terms and causes.
type uncertainty struct {
	plan   *plan.Plan
	order  *Order
	lines  []int // of the order that are simulated
	at     map[*job.Card]int
	causes []Cause
	keys   []string // of the causes
	known  map[string]int
	terms  []term
}

// uncertaintyOf splits a plan into terms and causes. Goods by the piece and by
// length already include a tenth more and aren't simulated.
func uncertaintyOf(p *plan.Plan, o *Order) *uncertainty {
	u := &uncertainty{plan: p, order: o, at: map[*job.Card]int{}, known: map[string]int{}}
	for i := range o.Lines {
		if l := &o.Lines[i]; l.Err == nil && isMeasured(l) && l.Need.IsPositive() {
			u.at[l.Card] = len(u.lines)
			u.lines = append(u.lines, i)
		}
	}
	for _, b := range p.Buildups() {
		for i := range b.Steps {
			if len(b.Steps[i].Used) > 0 {
				u.step(&b, &b.Steps[i])
			}
		}
	}
	return u
}

// isMeasured says if a line is counted in kilograms or litres.
func isMeasured(l *Line) bool { return l.Scale == unit.InKilogram || l.Scale == unit.InLitre }

// step adds what a step takes, surface by surface.
func (u *uncertainty) step(b *plan.Buildup, s *plan.Step) {
	shared := u.shared(s)
	isOpen := func(i int) bool {
		surface, typed := &u.plan.Surfaces()[i], u.plan.Job.Surfaces[i]
		return typed.Buildup == b.Path && surface.Known && !slices.Contains(s.Progress.Done, typed.Path)
	}
	var area unit.Area
	for i := range u.plan.Surfaces() {
		if isOpen(i) {
			area += u.plan.Surfaces()[i].Area.Value
		}
	}
	rest := u.plan.OpenShare(s, area, b.Area.Value)
	for i := range u.plan.Surfaces() {
		if !isOpen(i) {
			continue
		}
		surface, typed := &u.plan.Surfaces()[i], u.plan.Job.Surfaces[i]
		causes := append([]int{u.area(typed)}, shared...)
		share := float64(surface.Area.Value/b.Area.Value) * rest
		for _, use := range s.Used {
			if at, simulated := u.at[use.Card]; simulated {
				amount := Line{Card: use.Card, Scale: u.line(at).Scale, Mass: use.Mass, Volume: use.Volume}
				u.terms = append(u.terms, term{at, amount.Planned() * share, causes})
			}
		}
	}
}

func (u *uncertainty) line(at int) *Line { return &u.order.Lines[u.lines[at]] }

// area is the cause of one surface's area.
func (u *uncertainty) area(s *job.Surface) int {
	return u.cause("area "+s.Path, Cause{Kind: AreaCause, Surface: s, Spread: order.CV(float64(material.AreaCV[s.By].Value))})
}

// shared is the causes that a step has in common with all steps of its hand. Until
// something is learned the job's mean film and the losses are two causes, together
// as wide as the belief before any entry and the spread from one piece of work to
// another: an entry that came out as planned then only narrows them. What is
// learned of used ÷ planned includes both.
func (u *uncertainty) shared(s *plan.Step) []int {
	card := s.Card
	if l := s.Learnt; l != nil {
		spread := order.Belief{Mean: l.Mean, SD: l.SD}.Next(float64(material.SurfaceSD.Value))
		return []int{u.cause("learnt "+l.Method.Key+" "+card.Key, Cause{Kind: LearntCause, Method: l.Method, Card: card, Spread: spread})}
	}
	switch {
	case s.Coat != nil:
		m := s.Job.Method
		hand := m.Key + " " + card.Key
		return []int{
			u.cause("film "+hand, Cause{Kind: FilmCause, Method: m, Card: card, Spread: order.CV(float64(m.MeanCV.Value))}),
			u.cause("loss "+hand, Cause{Kind: LossCause, Method: m, Card: card, Spread: order.LogNormal(0, lossBeside(m))}),
		}
	case s.Fill != nil:
		share := s.Fill.SandedOff.Value
		return []int{
			u.cause("loss filler "+card.Key, Cause{Kind: LossCause, Method: plan.MethodOf(s), Card: card, Spread: order.Belief{SD: float64(material.LossFiller.Value)}.Next(float64(material.SurfaceSD.Value))}),
			u.cause("sanded off "+card.Key+" "+unit.Write(float64(share), unit.InPercent, 6),
				Cause{Kind: SandedOffCause, Card: card, Spread: order.SandedOff(share, float64(material.SandedOffSD.Value))}),
		}
	case card != nil: // of what is left, only a polish has one
		used := card.UsedPerArea
		return []int{u.cause("use "+card.Key, Cause{Kind: UseCause, Card: card, Spread: order.LogNormal(0, rangeSD(float64(used.Low), float64(used.High)))})}
	}
	return nil
}

// lossBeside is the spread of the logarithm of what a method takes, beside that of
// its mean film: √(s0² + σ² − ln(1 + cv²)).
func lossBeside(m *material.Method) float64 {
	hand := order.Belief{SD: float64(m.LossSD().Value)}.Next(float64(material.SurfaceSD.Value)).SD
	film := order.CV(float64(m.MeanCV.Value)).SD
	return math.Sqrt(max(0, hand*hand-film*film))
}

// ofRange is how many standard deviations lie between the ends of a likely
// range, 5 % and 95 %.
// Source: the normal distribution.
const ofRange = 2 * 1.6448536269514722

// rangeSD takes a card's usual range as a likely one.
func rangeSD(low, high float64) float64 { return math.Log(high/low) / ofRange }

func (u *uncertainty) cause(key string, c Cause) int {
	at, known := u.known[key]
	if !known {
		at = len(u.causes)
		u.known[key] = at
		u.causes, u.keys = append(u.causes, c), append(u.keys, key)
	}
	return at
}

// model is the same as a model for the simulation.
func (u *uncertainty) model() *order.Model {
	m := order.NewModel(len(u.lines))
	draws := make([]order.Draw, len(u.causes))
	for i, c := range u.causes {
		draws[i] = m.Draw(u.keys[i], c.Spread)
	}
	for _, t := range u.terms {
		var list []order.Draw
		for _, c := range t.causes {
			list = append(list, draws[c])
		}
		m.Add(t.line, t.amount, list...)
	}
	return m
}

// Effect is how one cause alone moves a line: the change of its amount at the
// low and the high end of the cause's likely range, in the line's scale.
type Effect struct {
	Cause     Cause
	Low, High float64
}

// effects are those of one line, the largest first.
func (u *uncertainty) effects(at int) []Effect {
	var own []term
	var causes []int
	seen := map[int]bool{}
	for _, t := range u.terms {
		if t.line != at {
			continue
		}
		own = append(own, t)
		for _, c := range t.causes {
			if !seen[c] {
				seen[c] = true
				causes = append(causes, c)
			}
		}
	}
	place := map[int]int{}
	inputs := make([]order.Input, len(causes))
	for i, c := range causes {
		place[c] = i
		inputs[i] = order.Input{Value: 0, Low: -ofRange / 2, High: ofRange / 2}
	}
	bars, _ := order.Sensitivity(inputs, func(z []float64) (float64, error) {
		sum := 0.0
		for _, t := range own {
			amount := t.amount
			for _, c := range t.causes {
				amount *= u.causes[c].Spread.At(z[place[c]])
			}
			sum += amount
		}
		return sum, nil
	})
	list := make([]Effect, len(bars))
	for i, b := range bars {
		list[i] = Effect{u.causes[causes[b.Input]], b.Low, b.High}
	}
	return list
}
