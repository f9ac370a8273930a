package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// least is the height in CSS pixels of what a gloved hand must hit.
const least = 48

// width is that of the narrowest phone.
const width = 320

// TestFitsHandAndPhone looks at every main screen of the made-up job, at the narrowest phone with the text as set and twice
// as large: nothing to scroll sideways, nothing too small to hit.
func TestFitsHandAndPhone(t *testing.T) {
	page := servedReal(t)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(width, 568)
		s.Open(page.URL)
		ready(s)
		s.Click(`[data-do="demo"]`)
		for _, text := range []string{"100%", "200%"} {
			for _, screen := range []string{"surfaces", "buildup", "cup", "order", "log"} {
				s.Script(nil, `document.documentElement.style.fontSize = arguments[0]`, text)
				s.Click(`[data-do="go"][data-path="` + screen + `"]`)
				s.Wait(".screen-" + screen)
				var wide []string
				s.Script(&wide, `
					if (document.documentElement.scrollWidth <= arguments[0]) return [];
					return [...document.querySelectorAll("body *")]
						.filter((e) => e.getBoundingClientRect().right > arguments[0])
						.map((e) => e.tagName + "." + e.className + " " + e.textContent.slice(0, 30));`, width)
				assert.Empty(t, wide, "%s at %s scrolls sideways", screen, text)
				var small []string
				s.Script(&small, `
					return [...document.querySelectorAll("button, input, select, textarea, summary, a[href]")]
						.filter((e) => e.getClientRects().length && e.getBoundingClientRect().height < arguments[0])
						.map((e) => e.id || e.outerHTML)`, least)
				assert.Empty(t, small, "%s at %s has targets too small", screen, text)
			}
		}
	})
}
