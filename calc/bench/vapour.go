package bench

import (
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Vapour is the styrene that a cup, its coat and the day give off, and the air that
// they need.
type Vapour struct {
	Known    bool
	GivenOff working.Figure[unit.Mass] // by this cup
	Coat     working.Figure[unit.Mass] // by the cups of the coat still to come; Step nil: the cup isn't for a coat
	Limit    air.Exposure
	Air      working.Figure[unit.AirFlow] // for the coat, else the cup, given off within an hour
	IsBeyond bool                         // more than an open door lets in

	IsInside bool                        // it is put on in a closed space
	Volume   working.Figure[unit.Volume] // of the space that comes nearest to the limit; no Step: it is asked for
	Space    working.Figure[unit.Share]  // of the lower explosive limit in there; no Step: not known
	Danger   air.Danger

	Day    []GivenOff                   // by method: what went on today, and what is still to come
	DayAir working.Figure[unit.AirFlow] // all of that spread over the hours that the limit is a mean of
}

// GivenOff is the styrene of cups put on in one way.
type GivenOff struct {
	Method *material.Method // nil: not known, taken as sprayed
	Cups   int
	Mass   working.Figure[unit.Mass]
}

var (
	coatGivenOff = working.Rule2[unit.Factor, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "m_n = n × m", Source: source.Ref{Document: &source.Geometry, Place: "equal cups"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "m_n", Meaning: "styrene given off by the coat", Scale: unit.InGram, Min: 0, Max: 6e5},
		Args:   []working.Arg{{Symbol: "n", Meaning: "cups still to come", Scale: unit.InPure, Min: 1, Max: cure.MaxCups}, {Symbol: "m", Meaning: "styrene given off by one cup", Scale: unit.InGram, Min: 0, Max: 6e5}}},
		Code: func(n unit.Factor, m unit.Mass) unit.Mass { return unit.Mass(n) * m }}

	methodGivenOff = working.SumRule("styrene given off in one way", unit.InGram)
	dayGivenOff    = working.SumRule("styrene given off today", unit.InGram)

	limitIsOver = working.Given(8*unit.Hour, "hours that the limit is a mean of", unit.InHour, "the limit's own", source.Exact)
)

// vapours works out what the settled cup gives off.
type vapours struct{ *bencher }

// vapour works out what the cup and its coat give off within the hour, and what
// the day gives off by method.
func (b vapours) vapour() Vapour {
	if !givesStyrene(b.out.Card) || b.out.Mix.Product.Step == nil || b.out.Surface.Step == nil {
		return Vapour{}
	}
	var q chain.Run
	v := Vapour{Limit: b.limit()}
	v.GivenOff = givenOff(&q, b.out.Card, b.out.Mix, b.out.Whole, b.out.Method)
	soon, cups := v.GivenOff, 1
	if b.out.HasCups {
		cups = b.cupsToCome()
		n := working.Given(unit.Factor(cups), "cups of the coat still to come", unit.InPure, "the coat's cups without those that run", source.Calculated)
		v.Coat = chain.Do2(&q, coatGivenOff, n, v.GivenOff)
		soon = v.Coat
	}
	v.Air = b.airFor(&q, soon, air.LeavesWithin, v.Limit)
	v.Day = b.byMethod(&q, GivenOff{b.out.Method, cups, soon})
	v.DayAir = b.airFor(&q, dayTotal(v.Day), limitIsOver, v.Limit)
	v.Known, v.IsBeyond = q.Err == nil, air.ExceedsDoorAir(v.Air.Value) || air.ExceedsDoorAir(v.DayAir.Value)
	b.spaces(&v, soon)
	return v
}

func givesStyrene(c *job.Card) bool { return c.Styrene.Known && c.Styrene.Value > 0 }

func (b vapours) limit() air.Exposure {
	for _, limit := range air.Exposures {
		if limit.Agency == b.typed.Agency {
			return limit
		}
	}
	return air.LowestExposure()
}

// givenOff is what a cup of a card gives off; thinner and wax solution count as
// styrene.
func givenOff(q *chain.Run, card *job.Card, m cure.Mix, whole working.Figure[unit.Mass], method *material.Method) working.Figure[unit.Mass] {
	added := unit.ByMass(0)
	if m.Product.Value > 0 {
		added = unit.ByMass((m.Thinner.Value + m.Wax.Value) / m.Product.Value)
	}
	h := chain.Do2(q, air.ThinnedContent, chain.OnCard(card, card.Styrene, "styrene in the product", unit.InPercent),
		working.Given(added, "thinner and wax solution by mass of product", unit.InPercent, "this cup", source.Calculated))
	if q.Err != nil {
		return working.Figure[unit.Mass]{}
	}
	e, err := air.Emission(h, method == nil || method.IsSpray)
	return chain.Do2(q, air.GivenOff, chain.Keep(q, e, err), whole)
}

func (b vapours) airFor(q *chain.Run, mass working.Figure[unit.Mass], within working.Figure[unit.Time], limit air.Exposure) working.Figure[unit.AirFlow] {
	rate := chain.Do2(q, air.Rate, mass, within)
	if q.Err != nil {
		return working.Figure[unit.AirFlow]{}
	}
	flow, err := air.StyreneAir(rate, limit.Limit(), b.out.Surface, air.MixingFactor)
	return chain.Keep(q, flow, err)
}

// today are the logged cups whose catalyst went in today, of what gives styrene.
func (b vapours) today() []*job.Cup {
	var list []*job.Cup
	for i := range b.plan.Job.Cups {
		c := &b.plan.Job.Cups[i]
		card := b.plan.Job.CardByKey(c.Card)
		if c.Day != "" && c.Day == b.now.Date && c.In != 0 && c.Mixed.Step != nil && card != nil && givesStyrene(card) {
			list = append(list, c)
		}
	}
	return list
}

// cupsToCome is the coat's cups without those already running, this one at least.
// What has been put on is taken off the coat's need before its cups are counted.
func (b vapours) cupsToCome() int {
	n := int(b.out.Cups.Count.Value)
	for _, c := range b.today() {
		if c.Step == b.out.Coat && c.Ended == 0 {
			n--
		}
	}
	return max(1, n)
}

// byMethod adds up by method what today's cups and those to come give off, the
// latter first.
func (b vapours) byMethod(q *chain.Run, coming GivenOff) []GivenOff {
	list := []GivenOff{coming}
	parts := map[*material.Method][]working.Figure[unit.Mass]{coming.Method: {coming.Mass}}
	for _, c := range b.today() {
		method, _ := material.FindMethod(c.Method)
		at := slices.IndexFunc(list, func(g GivenOff) bool { return g.Method == method })
		if at < 0 {
			list, at = append(list, GivenOff{Method: method}), len(list)
		}
		list[at].Cups++
		parts[method] = append(parts[method], givenOff(q, b.plan.Job.CardByKey(c.Card), cure.Mix{Product: c.Product, Thinner: c.Thinner, Wax: c.Wax}, c.Mixed, method))
	}
	for i := range list {
		list[i].Mass = working.Sum(methodGivenOff, parts[list[i].Method]...)
	}
	return list
}

func dayTotal(day []GivenOff) working.Figure[unit.Mass] {
	var parts []working.Figure[unit.Mass]
	for _, g := range day {
		parts = append(parts, g.Mass)
	}
	return working.Sum(dayGivenOff, parts...)
}
