package browser_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

// Names of jobs at which the planted program fails, in a sum and in a view.
const (
	badSum  = "planted: sum"
	badView = "planted: view"
)

// planted serves the real program with mistakes planted into copies of two of its files. The program that is shipped has
// nothing of them.
func planted(t *testing.T) *pack.Served {
	t.Helper()
	dir := t.TempDir()
	replace := map[string]string{}
	for _, at := range []struct{ file, before, mistake string }{
		{"calc/plan/plan.go", "func (p *Plan) Next(d job.Document) Plan {", `if d.Get("name") == "` + badSum + `" { panic("planted in a sum") }`},
		{"wasm/view/view.go", "func Page(s *page.State) html {", `if s.Doc().Get("name") == "` + badView + `" { panic("planted in a view") }`},
	} {
		path, err := filepath.Abs(filepath.Join("..", "..", filepath.FromSlash(at.file)))
		require.NoError(t, err)
		source, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, 1, strings.Count(string(source), at.before), at.file)
		copied := filepath.Join(dir, filepath.Base(path))
		require.NoError(t, os.WriteFile(copied, []byte(strings.Replace(string(source), at.before, at.before+"\n"+at.mistake, 1)), 0o644))
		replace[path] = copied
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	require.NoError(t, err)
	name := filepath.Join(dir, "overlay.json")
	require.NoError(t, os.WriteFile(name, overlay, 0o644))
	t.Setenv("GOFLAGS", "-overlay="+name)
	s, err := pack.Serve(context.Background(), realProgram, "127.0.0.1:0")
	require.NoError(t, err)
	t.Cleanup(s.Close)
	collectFaults(t, s)
	return s
}

// stored is what the browser's store holds under a key.
func stored(s *webdriver.Session, key string) (text string) {
	s.Script(&text, `return localStorage.getItem(arguments[0]) || ""`, key)
	return text
}

// keptJob is the newer of the two copies of the job.
func keptJob(t *testing.T, s *webdriver.Session) (newest job.Document) {
	t.Helper()
	last := -1
	for _, key := range []string{"shedreckoner.job.a", "shedreckoner.job.b"} {
		if text := stored(s, key); text != "" {
			doc, revision, err := job.Load(text)
			require.NoError(t, err)
			if revision > last {
				newest, last = doc, revision
			}
		}
	}
	return newest
}

// A mistake of the program in a sum or in a view is shown; the job is as it was before the key, in the page and in the
// store, and the page goes on.
func TestAPanicCostsNothing(t *testing.T) {
	page := planted(t)
	for name, says := range map[string]string{badSum: "planted in a sum", badView: "planted in a view"} {
		t.Run(says, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.SetSize(360, 740)
				s.Open(page.URL)
				ready(s)
				goTo(s, "settings")
				fill(s, "name", name)
				said := s.Text("#stopped:not([hidden])")
				assert.Contains(t, said, says)
				assert.Contains(t, said, "Nothing was lost")
				before := strings.TrimSuffix(name, name[len(name)-1:])
				assert.Equal(t, before, shown(s, ".jobname"))
				assert.Equal(t, before, keptJob(t, s).Get("name"))
				assert.NotEmpty(t, s.Faults(), "and the console tells of it")

				goTo(s, "surfaces")
				do(s, "add", "surface", "rectangle")
				fill(s, "surface.1.length", "2 m")
				fill(s, "surface.1.width", "1 m")
				assert.Equal(t, "2 m²", figureText(s, "surface.1.area"))
				assert.Equal(t, "1 m", keptJob(t, s).Get("surface.1.width"))
				s.Refresh()
				ready(s)
				assert.Equal(t, before, shown(s, ".jobname"))
				assert.Equal(t, "2 m²", figureText(s, "area"))
			})
		})
	}
}

// A kept job at which the program fails is set aside at start, as it was, and is there to be saved as a file; the page
// starts without it, takes a new job, and starts with that.
func TestAPoisonedJobIsSetAside(t *testing.T) {
	page := planted(t)
	for _, name := range []string{badSum, badView} {
		t.Run(name, func(t *testing.T) {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.Open(page.URL)
				ready(s)
				poison := job.Save(job.Document{}.Set("name", name), 99)
				s.Script(nil, `localStorage.setItem("shedreckoner.job.a", arguments[0])`, poison)
				s.Refresh()
				ready(s)
				assert.Contains(t, shown(s, "#notice"), "It was set aside, not lost")
				assert.Equal(t, poison, stored(s, "shedreckoner.aside.1.job.a"))
				assert.Empty(t, stored(s, "shedreckoner.job.a"))
				assert.NotEmpty(t, s.Faults(), "the console tells of it")

				goTo(s, "settings")
				fill(s, "name", "Another")
				s.Refresh()
				ready(s)
				assert.Equal(t, "Another", shown(s, ".jobname"))
				assert.Equal(t, poison, stored(s, "shedreckoner.aside.1.job.a"))
			})
		})
	}
}

// The settings show the version that the page was packed with.
func TestThePageShowsItsVersion(t *testing.T) {
	page := servedReal(t)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(page.URL)
		ready(s)
		goTo(s, "settings")
		assert.Equal(t, page.Version, shown(s, "#version"))
		goTo(s, "sources")
		assert.Contains(t, shown(s, ".screen-sources"), "WFT = DFT ÷ VS'")
	})
}
