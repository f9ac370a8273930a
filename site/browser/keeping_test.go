package browser_test

import (
	"strings"
	"testing"

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

// A key is answered before it is kept; it is kept in the next message, and before the page is hidden or left.
func TestAKeyIsAnsweredBeforeItIsKept(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		goTo(s, "settings")
		fill(s, "name", "Tern")
		newest(s) // what was typed so far is kept
		for _, end := range []string{"", "pagehide", "visibilitychange"} {
			var wrote []int // times that the store was written to: with the key, after its end, after the next message
			s.AsyncScript(&wrote, `
				const [end, done] = arguments, set = Storage.prototype.setItem, wrote = [];
				let count = 0;
				Storage.prototype.setItem = function (key, text) { count++; set.call(this, key, text); };
				const field = document.querySelector('input[data-path="name"]');
				field.value += end + "x";
				field.dispatchEvent(new InputEvent("input", { bubbles: true }));
				wrote.push(count);
				(end === "pagehide" ? window : document).dispatchEvent(new Event(end || "none", { bubbles: true }));
				wrote.push(count);
				setTimeout(() => { Storage.prototype.setItem = set; done([...wrote, count]); }, 100);`, end)
			require.Len(t, wrote, 3)
			assert.Zero(t, wrote[0], "while the key is answered")
			assert.Equal(t, end != "", wrote[1] > 0, "by the end of the page: %q", end)
			assert.Equal(t, 2, wrote[2], "job and history, once")
		}
		s.Refresh()
		ready(s)
		assert.Equal(t, "Ternxpagehidexvisibilitychangex", s.Value(control("name")))
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
	return serve(t, site.Handler(before(t, servedReal(t), script).Folder)).URL
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
				closeSheets(s)
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

// onceKept reads the store after what a key left to be kept: that comes by a message of its own.
const onceKept = `
	const done = arguments[0], after = new MessageChannel();
	after.port1.onmessage = () => setTimeout(() => done(Object.fromEntries(Object.entries(localStorage))), 50);
	after.port2.postMessage("");`

// newest reads the newest good copy of the builder's own job that stands in the browser's store.
func newest(s *webdriver.Session) (best job.Document, revision int) {
	var all map[string]string
	s.AsyncScript(&all, onceKept)
	for _, key := range []string{"a", "b"} {
		if d, r, err := job.Load(all["shedreckoner.job."+key]); err == nil && r > revision {
			best, revision = d, r
		}
	}
	return best, revision
}
