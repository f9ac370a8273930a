package plan

import (
	"sort"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// PutOnSum adds up what cups put on.
var PutOnSum = working.SumRule("put on by logged cups", unit.InKilogram)

// PutOn is what a cup of the log put on; false: not known.
func (p *Plan) PutOn(cup string) (working.Figure[unit.Mass], bool) {
	f, known := p.log().putOn[cup]
	return f, known
}

// IsClaimed says if a cup belongs to finished work.
func (p *Plan) IsClaimed(cup string) bool { return p.log().claimed[cup] }

// logged is what the log says before anything is planned.
type logged struct {
	putOn   map[string]working.Figure[unit.Mass] // by path of the cup; missing: not known
	claimed map[string]bool                      // cups that belong to finished work
	of      map[string][]*job.Cup                // by path of the step
	done    map[string]map[string]bool           // by path of the step, then of the surface
	opens   map[string]bool                      // cups that open a spell, by path
}

// log reads what each cup put on. Where what was left over wasn't typed, the
// method's usual leftover is taken, as in the plan.
func (p *Plan) log() *logged {
	return ask(p, "log", func(m *maker) *logged {
		r := &logReader{m, &logged{map[string]working.Figure[unit.Mass]{}, map[string]bool{}, map[string][]*job.Cup{}, map[string]map[string]bool{}, map[string]bool{}}}
		r.read(m.job("cup", "done"))
		return r.out
	})
}

type logReader struct {
	*maker
	out *logged
}

func (m *logReader) read(j *job.Job) {
	m.openSpells(j.Cups)
	for i := range j.Finished {
		f := &j.Finished[i]
		for _, cup := range f.Cups {
			m.out.claimed[cup] = true
		}
		if m.out.done[f.Step] == nil {
			m.out.done[f.Step] = map[string]bool{}
		}
		for _, surface := range f.Surfaces {
			m.out.done[f.Step][surface] = true
		}
	}
	for i := range j.Cups {
		c := &j.Cups[i]
		m.out.of[c.Step] = append(m.out.of[c.Step], c)
		if f, known := m.onFrom(c); known {
			m.out.putOn[c.Path] = f
		}
	}
}

// onFrom is what a cup put on; false: not known.
func (m *logReader) onFrom(c *job.Cup) (working.Figure[unit.Mass], bool) {
	left := c.Left
	switch {
	case c.Mixed.Step == nil || c.In == 0 && c.Left.Step == nil:
		return working.Figure[unit.Mass]{}, false
	case c.Left.Value > c.Mixed.Value*(1+1e-9) && m.plan.doc.Get(c.Path+".ended") == "": // what is left hasn't been weighed yet
		return working.Figure[unit.Mass]{}, false
	case c.Left.Value > c.Mixed.Value*(1+1e-9):
		m.refuse(c.Path+".left", &job.RangeError{Field: &job.Field{Key: "left", Measure: unit.CupWeights, Max: float64(c.Mixed.Value)}, Value: float64(c.Left.Value)})
		return working.Figure[unit.Mass]{}, false
	case c.Left.Step != nil:
	case c.End == job.EndGelled || c.End == job.EndInFile:
		return working.Figure[unit.Mass]{}, false
	case c.End == job.EndScrapped:
		left = c.Mixed
	default:
		left = m.usuallyLeft(c)
	}
	var q chain.Run
	f := chain.Do2(&q, putOnRule, c.Mixed, left)
	return f, q.Err == nil
}

// usuallyLeft is what stays on the wall of a cup, and in the tool where this was
// the cup that wetted it.
func (m *logReader) usuallyLeft(c *job.Cup) working.Figure[unit.Mass] {
	card := m.card(c.Card)
	method, known := MethodOfCup(c, card)
	if card == nil || !known {
		return noneLeft
	}
	wall := cupWork{card: card, method: method, most: c.Mixed}.wall()
	if !m.out.opens[c.Path] {
		return wall
	}
	return working.Sum(leftoverSum, chain.OfMethod(method, method.Leftover, "held by the wet tool", unit.InGram), wall)
}

// openSpells finds the cups that open a stretch of work with one wet tool: of
// those of one step, material and method, each begun a spell or more after the
// last that did.
func (m *logReader) openSpells(logged []job.Cup) {
	type tool struct{ step, card, method string }
	opened := map[tool]float64{}
	cups := make([]*job.Cup, len(logged))
	for i := range cups {
		cups[i] = &logged[i]
	}
	sort.SliceStable(cups, func(i, j int) bool { return cups[i].In < cups[j].In })
	for _, c := range cups {
		card := m.card(c.Card)
		if card == nil {
			continue
		}
		with := tool{c.Step, c.Card, c.Method}
		if last, wetted := opened[with]; !wetted || c.In >= last+float64(card.Chemistry.Spell().Value) {
			opened[with] = c.In
			m.out.opens[c.Path] = true
		}
	}
}
