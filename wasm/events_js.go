package main

import (
	"strings"
	"syscall/js"

	"shedreckoner/wasm/page"
)

// listen sets up the one callback of the page's life: all events that matter
// come to it from the window.
func (b *border) listen() {
	b.callback = js.FuncOf(func(_ js.Value, args []js.Value) any {
		b.event(args[0])
		return nil
	})
	// By a message to itself rather than a timer, which a browser slows down to one a second where it thinks that nobody looks.
	channel := b.window.Get("MessageChannel").New()
	channel.Get("port1").Set("onmessage", b.callback)
	b.later = channel.Get("port2")
	for _, kind := range []string{"input", "change", "focusin", "click", "keydown", "paste", "storage", "hashchange", "popstate",
		"visibilitychange", "pagehide", "resize", "beforeprint", "afterprint", "shed-update", "shed-answer", "shed-settled", "shed-late"} {
		b.window.Call("addEventListener", kind, b.callback)
	}
}

// event turns a browser event into a message.
func (b *border) event(e js.Value) {
	target, kind := e.Get("target"), e.Get("type").String()
	b.tapped = kind == "click" || kind == "keydown"
	switch kind {
	case "input", "change":
		if path := text(target.Get("dataset"), "path"); path != "" && isInput(target, kind) {
			b.typed[path] = true
			b.handle(page.Message{Verb: "set", Path: path, Text: target.Get("value").String(), At: b.moment()})
		}
	case "focusin":
		b.entered = target
	case "click":
		b.selectEntered(target)
		button := target.Call("closest", "[data-do]")
		if !button.IsNull() {
			data := button.Get("dataset")
			b.handle(page.Message{Verb: text(data, "do"), Path: text(data, "path"), Text: text(data, "text"), At: b.moment()})
		}
	case "keydown":
		b.key(e, target)
	case "paste": // more than the control has room for, where it says who takes it
		verb, pasted := text(target.Get("dataset"), "paste"), e.Get("clipboardData")
		if verb == "" || !pasted.Truthy() {
			return
		}
		if rows := pasted.Call("getData", "text").String(); strings.ContainsAny(strings.TrimSpace(rows), "\t\n;") {
			e.Call("preventDefault")
			b.handle(page.Message{Verb: verb, Path: text(target.Get("dataset"), "path"), Text: rows, At: b.moment()})
		}
	case "storage": // another tab has kept something, or let go of it; none for our own
		if key, value := e.Get("key"), e.Get("newValue"); !key.IsNull() {
			kept := ""
			if !value.IsNull() {
				kept = value.String()
			}
			b.handle(page.Message{Verb: "elsewhere", Path: key.String(), Text: kept, At: b.moment()})
		}
	case "popstate":
		b.wentBack()
	case "resize", "beforeprint", "afterprint":
		b.room(kind == "beforeprint")
	case "hashchange":
		b.fragment()
	case "visibilitychange", "pagehide": // the last that a phone tells before it ends the page
		b.guarded(b.save)
	case "message":
		switch data := e.Get("data"); {
		case data.Equal(js.ValueOf(resume)):
			b.resumed <- struct{}{}
		case data.Equal(js.ValueOf(saving)):
			b.guarded(b.save)
		default:
			b.handle(page.Message{Verb: "work", At: b.moment()})
		}
	case "shed-settled":
		b.settled(e.Get("detail").Bool())
	case "shed-late":
		b.lateStore()
	case "shed-update":
		b.handle(page.Message{Verb: "newer", At: b.moment()})
	case "shed-answer":
		detail := e.Get("detail")
		b.handle(page.Message{Verb: text(detail, "verb"), Path: text(detail, "path"), Text: text(detail, "text"), At: b.moment()})
	}
}

// selectEntered selects what stands in a dial's figure as it is tapped: what is
// typed next takes its place.
func (b *border) selectEntered(target js.Value) {
	if target.Equal(b.entered) && target.Get("select").Truthy() && target.Call("closest", ".dial").Truthy() {
		target.Call("select")
	}
	b.entered = js.Undefined()
}

// key is a key that acts: Enter goes on, the arrows move a figure that has − and
// +, Escape goes back.
func (b *border) key(e, target js.Value) {
	key := e.Get("key").String()
	isInput := text(target, "tagName") == "INPUT"
	way := map[string]string{"ArrowUp": "up", "ArrowDown": "down"}[key]
	switch {
	case b.state == nil: // there is nothing yet to act on
	case key == "Escape" && len(b.state.Sheets) > 0:
		b.handle(page.Message{Verb: "back", At: b.moment()})
	case key == "Enter" && isInput:
		e.Call("preventDefault")
		b.enter(target)
	case way != "" && isInput:
		if path := text(target.Get("dataset"), "path"); path != "" {
			e.Call("preventDefault")
			b.handle(page.Message{Verb: "step", Path: path, Text: way, At: b.moment()})
		}
	}
}

// enter does what Enter means in a control: what the control says, or on to the
// next one.
func (b *border) enter(control js.Value) {
	data := control.Get("dataset")
	if verb := text(data, "enter"); verb != "" {
		b.handle(page.Message{Verb: verb, Path: text(data, "path"), At: b.moment()})
		return
	}
	controls := b.document.Call("querySelectorAll", "[data-path]:is(input,select,textarea)")
	passed := false
	for i := range controls.Length() {
		if next := controls.Index(i); passed {
			next.Call("focus")
			return
		} else {
			passed = next.Equal(control)
		}
	}
	control.Call("blur") // the last one: the keyboard goes away
}

// room sees whether the screen is hidden by a sheet: on paper it never is.
func (b *border) room(isOnPaper bool) {
	b.onPaper = isOnPaper
	if b.state != nil && b.covers() != b.state.Covers {
		b.handle(page.Message{Verb: "room", At: b.moment()})
	}
}

// covers reports whether a sheet hides its screen: the window has no room for one thing
// beside the other. It is asked anew each time, since not every browser tells of
// each change of a window.
func (b *border) covers() bool {
	return !b.onPaper && b.window.Call("matchMedia", oneColumn).Get("matches").Bool()
}

// fragment hands over what the page's address carries behind its #, and takes it
// off: a reload must not ask again.
func (b *border) fragment() {
	location := b.window.Get("location")
	text := location.Get("hash").String()
	if text == "" {
		return
	}
	address, _, _ := strings.Cut(location.Get("href").String(), "#")
	b.window.Get("history").Call("replaceState", nil, "", address)
	b.handle(page.Message{Verb: "opened", Text: text, At: b.moment()})
}

// isInput reports whether the event is the one that tells of the control's new value:
// change for a choice, input for what is typed.
func isInput(target js.Value, kind string) bool {
	return (target.Get("tagName").String() == "SELECT") == (kind == "change")
}

func text(data js.Value, key string) string {
	if data.IsUndefined() {
		return "" // the event's target is no element: the window itself
	}
	if v := data.Get(key); !v.IsUndefined() {
		return v.String()
	}
	return ""
}
