package view

import (
	"strconv"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// orderScreen is what to buy.
func orderScreen(s *page.State) html {
	if len(s.Order().Lines) == 0 {
		return join(leftOut(s), el("div", a("class", "empty"),
			el("p", nil, txt("Nothing to order yet. The list follows from measured surfaces that have a build-up.")),
			action("go", "surfaces", "", "Measure surfaces", "main")))
	}
	var lines []html
	for i := range s.Order().Lines {
		lines = append(lines, orderLine(s, &s.Order().Lines[i]))
	}
	return join(
		leftOut(s),
		region("totals", "div", a("class", "figures"), totals(s)),
		region("sureness", "div", a("class", "sureness", "aria-live", "polite"), sureness(s)),
		region("order-cautions", "div", a("class", "cautions"), orderCautions(s)),
		region("list-order", "div", a("class", "list orderlist", "tabindex", "-1"), lines...),
		el("div", a("class", "itemtools"),
			action("text", "", "", "Copy as text", "quiet"), action("csv", "", "", "Save as CSV", "quiet"),
			action("share", "", "", "Share", "quiet"), action("print", "", "", "Print", "quiet")),
		el("p", a("class", "hint"), txt(page.OrderFootnote)),
		region("paper", "div", a("class", "paper"), orderPaper(s)))
}

func totals(s *page.State) html {
	o := s.Order()
	if o.IsPartial() {
		return el("p", a("class", "total"), el("span", a("class", "label"), txt("To pay")), el("span", a("class", "value"), txt(page.OrderMoney(s))))
	}
	return join(
		el("p", a("class", "total"), el("span", a("class", "label"), txt("To pay")), el("span", a("class", "value"), txt(page.OrderMoney(s)))),
		hintIf(page.Unpriced(s)),
		figure(s, "puton", "Mixed and put on", of(s, o.PutOn, unit.Volumes), o.PutOn.Step),
		figure(s, "bought", "Mass bought", of(s, o.Bought, unit.Weights), o.Bought.Step),
		figure(s, "kept", "Mass that stays on the boat", of(s, s.Plan.Kept, unit.Weights), s.Plan.Kept.Step))
}

// orderCautions is what can't be put right by buying.
func orderCautions(s *page.State) html {
	for _, b := range s.Plan.Buildups {
		for _, step := range b.Steps {
			if step.Coat != nil && step.Card.Chemistry == material.TwoPack && step.Job.Method.IsSpray {
				return el("p", a("class", "bad"), txt("Sprayed two-pack topcoat: no cartridge protects from it, so none is on the list. It takes an air-fed set."))
			}
		}
	}
	return nothing
}

func orderLine(s *page.State, l *chance.Line) html {
	id := "order." + l.Key()
	parts := []html{
		el("h2", nil, txt(l.Name())),
		el("p", a("class", "buy"), txt(page.BuyWords(l, s.Plan.Job.Units))),
	}
	if l.Waits() != nil {
		return region(id, "article", a("class", "item orderline"), append(parts,
			figure(s, id, "Need", "–", nil), action("find", l.Waits().By, l.Key(), words.PutItRight, "quiet"))...)
	}
	parts = append(parts, needFigures(s, l, id)...)
	if l.Sure != nil {
		parts = append(parts, sureFigures(s, l, id)...)
	}
	if l.Stock.IsPositive() || l.Taken.IsPositive() {
		parts = append(parts, hint("In stock: "+lineAmount(s, l, l.Stock)+"."+takenWords(s, l)))
	}
	if !l.ToBuy.IsZero() && l.Err == nil {
		parts = append(parts, bought(s, l, id)...)
	}
	if l.Card.ShelfLife.Known {
		parts = append(parts, hint("Keeps "+page.Months(l.Card.ShelfLife.Value)+", closed and cool."))
	}
	if l.Grade == 0 || firstOfCard(s, l) {
		parts = append(parts, action("go", "cards", l.Card.Path, "Packs, prices, stock", "quiet"))
	}
	if l.Sure != nil {
		parts = append(parts, howSure(s, l, id))
	}
	return region(id, "article", a("class", "item orderline"), parts...)
}

// firstOfCard says if no line before is of the same card.
func firstOfCard(s *page.State, l *chance.Line) bool {
	for i := range s.Order().Lines {
		if other := &s.Order().Lines[i]; other.Card == l.Card {
			return other.Grade == l.Grade
		}
	}
	return true
}

// leftOut says what the order is without, and leads there.
func leftOut(s *page.State) html {
	text := words.LeftOut(s.Order().LeftOut)
	if text == "" {
		return region("left-out", "div", a("hidden", ""))
	}
	return region("left-out", "div", nil,
		el("p", a("class", "verdict", "data-is", asks), el("span", nil, txt(text)), action("find", s.Order().LeftOut[0].By, "first", words.PutItRight, "quiet")))
}

func hint(text string) html { return el("p", a("class", "hint"), txt(text)) }

func hintIf(text string) html {
	if text == "" {
		return nothing
	}
	return hint(text)
}

// takenWords says how much of what was counted has gone into logged cups.
func takenWords(s *page.State, l *chance.Line) string {
	if l.Taken.IsZero() {
		return ""
	}
	return " Logged cups have taken " + lineAmount(s, l, l.Taken) + " of what was counted."
}

// needFigures is the need in every measure that is known of it.
func needFigures(s *page.State, l *chance.Line, id string) []html {
	var parts []html
	if l.Mass.Value > 0 {
		parts = append(parts, figure(s, id+".mass", "Need as planned", of(s, l.Mass, unit.Weights), l.Mass.Step))
	}
	if l.Volume.Value > 0 {
		parts = append(parts, figure(s, id+".volume", "Need as planned, by volume", of(s, l.Volume, unit.Volumes), l.Volume.Step))
	}
	if len(parts) == 0 {
		parts = append(parts, figure(s, id, "Need", lineAmount(s, l, l.Need), l.Why()))
	}
	return parts
}

func bought(s *page.State, l *chance.Line, id string) []html {
	left := "Left over: " + lineAmount(s, l, l.Bought.Left) + "."
	if l.Sure != nil {
		left = "Likely left over: " + lineAmount(s, l, chosen(l).Left) + "."
	}
	if l.Bought.IsPriced {
		left += " Cost: " + page.Money(l.Bought.Cost.StringFixed(2), s) + "."
	}
	parts := []html{figure(s, id+".bought", "To buy", lineAmount(s, l, l.Bought.Bought), l.Buying()), hint(left)}
	if l.SomePriced {
		parts = append(parts, hint("Only the sizes with a price were looked at."))
	}
	return parts
}

// lineAmount writes an amount of a line in the job's units.
func lineAmount(s *page.State, l *chance.Line, amount decimal.Decimal) string {
	return page.Amount(amount, l.Scale, s.Plan.Job.Units)
}

// orderPaper is the list as it is printed: all of it, and nothing to press.
func orderPaper(s *page.State) html {
	cell := func(text string) html { return el("td", nil, txt(text)) }
	rows := []html{el("tr", nil, el("th", nil, txt("Material")), el("th", nil, txt("Need")), el("th", nil, txt("In stock")), el("th", nil, txt("Buy")), el("th", nil, txt("Cost")))}
	for i := range s.Order().Lines {
		l := &s.Order().Lines[i]
		cost := ""
		if l.Bought.IsPriced && !l.ToBuy.IsZero() {
			cost = page.Money(l.Bought.Cost.StringFixed(2), s)
		}
		if l.Waits() != nil {
			rows = append(rows, el("tr", nil, cell(l.Name()), cell("–"), cell("–"), cell(page.BuyWords(l, s.Plan.Job.Units)), cell("")))
			continue
		}
		rows = append(rows, el("tr", nil, cell(l.Name()), cell(lineAmount(s, l, l.Need)), cell(lineAmount(s, l, l.Stock)), cell(page.BuyWords(l, s.Plan.Job.Units)), cell(cost)))
	}
	return join(
		el("h2", nil, txt(page.OrderTitle(s))),
		el("table", nil, el("tbody", nil, rows...)),
		el("p", nil, txt(words.LeftOut(s.Order().LeftOut))),
		el("p", nil, txt("To pay: "+page.OrderMoney(s)+" "+page.Unpriced(s))),
		el("p", nil, txt("Mass bought: "+of(s, s.Order().Bought, unit.Weights)+". Mass that stays on the boat: "+of(s, s.Plan.Kept, unit.Weights)+". Surfaces: "+
			strconv.Itoa(len(s.Plan.Surfaces))+", "+of(s, s.Plan.Area, unit.Areas)+" in all.")),
		el("p", nil, txt(page.OrderFootnote)))
}
