package webdriver_test

import (
	"context"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

const form = `<!doctype html><title>t</title><meta name="viewport" content="width=device-width">
<label>Height <input id="height" value="45" class="field"></label><button id="add">Add</button>
<p id="said"> one </p><p id="hidden" hidden>not seen</p>
<script>
	add.onclick = () => setTimeout(() => { const p = document.createElement("p"); p.id = "late"; p.textContent = height.value; document.body.append(p); }, 100);
	addEventListener("keydown", (e) => { said.textContent += (e.ctrlKey ? "Control+" : "") + e.key + " "; });
</script>`

func TestSession(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte(form))
	}))
	defer server.Close()
	for _, engine := range webdriver.Engines() {
		t.Run(engine.Name, func(t *testing.T) {
			if len(engine.Missing) > 0 {
				if os.Getenv("BROWSER_TESTS") == "required" {
					t.Fatalf("%s is required but lacks %s", engine.Name, strings.Join(engine.Missing, ", "))
				}
				t.Skipf("%s not run: this machine lacks %s", t.Name(), strings.Join(engine.Missing, ", "))
			}
			driver, err := webdriver.Start(context.Background(), engine)
			require.NoError(t, err)
			defer driver.Close()
			s := driver.Session(t)
			defer s.Quit()
			s.Open(server.URL)
			useForm(t, s)
			runScripts(t, s)
		})
	}
}

func useForm(t *testing.T, s *webdriver.Session) {
	assert.Equal(t, "one", s.Text("#said"))
	assert.Empty(t, s.Text("#hidden"))
	assert.Equal(t, "field", s.Attr("#height", "class"))
	assert.Empty(t, s.Attr("#height", "title"))
	s.Type("#height", "0")
	assert.Equal(t, "450", s.Value("#height"))
	s.Clear("#height")
	s.Type("#height", "1,2 m½")
	s.Click("#add")
	assert.Equal(t, "1,2 m½", s.Text("#late"), "comes late and is waited for")
	assert.False(t, s.Has("#never"))
	s.Keys(webdriver.Tab, webdriver.Control+"z")
	assert.Contains(t, s.Text("#said"), "Tab ")
	assert.Contains(t, s.Text("#said"), "Control+z")
}

// A click on what moves waits until it stands still, one on what is covered for a moment is made again, what lies under a
// bar is brought out of it; one that the page loses between press and release is told.
func TestClick(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte(`<!doctype html><title>t</title><div id="above"></div><button id="moves">Moves</button><p id="count">0</p><button id="goes">Goes</button>
<button id="covered">Covered</button><p id="heard">0</p><div id="cover" hidden style="position:fixed;inset:0"></div>
<button id="under" style="position:absolute;top:150vh">Under</button><p style="height:300vh"></p><div id="bar" hidden style="position:fixed;inset:55% 0 0"></div>
<script>
	const until = Date.now() + 400;
	(function grow() { above.style.height = (above.offsetHeight + 7) + "px"; if (Date.now() < until) requestAnimationFrame(grow); })();
	moves.onclick = () => { count.textContent++; };
	covered.onclick = () => { heard.textContent++; };
	under.onclick = () => { heard.textContent = "under"; };
	goes.onmousedown = () => { goes.outerHTML = "<p>gone</p>"; };
</script>`))
	}))
	defer server.Close()
	for _, engine := range webdriver.Engines() {
		t.Run(engine.Name, func(t *testing.T) {
			if len(engine.Missing) > 0 {
				t.Skipf("%s not run: this machine lacks %s", t.Name(), strings.Join(engine.Missing, ", "))
			}
			driver, err := webdriver.Start(context.Background(), engine)
			require.NoError(t, err)
			defer driver.Close()
			err = webdriver.Run(func(f webdriver.Failer) error {
				s := driver.Session(f)
				defer s.Quit()
				s.Open(server.URL)
				s.Click("#moves")
				assert.Equal(t, "1", s.Text("#count"))
				s.Script(nil, `cover.hidden = false; setTimeout(() => { cover.hidden = true; }, 700)`)
				s.Click("#covered")
				assert.Equal(t, "1", s.Text("#heard"))
				s.Script(nil, `scrollTo(0, innerHeight * 0.9); bar.hidden = false`)
				s.Click("#under")
				assert.Equal(t, "under", s.Text("#heard"))
				s.Click("#goes")
				return nil
			})
			assert.ErrorContains(t, err, "mousedown on goes")
			assert.ErrorContains(t, err, "and no click")
		})
	}
}

func runScripts(t *testing.T, s *webdriver.Session) {
	var sum int
	s.Script(&sum, `return arguments[0] + arguments[1]`, 2, 3)
	assert.Equal(t, 5, sum)
	s.AsyncScript(&sum, `setTimeout(arguments[1], 10, arguments[0] * 2)`, 4)
	assert.Equal(t, 8, sum)

	assert.Empty(t, s.Faults())
	s.Script(nil, `setTimeout(() => { throw new Error("boom") }); console.error("bad")`)
	var faults []string
	s.Until("both faults", func() bool { faults = append(faults, s.Faults()...); return len(faults) == 2 })
	assert.Contains(t, strings.Join(faults, "\n"), "boom")
	assert.Contains(t, strings.Join(faults, "\n"), "bad")

	for _, size := range [][2]int{{320, 568}, {600, 700}} {
		s.SetSize(size[0], size[1])
		var got [2]int
		s.Script(&got, `return [innerWidth, innerHeight]`)
		assert.Equal(t, size, got)
	}
	assert.True(t, strings.HasPrefix(string(s.Screenshot()), "\x89PNG"))
	s.Script(nil, `document.title = "changed"`)
	s.Refresh()
	var title string
	s.Script(&title, `return document.title`)
	assert.Equal(t, "t", title)
}
