package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// Each part of a card has its line with its main figures, and its sheet with its own fields; a material that has none of a part
// has no line for it.
func TestEachPartOfACardHasItsLine(t *testing.T) {
	s := do(madeUp("surfaces"), "go", "cards", "")
	s = do(with(s, "card.gelcoat.coat-least = 250"), "add", "card", "gelcoat")
	seen := map[string]bool{}
	for _, c := range s.Plan.Job.Cards {
		shipped, _ := material.Find(c.ShippedKey())
		fig := func(key string) string {
			for _, f := range material.Fields {
				if v := f.Of(&c.Card); f.Key == key && v.Known {
					return unit.Write(v.Value, s.Plan.Job.Units.Scale(f.Measure), 3)
				}
			}
			return ""
		}
		html := view.Page(do(s, "sheet", c.Path, "")).String()
		for _, part := range page.CardParts {
			has := part.Key == page.DosePart && len(c.Families) > 0 || part.Key == page.FitPart && shipped.Kind == material.FlowCoat
			for _, f := range material.Fields {
				has = has || f.Shown(&shipped) && page.PartOfCard(f.Key) == part.Key
			}
			require.Equal(t, has, strings.Contains(html, `id="setup-`+part.Key+`"`), "%s %s", c.Name, part.Key)
			if !has {
				continue
			}
			seen[part.Key] = true
			figures := map[string]string{
				page.FilmPart: words.Span(fig("coat-least"), fig("coat-most")), page.LeftPart: words.Span(fig("left-least"), fig("left-most")), page.MixPart: words.UpToThinner(fig("thinner-most")),
				page.DosePart: words.Span(fig("floor"), fig("ceiling")), page.MinutesPart: words.TimedAt(fig("gel-time"), fig("gel-at")), page.FitPart: words.Span(fig("surface-least"), fig("surface-most")),
				page.WaitsPart: words.Span(fig("recoat-from"), fig("recoat-to")), page.BuyPart: words.EnoughOften(fig("chance")),
			}[part.Key]
			if part.Key == page.FilmPart && figures == "" {
				figures = words.UpTo(fig("pass-most"), "")
			}
			line := textOf(t, do(s, "sheet", c.Path, ""), "setup-"+part.Key)
			assert.Equal(t, plain(words.Capital(words.CardPartLine(part.Key, figures))+" change"), line, c.Name)
			sheet := do(s, "sheet", page.Part(c.Path, part.Key), "")
			assert.Contains(t, textOf(t, sheet, "sheet"), plain(words.CardPart(c.Name, part.Key)))
			var want []string
			for _, f := range material.Fields {
				if f.Shown(&shipped) && page.PartOfCard(f.Key) == part.Key {
					want = append(want, c.Path+"."+f.Key)
				}
			}
			switch {
			case part.Key == page.FitPart && shipped.Kind == material.FlowCoat:
				want = append(want, c.Path+".patch")
			case part.Key == page.BuyPart:
				want = append(want, c.Path+".buy")
			}
			var got []string
			for _, line := range form(t, sheet) {
				path, _, _ := strings.Cut(line, " | ")
				got = append(got, path)
			}
			assert.Equal(t, want, got, c.Name)
		}
		tools := buttonsOf(html[strings.LastIndex(html, `class="itemtools"`):])
		assert.Equal(t, button{do: "add", path: "card", text: c.Key, label: words.CopyOfMyOwn}, tools[0], c.Name)
		assert.Equal(t, c.Own, tools[1].do == "remove" && tools[1].path == c.Path, "%s: only one's own can go", c.Name)
	}
	assert.Len(t, seen, len(page.CardParts))
}

// Each card's line says its density, what a coat or a pass may be, or how much is used; one's own says so first; what is in stock
// stands beside it.
func TestEachCardsLineIsItsOwn(t *testing.T) {
	s := do(madeUp("surfaces"), "go", "cards", "")
	s = do(s, "add", "card", "gelcoat")
	shelves := map[string]*page.State{"": do(s, "go", "cards", "")}
	for _, shelf := range page.CardShelves {
		shelves[shelf] = do(shelves[""], "sheet", page.Part(page.CardsSheet, shelf), "")
	}
	rows := map[string]string{"gelcoat": "Polyester gel coat 1.25 kg/L · 200 µm to 600 µm a coat 0.8 kg", "epoxy-filler": "Epoxy fairing filler 0.75 kg/L · up to 10 mm a pass",
		"topcoat": "Two-pack topcoat 1.2 kg/L · 60 µm to 120 µm a coat", "1": "your own"}
	counted := 0
	for shelf, at := range shelves {
		region := map[bool]string{true: "list-card", false: "list-shelf"}[shelf == ""]
		html := regionOf(t, view.Page(at).String(), region)
		var want []string
		for _, c := range at.Plan.Job.Cards {
			if page.ShelfOf(&c.Card) != shelf {
				continue
			}
			counted++
			want = append(want, c.Path)
			item := regionOf(t, html, "item-"+c.Path)
			assert.Equal(t, shelf == "", strings.Contains(item, "<svg"), c.Name)
			text := plain(textIn(item))
			assert.True(t, strings.HasPrefix(text, plain(c.Name)), text)
			if row := rows[c.Key]; row != "" && c.Key != "1" {
				assert.Equal(t, strings.ReplaceAll(strings.ReplaceAll(plain(row), "200 µm to", "200 to"), "60 µm to", "60 to"), text)
			}
			assert.Equal(t, c.Own, strings.Contains(text, plain(words.OwnCard)), text)
			if c.Kind == material.Sundry {
				assert.NotContains(t, text, "kg/L", c.Name)
			}
		}
		var got []string
		for _, row := range rowsIn(html) {
			got = append(got, row.path)
		}
		assert.Equal(t, want, got)
		if shelf != "" {
			assert.Contains(t, textOf(t, shelves[""], "setup-"+shelf), plain(words.ShelfLine(shelf, len(want))))
			assert.Contains(t, textOf(t, at, "sheet"), plain(words.CardShelf(shelf)))
		}
	}
	assert.Equal(t, len(s.Plan.Job.Cards), counted, "each stands on one shelf")
	stock := do(with(s, "card.tape.stock = 3", "card.styrene.stock = 500 mL"), "go", "cards", "")
	for key, has := range map[string]string{"tape": "3 m", "styrene": "500 mL"} {
		c := stock.Plan.Job.CardByKey(key)
		item := textOf(t, do(stock, "sheet", page.Part(page.CardsSheet, page.ShelfOf(&c.Card)), ""), "item-"+c.Path)
		assert.True(t, strings.HasSuffix(item, has), item)
	}
}

// The builder's own table is told what is wrong or odd about it, and the one that ships is read off row by row.
func TestADoseTableSaysWhatIsOdd(t *testing.T) {
	dose := func(rows ...string) *page.State {
		s := madeUp("surfaces")
		for i := 0; i+1 < len(rows); i += 2 {
			s = do(s, "add", "card.gelcoat.dose", "")
			ids := s.Doc().Items("card.gelcoat.dose")
			row := "card.gelcoat.dose." + ids[len(ids)-1]
			s = with(s, row+".temp = "+rows[i], row+".share = "+rows[i+1])
		}
		return do(s, "sheet", "card.gelcoat.dose", "")
	}
	says := "tablesays-card.gelcoat.dose"
	saysEach(t, []saying{
		{dose(), says, "", "Row"},
		{dose("18", "2", "25", "1.5"), says, "", "Row"},
		{dose("18", "2"), says, "A catalyst table needs two rows at least", ""},
		{dose("25", "1.5", "18", "2"), says, "Row 2 of your catalyst table is colder", ""},
		{dose("18", "1.5", "25", "2"), says, words.OddRow(2, false), words.OddRow(1, false)},
		{dose(), "list-card.gelcoat.dose", words.DoseShips + " 15 °C: 2.2 % by mass 18 °C: 2 % by mass", "Row 1"},
		{dose("18", "2", "25", "1.5"), "list-card.gelcoat.dose", words.RowNumber(1) + "|" + words.RowNumber(2), words.RowNumber(3)},
	})
}
