package view

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// orderScreen is what to buy, as a shopping list: a line a thing, everything else
// in its sheet.
func orderScreen(s *page.State) shown {
	if len(s.Order().Lines) == 0 {
		return shown{Body: join(region("order-cautions", "div", a("class", "cautions"), orderCautions(s)), leftOut(s), el("div", a("class", "empty"),
			el("p", nil, txt(words.OrderEmpty)),
			action("go", "surfaces", "", words.MeasureSurfaces, "main")))}
	}
	var buys, has []html
	for _, t := range s.Things() {
		row := shopRow(&t)
		if t.Buys {
			buys = append(buys, row)
		} else {
			has = append(has, row)
		}
	}
	body := join(
		region("totals", "p", a("class", "grand"), totals(s)...),
		region("order-cautions", "div", a("class", "cautions"), orderCautions(s)),
		leftOut(s),
		region("sureness", "div", a("class", "sureness", "aria-live", "polite"), sureness(s)),
		region("list-order", "section", a("class", "shop", "tabindex", "-1"), shopList(words.BuyFirst, buys)),
		region("order-short", "div", nil, runsShort(s)),
		region("list-shelf", "section", a("class", "shop"), shopList(words.FromShelf, has)),
		el("div", a("class", "itemtools"),
			action("text", "", "", words.CopyText, "quiet"), action("csv", "", "", words.SaveCSV, "quiet"), action("print", "", "", words.PrintList, "quiet")),
		region("paper", "div", a("class", "paper"), orderPaper(s)))
	return shown{Body: body, Act: act("share", "", "", words.ShareList)}
}

func shopList(heading string, rows []html) html {
	if len(rows) == 0 {
		return nothing
	}
	return join(append([]html{el("h2", nil, txt(heading))}, rows...)...)
}

// shopRow is one thing: its box, its name with what is planned, what to buy.
func shopRow(t *page.Thing) html {
	id := "order." + t.Key
	box := el("span", a("class", "shelf"))
	if t.Buys && t.WaitsFor == "" {
		box = el("button", a("class", "tick", "type", "button", "id", "do-bought-"+t.Key, "data-do", "bought", "data-path", t.Key,
			"aria-pressed", yesNo(t.Ticked), "aria-label", words.BoughtBox(t.Name)), txt(tickMark(t.Ticked)))
	}
	small := t.Small
	if t.WasFor != "" {
		small += ", " + words.TickedFor(t.WasFor)
	}
	return region(id, "div", a("class", "shoprow", "data-ticked", yesNo(t.Ticked)), box,
		el("button", a("class", "thing", "type", "button", "id", page.OpenerID(id), "data-do", "sheet", "data-path", id),
			el("span", a("class", "name"), el("span", a("class", "short"), txt(t.Short)), el("small", nil, txt(small))), el("b", a("class", "buy"), packLines(t.Packs)...)))
}

// packLines sets packs of one size below those of another.
func packLines(packs string) []html {
	var lines []html
	for _, one := range strings.Split(packs, ", ") {
		lines = append(lines, el("span", nil, txt(one)))
	}
	return lines
}

func tickMark(is bool) string {
	if is {
		return "✓"
	}
	return ""
}

// totals is what the list costs, and how much of it has no price.
func totals(s *page.State) []html {
	money := page.OrderMoney(s)
	if money == words.OrderNoPrices {
		return []html{el("small", nil, txt(money))}
	}
	kids := []html{el("span", nil, txt(words.OrderTotal)), el("span", a("class", "value"), txt(money))}
	if page.Unpriced(s) != "" {
		kids = append(kids, el("small", nil, txt(words.Unpriced(s.Order().Unpriced))))
	}
	return kids
}

// sureness says how far the page has come with working out how likely the list is
// to be enough; nothing once it is known.
func sureness(s *page.State) html {
	switch {
	case s.Confidence.Err != nil:
		return el("p", a("class", "bad"), txt(words.TooLarge))
	case s.Confidence.Done:
		return nothing
	}
	return hint(words.StillWorking)
}

// runsShort is the verdict on the colours that are bought before the start.
func runsShort(s *page.State) html {
	name, chance := s.ShortOf()
	if name == "" {
		return nothing
	}
	return verdict(asks, words.RunsShort(name), words.RunsShortIn(words.InJobs(chance)), "")
}

// orderCautions is what can't be put right by buying: build-ups that stop, what is
// left out, and what nothing on a list protects from.
func orderCautions(s *page.State) html {
	var lines []html
	for _, stop := range s.Stops() {
		lines = append(lines, verdict(stops, words.StopsTheOrder, stop, ""))
	}
	if len(lines) > 0 {
		lines = append(lines, hint(words.StopsFix))
	}
	if needsAirFed(s) {
		lines = append(lines, el("p", a("class", "bad"), txt(words.AirFed)))
	}
	return join(lines...)
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

func needsAirFed(s *page.State) bool {
	for _, b := range s.Plan.Buildups() {
		for _, step := range b.Steps {
			if step.Coat != nil && step.Card.Chemistry == material.TwoPack && step.Job.Method.IsSpray {
				return true
			}
		}
	}
	return false
}

func hint(text string) html { return el("p", a("class", "hint"), txt(text)) }

func hintIf(text string) html {
	if text == "" {
		return nothing
	}
	return hint(text)
}

// lineAmount writes an amount of a line in the job's units.
func lineAmount(s *page.State, l *chance.Line, amount decimal.Decimal) string {
	return page.Amount(amount, l.Scale, s.Plan.Job.Units)
}

// orderPaper is the list as it is printed: all of it, and nothing to press.
func orderPaper(s *page.State) html {
	cell := func(text string) html { return el("td", nil, txt(text)) }
	rows := []html{el("tr", nil, el("th", nil, txt("")), el("th", nil, txt(words.Capital(words.Material))), el("th", nil, txt(words.NeedName)), el("th", nil, txt(words.Capital(words.SheetStock))), el("th", nil, txt(words.ColumnBuy)), el("th", nil, txt(words.ColumnCost)))}
	for _, t := range s.Things() {
		for _, l := range t.Lines {
			if l.Waits() != nil {
				rows = append(rows, el("tr", nil, cell(""), cell(l.Name()), cell("–"), cell("–"), cell(words.Buy(l, s.Plan.Job.Units)), cell("")))
				continue
			}
			cost, box := "", ""
			if l.Bought.IsPriced && !l.ToBuy.IsZero() {
				cost = page.Money(l.Bought.Cost.StringFixed(2), s)
			}
			if t.Buys {
				box = "☐"
			}
			if t.Ticked {
				box = "☑"
			}
			rows = append(rows, el("tr", nil, cell(box), cell(l.Name()), cell(lineAmount(s, l, l.Need)), cell(lineAmount(s, l, l.Stock)), cell(words.Buy(l, s.Plan.Job.Units)), cell(cost)))
		}
	}
	parts := []html{el("h2", nil, txt(words.OrderTitle(s.Plan.Job.Name)))}
	for _, text := range s.Warnings() {
		parts = append(parts, el("p", a("class", "bad"), txt(text)))
	}
	return join(append(parts,
		el("table", nil, el("tbody", nil, rows...)),
		el("p", nil, txt(words.OrderTotal+": "+page.OrderMoney(s)+" "+page.Unpriced(s))),
		el("p", nil, txt(words.ForPaper(of(s, s.Order().Bought, unit.Weights), of(s, s.Plan.Kept(), unit.Weights), strconv.Itoa(len(s.Plan.Surfaces())), of(s, s.Plan.Area(), unit.Areas)))),
		el("p", nil, txt(words.OrderFootnote)))...)
}
