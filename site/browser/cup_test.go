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

// atBench has a mild morning's readings on the cup's screen: 100 g of gel coat at 24 °C on the part, 22 °C in the tin.
func atBench(s *webdriver.Session) {
	goTo(s, "cup")
	for _, f := range readings {
		tell(s, "set", f[0], f[1])
	}
	s.Wait(`[id="why-dose.grams"]`)
}

// twin is the dose in the other unit, and its share.
func twin(s *webdriver.Session) string { return shown(s, "#twin") }

// sheetText is what a sheet of the cup shows.
func sheetText(s *webdriver.Session, key string) string {
	tell(s, "go", "cup", "")
	tell(s, "sheet", key, "")
	text := shown(s, "#sheet")
	tell(s, "back", "", "")
	return text
}

// checkNoDose looks for a dose in everything that is on the page, on its sheets, on its paper and in what is read out.
func checkNoDose(t *testing.T, s *webdriver.Session, why string) {
	t.Helper()
	tell(s, "go", "cup", "")
	s.Until("no dose: "+why, func() bool { return !s.Has(`[id^="why-dose."], [id^="why-part."]`) })
	for _, sheet := range []string{"", "weigh", "catalyst", "sums", "remedies", "shedcard"} {
		if sheet != "" {
			tell(s, "sheet", sheet, "")
		}
		var all struct {
			Shed bool
			Text string
		}
		s.Script(&all, `
			const parts = ["answer", "sheet", "act", "live", "notice"].map((id) => document.getElementById(id));
			return { Shed: !!document.querySelector(".shedcard td"), Text: parts.map((e) => e ? e.textContent : "").join("\n") };`)
		assert.False(t, all.Shed, "%s, %s: a shed card with doses", why, sheet)
		assert.NotRegexp(t, `[0-9] ?(mL|fl oz|drops|% by mass)`, strings.ReplaceAll(plain(all.Text), "Drops in 1 mL, counted", ""), "%s, %s: but for what is asked", why, sheet)
		assert.False(t, s.Has(`[id^="why-dose."], [id^="why-part."]`), "%s, %s", why, sheet)
		assert.False(t, s.Has(`button[data-do="weighed"]`), "%s, %s", why, sheet)
		assert.False(t, s.Has(`#catalyst-in`), "%s, %s", why, sheet)
		tell(s, "go", "cup", "")
	}
}

// 24 °C lies two thirds of the way from 22 (1.70 %) to 25 (1.50 %) in the default table: 1.567 %, of 100 g 1.57 g, on a
// scale of 0.1 g 1.6; at 1.15 g/mL 1.39 mL. (Common practice; the table of the card.)
func TestADoseOnAMildMorning(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		assert.Equal(t, "1.6 g", figureText(s, "dose.grams"))
		assert.Equal(t, "1.39 mL, 1.6 % by mass", twin(s))
		assert.Contains(t, sheetText(s, "shedcard"), "1.5 g", "100 g at 25 °C on the wall")

		tell(s, "find", "bench.now.tool", "")
		do(s, "set", "bench.now.tool", "syringe")
		fill(s, "bench.now.syringe-step", "0.1 mL")
		tell(s, "go", "cup", "")
		assert.Equal(t, "1.4 mL", figureText(s, "dose.millilitres"))
		tell(s, "find", "bench.now.tool", "")
		do(s, "set", "bench.now.tool", "drops")
		checkNoDose(t, s, "no count of drops")
		fillAt(s, "bench.now.drops", "30")
		tell(s, "go", "cup", "")
		assert.Regexp(t, `^41 drops by your own count`, twin(s), "1.567 g ÷ 1.15 × 30 = 40.9")
		tell(s, "find", "bench.now.tool", "")
		do(s, "set", "bench.now.tool", "scale")
		fill(s, "bench.now.scale-step", "1 g")
		checkNoDose(t, s, "coarse scale")
		assert.Contains(t, shown(s, "#answer"), "Not with this scale")
		fillAt(s, "bench.now.scale-step", "0.1 g")

		for amount, grams := range map[string]string{"3 oz": "1.3 g", "80 mL": "1.6 g", "2.5 US fl oz": "1.4 g"} { // 85.0 g; × 1.25: 100 g; 73.9 mL: 92.4 g
			fillAt(s, "bench.now.amount", amount)
			assert.Equal(t, grams, figureText(s, "dose.grams"), amount)
		}
		fillAt(s, "bench.now.amount", "3 fl oz")
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
			tell(s, "find", path, "")
			before := s.Value(control(path))
			fill(s, path, "nonsense")
			assert.NotEmpty(t, say(s, path))
			checkNoDose(t, s, path)
			tell(s, "find", path, "")
			assert.Equal(t, "nonsense", s.Value(control(path)))
			fill(s, path, before)
			tell(s, "go", "cup", "") // a sheet hides the screen below it
			assert.Equal(t, "1.6 g", figureText(s, "dose.grams"), "%s put right", path)
		}
		pass(s, 24*3600)
		checkNoDose(t, s, "yesterday's readings")
		assert.Contains(t, shown(s, "#answer"), "The readings are from another day")
	})
}

func TestAColdDay(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		fill(s, "bench.now.surface-temp", "12")
		checkNoDose(t, s, "12 °C")
		assert.Contains(t, shown(s, "#answer"), "more catalyst doesn't cure a cold film")
		assert.Contains(t, sheetText(s, "remedies"), "Warm the part")
		fill(s, "bench.now.surface-temp", "24")
		fillAt(s, "day.today.low", "12")
		tell(s, "go", "cup", "")
		s.Wait(`[id="why-dose.grams"]`)
		pass(s, 13*3600) // 23:00
		checkNoDose(t, s, "cold evening")
		assert.Contains(t, shown(s, "#answer"), "within four hours")
	})
}

func TestAWrongTableOfOnesOwn(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		goTo(s, "cards")
		behind(s, "card.gelcoat", "dose")
		at := "card.gelcoat.dose"
		table := func() string { return shown(s, `[id="list-`+at+`"]`) }
		check := func(why, says string) {
			t.Helper()
			assert.Contains(t, table(), says, why)
			goTo(s, "cup")
			checkNoDose(t, s, why)
			goTo(s, "cards")
			behind(s, "card.gelcoat", "dose")
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
