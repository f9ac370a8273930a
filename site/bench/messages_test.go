package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/page"
)

// The script does what it says: every message but a change of screen or of what is open changes the job or what is shown,
// and nothing typed stays refused at the end of a round.
func TestTheScriptIsWorthMeasuring(t *testing.T) {
	s, _ := page.Start(nil, page.Moment{Date: "2026-05-01"})
	s, _ = page.Update(s, page.Message{Verb: "demo", At: s.Now})
	edits := 0
	for n := range 3 * len(script) {
		m, before := scripted(n), s.Doc().Lines()
		m.At = s.Now
		s, _ = page.Update(s, m)
		if m.Verb == "set" || m.Verb == "add" || m.Verb == "undo" {
			assert.NotEqual(t, before, s.Doc().Lines(), "%d: %v", n, m)
			edits++
		}
	}
	assert.Greater(t, edits, len(script))
	assert.Empty(t, s.Plan.Refused())
}
