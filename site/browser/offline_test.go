package browser_test

import (
	"net/http"
	"net/http/httptest"
	"os"
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

func TestWorksWithoutNetworkAfterFirstVisit(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		server := serve(t, site.Handler(page.Folder))
		keep(s, server.URL)
		server.Close()
		s.Refresh()
		ready(s)
		for _, address := range []string{"/#job", "/?from=home", "/index.html"} {
			s.Open("about:blank")
			s.Open(server.URL + address)
			ready(s)
		}
		s.Faults() // the browser reports that it could not ask for a newer sw.js
	})
}

// keep visits a page until it is kept for use without a network.
func keep(s *webdriver.Session, url string) {
	s.Open(url)
	ready(s)
	s.Wait(`html[data-offline="yes"]`)
}

func TestNewVersionWaitsUntilAskedFor(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		s.AsyncScript(nil, `caches.open("another-page").then(arguments[0])`)

		host.update(t)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"), "goes on with the old version")
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"), "also after a reload")

		s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
		s.Wait(`html[data-version="` + nextVersion + `"]`)
		ready(s)
		var caches []string // the old set goes once the new one has started
		s.Until("the old set gone", func() bool { s.AsyncScript(&caches, `caches.keys().then(arguments[0])`); return len(caches) == 2 })
		assert.ElementsMatch(t, []string{"another-page", "shed-reckoner-" + nextVersion}, caches)

		host.Close()
		s.Refresh()
		ready(s)
		assert.Equal(t, nextVersion, s.Attr("html", "data-version"))
		s.Faults() // sw.js could not be asked for
	})
}

// The builder is asked, goes on with the job, and is kept from switching under an open cup.
func TestTheBuilderIsAskedAboutANewVersion(t *testing.T) {
	page := withClock(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		s.SetSize(360, 740)
		keep(s, host.URL)
		atBench(s)
		toCatalyst(s)
		host.update(t)
		s.Refresh()
		ready(s)
		s.Until("the question", func() bool { return strings.Contains(shown(s, "#notice"), "A newer version of this page is ready.") })
		do(s, "switch", "", "")
		assert.Contains(t, shown(s, "#notice"), "A cup is open. End it first")
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		tap(s, "#catalyst-in")
		s.Wait(".clock")
		do(s, "switch", "", "")
		assert.Contains(t, shown(s, "#notice"), "A cup is open. End it first")
		do(s, "end", "cup.1", "spread")
		do(s, "switch", "", "")
		s.Wait(`html[data-version="` + nextVersion + `"]`)
		ready(s)
		goTo(s, "cup")
		assert.Equal(t, "100 g", s.Value(control("bench.now.amount")), "the job is the same")
	})
}

// Chromium says what keeps a page from the home screen.
func TestThePageCanBeInstalled(t *testing.T) {
	page := servedReal(t)
	inChromium(t, func(t *testing.T, s *webdriver.Session) {
		keep(s, page.URL)
		var found struct {
			InstallabilityErrors []struct{ ErrorID string }
		}
		s.CDP(&found, "Page.getInstallabilityErrors", nil)
		assert.Empty(t, found.InstallabilityErrors)
		var manifest struct {
			URL    string
			Errors []struct{ Message string }
		}
		s.CDP(&manifest, "Page.getAppManifest", nil)
		assert.Contains(t, manifest.URL, "manifest.webmanifest")
		assert.Empty(t, manifest.Errors)
	})
}

// A page that is open beside the one that switches goes on undisturbed: a cup may be running in it.
func TestSwitchLeavesOtherTabsAlone(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		s.Refresh() // now under the worker's control
		ready(s)
		first := s.Tab()
		s.NewTab()
		host.update(t)
		s.Open(host.URL)
		s.Wait(`html[data-update="waiting"]`)
		s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
		s.Wait(`html[data-version="` + nextVersion + `"]`)

		s.SwitchTo(first)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		assert.True(t, s.Has(`html[data-ready="yes"]`))
	})
}

// A program that ends can't ask whether to switch: a reload must bring the newer, perhaps fixed, version by itself.
func TestReloadAfterTheEndBringsNewVersion(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		host.update(t)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		s.Script(nil, `endProgram()`)
		s.Wait("#stopped:not([hidden])")
		// Reloaded while the one worker takes over from the other, a page comes up and Chromium's driver waits for it for ever.
		s.Until("the newer worker in its place", func() bool {
			var waits bool
			s.AsyncScript(&waits, `navigator.serviceWorker.getRegistration().then((r) => arguments[0](!r.active || r.active.state !== "activated" || !!r.waiting))`)
			return !waits
		})
		s.Refresh()
		ready(s)
		assert.Equal(t, nextVersion, s.Attr("html", "data-version"))
	})
}

// An update of which a file is missing is not taken at all.
func TestHalfAnUpdateIsNotTaken(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		host.update(t)
		require.NoError(t, os.Remove(filepath.Join(host.folder, nextVersion, "wasm_exec.js")))
		s.Refresh()
		ready(s)
		s.AsyncScript(nil, `
			const done = arguments[0];
			navigator.serviceWorker.getRegistration().then(async (registration) => {
				await registration.update().catch(() => {});
				const worker = registration.installing;
				if (!worker) { done(); return; }
				worker.addEventListener("statechange", () => done());
			});`)
		assert.False(t, s.Has("html[data-update]"))
		host.Close()
		s.Refresh()
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		s.Faults() // the missing file, and sw.js that could not be asked for
	})
}

// A download of a new version that stops half way leaves the old one whole, and is taken up again later.
func TestAnUpdateThatStopsHalfWay(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		host := newHost(t, page)
		keep(s, host.URL)
		host.update(t)
		host.stops.Store(true)
		s.Refresh()
		ready(s)
		s.Until("the stopped download", func() bool { return host.stopped.Load() > 0 })
		s.AsyncScript(nil, `
			const done = arguments[0];
			navigator.serviceWorker.getRegistration().then((registration) => registration.update().catch(() => {})).finally(() => setTimeout(done, 300));`)
		assert.False(t, s.Has("html[data-update]"))
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		s.Refresh()
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))

		host.stops.Store(false)
		s.Refresh()
		s.Wait(`html[data-update="waiting"]`)
		s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-switch"))`)
		s.Wait(`html[data-version="` + nextVersion + `"]`)
		ready(s)
		host.Close()
		s.Refresh()
		ready(s)
		assert.Equal(t, nextVersion, s.Attr("html", "data-version"))
		s.Faults() // the download that stopped, and sw.js that could not be asked for
	})
}

// nextVersion is the version of the page after host.update.
const nextVersion = "0123456789ab"

// host serves a copy of a page, which can be updated in place.
type host struct {
	*httptest.Server
	folder  string
	version string
	stops   atomic.Bool  // the new version's program comes by half
	stopped atomic.Int32 // so often
}

func newHost(t *testing.T, page *pack.Served) *host {
	h := &host{folder: copyFolder(t, page), version: page.Version}
	files := site.Handler(h.folder)
	h.Server = serve(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if h.stops.Load() && strings.HasSuffix(r.URL.Path, nextVersion+"/reckoner.wasm.gz") {
			h.stopped.Add(1)
			w.Header().Set("Content-Length", "1000000")
			w.Write(make([]byte, 1000))
			panic(http.ErrAbortHandler) // cuts the connection
		}
		files.ServeHTTP(w, r)
	}))
	return h
}

// update puts the same page under another version in the place of the old one.
func (h *host) update(t *testing.T) { t.Helper(); h.rename(t, h.version, nextVersion) }

func (h *host) rename(t *testing.T, from, to string) {
	t.Helper()
	for _, name := range []string{"index.html", "sw.js"} {
		file := filepath.Join(h.folder, name)
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(file, []byte(strings.ReplaceAll(string(text), from, to)), 0o644))
	}
	require.NoError(t, os.Rename(filepath.Join(h.folder, from), filepath.Join(h.folder, to)))
	restamp(t, h.folder)
}
