package main

import (
	"syscall/js"

	"shedreckoner/wasm/markup"
)

// controls are the elements whose value is not markup.
const controls = "[data-path]:is(input,select,textarea)"

// show replaces the regions that changed and sets the controls. The focus goes
// back to the control with the same id.
func (b *border) show(next *markup.Page) {
	before := b.shown
	patches := next.Patches(before)
	b.shown = next
	active := b.document.Get("activeElement")
	for _, patch := range patches {
		b.replace(patch)
	}
	b.setControls(before, active)
	if len(patches) > 0 && !b.document.Get("activeElement").Equal(active) {
		b.focus(active.Get("id").String())
	}
}

// replace puts a region's new markup in place of the old, with its controls set.
func (b *border) replace(patch markup.Patch) {
	old := b.document.Call("getElementById", patch.ID)
	if old.IsNull() {
		panic("no region " + patch.ID)
	}
	box := b.document.Call("createElement", "template")
	box.Set("innerHTML", b.trusted(patch.HTML))
	content := box.Get("content")
	for list, i := content.Call("querySelectorAll", controls), 0; i < list.Length(); i++ {
		el := list.Index(i)
		b.setControl(el, el.Get("dataset").Get("path").String(), true)
	}
	old.Call("replaceWith", content)
}

// trusted passes markup of our own through the page's one policy, where the
// browser has policies.
func (b *border) trusted(html string) js.Value {
	if b.policy.IsUndefined() {
		return js.ValueOf(html)
	}
	return b.policy.Call("createHTML", html)
}

// setControls sets what stays in its place and has another state than before,
// and what was typed in: the document need not have taken it as it was typed. To
// look at every control at every key would take longer than the sums do.
func (b *border) setControls(before *markup.Page, active js.Value) {
	for path, state := range b.shown.Controls {
		if was, known := before.Controls[path]; known && was != state {
			b.typed[path] = true
		}
	}
	for path := range b.typed {
		list := b.document.Call("querySelectorAll", `[data-path="`+path+`"]`+controls)
		isSet := true
		for i := range list.Length() {
			el := list.Index(i)
			// A phone leaves the focus in a field while a button is tapped: what
			// the button did to that field is shown.
			mayChange := b.tapped || !el.Equal(active)
			b.setControl(el, path, mayChange)
			isSet = isSet && mayChange
		}
		if isSet {
			delete(b.typed, path)
		}
	}
}

// setControl gives a control its state, and its value only if that may change.
func (b *border) setControl(el js.Value, path string, mayChange bool) {
	state, known := b.shown.Controls[path]
	if !known {
		return
	}
	if mayChange && el.Get("value").String() != state.Value {
		el.Set("value", state.Value)
	}
	if state.Invalid {
		el.Call("setAttribute", "aria-invalid", "true")
	} else {
		el.Call("removeAttribute", "aria-invalid")
	}
}

func (b *border) focus(id string) {
	if id == "" {
		return
	}
	if el := b.document.Call("getElementById", id); !el.IsNull() {
		el.Call("focus", map[string]any{"preventScroll": false})
	}
}
