package browser_test

import (
	"compress/gzip"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site"
	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

func TestPageStarts(t *testing.T) {
	t.Run("empty", func(t *testing.T) { pageStarts(t, served(t, emptyProgram)) })
	t.Run("real", func(t *testing.T) { pageStarts(t, servedReal(t)) })
}

func pageStarts(t *testing.T, page *pack.Served) {
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(page.URL)
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		assert.Empty(t, s.Text("#stopped"))

		var loaded []string
		s.Script(&loaded, `return performance.getEntriesByType("resource").map((entry) => entry.name)`)
		assert.NotEmpty(t, loaded)
		for _, address := range loaded {
			assert.True(t, strings.HasPrefix(address, page.URL), "asks another host: %s", address)
		}
	})
}

// What stands in the page before any script must be of use by itself.
func TestFirstContentNeedsNoScript(t *testing.T) {
	page := served(t, emptyProgram)
	inChromium(t, func(t *testing.T, s *webdriver.Session) {
		s.CDP(nil, "Emulation.setScriptExecutionDisabled", map[string]any{"value": true})
		s.Open(page.URL)
		text := s.Text("main")
		assert.Contains(t, text, "The maker's sheet and local rules overrule")
		assert.Contains(t, text, "This page needs JavaScript")
		assert.False(t, s.Has("html[data-ready]"))
	})
}

// What is painted first, while the program is on its way, is the frame of the screen that was left last, with the cautions
// and without a figure.
func TestTheFrameOfTheLastScreenComesFirst(t *testing.T) {
	page := servedReal(t)
	inChromium(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(page.URL)
		ready(s)
		assert.Equal(t, "Surfaces", s.Text(`.bar [aria-current="page"]`))
		s.Script(nil, `for (const [verb, path] of [["demo", ""], ["go", "cup"]])
			window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb, path, text: "" } }))`)
		require.Equal(t, "Cup", s.Text(`.bar [aria-current="page"]`))
		names := s.Text(".bar")
		s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument", map[string]any{"source": `
			const plain = fetch;
			globalThis.fetch = (address, ...more) => String(address).includes("wasm") ? new Promise(() => {}) : plain(address, ...more)`})
		s.Refresh()
		assert.Equal(t, "Cup", s.Text(`.frame [aria-current="page"]`))
		assert.Equal(t, "Cup", s.Text("h1"))
		assert.Equal(t, names, s.Text(".frame"), "as they will stand")
		text := s.Text("main")
		assert.Contains(t, text, "The maker's sheet and local rules overrule")
		assert.Contains(t, text, "Starting")
		cautions, _, _ := strings.Cut(text, "Starting")
		assert.NotRegexp(t, `\d`, strings.ReplaceAll(cautions, "class P2 or P3", ""), "no figure is older than what was typed")
		assert.NotContains(t, text, "Plans the coating")
		assert.False(t, s.Has("html[data-ready]"))
	})
}

func TestOneFileStartsWithoutServer(t *testing.T) {
	t.Run("empty", func(t *testing.T) { oneFileStarts(t, served(t, emptyProgram)) })
	t.Run("real", func(t *testing.T) { oneFileStarts(t, servedReal(t)) })
}

func oneFileStarts(t *testing.T, page *pack.Served) {
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open("file://" + page.OneFile)
		ready(s)
		assert.Equal(t, page.Version, s.Attr("html", "data-version"))
		var loaded []string
		s.Script(&loaded, `return performance.getEntriesByType("resource").map((entry) => entry.name)`)
		for _, address := range loaded {
			assert.True(t, strings.HasPrefix(address, "data:"), "asks for more than itself: %s", address)
		}
	})
}

func TestPolicyIsInForce(t *testing.T) {
	page := served(t, emptyProgram)
	for _, address := range []string{page.URL, "file://" + page.OneFile} {
		inBoth(t, func(t *testing.T, s *webdriver.Session) {
			s.Open(address)
			ready(s)
			require.Empty(t, s.Faults())
			var got map[string]string
			s.AsyncScript(&got, `
				const done = arguments[arguments.length - 1];
				const got = {};
				try { document.body.innerHTML += "<b>x</b>"; got.markup = "set"; } catch (e) { got.markup = e.name; }
				try { shedReckonerPolicy.createScriptURL("other.js"); } catch (e) { got.script = e.name; }
				try { trustedTypes.createPolicy("other", {}); got.policy = "made"; } catch (e) { got.policy = e.name; }
				document.body.setAttribute("style", "margin: 7px");
				got.style = getComputedStyle(document.body).marginTop;
				fetch("https://127.0.0.1:1/").then(() => { got.fetch = "sent"; }, (e) => { got.fetch = e.name; })
					.finally(() => done(got));`)
			assert.Equal(t, map[string]string{"markup": "TypeError", "script": "TypeError", "policy": "TypeError",
				"style": "0px", "fetch": "TypeError"}, got)
			assert.NotEmpty(t, s.Faults(), "faults of the page must be noticed")
		})
	}
}

func TestProgramEndIsAnnounced(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(page.URL)
		ready(s)
		s.Script(nil, `endProgram()`)
		said := s.Text("#stopped:not([hidden])")
		assert.Contains(t, said, "The page has stopped working.")
		assert.Contains(t, said, "Your saved job is safe on this device. Reload the page to go on.")
		assert.False(t, s.Has("html[data-ready]"))
		assert.Equal(t, "alert", s.Attr("#stopped", "role"))
	})
}

// Some hosts see the ending .gz and have the browser unpack the file; others send it unpacked.
func TestHostMayUnpackTheProgram(t *testing.T) {
	page := served(t, emptyProgram)
	plain := copyFolder(t, page)
	program := filepath.Join(plain, page.Version, "reckoner.wasm.gz")
	unpack(t, program)
	hosts := map[string]http.Handler{
		"sends it unpacked": site.Handler(plain),
		"has the browser unpack it": http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if strings.HasSuffix(r.URL.Path, ".gz") {
				w.Header().Set("Content-Encoding", "gzip")
			}
			site.Handler(page.Folder).ServeHTTP(w, r)
		}),
	}
	for name, host := range hosts {
		server := serve(t, host)
		t.Run(name, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.Open(server.URL)
				ready(s)
			})
		})
	}
}

func TestFailedLoadingIsAnnounced(t *testing.T) {
	page := served(t, emptyProgram)
	program := filepath.Join(page.Version, "reckoner.wasm.gz")
	missing, broken := copyFolder(t, page), copyFolder(t, page)
	require.NoError(t, os.Remove(filepath.Join(missing, program)))
	require.NoError(t, os.Truncate(filepath.Join(broken, program), 1000))
	for name, folder := range map[string]string{"missing": missing, "broken": broken} {
		server := serve(t, site.Handler(folder))
		t.Run(name, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.Open(server.URL)
				said := s.Text("#stopped:not([hidden])")
				assert.Contains(t, said, "The page could not be loaded")
				assert.Contains(t, said, "Reload the page")
				s.Faults() // the browser rightly reports the file that it did not get
			})
		})
	}
}

func TestOldBrowserIsTold(t *testing.T) {
	page := served(t, emptyProgram)
	for _, lacking := range []string{"WebAssembly", "DecompressionStream"} {
		inChromium(t, func(t *testing.T, s *webdriver.Session) {
			s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument",
				map[string]any{"source": "delete globalThis." + lacking})
			s.Open(page.URL)
			assert.Contains(t, s.Text("#stopped:not([hidden])"), "This browser is too old for this page")
		})
	}
}

func TestFirstContentFitsASmallPhone(t *testing.T) {
	page := served(t, emptyProgram)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(320, 568)
		s.Open(page.URL)
		ready(s)
		var width int
		s.Script(&width, `return document.documentElement.scrollWidth`)
		assert.LessOrEqual(t, width, 320)
	})
}

// copyFolder copies a page's folder, to be spoilt.
func copyFolder(t *testing.T, page *pack.Served) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "site")
	require.NoError(t, os.CopyFS(dir, os.DirFS(page.Folder)))
	return dir
}

func unpack(t *testing.T, name string) {
	t.Helper()
	f, err := os.Open(name)
	require.NoError(t, err)
	defer f.Close()
	r, err := gzip.NewReader(f)
	require.NoError(t, err)
	out, err := os.Create(name + ".unpacked")
	require.NoError(t, err)
	defer out.Close()
	_, err = out.ReadFrom(r)
	require.NoError(t, err)
	require.NoError(t, os.Rename(out.Name(), name))
}
