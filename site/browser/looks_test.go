package browser_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// contrasts is the contrast of every text that is shown, as rendered: its colour on the nearest ground about it. Source:
// WCAG 2.2, definition of contrast ratio. Figures want 7:1 to be read in the sun, other text 4.5:1.
const contrasts = `
	const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
	const rgba = (colour) => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
	const linear = (c) => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
	const luminance = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
	const ground = (e) => { for (; e; e = e.parentElement) { const c = rgba(getComputedStyle(e).backgroundColor); if (c[3] > 250) return c; } return [255, 255, 255, 255]; };
	const low = [];
	let figures = 0, texts = 0;
	for (const e of document.querySelectorAll("body *:not(svg, svg *, option, script, style)")) {
		const own = e.matches("input, select, textarea") || [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim());
		if (!own || !e.getClientRects().length || e.closest("#live")) continue;
		const isFigure = !!e.closest(".value, .sum, .buy, .time, .numbers, input, .shedcard td");
		const least = isFigure && !e.closest(".over, [aria-disabled]") ? 7 : 4.5;
		isFigure ? figures++ : texts++;
		const [a, b] = [luminance(rgba(getComputedStyle(e).color)), luminance(ground(e))];
		const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		if (ratio < least) low.push(ratio.toFixed(2) + " " + e.tagName + "." + e.className + " " + e.textContent.slice(0, 30));
	}
	return { Figures: figures, Texts: texts, Low: low, Ground: getComputedStyle(document.documentElement).backgroundColor };`

func TestContrastAsRendered(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		goTo(s, "settings")
		do(s, "demo", "", "")
		grounds := map[string]string{}
		for _, look := range []string{"light", "dark"} {
			goTo(s, "settings")
			tap(s, "#look-"+look)
			for _, screen := range page.Screens {
				visit(s, screen.Key)
				s.Script(nil, `
					document.querySelector('[data-do="open"][aria-expanded="false"]')?.click();
					document.querySelector('[data-do="why"][aria-expanded="false"]')?.click();`)
				var got struct {
					Figures, Texts int
					Low            []string
					Ground         string
				}
				s.Script(&got, contrasts)
				assert.Empty(t, got.Low, "%s, %s", look, screen.Key)
				assert.Positive(t, got.Texts, "%s, %s", look, screen.Key)
				if screen.Key == "order" {
					do(s, "sheet", "order.gelcoat", "")
					do(s, "sheet", "need.gelcoat", "")
					s.Script(&got, contrasts)
					assert.Empty(t, got.Low, "%s, %s, a sheet", look, screen.Key)
					assert.GreaterOrEqual(t, got.Figures, 4)
				}
				grounds[look] = got.Ground
			}
		}
		assert.NotEqual(t, grounds["light"], grounds["dark"])
	})
}

func TestNothingMovesByItself(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		if s.Chromium() { // WebKit's windows have their owner want it
			s.CDP(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []any{map[string]any{"name": "prefers-reduced-motion", "value": "reduce"}}})
		}
		s.Open(url)
		ready(s)
		var isWanted bool
		s.Script(&isWanted, `return matchMedia("(prefers-reduced-motion: reduce)").matches`)
		require.True(t, isWanted)
		var moves []string
		s.Script(&moves, `
			return [...document.querySelectorAll("*")].filter((e) => {
				const style = getComputedStyle(e);
				return parseFloat(style.transitionDuration) > 0 || style.animationName !== "none" || style.scrollBehavior === "smooth";
			}).map((e) => e.tagName)`)
		assert.Empty(t, moves)
		goTo(s, "settings")
		do(s, "demo", "", "")
		goTo(s, "surfaces")
		do(s, "sheet", "surface.1", "")
		assert.Empty(t, moving(s), "a sheet is there at once")
		s.Click("#sheet-close")
		assert.Empty(t, moving(s), "and gone")
	})
}

// moving is how long each animation takes that runs now, in ms.
func moving(s *webdriver.Session) (millis []float64) {
	s.Script(&millis, `return document.getAnimations().map((a) => a.effect.getTiming().duration)`)
	return millis
}

// A sheet comes and goes in under 200 ms, where nobody asked for less motion; nothing else moves, on any screen.
func TestOnlyASheetMoves(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(url)
		if s.Chromium() {
			s.CDP(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []any{map[string]any{"name": "prefers-reduced-motion", "value": "no-preference"}}})
		} else { // its windows have their owner want less: what asks is told otherwise
			s.Script(nil, `const ask = window.matchMedia.bind(window); window.matchMedia = (query) => query.includes("reduced-motion") ? { matches: false } : ask(query)`)
		}
		ready(s)
		tell(s, "demo", "", "")
		s.Wait(".notice .demo")
		for _, screen := range page.Screens {
			goTo(s, screen.Key)
			s.Until("nothing moves once the menu is gone", func() bool { return len(moving(s)) == 0 })
		}
		goTo(s, "surfaces")
		for _, click := range []string{`[id="open-surface.1"]`, "#sheet-close"} {
			var took []float64
			s.Until("what moves", func() bool { return len(moving(s)) == 0 })
			s.Script(&took, `document.querySelector(arguments[0]).click(); return document.getAnimations().map((a) => a.effect.getTiming().duration)`, click)
			if assert.Len(t, took, 1, click) {
				assert.Positive(t, took[0])
				assert.Less(t, took[0], 200., click)
			}
			s.Until("it comes to its end", func() bool { return len(moving(s)) == 0 })
		}
	})
}

// toPaper shows the page as print media do, or on the screen again. WebKit's driver can't: there the rules for print are
// taken for those of the screen, which leaves out no more than the cutting into pages.
func toPaper(s *webdriver.Session, on bool) {
	if s.Chromium() {
		s.CDP(nil, "Emulation.setEmulatedMedia", map[string]any{"media": map[bool]string{true: "print"}[on]})
		return
	}
	s.Script(nil, `
		const [from, to] = arguments[0] ? ["print", "screen and (min-width: 1px)"] : ["screen and (min-width: 1px)", "print"];
		let turned = 0;
		for (const sheet of document.styleSheets) for (const rule of sheet.cssRules) {
			if (rule.media?.mediaText === from) { rule.media.mediaText = to; turned++; }
		}
		if (!turned) throw new Error("no rules for " + from);`, on)
}

// onPaper is what print media show: the text of it, and controls among it.
func onPaper(t *testing.T, s *webdriver.Session) string {
	t.Helper()
	toPaper(s, true)
	var got struct {
		Text     string
		Controls []string
		Ground   string
	}
	s.Script(&got, `
		const seen = [...document.querySelectorAll("button, input, select, textarea")].filter((e) => e.getClientRects().length).map((e) => e.id);
		return { Text: document.body.innerText, Controls: seen, Ground: getComputedStyle(document.documentElement).backgroundColor };`)
	assert.Empty(t, got.Controls, "nothing to press on paper")
	assert.Equal(t, "rgb(255, 255, 255)", got.Ground, "no ink wasted on a ground")
	onOneSheet(t, s)
	toPaper(s, false)
	return plain(got.Text)
}

var pdfPage = regexp.MustCompile(`/Type */Page\b`)

// onOneSheet holds what is printed to one sheet, of A4 and of Letter. Only Chromium's driver prints.
func onOneSheet(t *testing.T, s *webdriver.Session) {
	t.Helper()
	if !s.Chromium() {
		return
	}
	for name, size := range map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}} {
		var pdf struct{ Data []byte }
		s.CDP(&pdf, "Page.printToPDF", map[string]any{"paperWidth": size[0], "paperHeight": size[1], "preferCSSPageSize": true})
		assert.Len(t, pdfPage.FindAll(pdf.Data, -1), 1, "sheets of %s", name)
	}
}

// On paper stands the order list, or the shed card, and nothing else; in the dark look too.
func TestOnPaper(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric+"name = Tern\ncard.gelcoat.pack.2.price = 84\n")
		s.Script(nil, `globalThis.print = () => {}`) // the browser's own dialogue
		goTo(s, "settings")
		tap(s, "#look-dark")
		do(s, "demo", "", "") // the longest list that most jobs come to
		goTo(s, "order")
		do(s, "print", "", "")
		require.Contains(t, onPaper(t, s), "Order list: Tern")
		do(s, "own", "", "")
		goTo(s, "order")
		do(s, "print", "", "")
		text := onPaper(t, s)
		require.Contains(t, text, "Order list: Tern")
		for _, want := range []string{"Polyester gel coat", "1 × 5 kg", "To pay: 84.00", "The maker's sheet overrules it."} {
			assert.Contains(t, text, want)
		}
		assert.Regexp(t, `☐\s+Polyester gel coat`, text, "a box to tick")
		assert.NotContains(t, text, "Copy as text")
		assert.NotContains(t, text, "Shed card")

		atBench(s)
		tell(s, "sheet", "shedcard", "")
		do(s, "print", "", "shed")
		text = onPaper(t, s)
		require.Contains(t, text, "Shed card: Polyester gel coat")
		for _, want := range []string{"25 °C", "1.5 g", "Outside this table: no dose.", "Goggles and gloves on"} {
			assert.Contains(t, text, want)
		}
		assert.NotContains(t, text, "1.3 mL", "the tool's unit alone")
		for _, other := range []string{"On the bench", "Next cup", "Still to be typed", "Styrene in the air"} {
			assert.NotContains(t, text, other)
		}
		// With nothing to dose there is no card to print.
		fillAt(s, "bench.now.scale-step", "none")
		tell(s, "sheet", "shedcard", "")
		assert.NotContains(t, onPaper(t, s), "1.5 g")
	})
}
