package main

import (
	"strings"
	"syscall/js"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// start brings the page from what was kept to its first screen, with pauses: a
// browser compiles what runs for the first time as it comes to it, and all in
// one go would hold up a finger that scrolls.
func (b *border) start() {
	b.back.stands = b.window.Get("history").Get("state").Equal(js.ValueOf(backMark)) // from before a reload
	b.pause()
	kept, now := b.kept(), b.moment()
	b.pause()
	if !b.guarded(func() { b.begin(page.Start(kept, now)) }) {
		b.guarded(func() { b.begin(page.StartAside(kept, now)) })
	}
	b.pause()
	if mark := decimalMark(b.window); mark != "." {
		b.handle(page.Message{Verb: "locale", Text: mark, At: b.moment()})
	}
	data := b.document.Get("documentElement").Get("dataset")
	if text(data, "update") == "waiting" { // it waited before we listened
		b.handle(page.Message{Verb: "newer", At: b.moment()})
	}
	if !b.usesDurable && kept[page.DurableMark] != "" {
		b.handle(page.Message{Verb: "behind"})
	}
	b.lateStore() // it may have come before we had a state
	b.fragment()
	b.save()
	data.Set("ready", "yes")
}

// begin takes the first state into the page, and then what came meanwhile.
func (b *border) begin(state *page.State, effects []page.Effect) {
	b.pause()
	state.Version, state.Covers = b.version, b.covers()
	shown := b.shown.Next(view.Page(state))
	b.pause()
	b.adopt(state, shown, effects)
	early := b.early
	b.early = nil
	for _, m := range early {
		b.handle(m)
	}
}

// resume is the message that ends a pause.
const resume = "resume"

// pause lets the browser do what waits for it.
func (b *border) pause() {
	b.later.Call("postMessage", resume)
	<-b.resumed
}

// decimalMark is the one that the browser writes in its own language.
func decimalMark(window js.Value) string {
	return strings.Trim(window.Get("Number").New(1.5).Call("toLocaleString").String(), "15")
}
