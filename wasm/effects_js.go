package main

import (
	"strings"
	"syscall/js"

	"shedreckoner/wasm/page"
)

// carryOut does what an effect asks for.
func (b *border) carryOut(e page.Effect) {
	switch e.Kind {
	case page.Keep, page.Forget, page.Revoke:
		b.putOff(e)
	case page.Download:
		b.download(e.Key, e.Text)
	case page.Focus:
		b.focus(e.Key)
	case page.Theme:
		b.document.Get("documentElement").Get("dataset").Set("look", e.Key)
	case page.Switch:
		b.window.Call("dispatchEvent", b.window.Get("CustomEvent").New("shed-switch"))
	case page.Print:
		b.document.Get("documentElement").Get("dataset").Set("paper", e.Key)
		b.window.Call("print")
	case page.Later:
		b.later.Call("postMessage", nil)
	default: // what needs a promise or a timer is done by asks.js, which answers with an event
		b.ask(e)
	}
}

func (b *border) download(name, text string) {
	bytes := b.window.Get("Uint8Array").New(len(text)) // a string would lose its byte-order mark on the way to the browser
	js.CopyBytesToJS(bytes, []byte(text))
	blob := b.window.Get("Blob").New([]any{bytes}, map[string]any{"type": "text/plain;charset=utf-8"})
	address := b.window.Get("URL").Call("createObjectURL", blob)
	link := b.document.Call("createElement", "a")
	link.Set("href", address)
	link.Set("download", name)
	link.Call("click")
	b.window.Get("URL").Call("revokeObjectURL", address)
}

var asked = map[page.EffectKind]string{
	page.Copy: "copy", page.Share: "share", page.ShareLink: "share", page.PickFile: "pick",
	page.Say: "say", page.Timer: "timer", page.Awake: "awake", page.Sound: "sound", page.Vibrate: "vibrate", page.Persist: "persist",
}

func (b *border) ask(e page.Effect) {
	if e.Kind == page.ShareLink {
		address, _, _ := strings.Cut(b.window.Get("location").Get("href").String(), "#")
		e.Text = address + "#" + e.Text
	}
	detail := map[string]any{"kind": asked[e.Kind], "key": e.Key, "text": e.Text}
	event := b.window.Get("CustomEvent").New("shed-ask", map[string]any{"detail": detail})
	b.window.Call("dispatchEvent", event)
}
