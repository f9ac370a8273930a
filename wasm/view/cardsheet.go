package view

import (
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cardSheet is a material's card: what a builder changes first, and a line to each
// part of the rest.
func cardSheet(s *page.State, item string) shown {
	c, shipped := cardAt(s, item)
	if c == nil {
		return shown{Title: words.Cards}
	}
	inSight := []html{fieldWith(s, c.Path+".name", fieldExtras{Default: shipped.Name})}
	for _, f := range material.Fields {
		if f.Shown(shipped) && page.PartOfCard(f.Key) == "" {
			inSight = append(inSight, cardField(s, c, f, shipped))
		}
	}
	if shipped.IsAbrasive() {
		inSight = append(inSight, typedGrades(s, c)...)
	}
	inSight = append(inSight, stockField(s, c))
	parts := []html{el("div", a("class", "form"), inSight...)}
	for _, part := range page.CardParts {
		if has := partFields(s, c, shipped, part); len(has) > 0 {
			parts = append(parts, setup(part.Key, cardPartText(s, c, part), page.Part(c.Path, part.Key)))
		}
	}
	parts = append(parts, setup("packs", packsText(c, s.Plan.Job.ShopByKey(c.Key).Packs), page.PacksSheet+"."+c.Key), el("div", a("class", "form"), field(s, c.Path+".note")), cardTools(c))
	return shown{Title: c.Name, Body: join(parts...)}
}

// cardPart makes the sheet of one part of a card.
func cardPart(s *page.State, item string, part page.CardPart) shown {
	c, shipped := cardAt(s, item)
	if c == nil {
		return shown{Title: words.Cards}
	}
	return shown{Title: words.CardPart(c.Name, part.Key), Body: el("div", a("class", "form"), partFields(s, c, shipped, part)...)}
}

// partFields is the fields of a part that the card has.
func partFields(s *page.State, c *job.Card, shipped *material.Card, part page.CardPart) []html {
	var fields []html
	for _, f := range material.Fields {
		if f.Shown(shipped) && page.PartOfCard(f.Key) == part.Key {
			fields = append(fields, cardField(s, c, f, shipped))
		}
	}
	switch {
	case part.Key == page.DosePart && len(c.Families) > 0:
		fields = append(fields, doseTable(s, c))
	case part.Key == page.FitPart && shipped.Kind == material.FlowCoat:
		fields = append(fields, field(s, c.Path+".patch"))
	case part.Key == page.BuyPart && len(fields) > 0:
		fields = append(fields, field(s, c.Path+".buy"))
	}
	return fields
}

// cardAt finds a card, and what shipped of it; nil where there is none.
func cardAt(s *page.State, item string) (*job.Card, *material.Card) {
	_, key := job.Split(item)
	c := s.Plan.Job.CardByKey(key)
	if c == nil {
		return nil, nil
	}
	shipped, _ := material.Find(c.ShippedKey())
	return c, &shipped
}

func cardTools(c *job.Card) html {
	tools := []html{action("add", "card", c.Key, words.CopyOfMyOwn, "quiet")}
	if c.Own {
		tools = append(tools, action("remove", c.Path, "", words.Remove, "quiet"))
	}
	return el("div", a("class", "itemtools"), tools...)
}

// cardField shows what ships as a hint in the empty field, with its usual
// range and mark below.
func cardField(s *page.State, c *job.Card, f *material.Field, shipped *material.Card) html {
	v, scale := f.Of(shipped), s.Plan.Job.Units.Scale(f.Measure)
	extra := fieldExtras{}
	if v.Known {
		extra.Default = unit.Number(scale.From(v.Value), 4)
		extra.Hint = words.CardMark(v.Mark)
	} else {
		extra.Default, extra.Hint = words.FromTheTin, words.NothingShips
	}
	if v.Low != v.High {
		extra.Hint += words.UsualRange(unit.Number(scale.From(v.Low), 4), unit.WithUnit(unit.Number(scale.From(v.High), 4), scale))
	}
	return fieldWith(s, c.Path+"."+f.Key, extra)
}

// packForm is the sizes that are sold, with their prices: those that ship, those that were typed, and one to type.
func packForm(s *page.State, c *job.Card, shipped *material.Card) html {
	isTyped := func(i int) bool { return len(s.Doc().Under(packPath(c, i))) > 0 }
	var rows []html
	for i := range order.MaxSizes {
		size := ""
		switch {
		case i < len(shipped.Packs):
			size = shipped.Packs[i].Size
		case i > len(shipped.Packs) && !isTyped(i) && !isTyped(i-1):
			rows = append(rows, region("row-"+packPath(c, i), "div", a("hidden", "")))
			continue
		}
		rows = append(rows, region("row-"+packPath(c, i), "div", a("class", "row pack"),
			fieldWith(s, packPath(c, i)+".size", fieldExtras{Default: size, Label: words.PackNumber(i+1, c.SoldBy)}),
			fieldWith(s, packPath(c, i)+".price", fieldExtras{Default: words.NoPrice, Label: words.Price}),
			fieldWith(s, packPath(c, i)+".sold", fieldExtras{Label: words.InTheShop})))
	}
	return el("div", a("class", "rows"), el("p", a("class", "rowsname"), txt(words.PacksSold)),
		el("p", a("class", "hint"), txt(words.OncePriced)), join(rows...))
}

func packPath(c *job.Card, i int) string { return c.Path + ".pack." + strconv.Itoa(i+1) }

// stockField is what is in stock.
func stockField(s *page.State, c *job.Card) html {
	return fieldWith(s, c.Path+".stock", fieldExtras{Default: words.None, Label: words.InStock(words.BareSize(c.SoldBy))})
}

// cardPartText is the line to a part: what it is called, and its main figures.
func cardPartText(s *page.State, c *job.Card, part page.CardPart) string {
	f := func(key string) string { return cardFigure(s, c, key) }
	figures := ""
	switch part.Key {
	case page.FilmPart:
		if figures = words.Span(f("coat-least"), f("coat-most")); figures == "" {
			figures = words.UpTo(f("pass-most"), "")
		}
	case page.LeftPart:
		figures = words.Span(f("left-least"), f("left-most"))
	case page.MixPart:
		figures = words.UpToThinner(f("thinner-most"))
	case page.DosePart:
		figures = words.Span(f("floor"), f("ceiling"))
	case page.MinutesPart:
		figures = words.TimedAt(f("gel-time"), f("gel-at"))
	case page.FitPart:
		figures = words.Span(f("surface-least"), f("surface-most"))
	case page.WaitsPart:
		figures = words.Span(f("recoat-from"), f("recoat-to"))
	case page.BuyPart:
		figures = words.EnoughOften(f("chance"))
	}
	return words.Capital(words.CardPartLine(part.Key, figures))
}

// cardFigure writes a card's figure by its key; "" where it has none.
func cardFigure(s *page.State, c *job.Card, key string) string {
	for _, f := range material.Fields {
		if v := f.Of(&c.Card); f.Key == key && v.Known {
			return unit.Write(v.Value, s.Plan.Job.Units.Scale(f.Measure), 3)
		}
	}
	return ""
}
