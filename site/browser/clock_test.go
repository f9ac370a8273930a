package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// effects is what the phone was asked to do.
type effects struct{ Beeps, Buzzes, Awake, Slept int }

func effectsSoFar(s *webdriver.Session) effects {
	var e effects
	s.Script(&e, `return { Beeps: did.beeps, Buzzes: did.buzzes, Awake: did.awake, Slept: did.slept }`)
	return e
}

// weighIn weighs the cup that is shown and puts its catalyst in.
func weighIn(t *testing.T, s *webdriver.Session) {
	t.Helper()
	do(s, "weighed", "", "")
	s.Wait("#catalyst-in")
	assert.Contains(t, shown(s, "#answer h2"), "Resin weighed: 100 g")
	assert.Equal(t, "1.6 g", figureText(s, "dose.grams"), "the dose of the cup that was weighed")
	tap(s, "#catalyst-in")
	s.Wait(".clock")
}

func checkDoseGone(t *testing.T, s *webdriver.Session, when string) {
	t.Helper()
	var text string
	s.Script(&text, `return document.body.textContent`)
	text = plain(text)
	assert.NotContains(t, text, "1.6 g", when)
	assert.NotContains(t, text, "1.39 mL", when)
	assert.NotContains(t, text, "1.57 %", when)
	assert.False(t, s.Has(`[id^="fig-dose."], .shedcard`), when)
}

// One dose, one clock: from catalyst in to the end of the usable time, which is between 6 and 7 minutes here (early gel
// time 13 min at 22 °C in the tin, of which 0.6, less the last stretch).
func TestOneDoseOneClock(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		do(s, "weighed", "", "")
		s.Refresh()
		ready(s)
		assert.Equal(t, "1.6 g", figureText(s, "dose.grams"), "a weighed cup still waits for its dose after a reload")
		tap(s, "#catalyst-in")
		s.Wait(".clock")
		assert.False(t, s.Has(".silence"), "the tap that started it was a touch")
		checkDoseGone(t, s, "once catalyst is in")
		assert.Contains(t, shown(s, "#live"), "Catalyst in. The clock runs.")
		s.Until("the screen kept awake", func() bool { return effectsSoFar(s).Awake == 1 })
		until, start := shown(s, ".clock .until"), shown(s, ".clock .time")
		assert.Regexp(t, `^Use until 10:0[0-9] by the clock`, until)
		assert.Regexp(t, `^6:[0-9][0-9]$`, start)

		pass(s, 100)
		s.Until("the clock", func() bool { return shown(s, ".clock .time") != start })
		assert.Regexp(t, `^4:[0-9][0-9]$`, shown(s, ".clock .time"))
		s.Refresh()
		ready(s)
		s.Wait(".clock")
		assert.Equal(t, until, shown(s, ".clock .until"), "the same end after a reload")
		checkDoseGone(t, s, "after a reload")
		assert.Zero(t, effectsSoFar(s).Beeps)

		assert.Contains(t, shown(s, ".clock .silence"), "tap anywhere once", "no page may sound before a touch")
		do(s, "go", "cup", "")
		s.Until("that it may sound", func() bool { return !s.Has(".silence") })
		s.Script(nil, `setHidden(true); passSeconds(3600); setHidden(false)`)
		s.Wait(".clock.over")
		assert.Contains(t, shown(s, ".clock"), "Over: stop, put the rest outside")
		s.Until("the alarm", func() bool { return effectsSoFar(s).Beeps == 8 })
		assert.Equal(t, 1, effectsSoFar(s).Buzzes)
		assert.Contains(t, shown(s, "#live"), "usable time is over")
		assert.True(t, strings.HasPrefix(shown(s, ".clock .time"), "−"))
		pass(s, 5)
		pass(s, 5)
		assert.Equal(t, 8, effectsSoFar(s).Beeps, "it alarms once")
		checkDoseGone(t, s, "when it is over")

		do(s, "end", "cup.1", "no-cure")
		s.Until("the screen let go", func() bool { return effectsSoFar(s).Slept > 0 })
		goTo(s, "log")
		assert.Contains(t, shown(s, ".screen-log"), "Add nothing")
		fill(s, "cup.1.left", "30 g")
		s.Refresh()
		ready(s)
		goTo(s, "log")
		unfold(s, "cup.1")
		assert.Equal(t, "30 g", s.Value(control("cup.1.left")))
	})
}

func TestSeveralCupsAndACupTest(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		usable := figureText(s, "usable")
		weighIn(t, s)
		pass(s, 30)
		do(s, "open", "bench.next", "")
		weighIn(t, s)
		checkDoseGone(t, s, "two cups run")
		var clocks []string
		s.Script(&clocks, `return [...document.querySelectorAll(".clock .time")].map((e) => e.textContent)`)
		assert.Len(t, clocks, 2)
		if len(clocks) == 2 {
			assert.Less(t, clocks[0], clocks[1], "the first cup has less left")
		}
		pass(s, 310) // the first in its last minute
		s.Until("the warning", func() bool { return effectsSoFar(s).Beeps == 3 })
		s.Wait(".clock.last")
		assert.Contains(t, shown(s, ".clock.last"), "Last minute")
		do(s, "end", "cup.2", "spread")
		pass(s, 21*60-340)
		do(s, "end", "cup.1", "gelled")
		goTo(s, "log")
		unfold(s, "cup.1")
		assert.Equal(t, "21 min", s.Value(control("cup.1.gel")))
		do(s, "take", "cup.1", "")
		assert.Contains(t, shown(s, ".notice"), "Taken as a cup test")
		goTo(s, "cup")
		assert.NotEqual(t, usable, figureText(s, "usable"), "the minutes follow the test")
		assert.NotContains(t, shown(s, "#answer"), "until a cup test of this tin is logged")
	})
}
