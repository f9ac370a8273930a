package view

import (
	"shedreckoner/calc/chance"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
)

func choices(s *page.State, l *chance.Line) []draw.Choice {
	var list []draw.Choice
	for _, c := range l.Sure.Choices {
		price := ""
		if c.Bought.IsPriced {
			price = page.Money(c.Bought.Cost.StringFixed(2), s)
		}
		list = append(list, draw.Choice{Packs: choiceWords(l, c), Price: price, Chance: float64(c.Chance), Text: page.Percent(c.Chance) + "\u00a0%", IsChosen: c.IsChosen})
	}
	return list
}

func choiceWords(l *chance.Line, c chance.Choice) string {
	if len(c.Packs) == 0 {
		return "nothing more"
	}
	other := *l
	other.Packs = c.Packs
	return page.PackWords(other)
}

// shownEffects is how many bars are worth a look.
const shownEffects = 5

func bars(s *page.State, l *chance.Line) []draw.Bar {
	ofKind := map[chance.CauseKind]int{}
	for _, e := range l.Sure.Effects {
		ofKind[e.Cause.Kind]++
	}
	var list []draw.Bar
	for _, e := range l.Sure.Effects[:min(len(l.Sure.Effects), shownEffects)] {
		low, high := max(0, -e.Low), max(0, e.High)
		list = append(list, draw.Bar{Name: page.CauseWords(e.Cause, ofKind[e.Cause.Kind] == 1), Text: change("−", low, s, l) + " to " + change("+", high, s, l), Low: e.Low, High: e.High})
	}
	return list
}

func change(sign string, amount float64, s *page.State, l *chance.Line) string {
	return sign + page.AmountOf(amount, l.Scale, s.Plan.Job.Units)
}

func advice(l *chance.Line) html {
	if len(l.Sure.Effects) == 0 {
		return nothing
	}
	return hint(page.Advice(l.Sure.Effects[0].Cause))
}
