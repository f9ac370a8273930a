package main

import "shedreckoner/wasm/page"

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
	if durable != nil {
		b.usesDurable = true
		b.store.Call("use")
	}
	return kept
}

// lateStore takes the durable store into use where it has come only after the start.
func (b *border) lateStore() {
	if b.usesDurable || b.state == nil || b.settling != nil {
		return
	}
	durable := b.held("durable")
	if durable == nil {
		return
	}
	b.usesDurable = true
	b.guarded(func() {
		b.save() // by what was typed so far
		b.take(page.Late(b.state, b.held("quick"), durable))
		b.save()
	})
	if !b.state.IsKeptByNewer() {
		b.store.Call("use")
	}
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

// saving is the message that asks for what was put off to be kept.
const saving = "save"

// putOff has an effect on the store wait until the event at hand is answered:
// a key is seen before it is kept. It is kept before the next message is taken,
// and before the page is hidden or left.
func (b *border) putOff(e page.Effect) {
	if len(b.unkept) == 0 {
		b.later.Call("postMessage", saving)
	}
	b.unkept = append(b.unkept, e)
}

// save does what was put off.
func (b *border) save() {
	waiting := b.unkept
	b.unkept = nil
	for _, e := range waiting {
		b.change(e)
	}
}

// change carries out an effect on the store.
func (b *border) change(e page.Effect) {
	switch e.Kind {
	case page.Keep:
		if e.IfKept && !b.isKept {
			return
		}
		b.isKept = b.keep(e.Key, e.Kept())
	case page.Forget:
		if b.isKept { // what couldn't be set aside stays where it is
			b.store.Call("drop", e.Key)
		}
	case page.Revoke:
		b.store.Call("drop", e.Key)
	}
}

// keep reports whether the browser's quick store took the text.
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
