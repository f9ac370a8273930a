package browser_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// effects is what the phone was asked to do.
type effects struct{ Beeps, Buzzes, Awake, Slept int }

func effectsSoFar(s *webdriver.Session) effects {
	var e effects
	s.Script(&e, `return { Beeps: did.beeps, Buzzes: did.buzzes, Awake: did.awake, Slept: did.slept }`)
	return e
}

// toCatalyst goes from the plan of a cup to its weighed cup.
func toCatalyst(s *webdriver.Session) {
	do(s, "sheet", "weigh", "")
	do(s, "weighed", "", "")
	s.Wait("#catalyst-in")
}

// weighIn weighs the cup that is shown and puts its catalyst in.
func weighIn(t *testing.T, s *webdriver.Session) {
	t.Helper()
	toCatalyst(s)
	assert.Contains(t, shown(s, "#sheet-heading"), "Catalyst: polyester gel coat, 100 g")
	assert.Contains(t, shown(s, "#dose"), "1.6 g", "the dose of the cup that was weighed")
	assert.Contains(t, shown(s, "#dose"), "the scale then shows 101.6")
	tap(s, "#catalyst-in")
	s.Wait(".clock")
}

func checkDoseGone(t *testing.T, s *webdriver.Session, when string) {
	t.Helper()
	for _, sheet := range []string{"", "weigh", "catalyst", "sums", "shedcard"} {
		if sheet != "" {
			tell(s, "sheet", sheet, "")
		}
		var text string
		s.Script(&text, `return document.body.textContent`)
		text = plain(text)
		assert.NotContains(t, text, "1.6 g", when)
		assert.NotContains(t, text, "1.39 mL", when)
		assert.NotContains(t, text, "1.57 %", when)
		assert.False(t, s.Has(`[id^="why-dose."], .shedcard td`), when)
		if sheet != "" {
			tell(s, "back", "", "")
		}
	}
}

// One dose, one clock: from catalyst in to the end of the usable time, which is between 6 and 7 minutes here (early gel
// time 13 min at 22 °C in the tin, of which 0.6, less the last stretch).
func TestOneDoseOneClock(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		toCatalyst(s)
		s.Refresh()
		ready(s)
		assert.Contains(t, shown(s, "#dose"), "1.6 g", "a weighed cup still waits for its dose after a reload")
		tap(s, "#catalyst-in")
		s.Wait(".clock")
		assert.NotContains(t, shown(s, "#clock-note"), "No alarm yet", "the tap that started it was a touch")
		checkDoseGone(t, s, "once catalyst is in")
		assert.Contains(t, shown(s, "#live"), "Catalyst in. The clock runs.")
		s.Until("the screen kept awake", func() bool { return effectsSoFar(s).Awake == 1 })
		until, start := shown(s, ".until"), shown(s, ".clock .time")
		assert.Regexp(t, `^10:0[0-9]\s+stop spreading\s+10:1[0-9]\s+gels, earliest`, until)
		assert.Regexp(t, `^7:[01][0-9]$`, start)

		pass(s, 100)
		s.Until("the clock", func() bool { return shown(s, ".clock .time") != start })
		assert.Regexp(t, `^5:[0-9][0-9]$`, shown(s, ".clock .time"))
		s.Refresh()
		ready(s)
		s.Wait(".clock")
		assert.Equal(t, until, shown(s, ".until"), "the same end after a reload")
		checkDoseGone(t, s, "after a reload")
		assert.Zero(t, effectsSoFar(s).Beeps)

		assert.Contains(t, shown(s, "#clock-note"), "tap anywhere once", "no page may sound before a touch")
		do(s, "go", "cup", "")
		s.Until("that it may sound", func() bool { return !strings.Contains(shown(s, "#clock-note"), "tap anywhere once") })
		assert.NotContains(t, shown(s, "#clock-note"), "own timer", "this phone keeps the screen awake")
		s.Script(nil, `loseAwake()`)
		s.Until("the phone's own timer", func() bool { return strings.Contains(shown(s, "#clock-note"), "set the phone's own timer") })
		s.Script(nil, `setHidden(true); setHidden(false)`)
		s.Until("the screen kept awake again", func() bool { return !strings.Contains(shown(s, "#clock-note"), "own timer") })
		s.Script(nil, `setHidden(true); passSeconds(3600); setHidden(false)`)
		s.Wait(`.clock[data-is="over"]`)
		assert.Contains(t, shown(s, ".clock"), "time is up: stop, put the rest outside")
		s.Until("the alarm", func() bool { return effectsSoFar(s).Beeps == 8 })
		assert.Equal(t, 1, effectsSoFar(s).Buzzes)
		assert.Contains(t, shown(s, "#live"), "time is up")
		assert.NotContains(t, shown(s, ".clock"), "−", "no hour below nothing")
		pass(s, 5)
		pass(s, 5)
		assert.Equal(t, 8, effectsSoFar(s).Beeps, "it alarms once")
		checkDoseGone(t, s, "when it is over")

		do(s, "sheet", "wont", "")
		assert.Contains(t, shown(s, "#sheet"), "Add nothing.")
		assert.Contains(t, shown(s, "#sheet"), "Warm the part")
		assert.Regexp(t, `1[0-9]:[0-9][0-9]`, shown(s, "#sheet"), "how long to wait, by the clock")
		do(s, "end", "cup.1", "no-cure")
		s.Until("the screen let go", func() bool { return effectsSoFar(s).Slept > 0 })
		goTo(s, "log")
		unfold(s, "cup.1")
		assert.Contains(t, shown(s, ".sheet"), "Add nothing")
		fill(s, "cup.1.left", "30 g")
		s.Refresh()
		ready(s)
		goTo(s, "log")
		unfold(s, "cup.1")
		assert.Equal(t, "30 g", s.Value(control("cup.1.left")))
	})
}

// A phone's clock that is set back while a cup runs takes nothing off what has gone; one that is set on is said.
func TestAClockThatIsSetIsNoticed(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		set := func(seconds int) {
			s.Script(nil, `setClock(arguments[0])`, seconds)
			tell(s, "tick", "", "")
		}
		atBench(s)
		weighIn(t, s)
		pass(s, 100)
		left := shown(s, ".clock .time")
		set(-3600)
		assert.Contains(t, shown(s, "#clock-note"), "set back by 60 min")
		assert.InDelta(t, secondsOf(t, left), secondsOf(t, shown(s, ".clock .time")), 2, "what has gone has gone; the clocks tick at different moments")
		pass(s, 3600)
		assert.Equal(t, "over", s.Attr(".clock", "data-is"))
		do(s, "end", "cup.1", "spread")
		weighIn(t, s)
		set(600)
		assert.Contains(t, shown(s, "#clock-note"), "jumped ahead by 10 min")
	})
}

func TestSeveralCupsAndACupTest(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		usable := s.Attr(".timebar", "aria-label")
		weighIn(t, s)
		pass(s, 30)
		do(s, "sheet", "next", "")
		weighIn(t, s)
		checkDoseGone(t, s, "two cups run")
		var clocks []string
		s.Script(&clocks, `return [...document.querySelectorAll(".time, .othertime")].map((e) => e.textContent)`)
		assert.Len(t, clocks, 2)
		if len(clocks) == 2 {
			assert.Less(t, clocks[0], clocks[1], "the first cup has less left: its chip stands above the clock of the latest")
		}
		pass(s, 350) // the first in its last minute
		s.Until("the warning", func() bool { return effectsSoFar(s).Beeps == 3 })
		s.Wait(`.clock[data-is="last"]`)
		assert.Contains(t, shown(s, `.clock[data-is="last"]`), "last minute")
		do(s, "front", "cup.2", "")
		do(s, "end", "cup.2", "spread")
		pass(s, 21*60-380)
		do(s, "end", "cup.1", "gelled")
		goTo(s, "log")
		unfold(s, "cup.1")
		assert.Equal(t, "21 min", s.Value(control("cup.1.gel")))
		do(s, "take", "cup.1", "")
		assert.Contains(t, shown(s, ".notice"), "Taken as a cup test")
		goTo(s, "cup")
		assert.NotEqual(t, usable, s.Attr(".timebar", "aria-label"), "the minutes follow the test")
		assert.NotContains(t, shown(s, "#setups"), "until this tin is timed")
	})
}

// secondsOf reads minutes and seconds of a clock.
func secondsOf(t *testing.T, text string) int {
	t.Helper()
	minutes, seconds, isTime := strings.Cut(text, ":")
	require.True(t, isTime, text)
	m, err := strconv.Atoi(minutes)
	require.NoError(t, err)
	n, err := strconv.Atoi(seconds)
	require.NoError(t, err)
	return 60*m + n
}
