package browser_test

import (
	"context"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// crash ends the page without notice. WebKit's driver ends its whole session with a page that crashed: there the page is
// left instead, in the middle of what it does.
func crash(s *webdriver.Session) {
	if s.Chromium() {
		s.Crash()
	} else {
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

// A browser that is killed writes nothing more. What it had written by then holds at least one good copy. (WebKit's driver
// gives every session a store of its own that ends with it: nothing of it outlives the browser.)
func TestAKilledBrowserKeepsACopy(t *testing.T) {
	page := servedReal(t)
	engine := webdriver.Chromium()
	if len(engine.Missing) > 0 {
		window(t, engine) // skips or fails, and says why
	}
	profile := t.TempDir()
	start := func() (*webdriver.Driver, *webdriver.Session) {
		driver, err := webdriver.Start(context.Background(), engine.In(profile))
		require.NoError(t, err)
		t.Cleanup(driver.Close)
		s := driver.Session(t)
		s.Open(page.URL)
		ready(s)
		return driver, s
	}
	least := 0
	for kill := range 4 {
		driver, s := start()
		goTo(s, "settings")
		doc, revision := newest(s)
		assert.Empty(t, setAside(s), "after %d kills", kill)
		assert.GreaterOrEqual(t, revision, least, "after %d kills", kill)
		assert.Equal(t, doc.Get("name"), s.Value(control("name")), "after %d kills", kill)
		fill(s, "name", "Kept "+strconv.Itoa(kill))
		_, least = newest(s)
		time.Sleep(6 * time.Second) // Chromium writes within five seconds what a page keeps
		for i := range 5 {
			fill(s, "name", strings.Repeat("Not yet written ", i+1))
		}
		driver.Close() // by SIGKILL to its whole group
	}
	_, s := start()
	_, revision := newest(s)
	assert.GreaterOrEqual(t, revision, least)
	s.Quit()
}
