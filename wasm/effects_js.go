package main

import (
	"strings"

	"shedreckoner/wasm/page"
)

// kept reads everything that the page keeps in the browser's two stores.
func (b *border) kept() map[string]string {
	quick, durable := b.held("quick"), b.held("durable")
	kept := page.Merge(quick, durable)
	for key, text := range kept { // the one that lagged hears of it
		if quick[key] != text || durable[key] != text {
			b.store.Call("put", key, text)
		}
	}
	for key := range quick {
		if _, stays := kept[key]; !stays {
			b.store.Call("drop", key)
		}
	}
	return kept
}

// held gives what one store held at the start; nil where it can't be read.
func (b *border) held(store string) map[string]string {
	all := b.store.Get(store)
	if all.IsNull() {
		return nil
	}
	held := map[string]string{}
	keys := b.window.Get("Object").Call("keys", all)
	for i := range keys.Length() {
		key := keys.Index(i).String()
		held[key] = all.Get(key).String()
	}
	return held
}

// carryOut does what an effect asks for.
func (b *border) carryOut(e page.Effect) {
	switch e.Kind {
	case page.Keep:
		b.isKept = b.keep(e.Key, e.Text)
	case page.Forget:
		if b.isKept { // what couldn't be set aside stays where it is
			b.store.Call("drop", e.Key)
		}
	case page.Revoke:
		b.store.Call("drop", e.Key)
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

// keep says if the browser's quick store took the text.
func (b *border) keep(key, text string) bool {
	taken := b.store.Call("put", key, text).Bool()
	verb := "kept"
	if !taken {
		verb = "refused"
	}
	if !taken || !b.state.Stored {
		b.handle(page.Message{Verb: verb, Path: key, Text: text})
	}
	return taken
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
