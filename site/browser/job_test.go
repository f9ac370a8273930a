package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// measured measures one surface: 2.4 m × 1.5 m less a hatch of 0.5 m × 0.4 m, 3.4 m².
func measured(s *webdriver.Session) {
	goTo(s, "surfaces")
	do(s, "add", "surface", "rectangle")
	fill(s, "surface.1.name", "Foredeck")
	fill(s, "surface.1.length", "2.4 m")
	fill(s, "surface.1.width", "1,5 m")
	do(s, "add", "surface.1.cutout", "")
	fill(s, "surface.1.cutout.1.length", "500 mm")
	fill(s, "surface.1.cutout.1.width", "0.4 m")
}

// built gives it filler, two coats of gel coat with sanding between, and polish.
func built(s *webdriver.Session) {
	emptyBuildup(s)
	step := func(n, kind string, answers ...[2]string) {
		addStep(s, kind)
		at := "buildup.1.step." + n
		for _, a := range answers {
			if s.Has(`input[data-path="` + at + `.` + a[0] + `"]`) {
				fill(s, at+"."+a[0], a[1])
			} else {
				choose(s, at+"."+a[0], a[1])
			}
		}
	}
	coat := [][2]string{{"card", "gelcoat"}, {"method", "nap-roller"}, {"film", "400"}, {"coats", "1"}}
	step("1", "fill", [2]string{"card", "epoxy-filler"}, [2]string{"thickness", "1 mm"})
	step("2", "coat", coat...)
	step("3", "sand", [2]string{"by", "taken"}, [2]string{"taken", "60 µm"})
	step("4", "coat", coat...)
	step("5", "polish", [2]string{"card", "compound"}, [2]string{"taken", "5"})
}

// packsOf opens the packs of a card.
func packsOf(s *webdriver.Session, card string) {
	unfold(s, "card."+card)
	do(s, "sheet", "packs."+card, "")
	s.Wait(onSheet("packs." + card))
}

// priced types the prices of three packs.
func priced(s *webdriver.Session) {
	goTo(s, "cards")
	packsOf(s, "gelcoat")
	fill(s, "card.gelcoat.pack.2.price", "84")
	fill(s, "card.gelcoat.pack.3.price", "299")
	closeSheets(s)
	packsOf(s, "epoxy-filler")
	fill(s, "card.epoxy-filler.pack.3.price", "120")
}

// From an empty phone to an order list, by fingers and keys alone.
//
// By hand, with the cards and methods that ship: 2.4 × 1.5 − 0.5 × 0.4 = 3.4 m².
// Filler: 3.4 m² × 1 mm = 3.4 L stay of 3.4 ÷ (1 − 0.30) = 4.857 L put on; × 0.75 kg/L ÷ (1 − 0.05) = 3834.59 g leave the
// board; 3.4 ÷ 0.12 = 28 min are one spell, which holds 30 g: 3864.59 g, ÷ 0.75 = 5.15 L. In sets of 5 L at 120, the only ones
// with a price: 2, 240.00.
// Gel coat, a coat: 3.4 m² × 400 µm ÷ (1 − 0.05) × 1.25 kg/L = 1789.47 g; 485 g leave a cup of 500, so about 4 of 1.5 min:
// 3.4 ÷ 0.3 + 6 = 17 min, one spell, 80 g in the roller: 1869.47 ÷ 485 = 3.9, so 4: + 60 = 1929.47 g. Two coats: 3.86 kg. For 80 of
// 100 jobs × exp(0.8416 × √(0.03² + 0.15² + 0.20²)) = 4.77 kg: 1 × 5 kg at 84.
// Together 324.00.
func TestFromAnEmptyPageToAnOrderList(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		measured(s)
		closeSheets(s)
		assert.Equal(t, "3.4 m²", figureText(s, "area"))
		built(s)
		priced(s)
		goTo(s, "order")
		checkOrder(t, s)

		s.Script(nil, `did.copied = ""; did.saved = null`)
		do(s, "text", "", "")
		var text string
		s.Until("the copied text", func() bool { s.Script(&text, `return did.copied`); return text != "" })
		text = plain(text)
		assert.Contains(t, text, "• Polyester gel coat: 1 × 5 kg (84.00)")
		assert.Contains(t, text, "• Epoxy fairing filler: 2 × 5 L (240.00)")
		assert.Contains(t, text, "324.00")
		do(s, "csv", "", "")
		s.Script(&text, `return did.saved.text()`)
		assert.Contains(t, text, `"Polyester gel coat"`)
		assert.Contains(t, text, `"84.00"`)
		assert.Contains(t, text, "\r\n")

		do(s, "sheet", "order.gelcoat", "")
		do(s, "sheet", "need.gelcoat", "")
		tap(s, `[id="why-order.gelcoat.mass"]`)
		do(s, "whole", "", "")
		working := shown(s, `[id="fig-order.gelcoat.mass"] .working`)
		assert.Contains(t, working, "÷", "the formula")
		assert.Contains(t, working, "1.7895 kg", "the numbers in it")
		assert.NotEmpty(t, shown(s, `[id="fig-order.gelcoat.mass"] .source`), "and its source")

		s.Refresh()
		ready(s)
		s.Wait(".screen-order") // opens on the screen last used
		checkOrder(t, s)
		goTo(s, "surfaces")
		assert.Equal(t, "3.4 m²", figureText(s, "area"))
		unfold(s, "surface.1")
		assert.Equal(t, "1,5 m", s.Value(control("surface.1.width")), "as it was typed")
		assert.Equal(t, "Foredeck", s.Value(control("surface.1.name")))
	})
}

// orderFigure reads a figure of the need of a thing on the order, and closes its sheets again.
func orderFigure(s *webdriver.Session, thing, figure string) string {
	do(s, "sheet", "order."+thing, "")
	do(s, "sheet", "need."+thing, "")
	text := figureText(s, "order."+thing+"."+figure)
	tap(s, "#sheet-close")
	tap(s, "#sheet-close")
	return text
}

func checkOrder(t *testing.T, s *webdriver.Session) {
	t.Helper()
	s.Until("324.00 to pay", func() bool { // the chances are worked out in slices
		return strings.HasPrefix(shown(s, "#totals .value"), "324.00")
	})
	assert.Equal(t, "3.86 kg", orderFigure(s, "gelcoat", "mass"))
	assert.Equal(t, "5.15 L", orderFigure(s, "epoxy-filler", "volume"))
	assert.Equal(t, "1 × 5 kg", strings.TrimSpace(shown(s, `[id="order.gelcoat"] .buy`)))
	assert.Equal(t, "2 × 5 L", strings.TrimSpace(shown(s, `[id="order.epoxy-filler"] .buy`)))
}
