package view

import (
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// orderScreen is what to buy.
func orderScreen(s page.State) html {
	if len(s.Plan.Order.Lines) == 0 {
		return el("div", a("class", "empty"),
			el("p", nil, txt("Nothing to order yet. The list follows from measured surfaces that have a build-up.")),
			action("go", "surfaces", "", "Measure surfaces", "main"))
	}
	var lines []html
	for _, l := range s.Plan.Order.Lines {
		lines = append(lines, orderLine(s, l))
	}
	return join(
		region("totals", "div", a("class", "figures"), totals(s)),
		region("list-order", "div", a("class", "list orderlist", "tabindex", "-1"), lines...),
		el("div", a("class", "itemtools"),
			action("text", "", "", "Copy as text", "quiet"), action("csv", "", "", "Save as CSV", "quiet"),
			action("share", "", "", "Share", "quiet"), action("print", "", "", "Print", "quiet")),
		el("p", a("class", "hint"), txt("An estimate. The maker's sheet stands above it.")))
}

func totals(s page.State) html {
	money := page.Money(s.Plan.Order.Cost.StringFixed(2), s.Plan)
	if s.Plan.Order.Unpriced > 0 {
		money += ", and " + unit.Number(float64(s.Plan.Order.Unpriced), 3) + " without a price"
	}
	return join(
		el("p", a("class", "total"), el("span", a("class", "label"), txt("To pay")), el("span", a("class", "value"), txt(money))),
		figure(s, "kept", "Mass that stays on the boat", of(s, s.Plan.Kept, unit.Weights), s.Plan.Kept.Step))
}

func orderLine(s page.State, l plan.Line) html {
	id := "order." + l.Card.Key
	buy := "Nothing to buy"
	switch {
	case l.Err != nil:
		buy = page.Sentence(l.Err, nil, s.Plan.Job.Units)
	case !l.ToBuy.IsZero():
		buy = page.PackWords(l)
	}
	parts := []html{
		el("h2", nil, txt(l.Card.Name)),
		el("p", a("class", "buy"), txt(buy)),
		figure(s, id, "Need", unit.WithUnit(unit.Group(l.Need.StringFixed(2)), l.Scale), l.Why()),
	}
	if l.Stock.IsPositive() {
		parts = append(parts, el("p", a("class", "hint"), txt("In stock: "+unit.WithUnit(l.Stock.String(), l.Scale)+".")))
	}
	if !l.ToBuy.IsZero() && l.Err == nil {
		left := "Left over: " + unit.WithUnit(unit.Group(l.Bought.Left.String()), l.Scale) + "."
		if l.Bought.IsPriced {
			left += " Cost: " + page.Money(l.Bought.Cost.StringFixed(2), s.Plan) + "."
		}
		parts = append(parts, el("p", a("class", "hint"), txt(left)))
	}
	parts = append(parts, action("go", "cards", l.Card.Path, "Packs, prices, stock", "quiet"))
	return region(id, "article", a("class", "item orderline"), parts...)
}
