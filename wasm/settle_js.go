package main

import (
	"slices"

	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
)

// settling is a step that is shown only once what it keeps is on the disk, or
// can't be for now: then its clock says so.
type settling struct {
	state *page.State
	shown *markup.Page
	rest  []page.Effect  // that wait
	after []page.Message // that came meanwhile
}

// settles reports whether the step has to wait, and then keeps what it keeps.
func (b *border) settles(state *page.State, shown *markup.Page, effects []page.Effect) bool {
	if !slices.ContainsFunc(effects, func(e page.Effect) bool { return e.Kind == page.Settle }) {
		return false
	}
	wait := &settling{state: state, shown: shown}
	b.settling = wait
	b.save()
	b.document.Get("documentElement").Get("dataset").Set("settling", "yes")
	for _, e := range effects {
		switch e.Kind {
		case page.Keep, page.Forget, page.Revoke:
			b.change(e)
		case page.Settle:
		default:
			wait.rest = append(wait.rest, e)
		}
	}
	b.store.Call("settle")
	return true
}

// settled goes on with the step that waited, and with what came meanwhile. What
// may not be on the disk yet is said.
func (b *border) settled(isDurable bool) {
	wait := b.settling
	if wait == nil {
		return
	}
	b.settling = nil
	b.document.Get("documentElement").Get("dataset").Delete("settling")
	b.guarded(func() { b.adopt(wait.state, wait.shown, wait.rest) })
	if !isDurable {
		b.handle(page.Message{Verb: "unsettled"})
	}
	for _, m := range wait.after {
		b.handle(m)
	}
	b.lateStore()
}
