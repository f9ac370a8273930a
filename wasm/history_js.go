package main

import (
	"syscall/js"

	"shedreckoner/wasm/page"
)

// backEntry is the one entry of our own in the browser's history. While the page
// has anything to go back to, it stands above the page's first one: the phone's
// Back takes it away, which is told to the page, and it is put there again for
// as long as there is more.
type backEntry struct {
	stands bool
	going  bool // it is being taken away by ourselves
}

const backMark = "back"

// keepWayBack puts the entry there or takes it away, as the page's state asks.
func (b *border) keepWayBack() {
	defer func() { _ = recover() }() // a browser may refuse entries: then Back leaves the page, as always
	switch wanted := b.state.Depth() > 0; {
	case wanted && !b.back.stands:
		b.back.stands = true
		b.window.Get("history").Call("pushState", backMark, "")
	case !wanted && b.back.stands && !b.back.going:
		b.back.going = true
		b.window.Get("history").Call("back")
	}
}

// wentBack hears that an entry was left.
func (b *border) wentBack() {
	isOurs := b.window.Get("history").Get("state").Equal(js.ValueOf(backMark))
	going := b.back.going
	b.back = backEntry{stands: isOurs}
	switch {
	case isOurs:
	case going:
		b.keepWayBack() // what was opened meanwhile wants it again
	default:
		b.tapped = true
		b.handle(page.Message{Verb: "back", At: b.moment()})
	}
}
