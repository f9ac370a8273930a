package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

// Every directional formatting character of Unicode Standard Annex #9, section 2, is taken out of what is typed, of files
// and of links; letters that run from right to left stay.
func TestNamesTurnNothingRound(t *testing.T) {
	for _, control := range "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069" {
		name := "Te" + string(control) + "rn סירה"
		s, _ := start(t, nil)
		s, _ = page.Update(s, page.Message{Verb: "set", Path: "name", Text: name})
		assert.Equal(t, "Tern סירה", s.Doc().Get("name"), "%U typed", control)

		doc := job.Document{}.Set("name", name)
		s, _ = start(t, nil)
		s, _ = page.Update(s, page.Message{Verb: "import", Text: job.Save(doc, 2)})
		assert.Equal(t, "Tern סירה", s.Doc().Get("name"), "%U in a file", control)

		link, err := page.Link(doc, 2)
		assert.NoError(t, err)
		s, _ = start(t, nil)
		s, _ = page.Update(s, page.Message{Verb: "opened", Text: "#" + link})
		s, _ = page.Update(s, page.Message{Verb: "take-job"})
		assert.Equal(t, "Tern סירה", s.Doc().Get("name"), "%U in a link", control)
	}
}
