package view

import (
	"shedreckoner/calc/chance"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
)

// sureness says how far the page is with finding out how sure the order is.
func sureness(s *page.State) html {
	switch {
	case s.Sure.Err != nil:
		return el("p", a("class", "bad"), txt("This job is too large to say how sure the order is. The list is as planned, with nothing for what goes otherwise: add your own."))
	case s.Sure.Done:
		return hint("Goods by weight and volume are bought for the chance on their cards. Areas, films, losses and what is sanded off are drawn " +
			unit.Group("10000") + " times, by how well each is known; the same hand errs the same way over the whole job.")
	}
	return hint("Working out how sure this is. Until then the list is as planned, with nothing for what goes otherwise.")
}

// sureFigures is what a line may take, and what it is bought for.
func sureFigures(s *page.State, l *chance.Line, id string) []html {
	m := unit.Weights
	if l.Scale == unit.InLitre {
		m = unit.Volumes
	}
	shown := func(si float64) string { return unit.Write(si, s.Plan.Job.Units.Scale(m), 3) }
	parts := []html{
		figure(s, id+".enough", "Enough in "+page.OfJobs(l.Sure.Chance), shown(float64(l.Sure.Enough.Value)), l.Sure.Enough.Step),
		hint("It will likely take " + shown(l.Sure.Low) + " to " + shown(l.Sure.High) + "."),
	}
	if l.Sure.Reserve.Step != nil {
		parts = append(parts, figure(s, id+".reserve", "Kept for repairs, of the same batch", shown(float64(l.Sure.Reserve.Value)), l.Sure.Reserve.Step))
	}
	return parts
}

// howSure is the part of a line that opens: what else could be bought, and what
// moves the need most.
func howSure(s *page.State, l *chance.Line, id string) html {
	open := s.IsOpen(id)
	button := el("button", a("class", "quiet", "type", "button", "id", "do-open-"+id, "data-do", "open", "data-path", id, "aria-expanded", yesNo(open)), txt("How sure is this?"))
	if !open {
		return button
	}
	return join(button,
		el("h3", nil, txt("Chance that it doesn't run out")), draw.Chance("Chance that "+l.Card.Name+" doesn't run out, by what is bought", choices(s, l)),
		el("ul", a("class", "choices"), leftovers(s, l)...),
		el("h3", nil, txt("What moves the need most")), draw.Bars("What moves the need of "+l.Card.Name+" most", bars(s, l)), advice(l))
}

// chosen is the purchase that the line makes.
func chosen(l *chance.Line) chance.Choice {
	for _, c := range l.Sure.Choices {
		if c.IsChosen {
			return c
		}
	}
	return chance.Choice{}
}

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

// leftovers tells of each choice what is likely left on the shelf.
func leftovers(s *page.State, l *chance.Line) []html {
	var list []html
	for _, c := range l.Sure.Choices {
		text := choiceWords(l, c) + ": " + lineAmount(s, l, c.Left) + " likely left over"
		if c.Bought.IsPriced && c.Left.IsPositive() && c.Bought.Bought.IsPositive() {
			worth := c.Bought.Cost.Mul(c.Left).Div(c.Bought.Bought)
			if worth.GreaterThan(c.Bought.Cost) { // what was in stock is worth no more than what was paid now
				worth = c.Bought.Cost
			}
			text += ", worth " + page.Money(worth.StringFixed(2), s)
		}
		list = append(list, el("li", nil, txt(text+".")))
	}
	return list
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
