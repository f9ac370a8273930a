package browser_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

// evil is a name that would run, in a page or in a spreadsheet that took it for more than text.
const evil = `=1+"<script>hit()</script><img src=x onerror=hit()><b id=bold onclick=hit()>&amp;'`

// Names full of markup stay text on every screen, with everything open, on paper, in what is copied and in the CSV.
func TestNamesFullOfMarkupStayText(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		lines := strings.NewReplacer("name = Foredeck", "name = "+evil, "name = Deck", "name = "+evil).Replace(metric)
		withJob(s, lines+"name = "+evil+"\ncurrency = "+evil+"\ncard.gelcoat.name = "+evil+"\ncard.gelcoat.note = "+evil+"\nbench.now.tin = "+evil+
			"\ndone = 1\ndone.1.step = buildup.1.step.1\ndone.1.surface = surface.9\ndone.1.note = "+evil+"\ndone.1.day = "+evil+
			"\ncup = 1\ncup.1.card = gelcoat\ncup.1.mixed = 100 g\ncup.1.ended = 5\ncup.1.end = "+evil+"\ncup.1.tin = "+evil+"\ncup.1.note = "+evil+"\n")
		s.Script(nil, `globalThis.hits = 0; globalThis.hit = () => { hits++; }`)
		seen := 0
		for _, screen := range page.Screens {
			visit(s, screen.Key)
			s.Script(nil, `
				const done = new Set();
				for (let next; next = [...document.querySelectorAll('[data-do="open"], [data-do="why"]')].find((e) => !done.has(e.id)); ) { done.add(next.id); next.click(); }`)
			var made int
			s.Script(&made, `return document.querySelectorAll("main script, main img, #bold, main [onclick], main [onerror]").length`)
			assert.Zero(t, made, screen.Key)
			if strings.Contains(shown(s, "#screen"), evil) {
				seen++
			}
		}
		assert.Greater(t, seen, 3, "and they are shown")

		goTo(s, "order")
		s.Script(nil, `did.copied = ""; did.saved = null`)
		do(s, "text", "", "")
		var copied string
		s.Until("the copied text", func() bool { s.Script(&copied, `return did.copied`); return copied != "" })
		assert.Contains(t, copied, "• "+evil+": ")
		checkCSV(t, s, "csv")
		goTo(s, "log")
		checkCSV(t, s, "log-csv")
		goTo(s, "order")
		assert.Contains(t, onPaper(t, s), "Order list: "+evil)
		var hits int
		s.Script(&hits, `return hits`)
		assert.Zero(t, hits)
	})
}

// checkCSV reads a saved table back: the name is one cell of it, and no cell is a formula.
func checkCSV(t *testing.T, s *webdriver.Session, verb string) {
	t.Helper()
	s.Script(nil, `did.saved = null`)
	do(s, verb, "", "")
	var text string
	s.Script(&text, `return did.saved.text()`)
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err, verb)
	found := false
	for _, row := range rows {
		for _, cell := range row {
			found = found || cell == "'"+evil
			assert.NotRegexp(t, `^\s*[=+@-]`, cell, verb)
		}
	}
	assert.True(t, found, "%s: %v", verb, rows)
}
