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
	mixings = working.Of2("s = n × d", source.House.At("one coat or pass at a time"), source.Calculated,
		working.In("s", "mixing sessions", unit.InPure, 1, 1e6),
		[]working.Arg{
			working.In("n", "coats or passes", unit.InPure, 1, 1000),
			working.In("d", "days for one, since a day holds at most 200 cups", unit.InPure, 1, 1000),
		},
		func(n, days unit.Factor) unit.Factor { return n * days })

	mixForOne = working.Of2("N = M ÷ s", source.House.At("equal shares"), source.Calculated,
		working.In("N", "mix that must leave the cups, each time", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("M", "mix that must leave the cups", unit.InKilogram, 0, 1e6), working.In("s", "mixing sessions", unit.InPure, 1, 1e6)},
		func(whole unit.Mass, n unit.Factor) unit.Mass { return whole / unit.Mass(n) })

	allCups = working.Of2("C = s × n", source.Geometry.At("equal shares"), source.Exact,
		working.In("C", "cups in all", unit.InPure, 0, 1e8),
		[]working.Arg{working.In("s", "mixing sessions", unit.InPure, 1, 1e6), working.In("n", "cups each time", unit.InPure, 1, cure.MaxCups)},
		func(n, cups unit.Factor) unit.Factor { return n * cups })

	roughCups = working.Of3("n = ceil(N ÷ (M − L) − 0.000000001)", source.House.At("cups of one coat or pass, the tool not filled yet"), source.Calculated,
		working.In("n", "cups", unit.InPure, 0, 1e8),
		[]working.Arg{
			working.In("N", "mix that must leave the cups for one coat or pass", unit.InKilogram, 0, 1e6),
			working.In("M", "largest cup", unit.InKilogram, 1e-3, 20),
			working.In("L", "left on the wall of a cup", unit.InKilogram, 0, 1),
		},
		func(need, most, left unit.Mass) unit.Factor {
			return unit.Factor(math.Ceil(float64(need/(most-left)) - 1e-9))
		})

	timeOfCoat = working.Of4("t = A ÷ v + n × m_x", source.House.At("spreading and mixing"), source.Calculated,
		working.In("t", "minutes of one coat or pass", unit.InMinute, 0, 1e9),
		[]working.Arg{
			working.In("A", "area", unit.InSquareMetre, 0, 1e5),
			working.In("v", "spreading speed", unit.InSquareMetrePerMinute, 0.005, 5),
			working.In("n", "cups", unit.InPure, 0, 1e8),
			working.In("m_x", "minutes to mix", unit.InMinute, 0, 30),
		},
		func(a unit.Area, v unit.SpreadingSpeed, n unit.Factor, mixing unit.Time) unit.Time {
			return unit.Time(float64(a)/float64(v)) + unit.Time(n)*mixing
		})

	spellsOf = working.Of3("s = g × ceil(t ÷ d − 0.000000001)", source.Practice.At("a wet tool lasts so long"), source.Assumption,
		working.In("s", "spells of work with one wet tool", unit.InPure, 0, 1e9),
		[]working.Arg{
			working.In("g", "coats or passes", unit.InPure, 1, 1000),
			working.In("t", "minutes of one coat or pass", unit.InMinute, 0, 1e9),
			working.In("d", "minutes of a spell", unit.InMinute, 5, 600),
		},
		func(coats unit.Factor, t, spell unit.Time) unit.Factor {
			return coats * unit.Factor(math.Ceil(float64(t/spell)-1e-9))
		})

	heldInAll = working.Of2("H = s × h", source.Geometry.At("equal spells"), source.Exact,
		working.In("H", "held by the tools", unit.InKilogram, 0, 1e9),
		[]working.Arg{working.In("s", "spells", unit.InPure, 0, 1e9), working.In("h", "held by the wet tool", unit.InKilogram, 0, 1)},
		func(n unit.Factor, held unit.Mass) unit.Mass { return unit.Mass(n) * held })

	leftInAll = working.Of2("L = C × L_c", source.Geometry.At("equal shares"), source.Exact,
		working.In("L", "left on the walls of all cups", unit.InKilogram, 0, 1e9),
		[]working.Arg{working.In("C", "cups", unit.InPure, 0, 1e8), working.In("L_c", "left on the wall of each", unit.InKilogram, 0, 1)},
		func(n unit.Factor, left unit.Mass) unit.Mass { return unit.Mass(n) * left })

	outOfCups   = working.SumRule("must leave the cups", unit.InKilogram)
	leftoverSum = working.SumRule("left in cup and tool", unit.InGram)
	mixedSum    = working.SumRule("mixed, with what stays behind", unit.InKilogram)

	withLoss = working.Of2("N = m ÷ (1 − loss)", source.Practice.At("what falls off the knife"), source.CommonPractice,
		working.In("N", "mix that must leave the board", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("m", "put on", unit.InKilogram, 0, 1e6), working.In("loss", "loss", unit.InPure, 0, 0.9)},
		func(m unit.Mass, loss unit.Share) unit.Mass { return m / unit.Mass(1-loss) })

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
	if q.Err != nil || w.need.Value/unit.Mass(w.times.Value) < leastMixed {
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
