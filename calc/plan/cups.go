package plan

import (
	"math"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Cups is what a step is mixed in, all coats or passes together. What stays in cup
// and tool is counted here, once: losses don't include it.
type Cups struct {
	Count  working.Figure[unit.Factor]
	Spells working.Figure[unit.Factor] // stretches of work with one wet tool
	Each   working.Figure[unit.Mass]   // of mix, catalyst not counted
	Left   working.Figure[unit.Mass]   // stays behind in all cups and tools
	Mixed  working.Figure[unit.Mass]   // with what stays behind
}

var (
	mixings = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "s = n × d", Source: source.Ref{Document: &source.House, Place: "one coat or pass at a time"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "s", Meaning: "mixing sessions", Scale: unit.InPure, Min: 1, Max: 1e6},
		Args: []working.Arg{
			{Symbol: "n", Meaning: "coats or passes", Scale: unit.InPure, Min: 1, Max: 1000},
			{Symbol: "d", Meaning: "days for one, since a day holds at most 200 cups", Scale: unit.InPure, Min: 1, Max: 1000},
		}},
		Code: func(n, days unit.Factor) unit.Factor { return n * days }}

	mixForOne = working.Rule2[unit.Mass, unit.Factor, unit.Mass]{Rule: &working.Rule{Formula: "N = M ÷ s", Source: source.Ref{Document: &source.House, Place: "equal shares"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "mix that must leave the cups, each time", Scale: unit.InKilogram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "M", Meaning: "mix that must leave the cups", Scale: unit.InKilogram, Min: 0, Max: 1e6}, {Symbol: "s", Meaning: "mixing sessions", Scale: unit.InPure, Min: 1, Max: 1e6}}},
		Code: func(whole unit.Mass, n unit.Factor) unit.Mass { return whole / unit.Mass(n) }}

	allCups = working.Rule2[unit.Factor, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "C = s × n", Source: source.Ref{Document: &source.Geometry, Place: "equal shares"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "C", Meaning: "cups in all", Scale: unit.InPure, Min: 0, Max: 1e8},
		Args:   []working.Arg{{Symbol: "s", Meaning: "mixing sessions", Scale: unit.InPure, Min: 1, Max: 1e6}, {Symbol: "n", Meaning: "cups each time", Scale: unit.InPure, Min: 1, Max: cure.MaxCups}}},
		Code: func(n, cups unit.Factor) unit.Factor { return n * cups }}

	roughCups = working.Rule3[unit.Mass, unit.Mass, unit.Mass, unit.Factor]{Rule: &working.Rule{Formula: "n = ceil(N ÷ (M − L) − 0.000000001)", Source: source.Ref{Document: &source.House, Place: "cups of one coat or pass, the tool not filled yet"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "n", Meaning: "cups", Scale: unit.InPure, Min: 0, Max: 1e8},
		Args: []working.Arg{
			{Symbol: "N", Meaning: "mix that must leave the cups for one coat or pass", Scale: unit.InKilogram, Min: 0, Max: 1e6},
			{Symbol: "M", Meaning: "largest cup", Scale: unit.InKilogram, Min: 1e-3, Max: 20},
			{Symbol: "L", Meaning: "left on the wall of a cup", Scale: unit.InKilogram, Min: 0, Max: 1},
		}},
		Code: func(need, most, left unit.Mass) unit.Factor {
			return unit.Factor(math.Ceil(float64(need/(most-left)) - 1e-9))
		}}

	timeOfCoat = working.Rule4[unit.Area, unit.SpreadingSpeed, unit.Factor, unit.Time, unit.Time]{Rule: &working.Rule{Formula: "t = A ÷ v + n × m_x", Source: source.Ref{Document: &source.House, Place: "spreading and mixing"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "t", Meaning: "minutes of one coat or pass", Scale: unit.InMinute, Min: 0, Max: 1e9},
		Args: []working.Arg{
			{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
			{Symbol: "v", Meaning: "spreading speed", Scale: unit.InSquareMetrePerMinute, Min: 0.005, Max: 5},
			{Symbol: "n", Meaning: "cups", Scale: unit.InPure, Min: 0, Max: 1e8},
			{Symbol: "m_x", Meaning: "minutes to mix", Scale: unit.InMinute, Min: 0, Max: 30},
		}},
		Code: func(a unit.Area, v unit.SpreadingSpeed, n unit.Factor, mixing unit.Time) unit.Time {
			return unit.Time(float64(a)/float64(v)) + unit.Time(n)*mixing
		}}

	spellsOf = working.Rule3[unit.Factor, unit.Time, unit.Time, unit.Factor]{Rule: &working.Rule{Formula: "s = g × ceil(t ÷ d − 0.000000001)", Source: source.Ref{Document: &source.Practice, Place: "a wet tool lasts so long"}, Mark: source.Assumption,
		Result: working.Arg{Symbol: "s", Meaning: "spells of work with one wet tool", Scale: unit.InPure, Min: 0, Max: 1e9},
		Args: []working.Arg{
			{Symbol: "g", Meaning: "coats or passes", Scale: unit.InPure, Min: 1, Max: 1000},
			{Symbol: "t", Meaning: "minutes of one coat or pass", Scale: unit.InMinute, Min: 0, Max: 1e9},
			{Symbol: "d", Meaning: "minutes of a spell", Scale: unit.InMinute, Min: 5, Max: 600},
		}},
		Code: func(coats unit.Factor, t, spell unit.Time) unit.Factor {
			return coats * unit.Factor(math.Ceil(float64(t/spell)-1e-9))
		}}

	heldInAll = working.Rule2[unit.Factor, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "H = s × h", Source: source.Ref{Document: &source.Geometry, Place: "equal spells"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "H", Meaning: "held by the tools", Scale: unit.InKilogram, Min: 0, Max: 1e9},
		Args:   []working.Arg{{Symbol: "s", Meaning: "spells", Scale: unit.InPure, Min: 0, Max: 1e9}, {Symbol: "h", Meaning: "held by the wet tool", Scale: unit.InKilogram, Min: 0, Max: 1}}},
		Code: func(n unit.Factor, held unit.Mass) unit.Mass { return unit.Mass(n) * held }}

	leftInAll = working.Rule2[unit.Factor, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "L = C × L_c", Source: source.Ref{Document: &source.Geometry, Place: "equal shares"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "L", Meaning: "left on the walls of all cups", Scale: unit.InKilogram, Min: 0, Max: 1e9},
		Args:   []working.Arg{{Symbol: "C", Meaning: "cups", Scale: unit.InPure, Min: 0, Max: 1e8}, {Symbol: "L_c", Meaning: "left on the wall of each", Scale: unit.InKilogram, Min: 0, Max: 1}}},
		Code: func(n unit.Factor, left unit.Mass) unit.Mass { return unit.Mass(n) * left }}

	outOfCups   = working.SumRule("must leave the cups", unit.InKilogram)
	leftoverSum = working.SumRule("left in cup and tool", unit.InGram)
	mixedSum    = working.SumRule("mixed, with what stays behind", unit.InKilogram)

	withLoss = working.Rule2[unit.Mass, unit.Share, unit.Mass]{Rule: &working.Rule{Formula: "N = m ÷ (1 − loss)", Source: source.Ref{Document: &source.Practice, Place: "what falls off the knife"}, Mark: source.CommonPractice,
		Result: working.Arg{Symbol: "N", Meaning: "mix that must leave the board", Scale: unit.InKilogram, Min: 0, Max: 1e6},
		Args:   []working.Arg{{Symbol: "m", Meaning: "put on", Scale: unit.InKilogram, Min: 0, Max: 1e6}, {Symbol: "loss", Meaning: "loss", Scale: unit.InPure, Min: 0, Max: 0.9}}},
		Code: func(m unit.Mass, loss unit.Share) unit.Mass { return m / unit.Mass(1-loss) }}

	noSmallest = working.Given(unit.Mass(0), "smallest cup", unit.InGram, "the tool for dosing isn't looked at for the order", source.Assumption)
)

// leastMixed is the least mix of which some is counted as left behind: less is a
// dab.
const leastMixed = unit.Gram

// cupWork is the work of one step for counting its cups: what must leave them in
// how many coats or passes, how it is put on, and the largest cup.
type cupWork struct {
	card   *job.Card
	method *material.Method
	need   working.Figure[unit.Mass]
	times  working.Figure[unit.Factor] // coats or passes
	area   working.Figure[unit.Area]   // of one of them
	most   working.Figure[unit.Mass]
	takes  working.Figure[unit.Time] // to mix one cup
}

// inCups divides what must leave the cups into coats or passes, and each of these
// into the fewest cups no larger than the largest.
func (w cupWork) inCups(q *chain.Run) Cups {
	if w.need.Value/unit.Mass(w.times.Value) < leastMixed {
		return Cups{Mixed: w.need}
	}
	wall := w.wall()
	each := chain.Do2(q, mixForOne, w.need, w.times)
	rough := chain.Do3(q, roughCups, each, w.most, wall)
	takes := chain.Do4(q, timeOfCoat, w.area, chain.OfMethod(w.method, w.method.Speed, "spreading speed", unit.InSquareMetrePerMinute), rough, w.takes)
	spell := w.card.Chemistry.Spell()
	c := Cups{Spells: chain.Do3(q, spellsOf, w.times, takes, working.Given(spell.Value, "minutes of a spell", unit.InMinute, w.card.Name, spell.Mark))}
	held := chain.Do2(q, heldInAll, c.Spells, chain.OfMethod(w.method, w.method.Leftover, "held by the wet tool", unit.InGram))
	if q.Err != nil {
		return Cups{}
	}
	out := working.Sum(outOfCups, w.need, held)
	n := chain.Do2(q, mixings, w.times, days(out.Value/unit.Mass(w.times.Value), w.most.Value, wall.Value))
	each = chain.Do2(q, mixForOne, out, n)
	if q.Err != nil {
		return Cups{}
	}
	cups, err := cure.CupsFor(each, w.most, noSmallest, wall)
	if q.Err = err; err != nil {
		return Cups{}
	}
	c.Count, c.Each = chain.Do2(q, allCups, n, cups.Count), cups.Each
	c.Left = working.Sum(leftoverSum, held, chain.Do2(q, leftInAll, c.Count, wall))
	c.Mixed = working.Sum(mixedSum, w.need, c.Left)
	return c
}

// wall is what stays on the wall of each cup. Filler is mixed on a board.
func (w cupWork) wall() working.Figure[unit.Mass] {
	if w.method.IsKnife && canFill(w.card) {
		return noWall
	}
	wall := material.CupWall(unit.Volume(float64(w.most.Value) / float64(w.card.Density.Value)))
	return working.Given(wall.Value, "left on the wall of the cup", unit.InGram, "the largest cup", wall.Mark)
}

var noWall = working.Given(unit.Mass(0), "left on the wall of the cup", unit.InGram, "mixed on a board", source.Exact)

// days is the number of days over which a coat is spread so that none takes more
// cups than a day holds, nor more mix than CupsFor takes.
func days(coat, largest, left unit.Mass) working.Figure[unit.Factor] {
	n := 1.0
	if fromCup := largest - unit.Gram - left; fromCup > 0 { // cups are in whole grams; if not, CupsFor says what is wrong
		n = math.Ceil(max(float64(coat/(cure.MaxCups*fromCup)), float64(coat/(1000*unit.Kilogram)), 1))
	}
	return working.Given(unit.Factor(n), "days for one coat or pass", unit.InPure, "at most 200 cups a day", source.Assumption)
}

// mixDensity is the density of the product with what goes into it. Those of styrene
// and wax solution are so close that the thinner's stands for both: every card with
// wax takes a thinner.
func (m coater) mixDensity(q *chain.Run, card *job.Card, extra working.Figure[unit.ByVolume]) working.Figure[unit.Density] {
	if extra.Value == 0 {
		return chain.DensityOf(card)
	}
	return chain.Do3(q, film.MixDensity, chain.DensityOf(card), extra, chain.DensityOf(m.card(card.Thinner)))
}
