package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// A table that is looked at rather than printed stands in a scroller that has a name and takes the focus, so that keys
// scroll it where it is wider than the glass.
func TestWideTablesAreNamedAndTakeTheFocus(t *testing.T) {
	s, _ := page.Start(nil, noon)
	for path, text := range map[string]string{"bench.now.amount": "100 g", "bench.now.product-temp": "22", "bench.now.surface-temp": "24",
		"day.today.read-temp": "23", "day.today.read-humidity": "55", "day.today.low": "17", "day.today.high": "27", "bench.now.scale-step": "0.1 g"} {
		s = do(s, "set", path, text)
	}
	s = do(do(s, "go", "cup", ""), "sheet", "shedcard", "")
	text := view.Page(s).String()
	scroller := regexp.MustCompile(`<div class="scroller" id="[^"]+" role="region" aria-label="[^"]+" tabindex="0"><table>`)
	seen := regexp.MustCompile(`(?s)<section[^>]* class="paper".*?</section>`).ReplaceAllString(text, "")
	require.Contains(t, seen, "<table")
	assert.Len(t, scroller.FindAllString(seen, -1), strings.Count(seen, "<table"))
}
