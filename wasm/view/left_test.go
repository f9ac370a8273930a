package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/ready"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Boards dwell on edges and films run thin there. What keeps enough but at the edges isn't told as if all of it held.
func TestThinEdgesAreNotSaidToHold(t *testing.T) {
	s, _ := page.Start(nil, noon)
	thin := view.Page(do(do(s, "demo", "", ""), "go", "buildup", "")).String()
	assert.Regexp(t, `data-is="asks"[^>]*><span><b>Holds but for the edges:</b> 168\x{00a0}µm left, least 250\x{00a0}µm\. One more pass along them`, thin)

	holds := view.Page(do(do(s, "ready", "", ready.Sequences[0].Key), "go", "buildup", "")).String()
	assert.Regexp(t, `data-is="holds"[^>]*><span><b>Holds:</b> 369\x{00a0}µm left at the thin side, least 250\x{00a0}µm<`, holds)
}

// A verdict leads to a sheet only where there is something on it: a wash works nothing out.
func TestNoVerdictLeadsToAnEmptySheet(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(do(s, "demo", "", ""), "go", "buildup", "")
	opened := 0
	for _, step := range s.Doc().Items("buildup.1.step") {
		path := "buildup.1.step." + step
		why := page.Part(path, page.WhyPart)
		led := strings.Contains(view.Page(do(s, "sheet", path, "")).String(), `data-path="`+why+`"`)
		sheet := view.Page(do(s, "sheet", why, "")).String()
		assert.Equal(t, led, strings.Contains(sheet, `class="figure"`), s.Doc().Get(path+".kind"))
		if led {
			opened++
		}
	}
	assert.Equal(t, 6, opened, "all but the two washes")
}
