package view

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cards is what is coated and filled with, a line each, and a line to each shelf
// of what goes with it.
func cards(s *page.State) html {
	parts := []html{el("p", a("class", "lead"), txt(words.General)), shelfList(s, "list-card", "")}
	for _, shelf := range page.CardShelves {
		n := 0
		for i := range s.Plan.Job.Cards {
			if page.ShelfOf(&s.Plan.Job.Cards[i].Card) == shelf {
				n++
			}
		}
		parts = append(parts, look(shelf, words.ShelfLine(shelf, n), page.Part(page.CardsSheet, shelf)))
	}
	return join(parts...)
}

// shelfSheet is one shelf of cards.
func shelfSheet(s *page.State, shelf string) shown {
	return shown{Title: words.CardShelf(shelf), Body: shelfList(s, "list-shelf", shelf)}
}

func shelfList(s *page.State, id, shelf string) html {
	var rows []html
	for i := range s.Plan.Job.Cards {
		if c := s.Plan.Job.Cards[i]; page.ShelfOf(&c.Card) == shelf {
			rows = append(rows, cardRow(s, c))
		}
	}
	return region(id, "div", a("class", "layers", "tabindex", "-1"), rows...)
}

// cardRow is a card's line: what it is, its main figures, what is in stock of it.
func cardRow(s *page.State, c *job.Card) html {
	seen := nothing
	if page.ShelfOf(&c.Card) == "" {
		seen = draw.Swatch{Stuff: stuffOfCard(c.Kind), Height: rowHeight}.Layer()
	}
	return region("item-"+c.Path, "div", a("class", "layer card"), listRow(c.Path, seen, c.Name, cardSmall(s, c), stockText(c, s.Plan.Job.ShopByKey(c.Key).Stock)))
}

// stockText is what is in stock, as it was counted; "" for nothing.
func stockText(c *job.Card, stock job.PackSize) string {
	switch {
	case !stock.Amount.IsPositive():
		return ""
	case stock.Scale == unit.NoScale:
		return stock.Amount.String() + "\u00a0" + words.BareSize(c.SoldBy)
	}
	return stock.Amount.String() + "\u00a0" + stock.Scale.Symbol()
}

// cardSmall is a card's main figures in a line.
func cardSmall(s *page.State, c *job.Card) string {
	var figures []string
	if c.Own {
		figures = append(figures, words.OwnCard)
	}
	add := func(text string) {
		if text != "" {
			figures = append(figures, text)
		}
	}
	if c.Kind != material.Sundry {
		add(cardFigure(s, c, "density"))
	}
	switch {
	case c.CoatLeast.Known:
		add(words.ACoat(words.Span(cardFigure(s, c, "coat-least"), cardFigure(s, c, "coat-most"))))
	case c.PassMost.Known:
		add(words.APass(cardFigure(s, c, "pass-most")))
	case c.UsedPerArea.Known:
		add(cardFigure(s, c, "used"))
	}
	if len(figures) == 0 {
		add(packsText(c, s.Plan.Job.ShopByKey(c.Key).Packs))
	}
	return strings.Join(figures, " · ")
}
