package main

import (
	"syscall/js"

	"shedreckoner/wasm/page"
)

// sheetMillis is how long a sheet takes to come into sight, or what lay under it
// once it is closed. Nothing else moves but a cup's clock.
const sheetMillis = 140

// fadeIn shows that a sheet has come or gone, where the builder has no objection to
// motion. It takes no part in what can be tapped: that is there at once.
func (b *border) fadeIn(before, after *page.State) {
	if before == nil || before.Sheet() == after.Sheet() || b.window.Call("matchMedia", "(prefers-reduced-motion: reduce)").Get("matches").Bool() {
		return
	}
	id := "sheet"
	if after.Sheet() == "" && after.Covers {
		id = "screen"
	}
	if el := b.document.Call("getElementById", id); !el.IsNull() && el.Get("animate").Type() == js.TypeFunction {
		el.Call("animate", []any{map[string]any{"opacity": 0.2}, map[string]any{"opacity": 1}}, sheetMillis)
	}
}
