package browser_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// crash ends the page without notice. WebKit's driver ends its whole session with a page that crashed: there the page is
// left instead, in the middle of what it does, about as long after the latest key as a crash takes to come about.
func crash(s *webdriver.Session) {
	if s.Chromium() {
		s.Crash()
	} else {
		s.AsyncScript(nil, `setTimeout(arguments[0], 100)`)
		s.Open("about:blank")
	}
}

// A renderer that crashes at any step of a use drawn from a seed takes nothing of the job with it.
func TestACrashLosesNothing(t *testing.T) {
	page := servedReal(t)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		random := rand.New(rand.NewPCG(4, 2))
		s.Open(page.URL)
		ready(s)
		goTo(s, "surfaces")
		do(s, "add", "surface", "rectangle")
		want := map[string]string{"surface.1.name": "Surface 1"}
		for range 12 {
			unfold(s, "surface.1")
			path := "surface.1." + []string{"name", "length", "width", "count"}[random.IntN(4)]
			text := strconv.Itoa(1 + random.IntN(400))
			fill(s, path, text)
			want[path] = text
			crash(s)
			s.Open(page.URL)
			ready(s)
			unfold(s, "surface.1")
			for path, text := range want {
				assert.Equal(t, text, s.Value(control(path)), path)
			}
			tap(s, "#tool-sheet-undo")
			closeSheets(s)
			tap(s, "#open-menu")
			do(s, "redo", "", "") // the history outlives it too
			doc, _ := newest(s)
			for path, text := range want {
				assert.Equal(t, text, doc.Get(path), path)
			}
			assert.Empty(t, setAside(s))
		}
		s.Faults()
	})
}
