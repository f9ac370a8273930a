package view_test

import (
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
	assert.Regexp(t, `data-is="asks"[^>]*><span><b>Holds, but not at the edges:</b> 301\x{00a0}µm left at the thin side, least 250\x{00a0}µm; edges 168\x{00a0}µm\.`, thin)

	holds := view.Page(do(do(s, "ready", "", ready.Sequences[0].Key), "go", "buildup", "")).String()
	assert.Regexp(t, `data-is="holds"[^>]*><span><b>Holds:</b> 369\x{00a0}µm left at the thin side, least 250\x{00a0}µm<`, holds)
}
