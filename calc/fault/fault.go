package fault

import (
	"sort"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Cause is one thing that a fault may come from.
type Cause struct {
	Fault  string // key in job.Faults
	Key    string // of the cause; wasm/words has its sentence
	Sign   sign   // what the log would show of it; nil: no log shows it
	Waits  bool   // warmth and time may fix it; false: they never will
	Source source.Ref
	Mark   source.Mark
}

// Sign is what the log shows of a cause.
type Sign struct {
	Got, Limit float64 // SI, in Scale
	Scale      unit.Scale
	IsCeiling  bool    // the figure should stay under its limit; false: over it
	IsFact     bool    // it is so, without a figure
	IsPlanned  bool    // what was planned: nobody measured it
	Within     float64 // how far past the limit, as a share of it, is still no sign
}

// IsBorneOut says if the log bears the cause out.
func (s Sign) IsBorneOut() bool {
	const slack = 1e-9
	switch {
	case s.IsFact:
		return true
	case s.IsCeiling:
		return s.Got > s.Limit*(1+s.Within+slack)+slack*slack
	}
	return s.Got < s.Limit*(1-s.Within-slack)
}

// sign looks for a cause in what is known about a cup; false: nothing is known.
type sign func(*evidence) (Sign, bool)

// Causes is every cause of every fault, the first to look at first.
// Source: common practice.
var Causes = []Cause{
	cause("tacky", "cold", cold, true),
	cause("tacky", "under-table", underTable, true),
	cause("tacky", "under-floor", underFloor, false),
	cause("tacky", "no-wax", noWax, false),
	cause("tacky", "thin", thin, false),

	cause("soft", "cold", cold, true),
	cause("soft", "over-dosed", overDosed, false),
	cause("soft", "acetone", nil, false),

	cause("wrinkled", "thin", thin, false),
	cause("wrinkled", "half-cured", halfCured, false),

	cause("pinholes", "thick", thick, false),
	cause("pinholes", "damp", damp, false),
	cause("pinholes", "dew", nearDew, false),
	cause("pinholes", "fast", fast, false),
	cause("pinholes", "pressure", nil, false),

	cause("sag", "thick", thick, false),
	cause("sag", "over-thinned", overThinned, false),

	cause("fish-eyes", "too-much-wax", tooMuchWax, false),
	cause("fish-eyes", "silicone", nil, false),

	cause("print-through", "polished-soon", polishedSoon, false),
	cause("print-through", "dark", darkInSun, false),
	cause("print-through", "post-cure", nil, false),

	cause("chalky", "settled", settled, false),
	cause("chalky", "unstirred", nil, false),
}

func cause(fault, key string, s sign, waits bool) Cause {
	return Cause{fault, key, s, waits, source.Practice.At("faults and the first thing to check"), source.CommonPractice}
}

// Found is a cause compared with the log of a cup and its day.
type Found struct {
	*Cause
	Sign  Sign // where IsKnown: its limit is also the figure to keep next time
	Known bool
}

// IsAgainst says if the log contradicts the cause: a figure was recorded, and is as
// it should be. What was only planned contradicts nothing.
func (f *Found) IsAgainst() bool { return f.Known && !f.Sign.IsPlanned && !f.Sign.IsBorneOut() }

// IsBorneOut says if the log bears the cause out.
func (f *Found) IsBorneOut() bool { return f.Known && f.Sign.IsBorneOut() }

// Of compares the causes of a cup's fault with its log: first those that it bears
// out, then the others, unranked.
func Of(p *plan.Plan, c *job.Cup) []Found {
	e := &evidence{plan: p, cup: c, card: p.Job.CardByKey(c.Card)}
	e.step, e.buildup = p.StepAt(c.Step)
	if e.card == nil {
		return nil
	}
	var list []Found
	for i := range Causes {
		if f := (Found{Cause: &Causes[i]}); f.Fault == c.Fault {
			if f.Cause.Sign != nil {
				f.Sign, f.Known = f.Cause.Sign(e)
			}
			list = append(list, f)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return rank(list[i]) < rank(list[j]) })
	return list
}

func rank(f Found) int {
	if f.IsBorneOut() {
		return 0
	}
	return 1
}

// evidence is what is known about a cup and its day.
type evidence struct {
	plan    *plan.Plan
	cup     *job.Cup
	card    *job.Card
	step    *plan.Step // nil: the cup was for no step
	buildup *plan.Buildup
}
