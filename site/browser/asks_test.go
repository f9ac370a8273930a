package browser_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// askOnClick has a click on the page's heading ask for something, as the Go program does in the middle of a click, and
// keeps the answer.
const askOnClick = `
	const ask = arguments[0];
	globalThis.answer = null;
	window.addEventListener("shed-answer", (event) => {
		if (!["audible", "mute", "awake", "may-sleep", "offline"].includes(event.detail.verb)) globalThis.answer = event.detail; // those are told unasked
	});
	document.querySelector("h1").onclick = () => window.dispatchEvent(new CustomEvent("shed-ask", { detail: ask }));`

type answer struct{ Verb, Path, Text string }

// answered waits for the answer to an ask.
func answered(s *webdriver.Session) answer {
	var got *answer
	s.Until("an answer", func() bool { s.Script(&got, `return answer`); return got != nil })
	return *got
}

func TestCopy(t *testing.T) {
	page := served(t, emptyProgram)
	for _, address := range []string{page.URL, "file://" + page.OneFile} {
		for _, lacking := range []string{"nothing", "clipboard"} {
			inBoth(t, func(t *testing.T, s *webdriver.Session) {
				s.Open(address)
				ready(s)
				if lacking == "clipboard" {
					s.Script(nil, `Object.defineProperty(navigator, "clipboard", { value: undefined })`)
				}
				s.Script(nil, askOnClick, map[string]string{"kind": "copy", "text": "Flow coat: 2 × 5 kg\n"})
				s.Click("h1")
				assert.Equal(t, answer{Verb: "did-copy"}, answered(s))
				assert.False(t, s.Has("textarea"))
			})
		}
	}
}

func TestPickFile(t *testing.T) {
	page := served(t, emptyProgram)
	const saved = "name = Tern\nnote = 42 °C, ½\n"
	small := filepath.Join(t.TempDir(), "job.txt")
	require.NoError(t, os.WriteFile(small, []byte(saved), 0o644))
	large := filepath.Join(t.TempDir(), "film.txt")
	require.NoError(t, os.WriteFile(large, []byte(strings.Repeat("x", 3<<20)), 0o644))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(page.URL)
		ready(s)
		for file, check := range map[string]func(text string){
			small: func(text string) { assert.Equal(t, saved, text) },
			large: func(text string) { assert.Len(t, text, 2<<20, "as much as shows that it is too large") },
		} {
			s.Script(nil, askOnClick+`window.dispatchEvent(new CustomEvent("shed-ask", { detail: ask }))`,
				map[string]string{"kind": "pick"})
			s.Type("#picked", file)
			got := answered(s)
			assert.Equal(t, "import", got.Verb)
			check(got.Text)
			assert.False(t, s.Has("#picked"))
		}
		s.Faults() // a browser may say that a chooser needs a click: the test gives the file without one
	})
}
