package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// least is the height in CSS pixels of what a gloved hand must hit.
const least = 48

// width is that of the narrowest phone.
const width = 320

// misfits opens everything on a screen in turn, items and workings, and tells what scrolls sideways and what is too small to
// hit. The page answers each click before it returns.
const misfits = `
	const [width, least] = arguments;
	const found = new Set();
	const look = (at) => {
		if (document.documentElement.scrollWidth > width) {
			for (const e of document.querySelectorAll("body *")) {
				const box = e.getBoundingClientRect();
				if (box.width && (box.right > width + 0.5 || box.left < -0.5) && !e.closest("table, #live")) {
					found.add(at + ": wide " + e.tagName + "." + e.className + " " + e.textContent.slice(0, 30));
				}
			}
			found.add(at + ": scrolls sideways");
		}
		for (const e of document.querySelectorAll("button, input, select, textarea, summary, a[href]")) {
			const box = e.getBoundingClientRect();
			if (box.width && (box.height < least || box.width < least)) found.add(at + ": small " + (e.id || e.outerHTML));
		}
	};
	look("as it opens");
	const done = new Set();
	const open = (kind) => {
		for (let next; next = [...document.querySelectorAll(kind)].find((e) => !done.has(e.id)); ) {
			done.add(next.id);
			next.click();
			if (document.getElementById(next.id)?.getAttribute("aria-expanded") === "false") document.getElementById(next.id).click();
			look(next.id);
		}
	};
	open('button[data-do="open"]');
	open('button[data-do="why"]');
	const sheets = (within, depth) => {
		for (let next; next = [...document.querySelectorAll(within + ' button[data-do="sheet"]')].find((e) => !done.has(e.dataset.path)); ) {
			const key = next.dataset.path;
			done.add(key);
			next.click();
			look("sheet " + key);
			open('.sheet button[data-do="open"]');
			if (depth > 1) sheets(".sheet", depth - 1);
			while (document.querySelector(".sheet").dataset.sheet === key || depth > 1 && document.getElementById("sheet-close") && document.querySelector(".sheet").dataset.sheet.startsWith(key)) {
				document.getElementById("sheet-close").click();
			}
		}
	};
	sheets(".screen", 2);
	return { Opened: done.size, Found: [...found] };`

// withReadings has the filler of the made-up job measured by a grid of readings, and types what a dose hangs on.
const withReadings = `
	const step = "buildup.1.step.1", send = (verb, path, text) => window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb, path, text } }));
	send("set", step + ".fill-by", "grid");
	for (const [key, text] of [["columns", "12"], ["row-gap", "200"], ["column-gap", "200"], ["paste", "1 2 3 4 5 6 7 8 9 10 11 12\n2 3 4 5 6 7 -8 9 10 11 12 13"]]) send("set", step + "." + key, text);
	send("fill", step, "");
	for (const [path, text] of arguments[0]) send("set", path, text);`

// TestFitsHandAndPhone looks at every screen of the made-up job with everything open in turn, at the narrowest phone, with
// the text as set and twice as large, from left to right and from right to left.
func TestFitsHandAndPhone(t *testing.T) {
	url := shed(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(width, 568)
		s.Open(url)
		ready(s)
		for _, madeUp := range []bool{false, true} {
			if madeUp {
				goTo(s, "settings")
				do(s, "demo", "", "")
				s.Script(nil, withReadings, readings)
			}
			for _, way := range [][2]string{{"100%", "ltr"}, {"200%", "ltr"}, {"100%", "rtl"}} {
				s.Script(nil, `document.documentElement.style.fontSize = arguments[0]; document.documentElement.dir = arguments[1]`, way[0], way[1])
				inPlace := ""
				for _, screen := range page.Screens {
					visit(s, screen.Key)
					at := tabsAt(t, s, screen.Key+" at "+way[0]+", "+way[1])
					assert.True(t, inPlace == "" || at == inPlace, "%s at %s, %s: the tabs move from %s to %s", screen.Key, way[0], way[1], inPlace, at)
					inPlace = at
					var got struct {
						Opened int
						Found  []string
					}
					s.Script(&got, misfits, width, least)
					assert.Empty(t, got.Found, "%s at %s, %s", screen.Key, way[0], way[1])
					if least := map[string]int{"surfaces": 14, "buildup": 30, "cup": 8, "order": 20, "log": 10, "cards": 15}[screen.Key]; madeUp {
						assert.GreaterOrEqual(t, got.Opened, least, "%s: items and workings", screen.Key)
					}
				}
			}
		}
	})
}

// tabsAt says where the tabs stand, and holds them to be whole on the glass, with nothing over them.
func tabsAt(t *testing.T, s *webdriver.Session, what string) string {
	t.Helper()
	var tabs struct{ At, Bad string }
	s.Script(&tabs, `
		window.scrollTo(0, 1e6);
		const tabs = [...document.querySelectorAll(".tab")], bad = [];
		const at = tabs.map((e) => {
			const box = e.getBoundingClientRect();
			const top = document.elementFromPoint((box.left + box.right) / 2, (box.top + box.bottom) / 2);
			if (box.top < 0 || box.bottom > innerHeight + 0.5 || box.left < -0.5 || box.right > innerWidth + 0.5) bad.push(e.id + " is off the glass");
			if (!top || top.closest(".tab") !== e) bad.push(e.id + " is covered");
			if (e.scrollWidth > e.clientWidth + 1) bad.push(e.id + " is cut");
			return [box.left, box.top, box.right, box.bottom].map(Math.round).join(" ");
		});
		window.scrollTo(0, 0);
		return { At: at.join(", "), Bad: bad.join(", ") };`)
	assert.NotEmpty(t, tabs.At, what)
	assert.Empty(t, tabs.Bad, what)
	return tabs.At
}

// An empty screen says what to do next, and takes one there.
func TestEmptyScreensLeadOn(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		for screen, next := range map[string]string{"surfaces": `.tiles [data-do="add"]`, "buildup": `.options [data-do="ready"]`, "order": `.empty [data-do="go"]`,
			"log": `.empty [data-do="go"]`, "cup": `#answer h2`, "cards": `[data-do="sheet"][data-path^="card."]`} {
			goTo(s, screen)
			assert.True(t, s.Has(next), screen)
		}
		goTo(s, "cup")
		assert.Contains(t, shown(s, "#answer"), "Type the temperature of the surface")
	})
}

func TestStepsMoveWhatIsTyped(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		do(s, "step", "bench.now.surface-temp", "up")
		assert.Equal(t, "25", s.Value(control("bench.now.surface-temp")))
		assert.Equal(t, "1.5 g", figureText(s, "dose.grams"), "1.50 % at 25 °C")
		do(s, "step", "bench.now.amount", "up")
		assert.Equal(t, "150 g", s.Value(control("bench.now.amount")))
		tell(s, "find", "bench.now.thinner", "")
		do(s, "step", "bench.now.thinner", "up") // empty: the cursor goes there
		s.Until("the cursor in the empty field", func() bool {
			var at string
			s.Script(&at, `return document.activeElement.dataset.path || ""`)
			return at == "bench.now.thinner"
		})
		assert.Empty(t, s.Value(control("bench.now.thinner")))

		// A phone that leaves the focus in the field shows the step all the same.
		tell(s, "find", "day.today.high", "")
		tap(s, control("day.today.high"))
		s.Script(nil, `document.querySelector('[data-do="step"][data-path="day.today.high"][data-text="up"]').click()`)
		assert.Equal(t, "28", s.Value(control("day.today.high")))
	})
}

// Enter goes on to the next field, past the buttons, and leaves the last one.
func TestEnterGoesToTheNextField(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "cup")
		var want, got []string
		s.Script(&want, `return [...document.querySelectorAll("[data-path]:is(input,select,textarea)")].map((e) => e.id)`)
		tap(s, "#"+strings.ReplaceAll(want[0], ".", `\.`))
		for range want {
			var at struct{ ID, Tag, Hint string }
			s.Script(&at, `const e = document.activeElement; return { ID: e.id, Tag: e.tagName, Hint: e.getAttribute("enterkeyhint") || "" }`)
			got = append(got, at.ID)
			if at.Tag == "INPUT" {
				assert.Equal(t, "next", at.Hint, at.ID)
				s.Keys(webdriver.Enter)
			} else {
				s.Script(nil, `document.activeElement.blur(); document.getElementById(arguments[0])?.focus()`, following(want, at.ID))
			}
		}
		assert.Equal(t, want, got)
	})
}

// following is what comes after a word in a list: a choice has a use of its own for Enter.
func following(list []string, word string) string {
	for i := range list[:len(list)-1] {
		if list[i] == word {
			return list[i+1]
		}
	}
	return ""
}

// A new dose is read out once, when typing has come to rest, and taken back at once.
func TestTheNewDoseIsReadOutWithoutChatter(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		atBench(s)
		s.Until("the dose read out", func() bool { return shownOnce(s) == "Catalyst 1.6 g, 1.39 mL." })
		s.Script(nil, `
			globalThis.heard = [];
			new MutationObserver(() => heard.push(document.getElementById("live").textContent)).observe(document.getElementById("live"), { childList: true, characterData: true, subtree: true });`)
		fill(s, "bench.now.amount", "80.5 g") // each key makes another dose, or none
		s.Until("the new dose read out", func() bool { return shownOnce(s) == "Catalyst 1.3 g, 1.13 mL." })
		var heard []string
		s.Script(&heard, `return heard.filter((text) => text)`)
		assert.Len(t, heard, 1, "one line: %v", heard)
		fill(s, "bench.now.amount", "none")
		assert.NotContains(t, shownOnce(s), "1.3 g")
		s.Until("that there is none", func() bool { return shownOnce(s) == "No dose." })
		assert.Equal(t, "status", s.Attr("#live", "role"))
	})
}

func shownOnce(s *webdriver.Session) string {
	var text string
	s.Script(&text, `return document.getElementById("live").textContent`)
	return plain(text)
}

// inGerman has numbers written as in German. WebKit takes its language from the locales of the system, and a bare one has none.
const inGerman = `
	const write = Number.prototype.toLocaleString;
	Number.prototype.toLocaleString = function () { return write.call(this, "de-DE"); };`

// Where decimals are written with a comma, a job begun there is shown so, and a point before three digits is asked about.
func TestADecimalCommaByLocale(t *testing.T) {
	url, german := servedReal(t).URL, prefixed(t, inGerman)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		if s.Chromium() {
			s.CDP(nil, "Emulation.setLocaleOverride", map[string]any{"locale": "de-DE"})
			s.Open(url)
		} else {
			s.Open(german)
		}
		ready(s)
		goTo(s, "surfaces")
		do(s, "add", "surface", "rectangle")
		fill(s, "surface.1.length", "2,4 m")
		fill(s, "surface.1.width", "1.6 m")
		assert.Equal(t, "3,84 m²", figureText(s, "surface.1.area"))
		fill(s, "surface.1.width", "1.600")
		assert.Contains(t, say(s, "surface.1.width"), "1.600 can be read two ways. Type 1,6 or 1600.")
		fill(s, "surface.1.width", "1600")
		assert.Equal(t, "3,84 m²", figureText(s, "surface.1.area"))
		s.Refresh()
		ready(s)
		assert.Equal(t, "3,84 m²", figureText(s, "area"))
		goTo(s, "settings")
		tap(s, "#decimal-point")
		goTo(s, "surfaces")
		assert.Equal(t, "3.84 m²", figureText(s, "area"))
	})
}
