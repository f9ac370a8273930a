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

// Cups is what a step is mixed in, all coats or passes together. What stays in
// cup and tool is counted here, once: losses don't hold it.
type Cups struct {
	Count working.Figure[unit.Factor]
	Each  working.Figure[unit.Mass] // of mix, catalyst not counted
	Left  working.Figure[unit.Mass] // stays behind in all cups and tools
	Mixed working.Figure[unit.Mass] // with what stays behind
}

var (
	sittings = working.Of2("s = n × d", source.House.At("one coat or pass at a time"), source.Calculated,
		working.In("s", "times of mixing", unit.InPure, 1, 1e6),
		[]working.Arg{
			working.In("n", "coats or passes", unit.InPure, 1, 1000),
			working.In("d", "days for one, since a day holds at most 200 cups", unit.InPure, 1, 1000),
		},
		func(n, days unit.Factor) unit.Factor { return n * days })

	mixForOne = working.Of2("N = M ÷ s", source.House.At("equal shares"), source.Calculated,
		working.In("N", "mix that must leave the cups, each time", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("M", "mix that must leave the cups", unit.InKilogram, 0, 1e6), working.In("s", "times of mixing", unit.InPure, 1, 1e6)},
		func(whole unit.Mass, n unit.Factor) unit.Mass { return whole / unit.Mass(n) })

	allCups = working.Of2("C = s × n", source.Geometry.At("equal shares"), source.Exact,
		working.In("C", "cups in all", unit.InPure, 0, 1e8),
		[]working.Arg{working.In("s", "times of mixing", unit.InPure, 1, 1e6), working.In("n", "cups each time", unit.InPure, 1, cure.MaxCups)},
		func(n, cups unit.Factor) unit.Factor { return n * cups })

	leftInAll = working.Of2("L = C × L_c", source.Geometry.At("equal shares"), source.Exact,
		working.In("L", "left behind in all cups and tools", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("C", "cups", unit.InPure, 0, 1e8), working.In("L_c", "left behind with each cup", unit.InKilogram, 0, 2)},
		func(n unit.Factor, left unit.Mass) unit.Mass { return unit.Mass(n) * left })

	mixedSum = working.SumRule("mixed, with what stays behind", unit.InKilogram)

	withLoss = working.Of2("N = m ÷ (1 − loss)", source.Practice.At("what falls off the knife"), source.CommonPractice,
		working.In("N", "mix that must leave the board", unit.InKilogram, 0, 1e6),
		[]working.Arg{working.In("m", "put on", unit.InKilogram, 0, 1e6), working.In("loss", "loss", unit.InPure, 0, 0.9)},
		func(m unit.Mass, loss unit.Share) unit.Mass { return m / unit.Mass(1-loss) })

	noSmallest = working.Given(unit.Mass(0), "smallest cup", unit.InGram, "the tool for dosing isn't looked at for the order", source.Assumption)
)

// leastMixed is under which nothing is said to stay behind: it is a dab.
const leastMixed = unit.Gram

// inCups shares out what must leave the cups in coats or passes, and each of
// them in the fewest cups of the card's largest batch.
func inCups(q *chain.Run, card *job.Card, need working.Figure[unit.Mass], goes working.Figure[unit.Factor], left working.Figure[unit.Mass]) Cups {
	if q.Err != nil || need.Value/unit.Mass(goes.Value) < leastMixed {
		return Cups{Mixed: need}
	}
	most := chain.OnCard(card, card.BatchMost, "largest batch", unit.InGram)
	n := chain.Do2(q, sittings, goes, days(need.Value/unit.Mass(goes.Value), most.Value, left.Value))
	each := chain.Do2(q, mixForOne, need, n)
	if q.Err != nil {
		return Cups{}
	}
	cups, err := cure.CupsFor(each, most, noSmallest, left)
	if q.Err = err; err != nil {
		return Cups{}
	}
	c := Cups{Count: chain.Do2(q, allCups, n, cups.Count), Each: cups.Each}
	c.Left = chain.Do2(q, leftInAll, c.Count, left)
	c.Mixed = working.Sum(mixedSum, need, c.Left)
	return c
}

// days is over how many days a coat is spread so that none takes more cups than
// a day holds, nor more mix than a day's sum takes.
func days(coat, largest, left unit.Mass) working.Figure[unit.Factor] {
	n := 1.0
	if fromCup := largest - unit.Gram - left; fromCup > 0 { // cups are in whole grams; if not, CupsFor says what is wrong
		n = math.Ceil(max(float64(coat/(cure.MaxCups*fromCup)), float64(coat/(1000*unit.Kilogram)), 1))
	}
	return working.Given(unit.Factor(n), "days for one coat or pass", unit.InPure, "at most 200 cups a day", source.Assumption)
}

// leftOver is what stays in the tool and, of what is mixed in a cup, on its wall.
func leftOver(card *job.Card, method *material.Method) working.Figure[unit.Mass] {
	tool := chain.OfMethod(method, method.Leftover, "left in the tool", unit.InGram)
	if method.IsKnife && card.Kind == material.Filler { // mixed on a board
		return tool
	}
	wall := material.CupWall(unit.Volume(float64(card.BatchMost.Value) / float64(card.Density.Value)))
	return working.Sum(leftoverSum, tool, working.Given(wall.Value, "left on the wall of the cup", unit.InGram, "cup of the largest batch", wall.Mark))
}

// mixDensity is that of the product with what goes in. Styrene and wax solution
// are so near each other that the thinner's density stands for both.
func (m *maker) mixDensity(q *chain.Run, card *job.Card, extra working.Figure[unit.ByVolume]) working.Figure[unit.Density] {
	added := m.plan.Job.CardByKey(card.Thinner)
	if added == nil {
		added = m.plan.Job.CardByKey(waxCard)
	}
	if extra.Value == 0 || added == nil {
		return chain.DensityOf(card)
	}
	return chain.Do3(q, film.MixDensity, chain.DensityOf(card), extra, chain.DensityOf(added))
}
