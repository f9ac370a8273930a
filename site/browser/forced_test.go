package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// toForcedColours shows the page in the reader's own few colours. WebKit's driver can't: there the rules for them are taken
// for those of the screen, and the system's colours are those of its look.
func toForcedColours(s *webdriver.Session) {
	if s.Chromium() {
		s.CDP(nil, "Emulation.setEmulatedMedia", map[string]any{"features": []any{map[string]any{"name": "forced-colors", "value": "active"}}})
		return
	}
	s.Script(nil, `
		let turned = 0;
		for (const sheet of document.styleSheets) for (const rule of sheet.cssRules) {
			if (rule.media?.mediaText === "(forced-colors: active)") { rule.media.mediaText = "screen and (min-width: 1px)"; turned++; }
		}
		if (!turned) throw new Error("no rules for forced colours");`)
}

// seenIn is how each kind of mark in the pictures is drawn: its ground and edge, as they are rendered.
const seenIn = `
	const seen = {};
	for (const picture of document.querySelectorAll("#sheet svg.picture, main svg.picture")) {
		const ground = getComputedStyle(picture).backgroundColor;
		for (const e of picture.querySelectorAll("path[class], rect[class], line[class], circle[class]")) {
			const c = getComputedStyle(e);
			const fill = c.fill === "none" || c.fillOpacity === "0" || c.fill === ground ? "clear" : c.fill;
			const edge = c.stroke === "none" || c.stroke === ground ? "none" : [c.stroke, c.strokeWidth, c.strokeDasharray].join(" ");
			(seen[e.getAttribute("class").trim()] ??= { Fill: fill, Edge: edge });
		}
	}
	return seen;`

// In forced colours a band is told from the line in it by its edge, not by a tint that is gone there: which is the early
// gel and which the middle one must be seen. So are shaded hours from the curves over them, one curve from the other, and
// the minutes that can be spread from those in which it gels.
func TestForcedColoursKeepBandAndLineApart(t *testing.T) {
	url := servedReal(t).URL
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		tell(s, "sheet", "parts", "")
		s.Wait("#sheet .picture .band")
		toForcedColours(s)
		if s.Chromium() {
			var isForced bool
			s.Script(&isForced, `return matchMedia("(forced-colors: active)").matches`)
			require.True(t, isForced)
		}
		var seen map[string]struct{ Fill, Edge string }
		s.Script(&seen, seenIn)
		for _, marks := range [][]string{{"band", "shaded fit", "curve", "curve dashed", "today"}, {"gel", "tone4"}} { // of one picture
			for i, name := range marks {
				require.Contains(t, seen, name)
				assert.False(t, seen[name].Fill == "clear" && seen[name].Edge == "none", "%s can't be seen", name)
				for _, other := range marks[:i] {
					assert.NotEqual(t, seen[other], seen[name], "%s looks like %s", name, other)
				}
			}
		}
		assert.Equal(t, "clear", seen["band"].Fill, "nothing lies over the line in it")
		assert.NotEqual(t, seen["curve"].Edge, seen["band"].Edge)
	})
}
