package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// readings is what a dose hangs on, of a mild morning.
var readings = [][2]string{
	{"bench.now.amount", "100 g"}, {"bench.now.product-temp", "22"}, {"bench.now.surface-temp", "24"},
	{"day.today.read-temp", "23"}, {"day.today.read-humidity", "55"}, {"day.today.low", "17"}, {"day.today.high", "27"},
	{"bench.now.scale-step", "0.1 g"},
}

// atBench types a mild morning's readings on an empty page: 100 g of gel coat at 24 °C on the part, 22 °C in the tin.
func atBench(s *webdriver.Session) {
	goTo(s, "cup")
	for _, f := range readings {
		fill(s, f[0], f[1])
	}
	s.Wait(`[id="fig-dose.grams"]`)
}

// checkNoDose looks for a dose in everything that is on the page, on its paper and in what is read out.
func checkNoDose(t *testing.T, s *webdriver.Session, why string) {
	t.Helper()
	s.Until("no dose: "+why, func() bool { return !s.Has(`[id="fig-dose.grams"]`) })
	var all struct {
		Shed bool
		Text string
	}
	s.Script(&all, `
		const parts = ["answer", "remedies", "shedcard", "running", "live", "notice"].map((id) => document.getElementById(id));
		return { Shed: !!document.querySelector(".shedcard td"), Text: parts.map((e) => e ? e.textContent : "").join("\n") };`)
	assert.False(t, all.Shed, "%s: a shed card with doses", why)
	text := strings.ReplaceAll(plain(all.Text), "Drops in 1 mL", "") // the field that is still to be typed
	assert.NotRegexp(t, `[0-9] ?(mL|fl oz|oz|drops|% by mass)`, text, why)
	for _, id := range []string{"dose.grams", "dose.millilitres", "dose.share", "part.A", "part.B"} {
		assert.False(t, s.Has(`[id="fig-`+id+`"]`), "%s: %s", why, id)
	}
	assert.False(t, s.Has(`button[data-do="weighed"]`), why)
	assert.False(t, s.Has(`#catalyst-in`), why)
}

// 24 °C lies two thirds of the way from 22 (1.70 %) to 25 (1.50 %) in the default table: 1.567 %, of 100 g 1.57 g, on a
// scale of 0.1 g 1.6; at 1.15 g/mL 1.39 mL. (Common practice; the table of the card.)
func TestADoseOnAMildMorning(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		assert.Equal(t, "1.6 g", figureText(s, "dose.grams"))
		assert.Equal(t, "1.39 mL", figureText(s, "dose.millilitres"))
		assert.Contains(t, shown(s, ".shedcard"), "1.5 g / 1.3 mL", "100 g at 25 °C on the wall")

		choose(s, "bench.now.tool", "syringe")
		fill(s, "bench.now.syringe-step", "0.1 mL")
		assert.Equal(t, "1.4 mL", figureText(s, "dose.millilitres"))
		choose(s, "bench.now.tool", "drops")
		checkNoDose(t, s, "no count of drops")
		fill(s, "bench.now.drops", "30")
		assert.Regexp(t, `(41 drops, by|Drops, by your own count\s+41)`, shown(s, "#answer"), "1.567 g ÷ 1.15 × 30 = 40.9")
		choose(s, "bench.now.tool", "scale")
		fill(s, "bench.now.scale-step", "1 g")
		checkNoDose(t, s, "coarse scale")
		assert.Contains(t, shown(s, "#answer"), "Not with this scale")
		fill(s, "bench.now.scale-step", "0.1 g")

		for amount, grams := range map[string]string{"3 oz": "1.3 g", "80 mL": "1.6 g", "2.5 US fl oz": "1.4 g"} { // 85.0 g; × 1.25: 100 g; 73.9 mL: 92.4 g
			fill(s, "bench.now.amount", amount)
			assert.Equal(t, grams, figureText(s, "dose.grams"), amount)
		}
		fill(s, "bench.now.amount", "3 fl oz")
		checkNoDose(t, s, "whose fluid ounces")
		assert.Contains(t, say(s, "bench.now.amount"), "Which one?")
	})
}

// Type nonsense in each field that the dose hangs on: the dose is gone from everywhere, and comes back with the figure.
func TestNoDoseFromStaleInput(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		for _, path := range []string{"bench.now.amount", "bench.now.product-temp", "bench.now.surface-temp", "day.today.read-temp", "day.today.read-humidity",
			"day.today.low", "day.today.high", "day.today.sunrise", "bench.now.scale-step", "bench.now.film", "bench.now.thinner", "bench.now.pigment", "bench.now.mixing", "bench.now.stretch"} {
			before := s.Value(control(path))
			fill(s, path, "nonsense")
			checkNoDose(t, s, path)
			assert.NotEmpty(t, say(s, path))
			assert.Equal(t, "nonsense", s.Value(control(path)))
			fill(s, path, before)
			assert.Equal(t, "1.6 g", figureText(s, "dose.grams"), "%s put right", path)
		}
		pass(s, 24*3600)
		checkNoDose(t, s, "yesterday's readings")
		assert.Contains(t, shown(s, "#answer"), "The readings are of another day")
	})
}

func TestAHotDay(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		for _, f := range [][2]string{{"day.today.read-temp", "33"}, {"day.today.read-humidity", "45"}, {"day.today.low", "22"}, {"day.today.high", "36"}, {"bench.now.product-temp", "31"}} {
			fill(s, f[0], f[1])
		}
		fill(s, "bench.now.surface-temp", "38")
		checkNoDose(t, s, "38 °C")
		said := shown(s, "#answer")
		assert.Contains(t, said, "The surface is at 38 °C. This material takes 15 °C to 32 °C.")
		assert.Contains(t, said, "no dose is guessed beyond it")
		assert.Contains(t, shown(s, "#fit"), "The surface lies inside the catalyst table from", "the hours that bring it back")
		remedies := shown(s, "#remedies")
		assert.Contains(t, remedies, "Cool the product, closed tin in iced water")
		assert.Contains(t, remedies, "Risk:")
		assert.Regexp(t, `[0-9] (min|°C)`, remedies, "what each gains")

		fill(s, "bench.now.surface-temp", "30")
		fill(s, "bench.now.product-temp", "30")
		assert.Equal(t, "1.2 g", figureText(s, "dose.grams"), "1.25 % of 100 g: of two marks as near the lesser")
		assert.Regexp(t, `Gains [0-9.]+ min`, shown(s, "#remedies"), "minutes that cooling brings")
		assert.Contains(t, shown(s, "#answer"), "no flame, no spark")
	})
}

func TestAColdDay(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		fill(s, "bench.now.surface-temp", "12")
		checkNoDose(t, s, "12 °C")
		assert.Contains(t, shown(s, "#answer"), "more catalyst doesn't cure a cold film")
		assert.Contains(t, shown(s, "#remedies"), "Warm the part")
		fill(s, "bench.now.surface-temp", "24")
		fill(s, "day.today.low", "12")
		s.Wait(`[id="fig-dose.grams"]`)
		pass(s, 13*3600) // 23:00
		checkNoDose(t, s, "cold evening")
		assert.Contains(t, shown(s, "#answer"), "within four hours")
	})
}

func TestAWrongTableOfOnesOwn(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		goTo(s, "cards")
		unfold(s, "card.gelcoat")
		at := "card.gelcoat.dose"
		table := func() string { return shown(s, `[id="list-`+at+`"]`) }
		check := func(why, says string) {
			t.Helper()
			assert.Contains(t, table(), says, why)
			goTo(s, "cup")
			checkNoDose(t, s, why)
			goTo(s, "cards")
		}
		do(s, "add", at, "")
		check("unfinished", "A row of your catalyst table isn't finished")
		fill(s, at+".1.temp", "20")
		fill(s, at+".1.share", "2")
		check("one row", "needs two rows at least")
		do(s, "add", at, "")
		fill(s, at+".2.temp", "18")
		fill(s, at+".2.share", "1.5")
		check("out of order", "colder than the row before it")
		fill(s, at+".2.temp", "30")
		goTo(s, "cup")
		assert.Equal(t, "1.8 g", figureText(s, "dose.grams"), "2 − 0.5 × 4 ÷ 10 %: the own table takes over")
	})
}

func TestAFixedRatio(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		choose(s, "bench.now.card", "primer")
		checkNoDose(t, s, "no ratio")
		assert.Contains(t, shown(s, "#answer"), "Nothing ships for this ratio. Type it on the card, from the tin.")
		goTo(s, "cards")
		unfold(s, "card.primer")
		fill(s, "card.primer.ratio-mass", "4")
		goTo(s, "cup")
		assert.Equal(t, "80 g", figureText(s, "part.A"))
		assert.Equal(t, "20 g", figureText(s, "part.B"))
		fill(s, "bench.now.surface-temp", "30")
		assert.Equal(t, "20 g", figureText(s, "part.B"), "at every temperature")
	})
}
