package browser_test

import (
	"context"
	"math/rand/v2"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/site"
	"shedreckoner/site/webdriver"
)

// takesNoJob has the browser's store refuse a job, as a full one does, while small things find room.
const takesNoJob = `
	const set = Storage.prototype.setItem;
	Storage.prototype.setItem = function (key, text) {
		if (/^shedreckoner\.job\.[ab]$/.test(key)) throw new DOMException("full", "QuotaExceededError");
		set.call(this, key, text);
	};
	globalThis.makeRoom = () => { Storage.prototype.setItem = set; };`

const notKept = "doesn't keep what is typed"

func TestAFullStoreIsToldOfAtOnce(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "settings")
		fill(s, "name", "Tern")
		s.Script(nil, takesNoJob)
		fill(s, "name", "Tern, refit")
		assert.Contains(t, shown(s, "#notice"), notKept)
		s.Until("that it is said", func() bool { return strings.Contains(shown(s, "#live"), "Not kept") })
		assert.Equal(t, "Tern, refit", s.Value(control("name")), "and nothing is lost of what is typed")

		s.Script(nil, `did.saved = null`)
		do(s, "export", "", "now")
		var text string
		s.Script(&text, `return did.saved.text()`)
		doc, _, err := job.Load(text)
		require.NoError(t, err)
		assert.Equal(t, "Tern, refit", doc.Get("name"))

		s.Script(nil, `makeRoom()`)
		fill(s, "name", "Tern again")
		assert.NotContains(t, shown(s, "#notice"), notKept)
		s.Refresh()
		ready(s)
		assert.Equal(t, "Tern again", s.Value(control("name")))
	})
}

// The browser is asked, once, not to clear away what the page keeps.
func TestTheStoreIsAskedToLast(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		s.Script(nil, `
			globalThis.asked = 0;
			Object.defineProperty(navigator, "storage", { value: { persist: async () => { asked++; return true; } } });`)
		goTo(s, "settings")
		assert.Contains(t, shown(s, "#file"), "add this page to the home screen, and export the job now and then")
		fill(s, "name", "Tern")
		var asked int
		s.Until("the question", func() bool { s.Script(&asked, `return asked`); return asked > 0 })
		fill(s, "currency", "EUR")
		s.Script(&asked, `return asked`)
		assert.Equal(t, 1, asked)
	})
}

// prefixed serves a page with a script before its first one.
func prefixed(t *testing.T, script string) string {
	t.Helper()
	page := servedReal(t)
	folder := copyFolder(t, page)
	name := filepath.Join(folder, page.Version, "wasm_exec.js")
	loader, err := os.ReadFile(name)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(name, append([]byte(script), loader...), 0o644))
	restamp(t, folder)
	server := httptest.NewServer(site.Handler(folder))
	t.Cleanup(server.Close)
	return server.URL
}

// noStore is a browser that lets a page keep nothing: it throws at the very name, or has none.
var noStore = map[string]string{
	"forbidden": `Object.defineProperty(globalThis, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } });`,
	"absent":    `Object.defineProperty(globalThis, "localStorage", { value: null });`,
	"no room":   `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); };`,
}

func TestWithoutAStoreThePageWorksAndWarns(t *testing.T) {
	for name, script := range noStore {
		url := prefixed(t, script)
		t.Run(name, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.Open(url)
				ready(s)
				assert.Contains(t, shown(s, "#notice"), notKept, "before anything is typed")
				measured(s)
				assert.Equal(t, "3.4 m²", figureText(s, "area"))
				assert.Contains(t, shown(s, "#notice"), notKept)
			})
		})
	}
}

// The one-file page keeps what is typed where the browser lets a local file do so, and says so where not.
func TestTheOneFileKeepsOrWarns(t *testing.T) {
	page := servedReal(t)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open("file://" + page.OneFile)
		ready(s)
		goTo(s, "settings")
		fill(s, "name", "Tern")
		if strings.Contains(shown(s, "#notice"), notKept) {
			return
		}
		s.Refresh()
		ready(s)
		assert.Equal(t, "Tern", s.Value(control("name")))
		do(s, "undo", "", "")
		assert.Empty(t, s.Value(control("name")), "the history too")
	})
	inChromium(t, func(t *testing.T, s *webdriver.Session) {
		s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument", map[string]any{"source": noStore["forbidden"]})
		s.Open("file://" + page.OneFile)
		ready(s)
		assert.Contains(t, shown(s, "#notice"), notKept)
	})
}

// older and newer are two good copies of a job, in the places that the page gives them.
var (
	older = job.Save(job.Document{}.Set("name", "Older").Set("surface", "1").Set("surface.1.name", "Foredeck"), 6)
	newer = job.Save(job.Document{}.Set("name", "Newer").Set("surface", "1").Set("surface.1.name", "Foredeck"), 7)
)

// spoilt is what can become of two copies, and what the page must make of them.
var spoilt = []struct {
	what, a, b string
	name       string
	aside      []string
}{
	{"nothing kept", newer[:0], newer[:0], "", []string{"", ""}},
	{"the newer one cut to nothing", older, newer[:0], "Older", []string{""}},
	{"cut after one byte", older, newer[:1], "Older", []string{newer[:1]}},
	{"cut in its header", older, newer[:30], "Older", []string{newer[:30]}},
	{"cut in a line", older, newer[:len(newer)-12], "Older", []string{newer[:len(newer)-12]}},
	{"without its last byte", older, newer[:len(newer)-1], "Older", []string{newer[:len(newer)-1]}},
	{"one bit flipped", older, strings.Replace(newer, "Foredeck", "Foredecj", 1), "Older", []string{strings.Replace(newer, "Foredeck", "Foredecj", 1)}},
	{"the older one cut", older[:40], newer, "Newer", []string{older[:40]}},
	{"swapped", newer, older, "Newer", nil},
	{"both bad", older[:50], newer[:60], "", []string{older[:50], newer[:60]}},
}

func TestSpoiltCopies(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "settings")
		for _, c := range spoilt {
			forget(s)
			s.Script(nil, `
				localStorage.setItem("shedreckoner.view", "screen = settings\n");
				localStorage.setItem("shedreckoner.job.a", arguments[0]);
				localStorage.setItem("shedreckoner.job.b", arguments[1]);`, c.a, c.b)
			s.Refresh()
			ready(s)
			assert.Equal(t, c.name, s.Value(control("name")), c.what)
			assert.Equal(t, len(c.aside) > 0, s.Has(`[data-do="aside"]`), "%s: offered", c.what)
			assert.ElementsMatch(t, c.aside, setAside(s), c.what)
			if len(c.aside) > 0 {
				s.Script(nil, `did.saved = null`)
				do(s, "aside", "", "")
				var text string
				s.Script(&text, `return did.saved.text()`)
				for _, broken := range c.aside {
					assert.Contains(t, text, broken, c.what)
				}
			}
			fill(s, "name", "Going on")
			s.Refresh()
			ready(s)
			assert.Equal(t, "Going on", s.Value(control("name")), c.what)
			assert.ElementsMatch(t, c.aside, setAside(s), "%s: never overwritten", c.what)
		}
	})
}

// takesNothingNew has the browser's store write over what is there, and refuse anything new.
const takesNothingNew = `
	const set = Storage.prototype.setItem;
	globalThis.put = (key, text) => set.call(localStorage, key, text);
	Storage.prototype.setItem = function (key, text) {
		if (this.getItem(key) === null) throw new DOMException("full", "QuotaExceededError");
		set.call(this, key, text);
	};`

// Where a full store can't set a spoilt copy aside, nothing is written over it until it has been saved as a file.
func TestASpoiltCopyInAFullStore(t *testing.T) {
	url := prefixed(t, takesNothingNew)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(url)
		ready(s)
		broken := newer[:len(newer)-12]
		s.Script(nil, `
			put("shedreckoner.view", "screen = settings\n");
			put("shedreckoner.job.a", arguments[0]);
			put("shedreckoner.job.b", arguments[1]);
			put("shedreckoner.job.history", "");`, older, broken)
		for range 2 {
			s.Refresh()
			ready(s)
			assert.Equal(t, "Older", s.Value(control("name")))
			assert.Contains(t, shown(s, "#notice"), "no room to set it aside")
			for _, name := range []string{"One", "Two", "Three"} {
				fill(s, "name", name)
			}
			var b string
			s.Script(&b, `return localStorage.getItem("shedreckoner.job.b")`)
			assert.Equal(t, broken, b, "as it was")
			assert.Equal(t, "Older", keptName(s))
			assert.Contains(t, shown(s, "#notice"), notKept)
		}
		do(s, "aside", "", "")
		assert.Equal(t, "Three", keptName(s), "then all that was typed meanwhile is kept")
		assert.NotContains(t, shown(s, "#notice"), notKept)
		fill(s, "name", "Four")
		s.Refresh()
		ready(s)
		assert.Equal(t, "Four", s.Value(control("name")))
	})
}

// forget empties both of the browser's stores.
func forget(s *webdriver.Session) {
	s.AsyncScript(nil, `
		const done = arguments[0];
		localStorage.clear();
		const opening = indexedDB.open("shedreckoner", 1);
		opening.onsuccess = () => {
			const change = opening.result.transaction("kept", "readwrite");
			change.objectStore("kept").clear();
			change.oncomplete = () => { opening.result.close(); done(); };
		};`)
}

// setAside gives what the page set aside.
func setAside(s *webdriver.Session) []string {
	var list []string
	s.Script(&list, `return Object.entries(localStorage).filter(([key]) => key.startsWith("shedreckoner.aside.")).map(([, text]) => text)`)
	return list
}

// newest reads the newest good copy of the builder's own job that stands in the browser's store.
func newest(s *webdriver.Session) (best job.Document, revision int) {
	var all map[string]string
	s.Script(&all, `return Object.fromEntries(Object.entries(localStorage))`)
	for _, key := range []string{"a", "b"} {
		if d, r, err := job.Load(all["shedreckoner.job."+key]); err == nil && r > revision {
			best, revision = d, r
		}
	}
	return best, revision
}

// The whole browser killed at a random moment takes nothing with it that was typed half a second before; and a cup whose
// clock was seen to run never shows its dose again.
func TestTheEndOfTheBrowserLosesNothing(t *testing.T) {
	page := servedReal(t)
	engine := webdriver.Chromium()
	if len(engine.Missing) > 0 {
		window(t, engine) // skips or fails, and says why
	}
	profile := t.TempDir()
	random := rand.New(rand.NewPCG(14, 3))
	const kills = 10
	typed, sure := "", ""
	for kill := range kills + 1 {
		driver, err := webdriver.Start(context.Background(), engine.In(profile))
		require.NoError(t, err)
		t.Cleanup(driver.Close)
		s := driver.Session(t)
		s.SetSize(360, 740)
		s.Open(page.URL)
		ready(s)
		if kill == 0 {
			atBench(s)
		} else {
			goTo(s, "settings")
			name := s.Value(control("name"))
			assert.True(t, strings.HasPrefix(typed, name) && strings.HasPrefix(name, sure), "after %d kills: %q of %q, at least %q", kill, name, typed, sure)
			doc, _ := newest(s)
			assert.Equal(t, name, doc.Get("name"), "the quick store hears of it")
		}
		if kill == kills/2 { // a cup is weighed, its catalyst goes in, and the browser dies as soon as the clock is seen
			goTo(s, "cup")
			do(s, "sheet", "weigh", "")
			do(s, "weighed", "", "")
			tap(s, "#catalyst-in")
			s.Wait(".clock")
			driver.Close()
			continue
		}
		if kill > kills/2 {
			goTo(s, "cup")
			s.Wait(".clock")
			assert.False(t, s.Has("#catalyst-in"), "after %d kills", kill)
		}
		if kill == kills {
			s.Quit()
			break
		}
		goTo(s, "settings")
		typed, sure = "", ""
		s.Clear(control("name"))
		for i := range 1 + random.IntN(3) {
			typed += strconv.Itoa(kill) + "," + strconv.Itoa(i) + ";"
			fill(s, "name", typed)
		}
		sure = typed
		time.Sleep(500 * time.Millisecond)
		typed += "later"
		fill(s, "name", typed)
		time.Sleep(time.Duration(random.IntN(300)) * time.Millisecond)
		driver.Close() // by SIGKILL to its whole group
	}
}
