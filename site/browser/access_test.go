package browser_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// eachSheet visits every screen of what is open and every sheet that can be reached from one, and calls look on each.
func eachSheet(s *webdriver.Session, look func(name string)) {
	const deepest = 3 // sheets on each other
	seen := map[string]bool{}
	var sheets func(name string, depth int)
	sheets = func(name string, depth int) {
		look(name)
		if depth == deepest {
			return
		}
		var paths []string
		s.Script(&paths, `
			const top = arguments[0] > 0 ? document.getElementById("sheet") : document;
			return [...new Set([...top.querySelectorAll('[data-do="sheet"]')].map((e) => e.dataset.path))];`, depth)
		for _, path := range paths {
			if !seen[path] {
				seen[path] = true
				tell(s, "sheet", path, "")
				sheets(name+" "+path, depth+1)
				tell(s, "back", "", "")
			}
		}
	}
	for _, screen := range page.Screens {
		tell(s, "go", screen.Key, "")
		sheets(screen.Key, 0)
	}
}

// wellFormed looks for what assistive programs and gloved thumbs stumble over: an id that stands twice, a reference to
// none, headings that skip a level, targets under 48 px. Sources: WCAG 2.2, 1.3.1 and 4.1.2; WAI-ARIA 1.2, ID references;
// the least target is the design's own.
const wellFormed = `
	const found = [], ids = new Set(), shown = (e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility === "visible";
	for (const e of document.querySelectorAll("[id]")) {
		if (ids.has(e.id)) found.push("id twice: " + e.id);
		ids.add(e.id);
	}
	for (const name of ["aria-labelledby", "aria-describedby", "aria-controls", "aria-owns", "for"]) {
		for (const e of document.querySelectorAll("[" + name + "]")) for (const id of e.getAttribute(name).split(" ")) if (!ids.has(id)) found.push(name + " of nothing: " + id);
	}
	let level = 0;
	for (const e of document.querySelectorAll("h1, h2, h3, h4, h5, h6")) {
		if (!shown(e)) continue;
		const own = +e.tagName[1];
		if (level ? own > level + 1 : own > 2) found.push("heading skips: " + e.textContent);
		level = own;
	}
	for (const e of document.querySelectorAll("button, select, input, textarea")) {
		if (!shown(e)) continue;
		const { width, height } = e.getBoundingClientRect();
		if (width < 47.5 || height < 47.5) found.push("small target: " + (e.id || e.textContent) + " " + width.toFixed(0) + " × " + height.toFixed(0));
	}
	return found;`

// named are the roles that need a name. Source: WAI-ARIA 1.2, "Accessible Name Required" of each.
var named = []string{"button", "checkbox", "combobox", "heading", "image", "img", "link", "listbox", "menuitem", "meter", "option", "progressbar", "radio",
	"region", "slider", "spinbutton", "switch", "tab", "table", "textbox", "searchbox", "dialog"}

// nameless is every control, picture, heading and landmark that Chromium tells assistive programs of without a name.
func nameless(s *webdriver.Session) (found []string, seen int) {
	var tree struct{ Nodes []axNode }
	s.CDP(&tree, "Accessibility.getFullAXTree", map[string]any{})
	for _, n := range tree.Nodes {
		if n.Ignored || !slices.Contains(named, n.Role.Value) {
			continue
		}
		seen++
		if n.Name.Value == "" {
			found = append(found, n.Role.Value+" without a name")
		}
	}
	return found, seen
}

// Every screen and sheet of the made-up job, light and dark, by the engine's own accessibility tree and computed styles.
func TestEveryScreenAndSheetIsAccessible(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		do(s, "demo", "", "")
		views, controls := 0, 0
		eachSheet(s, func(name string) {
			views++
			var found []string
			s.Script(&found, wellFormed)
			if s.Chromium() {
				bare, seen := nameless(s)
				controls += seen
				found = append(found, bare...)
			}
			for _, look := range []string{"light", "dark"} {
				var got struct{ Low []string }
				s.Script(nil, `document.documentElement.dataset.look = arguments[0]`, look)
				s.Script(&got, contrasts)
				for _, low := range got.Low {
					found = append(found, look+": "+low)
				}
			}
			assert.Empty(t, found, name)
		})
		assert.Greater(t, views, 60, "screens and sheets")
		if s.Chromium() {
			assert.Greater(t, controls, 1000, fmt.Sprint(views, " views"))
		}
	})
}

// Every part in every state stands on one page that no link leads to, inside the glass and without a fault.
func TestEveryPartIsOnOnePage(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url + "#parts")
		ready(s)
		s.Wait("#parts-answer")
		for _, part := range []string{".dial .nudge", ".chip", ".picker", ".answer .facts", `.answer[data-is="stops"]`, `.verdict[data-is="holds"]`, `.verdict[data-is="asks"]`,
			`.verdict[data-is="stops"]`, `.verdict[data-is="unchecked"]`, ".setup", ".caution", ".grand", ".listrow", ".quiet", ".second", "#act .main", ".timebar",
			".plot .band", ".plot .fit", ".plot .course", ".plot .tested", ".ring-picture", ".left .short", ".effect", ".map .off", ".map .frame", ".swatch .break", ".swatch .least", ".tile"} {
			assert.True(t, s.Has("#sheet "+part) || s.Has(part) && part[0] == '#', part)
		}
		var found []string
		s.Script(&found, wellFormed)
		assert.Empty(t, found)
		s.Script(&found, `return [...document.querySelectorAll("#sheet *")].filter((e) => e.getClientRects().length && e.getBoundingClientRect().right > innerWidth + 0.5 && !e.closest(".unseen, svg svg")).map((e) => e.outerHTML.slice(0, 120))`)
		assert.Empty(t, found, "outside the glass")
		for _, look := range []string{"light", "dark"} {
			s.Script(nil, `document.documentElement.dataset.look = arguments[0]`, look)
			assert.Greater(t, len(s.Screenshot()), 10_000)
			var got struct{ Low []string }
			s.Script(&got, contrasts)
			assert.Empty(t, got.Low, look)
		}
		s.Script(&found, `return [...document.querySelectorAll('[data-path="parts"]:not(#sheet *), a[href*="parts"]')].map((e) => e.outerHTML)`)
		assert.Empty(t, found, "no link leads there")
		assert.Empty(t, s.Faults())
	})
}
