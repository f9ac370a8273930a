package browser_test

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

// Programs that the tests pack.
const (
	emptyProgram = "shedreckoner/site/browser/empty"
	realProgram  = pack.Program
)

// lab is what the tests of this package share, made when first asked for: packing and starting drivers takes seconds.
var lab = struct {
	mu      sync.Mutex
	served  map[string]*pack.Served
	drivers map[string]*webdriver.Driver
	shared  map[string]*shared
}{served: map[string]*pack.Served{}, drivers: map[string]*webdriver.Driver{}, shared: map[string]*shared{}}

// shared is a browser that many tests use, each in a tab of its own.
type shared struct {
	*webdriver.Session
	idle string // the tab that stays open between tests
}

func TestMain(m *testing.M) {
	code := m.Run()
	for _, d := range lab.drivers {
		d.Close()
	}
	for _, s := range lab.served {
		s.Close()
	}
	os.Exit(code)
}

// served gives a program's page, packed and served once for all tests.
func served(t testing.TB, program string) *pack.Served {
	t.Helper()
	lab.mu.Lock()
	defer lab.mu.Unlock()
	if lab.served[program] == nil {
		s, err := pack.Serve(context.Background(), program, "127.0.0.1:0")
		require.NoError(t, err)
		lab.served[program] = s
		collectFaults(t, s)
	}
	return lab.served[program]
}

// collectFaults puts the collector of faults before the page's first script.
func collectFaults(t testing.TB, s *pack.Served) {
	t.Helper()
	name := filepath.Join(s.Folder, s.Version, "wasm_exec.js")
	loader, err := os.ReadFile(name)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(name, append([]byte(webdriver.Collector), loader...), 0o644))
	restamp(t, s.Folder)
}

var (
	stampedPart = regexp.MustCompile(`(src|href)="([^"]+)" integrity="([^"]+)"`)
	stampedFile = regexp.MustCompile(`"([^"]+)": \{ type: "[^"]+", sums: \["([0-9a-f]+)"`)
)

// restamp makes a folder's hashes fit its files, of which a test has changed some.
func restamp(t testing.TB, folder string) {
	t.Helper()
	swap := func(name string, stamps *regexp.Regexp, encode func(sum []byte) string) {
		file := filepath.Join(folder, name)
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		found := stamps.FindAllSubmatchIndex(text, -1)
		require.NotEmpty(t, found, name)
		for _, at := range slices.Backward(found) {
			last := len(at) - 4
			of := string(text[at[last]:at[last+1]])
			if of == "./" {
				of = "index.html"
			}
			data, err := os.ReadFile(filepath.Join(folder, filepath.FromSlash(of)))
			require.NoError(t, err)
			sum := sha256.Sum256(data)
			text = slices.Concat(text[:at[last+2]], []byte(encode(sum[:])), text[at[last+3]:])
		}
		require.NoError(t, os.WriteFile(file, text, 0o644))
		later := time.Now().Add(time.Minute) // HTTP's dates are of whole seconds: within one it would count as unchanged
		require.NoError(t, os.Chtimes(file, later, later))
	}
	swap("index.html", stampedPart, func(sum []byte) string { return "sha256-" + base64.StdEncoding.EncodeToString(sum) })
	swap("sw.js", stampedFile, hex.EncodeToString)
}

// servedReal is served for the real program; the test is skipped while there is none.
func servedReal(t testing.TB) *pack.Served {
	t.Helper()
	list := exec.Command("go", "list", realProgram)
	list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if err := list.Run(); err != nil {
		t.Skipf("not run: there is no %s", realProgram)
	}
	return served(t, realProgram)
}

// inBoth runs a test in each engine, with a window of its own that is closed at the end. Faults that the page had by then
// fail the test. Where an engine is not installed its part is skipped, unless BROWSER_TESTS=required.
func inBoth(t *testing.T, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	for _, engine := range webdriver.Engines() {
		in(t, engine, test)
	}
}

// inChromium is inBoth for what needs Chromium's own protocol.
func inChromium(t *testing.T, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	in(t, webdriver.Chromium(), test)
}

func in(t *testing.T, engine webdriver.Engine, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	t.Run(engine.Name, func(t *testing.T) {
		s := window(t, engine)
		test(t, s)
		noFaults(t, s)
	})
}

func noFaults(t *testing.T, s *webdriver.Session) {
	for _, fault := range s.Faults() {
		t.Errorf("%s: %s", s.Engine, fault)
	}
}

// taken are the addresses that tests were served from.
var taken = map[string]bool{}

// serve serves a handler for a test, from an address that no test before it had. A browser that many tests share keeps what
// was stored by address, and the system gives a port anew once it is free: one in three runs would meet some other test's job.
func serve(t *testing.T, handler http.Handler) *httptest.Server {
	t.Helper()
	for {
		server := httptest.NewServer(handler)
		if !taken[server.URL] {
			taken[server.URL] = true
			t.Cleanup(server.Close)
			return server
		}
		server.Close()
	}
}

// inTab is inBoth for a test whose page has an address of its own, and so nothing that another test left there: it gets a
// tab of a browser that stays open, which takes much less time than a browser. After a test that fails the next gets a
// new browser.
func inTab(t *testing.T, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	for _, engine := range webdriver.Engines() {
		t.Run(engine.Name, func(t *testing.T) {
			b := lab.shared[engine.Name]
			if b == nil {
				s := driver(t, engine, "shared").Session(t)
				b = &shared{s, s.Tab()}
				lab.shared[engine.Name] = b
			}
			s := b.For(t)
			defer func() {
				if t.Failed() {
					delete(lab.shared, engine.Name)
					b.Quit()
				}
			}()
			s.NewTab()
			test(t, s)
			noFaults(t, s)
			s.CloseTab(b.idle)
		})
	}
}

// window opens a window with a profile of its own, closed at the end of the test.
func window(t testing.TB, engine webdriver.Engine) *webdriver.Session {
	t.Helper()
	s := driver(t, engine, "own").Session(t)
	t.Cleanup(s.Quit)
	return s
}

// driver is one of the engine's for a use, started when first asked for: WebKit's has one browser at a time. Where the
// engine is not installed the test is skipped, unless BROWSER_TESTS=required.
func driver(t testing.TB, engine webdriver.Engine, use string) *webdriver.Driver {
	t.Helper()
	if len(engine.Missing) > 0 {
		if os.Getenv("BROWSER_TESTS") == "required" {
			t.Fatalf("%s is required but lacks %s", engine.Name, strings.Join(engine.Missing, ", "))
		}
		t.Skipf("%s not run: this machine lacks %s", t.Name(), strings.Join(engine.Missing, ", "))
	}
	lab.mu.Lock()
	defer lab.mu.Unlock()
	key := engine.Name + " " + use
	if lab.drivers[key] == nil {
		d, err := webdriver.Start(context.Background(), engine)
		require.NoError(t, err)
		lab.drivers[key] = d
	}
	return lab.drivers[key]
}

// ready waits until the program can be used.
func ready(s *webdriver.Session) { s.Wait(`html[data-ready="yes"]`) }
