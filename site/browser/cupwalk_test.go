package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// glove is a builder with a glove on: it uses only what is in sight, and counts. What must be scrolled to fails.
type glove struct {
	t             *testing.T
	s             *webdriver.Session
	taps, fields  int
	width, height int
}

// newGlove has a phone of a size in the hand.
func newGlove(t *testing.T, s *webdriver.Session, width, height int) *glove {
	t.Helper()
	s.SetSize(width, height)
	h := &glove{t: t, s: s, width: width, height: height}
	s.Script(nil, `
		globalThis.scrolls = 0;
		addEventListener("scroll", () => { if (document.scrollingElement.scrollTop > 0) scrolls++; }, { capture: true });`)
	return h
}

// onGlass says where an element stands: its middle must be on the glass, under nothing.
const onGlass = `
	const found = [...document.querySelectorAll(arguments[0])].find((e) => e.getClientRects().length);
	if (!found) return "not there";
	const box = found.getBoundingClientRect();
	if (box.top < 0 || box.bottom > innerHeight || box.left < 0 || box.right > innerWidth) return "off the glass: " + [box.left, box.top, box.right, box.bottom].map(Math.round);
	const top = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
	return top && (found.contains(top) || top.contains(found)) ? "" : "under " + (top ? top.id || top.className : "nothing");`

// sees checks that something is on the glass, unscrolled.
func (h *glove) sees(css string) {
	h.t.Helper()
	h.s.Wait(css)
	var why string
	h.s.Script(&why, onGlass, css)
	assert.Empty(h.t, why, "%s at %d × %d", css, h.width, h.height)
}

// taps what is in sight.
func (h *glove) tap(css string) {
	h.t.Helper()
	h.sees(css)
	h.taps++
	h.s.Click(css)
}

// types into a field that is in sight.
func (h *glove) types(path, text string) {
	h.t.Helper()
	h.tap(control(path))
	h.fields++
	h.s.Keys(strings.Split(text, "")...)
}

// picks one of few answers.
func (h *glove) picks(css string) {
	h.t.Helper()
	h.tap(css)
	h.fields++
}

// within holds what was done against what it may take.
func (h *glove) within(taps, fields int, what string) {
	h.t.Helper()
	var scrolls int
	h.s.Script(&scrolls, `return scrolls`)
	assert.Zero(h.t, scrolls, "%s: scrolled", what)
	assert.LessOrEqual(h.t, h.taps, taps, "%s: taps", what)
	assert.LessOrEqual(h.t, h.fields, fields, "%s: fields and choices", what)
	h.taps, h.fields = 0, 0
}

// screens is how many windows long the page is.
func (h *glove) screens() float64 {
	var long float64
	h.s.Script(&long, `return document.documentElement.scrollHeight / innerHeight`)
	return long
}

const (
	tabCup  = `#tab-cup`
	toWeigh = `button[data-do="sheet"][data-path="weigh"]`
	weighed = `button[data-do="weighed"]`
	dose    = `[id^="why-dose."]`
)

// phones is the usual phone and the smallest.
var phones = [][2]int{{360, 740}, {320, 640}}

// onPhones walks with an empty phone of each size in each engine.
func onPhones(t *testing.T, walk func(t *testing.T, h *glove)) {
	t.Helper()
	url := shed(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		for _, size := range phones {
			s.SetSize(size[0], size[1])
			s.Open(url)
			ready(s)
			forget(s)
			s.Refresh()
			ready(s)
			walk(t, newGlove(t, s, size[0], size[1]))
		}
	})
}

// From an empty phone to a clock: two entries for the first dose of a card that ships, and nothing is scrolled for; each
// step's figure and its button are seen together. 24 °C of the default table (common practice) is 1.567 %: of the 250 g that a
// tin gets that was never timed 3.92 g.
func TestFromAnEmptyPhoneToAClock(t *testing.T) {
	onPhones(t, func(t *testing.T, h *glove) {
		s := h.s
		h.tap(tabCup)
		h.types("bench.now.surface-temp", "24")
		h.picks(`button[data-do="tool"][data-text="scale 0.1 g"]`)
		h.sees(dose)
		h.sees(toWeigh)
		assert.Equal(t, "3.9 g", figureText(s, "dose.grams"))
		h.within(6, 3, "empty phone to the first dose")
		assert.LessOrEqual(t, h.screens(), 2.0, "the plan with a dose is two screens at most")

		h.tap(toWeigh)
		h.sees("#lines li")
		assert.Contains(t, shown(s, "#lines"), "250")
		h.tap(weighed)
		h.sees(dose)
		h.sees("#catalyst-in")
		assert.Contains(t, shown(s, "#dose"), "the scale then shows 253.9")
		s.Until("the dose read out at its step", func() bool {
			return shownOnce(s) == "Catalyst, once: 3.9 g, 3.39 mL, the scale then shows 253.9."
		})
		h.tap("#catalyst-in")
		h.sees(".clock .time")
		h.sees(`button[data-do="end"][data-text="spread"]`)
		h.sees(`button[data-do="sheet"][data-path="wont"]`)
		h.tap(`button[data-do="end"][data-text="spread"]`)
		s.Until("the end in one tap", func() bool { return !s.Has(".clock") })
		h.within(4, 0, "dose to the end of the cup")

		// Later on a day like this one: one field.
		s.Refresh()
		ready(s)
		h = newGlove(t, s, h.width, h.height)
		pass(s, 24*3600)
		h.s.Script(nil, `scrollTo(0, 0)`)
		h.types("bench.now.surface-temp", "25")
		h.sees(dose)
		h.within(1, 1, "a day like yesterday")
	})
}

// Back goes one step back and loses nothing: the weighed cup waits, and its dose is given once.
func TestBackNeverLosesAWeighedCup(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		toCatalyst(s)
		back := func() { s.Script(nil, `history.back()`) }
		back()
		s.Wait("#lines")
		assert.Equal(t, "100 g", s.Value(`#sheet input[data-path="bench.now.amount"]`))
		back()
		s.Until("the plan", func() bool { return !s.Has("#lines") })
		assert.Contains(t, shown(s, "#act"), "On to the weighed cup")
		do(s, "sheet", "catalyst", "")
		assert.Contains(t, shown(s, "#dose"), "1.6 g")

		// Weighed again with more in it: the dose follows the scale.
		back()
		s.Until("the plan again", func() bool { return !s.Has("#dose") })
		tell(s, "sheet", "weigh", "")
		do(s, "step", "bench.now.amount", "up")
		assert.Equal(t, "101 g", s.Value(`#sheet input[data-path="bench.now.amount"]`))
		do(s, "weighed", "", "")
		assert.Contains(t, shown(s, "#dose"), "the scale then shows 102.6")
		tap(s, "#tool-sheet-undo")
		assert.Contains(t, shown(s, "#sheet"), "so its dose is gone", "undo changes what was typed: the dose doesn't outlive it")
		do(s, "end", "cup.1", "scrap")
		assert.False(t, s.Has("#dose"))
	})
}

// A two-pack: the parts as one scale, or one graduated cup, shows them; hardener by its name, and isocyanate named only where
// it is. 100 : 33 by mass: of 532 g in all 400, then 532. 2 : 1 by volume: of 300 g at 1.2 kg/L 250 mL, 167, then 250. (Exact.)
func TestATwoPackByMassAndByVolume(t *testing.T) {
	for _, c := range []struct{ card, ratio, text, amount, first, hero, then string }{
		{"primer", "ratio-mass", "100:33", "532 g", "400", "132 g", "the scale then shows 532"},
		{"topcoat", "ratio-volume", "2:1", "300 g", "167", "83 mL", "fill to the mark of 250 mL"},
	} {
		onPhones(t, func(t *testing.T, h *glove) {
			s := h.s
			withJob(s, "bench.now.card = "+c.card+"\nbench.now.for = amount\nbench.now.tool = scale\nbench.now.scale-step = 1 g\nbench.now.amount = "+c.amount+"\ncard."+c.card+"."+c.ratio+" = "+c.text+"\n")
			h = newGlove(t, s, h.width, h.height)
			h.tap(tabCup)
			h.types("bench.now.surface-temp", "24")
			h.sees(`[id="why-part.B"]`)
			assert.Equal(t, c.hero, figureText(s, "part.B"))
			h.tap(toWeigh)
			h.sees("#lines li")
			assert.Contains(t, shown(s, "#lines"), c.first)
			h.tap(weighed)
			h.sees(`[id="why-part.B"]`)
			text := shown(s, "#sheet") + shown(s, "#act")
			assert.Contains(t, text, c.then)
			assert.Contains(t, text, "Hardener in: start the clock")
			assert.NotContains(t, strings.ToLower(text), "catalyst")
			assert.Equal(t, c.card == "topcoat", strings.Contains(text, "Isocyanate"), "%s: only where it is", c.card)
			h.tap("#catalyst-in")
			h.sees(".clock .time")
			h.within(5, 1, "a two-pack")
		})
	}
}

// Over the end of the table: what brings a dose back, and a timed test that opens cups for the day. The floor of 1 % of 100 g
// is 1 g.
func TestAHotDayWithATimedTest(t *testing.T) {
	onPhones(t, func(t *testing.T, h *glove) {
		s := h.s
		withJob(s, "bench.now.tool = scale\nbench.now.scale-step = 0.1 g\n")
		h = newGlove(t, s, h.width, h.height)
		h.tap(tabCup)
		h.types("bench.now.surface-temp", "36")
		checkNoDose(t, s, "36 °C")
		said := shown(s, "#answer")
		assert.Contains(t, said, "No dose at 36 °C")
		assert.Contains(t, said, "no dose is guessed beyond it")
		assert.Contains(t, said, "A timed test at this temperature")
		assert.Contains(t, shown(s, "#verdicts"), "no flame, no spark")
		test := `button[data-do="time-test"]`
		h.tap(test)
		h.sees("#lines li")
		h.tap(weighed)
		h.sees(dose)
		assert.Contains(t, shown(s, "#dose"), "1 g")
		assert.Contains(t, shown(s, "#dose"), "the scale then shows 101")
		h.tap("#catalyst-in")
		h.sees(".clock .time")
		assert.Contains(t, shown(s, ".clock"), "since the catalyst")
		pass(s, 14*60)
		s.Until("elapsed time", func() bool { return shown(s, ".clock .time") == "14:00" })
		h.tap(`button[data-do="end"][data-text="gelled"]`)
		s.Until("taken at once", func() bool { return strings.Contains(shown(s, "#notice"), "Taken as a cup test") })
		s.Wait(dose)
		require.NotContains(t, shown(s, "#answer"), "No dose")
		assert.NotContains(t, shown(s, ".screen-cup"), "can't be used here")
		fill(s, "bench.now.surface-temp", "38")
		checkNoDose(t, s, "warmer than the test opened")
	})
}

// A surface too near the dew point gives no dose; the air is read on its sheet. Dew point of 26 °C air at 78 % is 21.9 °C (WMO's
// constants): a surface of 23 °C lies 1.1 °C over it, and 3 °C are needed.
func TestADewRefusal(t *testing.T) {
	onPhones(t, func(t *testing.T, h *glove) {
		s := h.s
		withJob(s, "bench.now.tool = scale\nbench.now.scale-step = 0.1 g\n")
		h = newGlove(t, s, h.width, h.height)
		h.tap(tabCup)
		h.types("bench.now.surface-temp", "23")
		h.sees(dose)
		assert.Contains(t, shown(s, "#verdicts"), "Fit to coat: not checked.")
		for _, f := range [][2]string{{"day.today.read-temp", "26"}, {"day.today.read-humidity", "78"}, {"day.today.low", "18"}, {"day.today.high", "28"}} {
			fillAt(s, f[0], f[1])
		}
		checkNoDose(t, s, "dew")
		assert.Contains(t, shown(s, "#answer"), "above the dew point")
		assert.Contains(t, shown(s, "#verdicts"), "Too near the dew point")
	})
}

// Near the card's least temperature the coldest hour ahead is asked for, and a cold evening gives no dose.
func TestAColdEveningIsAskedFor(t *testing.T) {
	onPhones(t, func(t *testing.T, h *glove) {
		s := h.s
		withJob(s, "bench.now.tool = scale\nbench.now.scale-step = 0.1 g\n")
		h = newGlove(t, s, h.width, h.height)
		h.tap(tabCup)
		h.types("bench.now.surface-temp", "18")
		assert.False(t, s.Has(dose))
		h.types("bench.now.ahead", "16")
		h.sees(dose)
		h.within(3, 2, "a cool day")
		fill(s, "bench.now.ahead", "12")
		checkNoDose(t, s, "cold evening")
		assert.Contains(t, shown(s, "#answer"), "within four hours")
	})
}
