package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// From an empty phone to the clock of a putty mixed by hand. Its recipe is 100 g of resin, 33 g of hardener and 27 g of
// microballoons; of a cup of 80 g each part is half of that: 50 g, then to 63.5 g with the balloons, and the hardener's
// 16.5 g last, to 80. (Exact.)
func TestAPuttyMixedByHandFromAnEmptyPhone(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "surfaces")
		do(s, "add", "surface", "rectangle")
		fill(s, "surface.1.length", "2 m")
		fill(s, "surface.1.width", "1 m")

		emptyBuildup(s)
		do(s, "sheet", "putties", "")
		do(s, "add", "putty", "")
		unfold(s, "putty.1")
		for part, mass := range map[string]string{"1": "100 g", "2": "33 g", "3": "27 g"} {
			fill(s, "putty.1.part."+part+".mass", mass)
		}
		assert.Equal(t, "160 g", figureText(s, "putty.1.mass"))
		addStep(s, "fill")
		choose(s, fillStep+".putty", "putty.1")
		fill(s, fillStep+".thickness", "2 mm")
		goTo(s, "order")
		for _, thing := range []string{"Resin for putty", "Hardener for putty", "Microballoons"} {
			assert.Contains(t, shown(s, ".screen"), thing)
		}
		assert.NotContains(t, shown(s, ".screen"), "can't be used")

		goTo(s, "cup")
		fill(s, "bench.now.surface-temp", "20")
		do(s, "tool", "", "scale 0.1 g")
		fill(s, "bench.now.amount", "80 g")
		assert.Contains(t, shown(s, ".screen"), "Putty 1")
		tap(s, toWeigh)
		lines := shown(s, "#lines")
		for _, want := range []string{"Resin", "50", "Microballoons", "63.5"} {
			assert.Contains(t, lines, want)
		}
		assert.NotContains(t, lines, "Hardener", "what starts the clock goes in last")
		tap(s, weighed)
		assert.Contains(t, shown(s, "#sheet"), "16.5 g")
		assert.Contains(t, shown(s, "#sheet"), "the scale then shows 80")
		tap(s, "#catalyst-in")
		s.Wait(".clock .time")
		do(s, "end", "cup.1", "spread")
		goTo(s, "log")
		assert.Contains(t, shown(s, "#list-cup"), "Putty 1, 80 g")
	})
}
