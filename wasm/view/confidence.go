package view

import (
	"sort"

	"shedreckoner/calc/chance"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// chancePicture is what there is after a purchase against the jobs of twenty that
// have enough, the two ways to buy marked on it.
func chancePicture(s *page.State, l *chance.Line) html {
	scale := page.ShownIn(l.Scale, s.Plan.Job.Units)
	point := func(si, chance float64) draw.Point { return draw.Point{X: scale.From(si), Y: chance * 20} }
	have := func(c chance.Choice) draw.Point {
		return point(l.Scale.SI(l.Stock.Add(c.Bought.Bought).InexactFloat64()), float64(c.Chance))
	}
	curve := []draw.Point{point(l.Confidence.Low, 0.05), point(l.Confidence.High, 0.95)}
	var others []draw.Point
	for _, c := range l.Confidence.Choices {
		others = append(others, have(c))
	}
	curve = append(curve, others...)
	sort.SliceStable(curve, func(i, j int) bool { return curve[i].X < curve[j].X })
	start, once := have(l.Confidence.Start.Buys), have(l.Confidence.AtOnce.Buys)
	class := func(isChosen bool) string {
		if isChosen {
			return "today"
		}
		return "today dashed"
	}
	mark := func(at draw.Point, class, name string) draw.Mark {
		return draw.Mark{Point: at, Class: class, Text: words.OfTwenty(at.Y / 20), Name: name}
	}
	marks := []draw.Mark{mark(start, class(!l.Shop.BuysAtOnce), words.WayStart), mark(once, class(l.Shop.BuysAtOnce), words.WayOnce)}
	if start == once {
		marks = []draw.Mark{mark(start, "today", words.EitherWay)}
	}
	return draw.Plot{
		Title: words.ChancePicture(l.Card.Name, words.OfTwenty(start.Y/20), words.OfTwenty(once.Y/20)),
		X:     draw.Axis{Label: words.HaveAxis(scale.Symbol()), Ticks: draw.NiceTicks(curve[0].X, curve[len(curve)-1].X, 5, tickText)},
		Y:     draw.Axis{Label: words.JobsAxis, Ticks: draw.NiceTicks(0, 20, 4, tickText)},
		Lines: []draw.Line{{Class: "curve", Points: curve}},
		Dots:  []draw.Dots{{Name: words.OtherPacks, Class: "other", Points: others}},
		Marks: marks,
	}.Draw()
}

const (
	mostEffects = 3   // are worth a look
	leastEffect = 0.2 // of the largest
)

// moves is the two or three inputs that move the need most, each with what to
// measure.
func moves(s *page.State, l *chance.Line) html {
	if len(l.Confidence.Effects) == 0 {
		return nothing
	}
	ofKind := map[chance.CauseKind]int{}
	reach := 0.
	for _, e := range l.Confidence.Effects {
		ofKind[e.Cause.Kind]++
		reach = max(reach, reachOf(e))
	}
	var list []html
	for _, e := range l.Confidence.Effects[:min(len(l.Confidence.Effects), mostEffects)] {
		if reachOf(e) < leastEffect*reach {
			break
		}
		name := words.Cause(e.Cause, ofKind[e.Cause.Kind] == 1)
		low, high := change("−", max(0, -e.Low), s, l), change("+", max(0, e.High), s, l)
		list = append(list, el("li", nil, el("b", nil, txt(name)),
			draw.Effect(draw.EffectBar{Title: words.Moves(name, low, high), Low: e.Low, High: e.High, Reach: reach, LowText: low, HighText: high}),
			el("small", nil, txt(words.Advice(e.Cause)))))
	}
	return join(el("h3", nil, txt(words.MovesMost)), el("ul", a("class", "moves"), list...))
}

func reachOf(e chance.Effect) float64 { return max(-e.Low, e.Low, -e.High, e.High) }

func change(sign string, amount float64, s *page.State, l *chance.Line) string {
	return sign + page.AmountOf(amount, l.Scale, s.Plan.Job.Units)
}

func choiceWords(l *chance.Line, c chance.Choice) string {
	if len(c.Packs) == 0 {
		return words.NothingMore
	}
	other := *l
	other.Packs = c.Packs
	return words.Packs(other)
}
