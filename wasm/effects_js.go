package main

import (
	"strings"
	"syscall/js"

	"shedreckoner/wasm/page"
)

// kept reads everything that the page keeps in the browser's store.
func (b *border) kept() map[string]string {
	kept := map[string]string{}
	store := b.store()
	if store.IsUndefined() {
		return kept
	}
	for i := range store.Length() {
		if key := store.Call("key", i).String(); strings.HasPrefix(key, page.Prefix) {
			kept[key] = store.Call("getItem", key).String()
		}
	}
	return kept
}

// store gives the browser's store; undefined where it refuses one. Of what
// JavaScript throws only a call makes a panic; anywhere else it ends the program.
func (b *border) store() (store js.Value) {
	defer func() {
		if recover() != nil {
			store = js.Undefined()
		}
	}()
	if store = b.window.Get("Reflect").Call("get", b.window, "localStorage"); !store.Truthy() {
		return js.Undefined()
	}
	return store
}

// carryOut does what an effect asks for.
func (b *border) carryOut(e page.Effect) {
	switch e.Kind {
	case page.Keep:
		b.isKept = b.keep(e.Key, e.Text)
	case page.Forget:
		if store := b.store(); b.isKept && !store.IsUndefined() { // what couldn't be set aside stays where it is
			store.Call("removeItem", e.Key)
		}
	case page.Revoke:
		if store := b.store(); !store.IsUndefined() {
			store.Call("removeItem", e.Key)
		}
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
		b.window.Call("setTimeout", b.callback, 0, map[string]any{"type": laterEvent})
	default: // what needs a promise or a timer is done by asks.js, which answers with an event
		b.ask(e)
	}
}

// keep says if the browser took the text.
func (b *border) keep(key, text string) bool {
	verb := "kept"
	func() {
		defer func() {
			if recover() != nil {
				verb = "refused"
			}
		}()
		b.store().Call("setItem", key, text)
	}()
	if verb == "refused" || !b.state.Stored {
		b.handle(page.Message{Verb: verb, Path: key, Text: text})
	}
	return verb == "kept"
}

func (b *border) download(name, text string) {
	blob := b.window.Get("Blob").New([]any{text}, map[string]any{"type": "text/plain;charset=utf-8"})
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
