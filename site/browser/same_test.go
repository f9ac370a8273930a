package browser_test

import (
	"html"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// byTheShedsClock is the moment that the shed's clock stands at in every time zone; none of these uses starts a cup.
var byTheShedsClock = page.Moment{Unix: 1_780_300_800, Day: 10 * 3600, Date: "2026-06-01"}

var (
	buttonsShown = regexp.MustCompile(`<button[^>]* data-do="(add|copy|remove|move|step|open|why|whole|go|undo|redo|unit|real|fill|sign|ready|like|sheet|back)" data-path="([^"]*)"(?: data-text="([^"]*)")?`)
	inputsShown  = regexp.MustCompile(`<input data-path="([^"]*)"`)
	selectsShown = regexp.MustCompile(`(?s)<select data-path="([^"]*)".*?</select>`)
	optionsShown = regexp.MustCompile(`<option value="([^"]*)"`)
)

// inReach is what a phone shows: a sheet covers the screen and the header below it.
func inReach(s *page.State) string {
	shown := view.Page(s).String()
	if s.Sheet() == "" {
		return shown
	}
	_, notice, _ := strings.Cut(shown, "</header>")
	notice, _, _ = strings.Cut(notice, `<section id="screen"`)
	_, sheet, _ := strings.Cut(shown, `<section id="sheet"`)
	return notice + sheet
}

// use draws what a builder taps and types next, of what the page shows.
func use(random *rand.Rand, s *page.State) page.Message {
	shown := inReach(s)
	controls := markup.Cut(view.Page(s)).Controls
	var typed []page.Message
	for _, m := range inputsShown.FindAllStringSubmatch(shown, -1) {
		text := []string{"450", "1,5", "2 ft 6 in", "2.5", "12", "7 m", "nonsense", ""}[random.IntN(8)]
		if f := job.FieldAt(m[1]); f != nil && f.Kind == job.Words {
			text = "Part " + strconv.Itoa(random.IntN(90))
		}
		typed = append(typed, page.Message{Verb: "set", Path: m[1], Text: text})
	}
	for _, m := range selectsShown.FindAllStringSubmatch(shown, -1) {
		options := optionsShown.FindAllStringSubmatch(m[0], -1)
		typed = append(typed, page.Message{Verb: "set", Path: m[1], Text: options[random.IntN(len(options))][1]})
	}
	var tapped []page.Message
	for _, m := range buttonsShown.FindAllStringSubmatch(shown, -1) {
		tapped = append(tapped, page.Message{Verb: m[1], Path: m[2], Text: html.UnescapeString(m[3])})
	}
	for {
		m := tapped[random.IntN(len(tapped))]
		if len(typed) > 0 && random.IntN(2) == 0 {
			m = typed[random.IntN(len(typed))]
		}
		if m.Verb == "remove" && random.IntN(3) > 0 || m.Verb == "set" && controls[m.Path].Value == m.Text {
			continue // what is there already is no change
		}
		m.At = byTheShedsClock
		return m
	}
}

// uses draws a list of them, and what becomes of the job.
func uses(seed uint64, n int) (list []page.Message, s *page.State) {
	random := rand.New(rand.NewPCG(seed, 3))
	s, _ = page.Start(nil, byTheShedsClock)
	for _, m := range []page.Message{{Verb: "add", Path: "surface", Text: "rectangle"}, {Verb: "go", Path: "buildup"}, {Verb: "ready", Text: "rolled-gelcoat"}} {
		m.At = byTheShedsClock
		s, _ = page.Update(s, m)
		list = append(list, m)
	}
	for len(list) < n {
		m := use(random, s)
		s, _ = page.Update(s, m)
		list = append(list, m)
	}
	return list, s
}

// press does with keys and taps what a message says.
func press(s *webdriver.Session, m page.Message) {
	switch {
	case m.Verb != "set":
		in := ":is(#top, #screen, #notice, #act, #bar)"
		if !s.Has(`.sheet[data-sheet=""]`) {
			in = ":is(#sheet, #notice, #act, #bar)"
		}
		css := in + ` button[data-do="` + m.Verb + `"][data-path="` + m.Path + `"]`
		if m.Text != "" {
			css += `[data-text="` + m.Text + `"]`
		}
		tap(s, css)
	case s.Has(`select[data-path="` + m.Path + `"]`):
		choose(s, m.Path, m.Text)
	default:
		fill(s, m.Path, m.Text)
	}
}

func checkSame(t *testing.T, s *webdriver.Session, want *page.State, how string) {
	t.Helper()
	got, _ := newest(s)
	require.Equal(t, want.Doc().Lines(), got.Lines(), "%s: %s", s.Engine, how)
}

// The same use by messages to the native code, by messages to the WebAssembly, and by real keys and taps, leaves the same
// document.
func TestOneUseThreeWays(t *testing.T) {
	url := shed(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		begin := func() {
			s.Open(url)
			ready(s) // what it keeps at its start comes before it is forgotten
			forget(s)
			s.Refresh()
			ready(s)
		}
		s.SetSize(360, 740)
		for seed := range uint64(4) {
			list, want := uses(seed, 250)
			require.Greater(t, len(want.Doc().Lines()), 20)
			begin()
			s.Script(nil, `for (const m of arguments[0]) window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: m.Verb, path: m.Path, text: m.Text } }))`, list)
			checkSame(t, s, want, "messages")
		}
		list, want := uses(9, 60)
		begin()
		done := []string{}
		for _, m := range list {
			done = append(done, m.Verb+" "+m.Path+" "+m.Text)
			press(s, m)
		}
		checkSame(t, s, want, "keys: "+strings.Join(done, "; "))
		s.Refresh()
		ready(s)
		assert.Empty(t, setAside(s))
		checkSame(t, s, want, "after a reload")
	})
}
