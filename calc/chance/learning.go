package chance

import (
	"errors"
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Lesson is what the log teaches of one method with one material.
type Lesson struct {
	Method *material.Method
	Card   *job.Card
	Before working.Figure[unit.Factor] // used ÷ planned as it was believed
	After  working.Figure[unit.Factor] // and after the entries; without a step there are none yet
	Belief order.Belief                // the same, as a logarithm
	Likely [2]unit.Factor              // 5 % and 95 % of the next pieces of work are below
	Count  int                         // entries that count
	Taken  *job.Learnt                 // what the builder adopted; nil: nothing
	Log    []LessonEntry
}

// LessonEntry is one finished piece of work in a lesson, or one cup whose area
// was measured.
type LessonEntry struct {
	Path          string
	SD            working.Figure[unit.Factor] // from one such entry to the next
	Used, Planned working.Figure[unit.Mass]
	Ratio         unit.Factor
	Err           error // why it doesn't count; nil: it does
}

// Why an entry doesn't count, besides an *order.LogError.
var (
	ErrNoUse     = errors.New("chance: nothing is known of what was used")
	ErrLeftOpen  = errors.New("chance: what was left over of a cup isn't typed")
	ErrUnlikely  = errors.New("chance: far off what was planned: yet to be confirmed")
	ErrNoPlanned = errors.New("chance: nothing was planned when it was logged")
)

var (
	usedBand = &plan.Band{Key: "used ÷ planned", Scale: unit.InPure, Low: 0.5, High: 2, Slips: []*plan.Slip{gForKg, kgForG}}
	gForKg   = &plan.Slip{Key: "g typed as kg", Factor: 1e-3}
	kgForG   = &plan.Slip{Key: "kg typed as g", Factor: 1000}

	coveredBand = &plan.Band{Key: "used ÷ planned", Scale: unit.InPure, Low: 0.5, High: 2}

	plannedForArea = working.Rule2[unit.Area, unit.MassPerArea, unit.Mass]{Rule: &working.Rule{Formula: "n = A × w", Source: source.Ref{Document: &source.House, Place: "what leaves the cup"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "n", Meaning: "planned for the area", Scale: unit.InKilogram, Min: 0, Max: 1e6},
		Args: []working.Arg{
			{Symbol: "A", Meaning: "area that the cup covered", Scale: unit.InSquareMetre, Min: 1e-4, Max: 1000},
			{Symbol: "w", Meaning: "mix for the area, frozen when it was weighed", Scale: unit.InKilogramPerSquareMetre, Min: 1e-3, Max: 1000},
		}},
		Code: func(a unit.Area, w unit.MassPerArea) unit.Mass { return unit.Mass(float64(a) * float64(w)) }}

	plannedByComb = working.Rule3[unit.Mass, unit.WetFilm, unit.WetFilm, unit.Mass]{Rule: &working.Rule{Formula: "N = n × c ÷ w", Source: source.Ref{Document: &source.House, Place: "film as read with a comb"}, Mark: source.Assumption,
		Result: working.Arg{Symbol: "N", Meaning: "planned for the film that was read", Scale: unit.InKilogram, Min: 0, Max: 1e7},
		Args: []working.Arg{
			{Symbol: "n", Meaning: "planned, frozen when it was logged", Scale: unit.InKilogram, Min: 0, Max: 1e5},
			{Symbol: "c", Meaning: "wet film of one coat, read with a comb", Scale: unit.InMicrometre, Min: 1, Max: 20000},
			{Symbol: "w", Meaning: "wet film of one coat, planned", Scale: unit.InMicrometre, Min: 1, Max: 20000},
		}},
		Code: func(n unit.Mass, c, w unit.WetFilm) unit.Mass { return n * unit.Mass(c/w) }}

	combMean = &working.Rule{Formula: "mean of the combs read on these surfaces", Source: source.Ref{Document: &source.Practice, Place: "reading a wet-film comb"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "c", Meaning: "wet film of one coat", Scale: unit.InMicrometre, Min: 0.5, Max: 20000}, IsProse: true}
)

// Lessons is what the log teaches, and what it asks about on the way.
type Lessons struct {
	List []Lesson // by method and material
	Asks []plan.Ask
}

// AskAt gives the question about the figure at the path; nil: none.
func (l *Lessons) AskAt(path string) *plan.Ask {
	for i := range l.Asks {
		if l.Asks[i].Path == path {
			return &l.Asks[i]
		}
	}
	return nil
}

type learner struct {
	plan *plan.Plan
	out  Lessons
}

// Learn reads the lessons out of a job's log.
func Learn(p *plan.Plan) Lessons {
	m := &learner{plan: p}
	m.lessons()
	return m.out
}

// lessons learns from the finished work, by method and material, and from the
// cups of unfinished work whose area was measured.
func (m *learner) lessons() {
	for i := range m.plan.Job.Finished {
		f := &m.plan.Job.Finished[i]
		method, known := material.FindMethod(f.Method)
		if card := m.plan.Job.CardByKey(f.Card); known && card != nil {
			l := m.lesson(method, card)
			l.Log = append(l.Log, m.entry(f))
		}
	}
	for i := range m.plan.Job.Cups {
		c := &m.plan.Job.Cups[i]
		card := m.plan.Job.CardByKey(c.Card)
		method, known := plan.MethodOfCup(c, card)
		if known && card != nil && c.Covered.Step != nil && !m.plan.IsClaimed(c.Path) {
			l := m.lesson(method, card)
			l.Log = append(l.Log, m.cupEntry(c, method))
		}
	}
	for _, taken := range m.plan.Job.Learnt { // adopted, though its entries may be gone
		if card := m.plan.Job.CardByKey(taken.Card); card != nil {
			m.lesson(taken.Method, card)
		}
	}
	for i := range m.out.List {
		m.out.List[i].learn()
	}
}

func (m *learner) lesson(method *material.Method, card *job.Card) *Lesson {
	at := slices.IndexFunc(m.out.List, func(l Lesson) bool { return l.Method == method && l.Card == card })
	if at < 0 {
		at = len(m.out.List)
		m.out.List = append(m.out.List, Lesson{Method: method, Card: card, Taken: m.plan.Job.LearntOf(method, card.Key)})
	}
	return &m.out.List[at]
}

// prior is what is believed before anything is learned: the plan is right, to
// within the method's usual spread.
func (l *Lesson) prior() order.Belief {
	sd := l.Method.LossSD()
	if l.Card.Kind == material.Filler {
		sd = material.LossFiller
	}
	return order.Belief{SD: float64(sd.Value)}
}

// learn works out the belief after the entries that count.
func (l *Lesson) learn() {
	before := l.prior()
	spread := working.Given(unit.Factor(before.SD), "usual spread of the logarithm, s0", unit.InPure, l.Method.Name, source.Assumption)
	l.Before = working.Given(before.Factor(), "used ÷ planned", unit.InPure, "before anything is logged", source.Assumption)
	var entries []order.Entry
	from := []*working.Step{spread.Step}
	for i := range l.Log {
		e := &l.Log[i]
		if e.Err != nil {
			continue
		}
		entries = append(entries, order.Entry{Used: e.Used.Value, Planned: e.Planned.Value, HasComb: true, SD: float64(e.SD.Value)})
		if !slices.Contains(from, e.SD.Step) {
			from = append(from, e.SD.Step)
		}
		from = append(from, e.Used.Step, e.Planned.Step)
	}
	belief, err := order.Learn(before, entries)
	if len(entries) == 0 || err != nil {
		return
	}
	l.Belief, l.Count = belief, len(entries)
	l.After = working.By(order.Learning, belief.Factor(), from...)
	next := belief.Next(float64(material.SurfaceSD.Value))
	l.Likely = [2]unit.Factor{unit.Factor(next.At(-ofRange / 2)), unit.Factor(next.At(ofRange / 2))}
}

// FactorOf is used ÷ planned as it was adopted.
func FactorOf(l *job.Learnt) unit.Factor { return order.Belief{Mean: l.Mean}.Factor() }

// IsCurrent says if what was adopted is what the entries say now.
func (l *Lesson) IsCurrent() bool {
	return l.Taken != nil && l.Text() == job.LearntText(l.Taken.Mean, l.Taken.SD, l.Taken.Entries)
}

// Text is the line that adopts the lesson.
func (l *Lesson) Text() string { return job.LearntText(l.Belief.Mean, l.Belief.SD, l.Count) }

// entry reads one finished piece of work, and says why it doesn't count.
func (m *learner) entry(f *job.Finished) LessonEntry {
	e := LessonEntry{Path: f.Path, SD: betweenWorks, Planned: f.Planned}
	if e.Used, e.Err = m.usedOn(f); e.Err == nil {
		m.compare(&e, coating{f.Step, f.Surfaces, f.Each, f.Film.Value}, f.Path+".used", usedBand)
	}
	return e
}

// cupEntry reads one cup: what left it, beside what its area was to take.
func (m *learner) cupEntry(c *job.Cup, method *material.Method) LessonEntry {
	e := LessonEntry{Path: c.Path, SD: betweenCups}
	used, known := m.plan.PutOn(c.Path)
	switch {
	case !known && c.In == 0:
		e.Err = ErrNoUse
	case !known:
		e.Err = ErrLeftOpen
	case c.PerArea.Value <= 0:
		e.Err = ErrNoPlanned
	}
	if e.Err != nil {
		return e
	}
	e.Used = used
	if e.Planned, e.Err = plannedForArea.Figure(c.Covered, c.PerArea); e.Err == nil {
		m.compare(&e, coating{c.Step, nil, c.Film, e.Planned.Value * unit.Mass(1-method.Loss.Value)}, c.Path+".covered", coveredBand)
	}
	return e
}

// Spreads of the logarithm of used ÷ planned.
var (
	betweenWorks = working.Given(material.SurfaceSD.Value, "spread from one work to the next, σ", unit.InPure, "", material.SurfaceSD.Mark)
	betweenCups  = working.Given(material.CupSD.Value, "spread from one cup to the next, σ", unit.InPure, "", material.CupSD.Mark)
)
