package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// Where the spacing is typed no station asks where it stands; a position that is
// typed all the same stays in sight, with what is wrong with it.
func TestStationsAskForNoPositionBesideASpacing(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s = do(s, "add", "surface", "girths")
	asks := func(s *page.State) int {
		return strings.Count(view.Page(s).String(), `.position" id=`)
	}
	assert.Equal(t, 2, asks(s))
	s = do(s, "set", "surface.1.spacing", "1 m")
	assert.Zero(t, asks(s))
	assert.Contains(t, view.Page(s).String(), `data-path="surface.1.stations.2.girth"`)
	assert.Equal(t, 2, asks(do(s, "set", "surface.1.spacing", "")))
	s = do(s, "set", "surface.1.stations.2.position", "2 m")
	assert.Equal(t, 1, asks(s))
	for path, text := range map[string]string{"1.girth": "1 m", "2.girth": "1 m"} {
		s = do(s, "set", "surface.1.stations."+path, text)
	}
	assert.Contains(t, view.Page(s).String(), "said twice")
}
