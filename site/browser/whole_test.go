package browser_test

import (
	"bytes"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site"
	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

// wrongHost serves a page's folder, and spoils what it sends of one file for as long as it is told to.
type wrongHost struct {
	*host
	spoils atomic.Pointer[spoiling]
}

// spoiling is how a host gets an answer wrong.
type spoiling struct {
	file string // the end of its path
	how  func(w http.ResponseWriter, whole []byte)
}

func newWrongHost(t *testing.T, page *pack.Served) *wrongHost {
	t.Helper()
	h := &wrongHost{host: newHost(t, page)}
	files := h.Config.Handler
	h.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		spoils := h.spoils.Load()
		name := r.URL.Path
		if strings.HasSuffix(name, "/") {
			name += "index.html"
		}
		if spoils == nil || !strings.HasSuffix(name, spoils.file) {
			files.ServeHTTP(w, r)
			return
		}
		whole, err := os.ReadFile(filepath.Join(h.folder, filepath.FromSlash(name)))
		if err != nil {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", site.Type(name))
		if strings.Contains(strings.Trim(name, "/"), "/") {
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		spoils.how(w, whole)
	})
	return h
}

// wrongAnswers are what hosts, and the boxes between, do to a file.
var wrongAnswers = map[string]func(w http.ResponseWriter, whole []byte){
	"a page of its own with status 200": func(w http.ResponseWriter, whole []byte) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte("<!doctype html><title>Sign in</title><p>Welcome to the harbour's network."))
	},
	"cut": func(w http.ResponseWriter, whole []byte) { w.Write(whole[:len(whole)/2]) },
	"one bit flipped": func(w http.ResponseWriter, whole []byte) {
		spoilt := bytes.Clone(whole)
		spoilt[len(spoilt)/2] ^= 1
		w.Write(spoilt)
	},
}

const programFile = "reckoner.wasm.gz"

// A file that comes wrong at the first visit is said, and kept neither by the worker nor by the browser: once the host
// sends it right the page starts, and works without a network.
func TestAWrongAnswerAtTheFirstVisit(t *testing.T) {
	page := served(t, emptyProgram)
	for what, how := range wrongAnswers {
		t.Run(what, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				host := newWrongHost(t, page)
				host.spoils.Store(&spoiling{programFile, how})
				s.Open(host.URL)
				assert.NotContains(t, s.Text("#stopped:not([hidden])"), "too old")
				assert.False(t, s.Has(`html[data-offline="yes"]`))

				host.spoils.Store(nil)
				keep(s, host.URL)
				worksAlone(t, s, host.host, page.Version)
			})
		})
	}
}

// worksAlone holds that the page starts, in that version, once its host is gone.
func worksAlone(t *testing.T, s *webdriver.Session, host *host, version string) {
	t.Helper()
	host.Close()
	s.Refresh()
	ready(s)
	assert.Equal(t, version, s.Attr("html", "data-version"))
	s.Faults() // what came wrong, and sw.js that could not be asked for
}

// A file that only the worker gets wrong keeps the page from being kept, and from nothing else.
func TestAWrongAnswerToTheWorker(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newWrongHost(t, page)
		for what, how := range wrongAnswers {
			host.spoils.Store(&spoiling{"icon-192.png", how})
			s.Open(host.URL)
			ready(s)
			s.Wait(`html[data-offline]`)
			assert.Equal(t, "no", s.Attr("html", "data-offline"), what)
		}
		host.spoils.Store(nil)
		keep(s, host.URL)
		worksAlone(t, s, host.host, page.Version)
	})
}

// An update of which a file comes wrong isn't offered, and the version before goes on, without a network too.
func TestAWrongAnswerAtAnUpdate(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newWrongHost(t, page)
		keep(s, host.URL)
		host.update(t)
		for what, how := range wrongAnswers {
			for _, file := range []string{programFile, "index.html"} {
				host.spoils.Store(&spoiling{file, how})
				s.Refresh()
				ready(s)
				update(s)
				assert.False(t, s.Has("html[data-update]"), "%s %s", file, what)
			}
		}
		host.spoils.Store(nil)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		worksAlone(t, s, host.host, page.Version)
	})
}

// update asks for a newer version and waits until it is kept or given up.
func update(s *webdriver.Session) {
	s.AsyncScript(nil, `
		const done = arguments[0];
		navigator.serviceWorker.getRegistration().then(async (registration) => {
			await registration.update().catch(() => {});
			const worker = registration.installing;
			if (!worker) { done(); return; }
			worker.addEventListener("statechange", () => { if (worker.state !== "installing") done(); });
		});`)
}

// The worker's own file, come wrong, changes nothing.
func TestAWrongWorker(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newWrongHost(t, page)
		keep(s, host.URL)
		host.update(t)
		for what, how := range wrongAnswers {
			if what == "one bit flipped" {
				continue // nothing tells: what is kept under it is held against its sums all the same
			}
			host.spoils.Store(&spoiling{"sw.js", how})
			s.Refresh()
			ready(s)
			update(s)
			assert.False(t, s.Has("html[data-update]"), what)
			assert.Equal(t, page.Version, s.Attr("html", "data-version"), what)
		}
		worksAlone(t, s, host.host, page.Version)
	})
}

// A set that was spoilt or lost where it was kept is made whole again from the network, by a start that fails or by the next
// one that doesn't.
func TestAKeptSetIsFilledAgain(t *testing.T) {
	page := served(t, emptyProgram)
	set := "shed-reckoner-" + page.Version
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		for what, spoil := range map[string]string{
			"the program spoilt": `(await caches.open(set)).put(base + version + "/reckoner.wasm.gz", new Response("spoilt"))`,
			"the loader spoilt":  `(await caches.open(set)).put(base + version + "/wasm_exec.js", new Response("spoilt", { headers: { "Content-Type": "text/javascript" } }))`,
			"the program lost":   `(await caches.open(set)).delete(base + version + "/reckoner.wasm.gz")`,
			"the page lost":      `(await caches.open(set)).delete(base)`,
			"all lost":           `caches.delete(set)`,
		} {
			s.AsyncScript(nil, `
				const [set, version, done] = arguments, base = new URL("./", location).href;
				(async () => { await `+spoil+`; done(); })();`, set, page.Version)
			s.Refresh()
			s.Wait(`html[data-ready="yes"][data-offline="yes"]`)
			var kept int
			s.AsyncScript(&kept, `
				const [set, done] = arguments;
				caches.open(set).then((cache) => cache.keys()).then((files) => done(files.length));`, set)
			assert.Equal(t, 12, kept, "%s: the whole set", what)
		}
		worksAlone(t, s, host, page.Version)
	})
}

// A newer version that doesn't start gives way to the one before, which is still there, and a version that does start
// follows it.
func TestAVersionThatDoesNotStart(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		host.update(t)
		name := filepath.Join(host.folder, nextVersion, programFile)
		whole, err := os.ReadFile(name)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(name, pack.Compress([]byte("no program")), 0o644))
		restamp(t, host.folder)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
		s.Until("the version before", func() bool {
			return s.Has(`html[data-ready="yes"][data-version="` + page.Version + `"][data-update="failed"]`)
		})
		s.Refresh()
		s.Wait(`html[data-ready="yes"][data-version="` + page.Version + `"]`)

		const third = "ba9876543210"
		require.NoError(t, os.WriteFile(name, whole, 0o644))
		host.rename(t, nextVersion, third)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
		s.Wait(`html[data-ready="yes"][data-version="` + third + `"]`)
		s.Until("the older sets gone", func() bool {
			var sets []string
			s.AsyncScript(&sets, `caches.keys().then(arguments[0])`)
			return len(sets) == 1 && sets[0] == "shed-reckoner-"+third
		})
		worksAlone(t, s, host, third)
	})
}

// Hosts that redirect a page's address are many; what they redirect to is kept plainly.
func TestARedirectedPageIsKept(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		files := host.Config.Handler
		host.Config.Handler = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			switch {
			case r.URL.Path == "/":
				http.Redirect(w, r, "/home", http.StatusFound)
			case r.URL.Path == "/home":
				r.URL.Path = "/"
				files.ServeHTTP(w, r)
			case path.Base(r.URL.Path) == programFile && r.URL.RawQuery == "":
				http.Redirect(w, r, r.URL.Path+"?from=here", http.StatusMovedPermanently)
			default:
				files.ServeHTTP(w, r)
			}
		})
		keep(s, host.URL)
		host.Close()
		s.Open("about:blank")
		s.Open(host.URL + "/")
		ready(s)
		s.Faults()
	})
}

// Two copies on one host go each their own way.
func TestTwoCopiesOnOneHost(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		one, two := newHost(t, page), newHost(t, page)
		both := http.NewServeMux()
		both.Handle("/", one.Config.Handler)
		both.Handle("/two/", http.StripPrefix("/two", two.Config.Handler))
		server := serve(t, both)
		keep(s, server.URL)
		keep(s, server.URL+"/two/")
		for _, at := range []struct {
			host *host
			path string
		}{{one, "/"}, {two, "/two/"}} {
			at.host.update(t)
			s.Open(server.URL + at.path)
			s.Wait(`html[data-update="waiting"]`)
			s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
			s.Wait(`html[data-ready="yes"][data-version="` + nextVersion + `"]`)
			if at.host == one {
				s.Open(server.URL + "/two/")
				ready(s)
				assert.Equal(t, page.Version, s.Attr("html", "data-version"), "the other stays")
			}
		}
		server.Close()
		for _, path := range []string{"/", "/two/"} {
			s.Open(server.URL + path)
			ready(s)
			assert.Equal(t, nextVersion, s.Attr("html", "data-version"))
		}
		s.Faults()
	})
}

// A host that sends a script as plain text, or lacks one, is named for it; no browser is called old.
func TestAScriptThatIsNone(t *testing.T) {
	page := served(t, emptyProgram)
	plain := func(w http.ResponseWriter, whole []byte) {
		w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		w.Header().Set("X-Content-Type-Options", "nosniff")
		w.Write(whole)
	}
	missing := func(w http.ResponseWriter, whole []byte) { http.Error(w, "none", http.StatusNotFound) }
	for _, wrong := range []struct {
		script, says string
		how          func(http.ResponseWriter, []byte)
	}{
		{"boot.js", "boot.js came as text/plain", plain},
		{"boot.js", "boot.js is missing there (404)", missing},
		{"wasm_exec.js", "wasm_exec.js is missing there (404)", missing},
		{"asks.js", "asks.js came cut or changed", wrongAnswers["cut"]},
	} {
		t.Run(wrong.says, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				host := newWrongHost(t, page)
				host.spoils.Store(&spoiling{wrong.script, wrong.how})
				s.Open(host.URL)
				assert.Contains(t, s.Text("#stopped:not([hidden])"), wrong.says)
				assert.NotContains(t, s.Text("body"), "too old")
				host.spoils.Store(nil)
				s.Refresh()
				ready(s)
				s.Faults()
			})
		})
	}
}
