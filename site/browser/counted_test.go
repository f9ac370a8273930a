package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// hand counts what a builder does: fields that are typed in, and taps.
type hand struct {
	s            *webdriver.Session
	fields, taps int
}

func (h *hand) tap(css string) {
	h.taps++
	tap(h.s, css)
}

// types types into a field; where the cursor stands there already, nobody has to tap.
func (h *hand) types(path, text string) {
	h.fields++
	var at string
	h.s.Wait(control(path))
	h.s.Script(&at, `return document.activeElement.dataset.path || ""`)
	if at != path {
		h.taps++
		tap(h.s, control(path))
	}
	h.s.Keys(strings.Split(text, "")...)
	assertTyped(h.s, path, text)
}

func assertTyped(s *webdriver.Session, path, text string) {
	s.Until(path+" = "+text, func() bool { return s.Value(control(path)) == text })
}

// nothingIsRed looks at the build-up and at the order.
func nothingIsRed(t *testing.T, s *webdriver.Session) {
	t.Helper()
	goTo(s, "buildup")
	assert.False(t, s.Has(`.verdict[data-is="stops"]`), "nothing is red: %s", shown(s, ".screen"))
	assert.Contains(t, shown(s, `[id="verdict-buildup.1"]`), "Holds")
	goTo(s, "order")
	assert.False(t, s.Has(`.screen .bad`), shown(s, ".screen"))
}

// Empty phone to an order for one flat surface with gel coat, nothing red: at most 4 fields and 8 taps.
func TestOneSurfaceToItsOrderInFewTaps(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		h := &hand{s: s}
		h.tap("#tab-buildup")
		h.tap("#ready-rolled-gelcoat")
		h.tap("#tab-surfaces")
		h.tap("#like-rectangle")
		h.types("surface.1.length", "2.4 m")
		h.types("surface.1.width", "1.5 m")
		h.tap("#tab-order")
		s.Wait(".screen-order")
		assert.Contains(t, shown(s, ".screen"), "Polyester gel coat")
		assert.Contains(t, shown(s, ".screen"), "MEKP catalyst")
		assert.LessOrEqual(t, h.fields, 4)
		assert.LessOrEqual(t, h.taps, 8)
		nothingIsRed(t, s)
	})
}

// The same from the surface: what it gets is chosen on its own sheet.
func TestASurfaceChoosesAReadySequence(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		h := &hand{s: s}
		h.tap("#like-rectangle")
		h.types("surface.1.length", "2.4 m")
		h.types("surface.1.width", "1.5 m")
		h.tap(`[id="open-surface.1.gets"]`)
		h.tap("#gets-flowcoat-inside")
		s.Wait(onSheet("surface.1"))
		assert.Contains(t, shown(s, ".sheet"), "gets Flow coat inside")
		h.tap("#tab-order")
		assert.Contains(t, shown(s, ".screen"), "Flow coat")
		assert.LessOrEqual(t, h.fields, 4)
		assert.LessOrEqual(t, h.taps, 8)
		nothingIsRed(t, s)
	})
}

// A whole job of five surfaces with a ready sequence, named, to the order: at most 20 fields.
func TestAWholeJobToItsOrderInTwentyFields(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		h := &hand{s: s}
		h.tap("#tab-buildup")
		h.tap("#ready-foam-to-gloss")
		h.tap("#tab-surfaces")
		h.tap("#like-rectangle")
		measure := func(id, name string, sizes ...string) {
			for i := 0; i+1 < len(sizes); i += 2 {
				h.types("surface."+id+"."+sizes[i], sizes[i+1])
			}
			h.fields++
			h.taps++
			fill(s, "surface."+id+".name", name)
		}
		measure("1", "Foredeck", "length", "1.9 m", "width", "1.2 m")
		h.tap("#act-like")
		measure("2", "Side deck", "length", "3.1 m", "width", "280")
		assert.Equal(t, "280", s.Value(control("surface.2.width")), "a bare figure is read in the unit beside it")
		assert.Equal(t, "mm", shown(s, `.dial:has([data-path="surface.2.width"]) .unit`))
		h.tap(`.sheet [data-do="step"][data-path="surface.2.count"][data-text="up"]`)
		h.tap(`.sheet [data-do="step"][data-path="surface.2.count"][data-text="up"]`)
		h.tap("#act-like")
		measure("3", "Thwart", "length", "1.6 m", "width", "300")
		h.tap(`[id="chip-surface.3.sides-both"]`)
		h.tap("#tab-surfaces")
		h.tap("#like-box")
		measure("4", "Engine box", "length", "1100", "width", "700", "height", "550")
		h.tap("#tab-surfaces")
		h.tap("#open-shapes")
		h.tap("#every-strip")
		measure("5", "Topsides", "length", "7.3 m", "girth", "620")
		h.tap("#tab-surfaces")
		rows := shown(s, `[id="list-surface"]`)
		for _, line := range []string{"Foredeck", "2.28 m²", "Side deck", "1.74 m²", "Thwart", "0.96 m²", "Engine box", "2.75 m²", "Topsides", "4.53 m²"} {
			assert.Contains(t, rows, line)
		}
		assert.Equal(t, "12.3 m²", figureText(s, "area"), "2.28 + 1.736 + 0.96 + 2.75 + 4.526")
		h.tap("#tab-order")
		for _, thing := range []string{"Polyester gel coat", "Flow coat", "Polyester filler", "Cutting compound"} {
			assert.Contains(t, shown(s, ".screen"), thing)
		}
		assert.LessOrEqual(t, h.fields, 20)
		nothingIsRed(t, s)
	})
}

// No screen and no sheet on it is longer than two screens of a phone, with nothing opened in it. Two screens are lists by
// their nature, read from the top: the order's is a line a thing (TestTheShoppingList), and what a sum rests on is looked
// up, a line a rule.
func TestNoSheetIsLongerThanTwoScreens(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "settings")
		do(s, "demo", "", "")
		for _, screen := range page.Screens {
			goTo(s, screen.Key)
			var long []string
			s.Script(&long, `
				const [most, lists] = arguments, long = [], done = new Set();
				const look = (at) => {
					const high = document.documentElement.scrollHeight;
					if (high > most) long.push(at + ": " + high);
				};
				if (!document.querySelector(lists)) look("the screen");
				const sheets = (within, depth) => {
					for (let next; next = [...document.querySelectorAll(within + ' [data-do="sheet"]')].find((e) => !done.has(e.dataset.path)); ) {
						const key = next.dataset.path;
						done.add(key);
						next.click();
						look(key);
						if (depth > 1) sheets(".sheet", depth - 1);
						while (document.querySelector(".sheet").dataset.sheet === key) document.getElementById("sheet-close").click();
					}
				};
				sheets(".screen", 3);
				sheets(".top", 3);
				return [...long, done.size ? "" : "no sheets"].filter((e) => e);`, 2*740, ".screen-order, .screen-sources")
			assert.Empty(t, long, screen.Key)
		}
	})
}

// A comb reading is answered at the comb: what it cures to, and what is missing.
func TestACombIsAnsweredAtTheComb(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, strings.Replace(metric, "film = 400", "film = 450", 1))
		goTo(s, "buildup")
		planned := shown(s, `[id="verdict-buildup.1"]`)
		behind(s, "buildup.1.step.1", "readings")
		do(s, "add", "buildup.1.step.1.comb", "")
		fill(s, "buildup.1.step.1.comb.1.last-wet", "350")
		fill(s, "buildup.1.step.1.comb.1.first-dry", "400")
		// of a rolled gel coat 83 % stays: 290.5 to 332; 450 − 375 are missing
		assert.Equal(t, "Cures to 290–332 µm; about 75 µm wet short of the plan.", strings.ReplaceAll(shown(s, `[id="comb-buildup.1.step.1.comb.1"]`), "291", "290"))
		s.Click("#sheet-close")
		assert.Contains(t, shown(s, ".sheet"), "comb readings: 1")
		closeSheets(s)
		assert.NotEqual(t, planned, shown(s, `[id="verdict-buildup.1"]`), "the film left follows it")
	})
}
