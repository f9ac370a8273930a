package view_test

import (
	"html"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// Settings say whether the page works without a network, once that is known, and no other screen does.
func TestSettingsSayWhetherThePageIsKept(t *testing.T) {
	s, _ := page.Start(nil, noon)
	for answer, says := range map[string]string{"yes": words.KeptOffline, "no": words.NotKeptOffline, "": ""} {
		s := do(do(s, "offline", "", answer), "go", "settings", "")
		for _, sentence := range []string{words.KeptOffline, words.NotKeptOffline} {
			shown := func(s *page.State) bool {
				return strings.Contains(html.UnescapeString(view.Page(s).String()), sentence)
			}
			assert.Equal(t, says == sentence, shown(s), "%q in Settings", answer)
			assert.False(t, shown(do(s, "go", "surfaces", "")), "%q on Surfaces", answer)
		}
	}
}

// It is known only a while after the start: it stands last, so that nothing moves away under a thumb.
func TestWhetherThePageIsKeptStandsLast(t *testing.T) {
	s, _ := page.Start(nil, noon)
	before := view.Page(do(s, "go", "settings", "")).String()
	after := view.Page(do(do(s, "go", "settings", ""), "offline", "", "no")).String()
	said := words.NotKeptOffline
	above, _, found := strings.Cut(html.UnescapeString(after), said)
	assert.True(t, found)
	assert.True(t, strings.HasPrefix(html.UnescapeString(before), above), "what stands above is as it was")
}
