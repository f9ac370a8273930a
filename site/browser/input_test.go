package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// metric is the foredeck with bare numbers in metres.
var metric = strings.NewReplacer("length = 2.4", "length = 2400", "width = 1.5", "width = 1500", "length = 0.5", "length = 500", "width = 0.4", "width = 400").Replace(foredeck)

// wrong is a text that a field must not take, and part of what the page says beside it.
type wrong struct{ path, text, says, right string }

var wrongOn = []struct {
	screen string
	open   []string
	texts  []wrong
}{
	{"surfaces", []string{"surface.1"}, []wrong{
		{"surface.1.length", "long", "isn't a number", "2400"},
		{"surface.1.length", "-2 m", "more than zero", "2400"},
		{"surface.1.length", "0", "more than zero", "2400"},
		{"surface.1.length", "40 km", "", "2400"},
		{"surface.1.length", "40000 m", "too large", "2400"},
		{"surface.1.width", "1,500", "two ways. Type", "1500"},
		{"surface.1.count", "two", "isn't a number", ""},
		{"surface.1.count", "1.5", "whole number", ""},
	}},
	{"buildup", []string{"buildup.1.step.1"}, []wrong{
		{"buildup.1.step.1.film", "thick", "isn't a number", "400"},
		{"buildup.1.step.1.film", "4 m", "too large", "400"},
		{"buildup.1.step.1.film", "900", "over the card's largest", "400"},
		{"buildup.1.step.1.coats", "0", "more than zero", "2"},
	}},
	{"buildup", []string{"buildup.1.step.1", "buildup.1.step.1.more"}, []wrong{
		{"buildup.1.step.1.thinner", "20", "over the card's limit", ""},
	}},
	{"cards", []string{"card.gelcoat", "packs.gelcoat"}, []wrong{
		{"card.gelcoat.pack.1.size", "0", "more than zero", ""},
		{"card.gelcoat.pack.2.price", "cheap", "isn't a number", ""},
	}},
	{"cards", []string{"card.gelcoat"}, []wrong{
		{"card.gelcoat.density", "0", "", ""},
	}},
}

// What can't be taken gets one message beside that very field; what was typed stays; the order leaves out what
// hangs on it and says so; a right text clears it all.
func TestWrongInputIsToldBesideItsField(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric)
		for _, on := range wrongOn {
			goTo(s, on.screen)
			for _, item := range on.open {
				unfold(s, item)
			}
			for i, w := range on.texts {
				fill(s, w.path, w.text)
				refused(t, s, w)
				if i == 0 { // once on each screen: what the others show meanwhile
					goTo(s, "order")
					assert.Contains(t, shown(s, ".refused"), "can't be read", w.path)
					if strings.Contains(w.path, ".pack.") {
						assert.Contains(t, orderFigure(s, "gelcoat", "mass"), "kg", "the need doesn't hang on it")
					} else {
						assert.Contains(t, shown(s, "#left-out"), "Left out, since it waits: ", w.path)
						assert.False(t, s.Has(`[data-do="sheet"][data-path="order.gelcoat"]`), "no figure is older than what is typed: %s", w.path)
					}
					do(s, "find", w.path, "")
					refused(t, s, w)
					var focus string
					s.Script(&focus, `return document.activeElement.id`)
					assert.Equal(t, "f-"+w.path, focus, "the way from the notice leads to the field")
				}
				fill(s, w.path, w.right)
				assert.Empty(t, say(s, w.path), "%s after %s", w.path, w.right)
				assert.False(t, s.Has(".refused"), w.path)
				assert.False(t, s.Has(control(w.path)+"[aria-invalid]"), w.path)
			}
		}
	})
}

func refused(t *testing.T, s *webdriver.Session, w wrong) {
	t.Helper()
	said := say(s, w.path)
	assert.NotEmpty(t, said, "%s = %s", w.path, w.text)
	assert.Contains(t, said, w.says, "%s = %s", w.path, w.text)
	assert.Equal(t, w.text, s.Value(control(w.path)), "what was typed stays")
	assert.Equal(t, "true", s.Attr(control(w.path), "aria-invalid"), w.path)
	assert.Equal(t, "say-"+w.path, s.Attr(control(w.path), "aria-describedby"))
	var messages int
	s.Script(&messages, `return document.querySelectorAll(".say .bad").length`)
	assert.Equal(t, 1, messages, "one message, for %s", w.path)
}

func TestShapesThatCantBe(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric)
		goTo(s, "surfaces")
		unfold(s, "surface.1")
		tap(s, `.sheet [data-path="surface.1.cutout.1"]`)
		fill(s, "surface.1.cutout.1.length", "2.5 m")
		assert.Empty(t, say(s, "surface.1.cutout.1.shape"), "long, but not larger than its surface")
		fill(s, "surface.1.cutout.1.width", "1.5 m")
		assert.Contains(t, say(s, "surface.1.cutout.1.shape"), "as large as the surface, or larger")
		assert.Equal(t, "1.5 m", s.Value(control("surface.1.cutout.1.width")))
		fill(s, "surface.1.cutout.1.width", "400")
		fill(s, "surface.1.cutout.1.length", "500")
		assert.False(t, s.Has(".refused"))
		do(s, "remove", "surface.1.cutout.1", "")
		s.Wait(onSheet("surface.1"))

		reshape(s, "surface.1", "three-sides")
		for side, text := range map[string]string{"a": "1 m", "b": "2 m", "c": "4 m"} {
			fill(s, "surface.1."+side, text)
		}
		assert.Contains(t, say(s, "surface.1.c"), "can't close")
		fill(s, "surface.1.c", "2 m")
		assert.Empty(t, say(s, "surface.1.c"))
		assert.Equal(t, "0.97 m²", figureText(s, "surface.1.area"), "½ × 1 × √(2² − 0.5²)")

		reshape(s, "surface.1", "girths")
		fill(s, "surface.1.spacing", "500")
		fill(s, "surface.1.stations.1.girth", "1 m")
		do(s, "remove", "surface.1.stations.2", "")
		assert.Contains(t, shown(s, `[id="figures-surface.1"]`), "at least 2")
		do(s, "add", "surface.1.stations", "")
		fill(s, "surface.1.stations.2.girth", "1.2 m")
		assert.Contains(t, say(s, "surface.1.spacing")+say(s, "surface.1.length"), "said twice", "the length is that of the rectangle before")
		fill(s, "surface.1.length", "")
		assert.Equal(t, "0.55 m²", figureText(s, "surface.1.area"), "0.5 × (1 + 1.2) ÷ 2")
	})
}

// A bare number keeps its unit when another one is chosen; units mix in one job.
func TestUSCustomary(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric+"bench.now.amount = 100\nbench.now.surface-temp = 25\n")
		goTo(s, "surfaces")
		assert.Equal(t, "3.4 m²", figureText(s, "area"))
		goTo(s, "settings")
		do(s, "system", "", "us")
		goTo(s, "surfaces")
		assert.Equal(t, "36.6 ft²", figureText(s, "area"), "3.4 ÷ 0.09290304")
		unfold(s, "surface.1")
		assert.Equal(t, "2400 mm", s.Value(control("surface.1.length")))
		fill(s, "surface.1.width", "4 ft 11 1/16 in") // 1500.2 mm
		assert.Equal(t, "36.6 ft²", figureText(s, "surface.1.area"))
		fill(s, "surface.1.width", "1.5 m")
		goTo(s, "cup")
		assert.Equal(t, "100", s.Value(control("bench.now.amount")), "scales in the shed weigh grams everywhere")
		assert.Equal(t, "25 °C", s.Value(control("bench.now.surface-temp")))
		fillAt(s, "bench.now.product-temp", "77")
		assert.Equal(t, "°F", shown(s, `.dial:has(> .entry [data-path="bench.now.product-temp"]) .unit`))
		goTo(s, "settings")
		do(s, "system", "", "metric")
		goTo(s, "surfaces")
		assert.Equal(t, "3.4 m²", figureText(s, "area"))
		goTo(s, "cup")
		tell(s, "find", "bench.now.product-temp", "")
		assert.Equal(t, "77 °F", s.Value(control("bench.now.product-temp")))
	})
}
