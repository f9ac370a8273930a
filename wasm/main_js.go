// Command wasm is the page's program. It is the border to the browser, and the
// only package that knows syscall/js: it turns events into messages, carries
// out effects, and puts markup into regions. It decides nothing.
package main

import (
	"fmt"
	"runtime/debug"
	"syscall/js"

	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// garbage is how much garbage may gather, in percent of what is in use, before
// it is collected. There is no second thread to collect it beside the keys, and
// what is in use is a few megabytes.
const garbage = 400

func main() {
	debug.SetGCPercent(garbage)
	b := &border{window: js.Global(), document: js.Global().Get("document"), shown: new(markup.Page), typed: map[string]bool{},
		resumed: make(chan struct{}, 1)}
	b.policy, b.store = b.window.Get("shedReckonerPolicy"), b.window.Get("shedStore")
	b.date, b.steady = b.window.Get("Date"), b.window.Get("performance")
	b.origin = b.steady.Get("timeOrigin").Float()
	b.version = text(b.document.Get("documentElement").Get("dataset"), "version")
	b.listen()
	b.start()
	select {} // the program lives as long as the page
}

// oneColumn is the windows in which a sheet takes the place of its screen; it is
// the style sheet's.
const oneColumn = "(max-width: 899.98px)"

// border holds the page's state and what was last shown of it.
type border struct {
	window, document, policy js.Value
	store                    js.Value // both stores of the browser
	usesDurable              bool     // what the durable one held is known
	version                  string   // stamped into the page when it was packed
	onPaper                  bool     // what is shown is printed
	callback                 js.Func
	later                    js.Value       // what is posted to it comes back once the browser has time again
	resumed                  chan struct{}  // the browser has done what it had to do
	state                    *page.State    // nil until the first is made
	early                    []page.Message // that came before there was a state
	shown                    *markup.Page
	typed                    map[string]bool // paths of controls to be set once they are not typed in any more
	unkept                   []page.Effect   // on the store, that wait until the event at hand is answered
	isKept                   bool            // the latest that was to be kept
	tapped                   bool            // the event at hand is a tap or a key that acts
	entered                  js.Value        // the control that the focus has just come to
	back                     backEntry
	date, steady             js.Value // the clocks: the shed's, and the one that nobody sets
	origin                   float64  // of steady, in milliseconds since 1970
	hour                     clockHour
	settling                 *settling // nil: nothing waits for the disk
}

// handle takes one message through update and views, and only then into the
// state, the page and the store: what panics on the way changes nothing.
func (b *border) handle(m page.Message) {
	b.guarded(b.save)
	if b.state == nil {
		b.early = append(b.early, m)
		return
	}
	if b.settling != nil {
		b.settling.after = append(b.settling.after, m)
		return
	}
	b.guarded(func() { b.take(page.Update(b.state, m)) })
}

func (b *border) take(state *page.State, effects []page.Effect) {
	state.Version, state.Covers = b.version, b.covers()
	shown := b.shown.Next(view.Page(state))
	if b.settles(state, shown, effects) {
		return
	}
	b.adopt(state, shown, effects)
}

func (b *border) adopt(state *page.State, shown *markup.Page, effects []page.Effect) {
	before := b.state
	b.state = state
	b.show(shown)
	b.fadeIn(before, state)
	for _, e := range effects {
		b.carryOut(e)
	}
	b.keepWayBack()
}

// guarded runs f and reports whether it came to its end; a panic is shown, and the page
// goes on with the last good state.
func (b *border) guarded(f func()) (ended bool) {
	defer func() {
		if r := recover(); r != nil {
			b.fail(fmt.Sprint(r))
		}
	}()
	f()
	return true
}

// fail reports a bug in the program.
func (b *border) fail(what string) {
	b.window.Get("console").Call("error", "shed reckoner: "+what)
	place := b.document.Call("getElementById", "stopped")
	place.Set("textContent", "The last step failed by a mistake of this program ("+what+"). Nothing was lost. Go on, or reload the page.")
	place.Set("hidden", false)
}
