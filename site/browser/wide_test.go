package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// onWide is a screen of 1280 × 800 with the made-up job.
func onWide(t *testing.T, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(1280, 800)
		goTo(s, "settings")
		do(s, "demo", "", "")
		test(t, s)
	})
}

// widths looks at what is shown: lines of text over so many characters, and buttons over so many rem. A button that is a
// line of a list, or a verdict, is as wide as its list. A line of a list that has its name left and its figure right is two
// texts, not one.
const widths = `
	const [most, rems] = arguments, wrong = [], rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
	const seen = (e) => e.getClientRects().length && !e.closest("svg, #live, .unseen, script, style");
	const isInline = (e) => getComputedStyle(e).display.startsWith("inline") && getComputedStyle(e).display !== "inline-block";
	for (const block of document.querySelectorAll("body *")) {
		if (!seen(block) || isInline(block) || block.textContent.length <= most) continue;
		const texts = document.createTreeWalker(block, NodeFilter.SHOW_TEXT), lines = new Map();
		for (let node; node = texts.nextNode(); ) {
			let home = node.parentElement;
			while (isInline(home)) home = home.parentElement;
			if (home !== block || !seen(node.parentElement)) continue;
			const range = document.createRange();
			for (let i = 0; i < node.length; i++) {
				range.setStart(node, i);
				range.setEnd(node, i + 1);
				const box = range.getClientRects()[0];
				if (box && box.width) lines.set(Math.round(box.bottom / 6), (lines.get(Math.round(box.bottom / 6)) || "") + node.data[i]);
			}
		}
		for (const line of lines.values()) if (line.trim().length > most) wrong.push(line.trim().length + " characters: " + line.trim().slice(0, 90));
	}
	for (const button of document.querySelectorAll("button:not(.listrow, .verdict, .figure, .line, .thing, .way, .option, .tile)")) {
		const wide = button.getBoundingClientRect().width / rem;
		if (seen(button) && wide > rems + 0.01) wrong.push(wide.toFixed(1) + " rem: " + button.id);
	}
	return wrong;`

// On a wide screen nothing is stretched: no line of text over 70 characters, no button over 20 rem, on every screen and on
// every sheet that is opened from it.
func TestNothingIsStretchedOnAWideScreen(t *testing.T) {
	onWide(t, func(t *testing.T, s *webdriver.Session) {
		wide := func(where string) {
			var wrong []string
			s.Script(&wrong, widths, 70, 20)
			assert.Empty(t, wrong, where)
		}
		for _, screen := range page.Screens {
			goTo(s, screen.Key)
			workedOut(s)
			wide(screen.Key)
			var sheets []string
			s.Script(&sheets, `return [...new Set([...document.querySelectorAll('.screen [data-do="sheet"]')].map((e) => e.dataset.path))]`)
			if screen.Key == "order" {
				sheets = sheets[:min(len(sheets), 6)] // one form for all things
			}
			for _, key := range sheets {
				tell(s, "sheet", key, "")
				s.Wait(onSheet(key))
				wide(screen.Key + ", " + key)
			}
			closeSheets(s)
		}
	})
}

// The right half of a wide screen is used: by what is open, else by what says most beside the list.
func TestBothHalvesOfAWideScreenAreUsed(t *testing.T) {
	onWide(t, func(t *testing.T, s *webdriver.Session) {
		for _, screen := range page.Screens[:page.MainScreens] {
			goTo(s, screen.Key)
			workedOut(s)
			var halves []int
			s.Script(&halves, `
				const texts = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT), halves = [0, 0], range = document.createRange();
				for (let node; node = texts.nextNode(); ) {
					if (!node.data.trim() || node.parentElement.closest(".top, .bar, .notice, .act")) continue;
					range.selectNodeContents(node);
					const box = range.getBoundingClientRect();
					if (box.height && box.top < innerHeight) halves[box.left + box.width / 2 > innerWidth * 0.55 ? 1 : 0]++;
				}
				return halves;`)
			assert.Greater(t, halves[0], 4, "%s: left", screen.Key)
			assert.Greater(t, halves[1], 4, "%s: right", screen.Key)
		}
		goTo(s, "surfaces")
		assert.Contains(t, shown(s, ".sheet"), "Where the area is")
		do(s, "sheet", "surface.1", "")
		assert.NotContains(t, shown(s, ".sheet"), "Where the area is")
		assert.True(t, s.Has(`.screen [data-path="surface.2"]`), "the list stands beside what is open")
		goTo(s, "log")
		assert.Contains(t, shown(s, ".sheet"), "When can the rest be done?")
	})
}

// Beside the catalyst's step the plan shows no dose: it is seen once.
func TestADoseIsSeenOnceOnAWideScreen(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(1280, 800)
		atBench(s)
		toCatalyst(s)
		var doses int
		s.Script(&doses, `return [...document.querySelectorAll("main *")].filter((e) => !e.children.length && /^1\.6\sg$/.test(e.textContent.trim()) && e.getClientRects().length).length`)
		assert.Equal(t, 1, doses)
		assert.True(t, s.Has(`.screen [data-path="bench.now.surface-temp"]`), "what it was reckoned with stays beside it")
	})
}

// Arrows step a dial, Escape closes a sheet.
func TestArrowsStepAndEscapeCloses(t *testing.T) {
	onWide(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "cup")
		tap(s, control("bench.now.surface-temp"))
		was := s.Value(control("bench.now.surface-temp"))
		s.Keys(webdriver.Up, webdriver.Up)
		s.Until("two steps up", func() bool { return s.Value(control("bench.now.surface-temp")) != was })
		up := s.Value(control("bench.now.surface-temp"))
		s.Keys(webdriver.Down, webdriver.Down)
		s.Until("and down again", func() bool { return s.Value(control("bench.now.surface-temp")) == was })
		assert.NotEqual(t, up, was)
		goTo(s, "surfaces")
		do(s, "sheet", "surface.1", "")
		s.Wait(onSheet("surface.1"))
		do(s, "sheet", "surface.1.under", "")
		s.Wait(onSheet("surface.1.under"))
		s.Keys(webdriver.Escape)
		s.Wait(onSheet("surface.1"))
		s.Keys(webdriver.Escape)
		s.Wait(onSheet(""))
		var focus string
		s.Script(&focus, `return document.activeElement.id`)
		assert.Equal(t, "open-surface.1", focus, "the focus goes back to what opened it")
	})
}

// On a phone's side the dose and the button that acts on it are seen together, without scrolling; the screens stand at the
// side, and what is always there leaves two thirds of the glass.
func TestOnAPhonesSide(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(640, 320)
		atBench(s)
		s.Script(nil, `scrollTo(0, 0)`)
		h := &glove{t: t, s: s, width: 640, height: 320}
		h.sees(dose)
		h.sees(toWeigh)
		for _, screen := range page.Screens {
			goTo(s, screen.Key) // by taps: nothing lies over the screen
			var taken float64
			s.Script(&taken, `
				const bar = document.querySelector(".bar").getBoundingClientRect(), act = document.querySelector(".act").getBoundingClientRect();
				return (bar.width * innerHeight + act.width * act.height) / innerWidth / innerHeight;`)
			assert.Less(t, taken, 0.34, screen.Key)
			assert.GreaterOrEqual(t, taken, 0.1, screen.Key)
		}
	})
}
