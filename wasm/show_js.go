package main

import (
	"syscall/js"

	"shedreckoner/wasm/markup"
)

// show replaces the regions that changed and sets the controls. The focus goes
// back to the control with the same id.
func (b *border) show(next *markup.Page) {
	patches := next.Patches(b.shown)
	b.shown = next
	focused := b.document.Get("activeElement").Get("id").String()
	for _, patch := range patches {
		b.replace(patch)
	}
	b.setControls(next)
	if len(patches) > 0 && b.document.Get("activeElement").Get("id").String() != focused {
		b.focus(focused)
	}
}

// replace puts a region's new markup in place of the old.
func (b *border) replace(patch markup.Patch) {
	old := b.document.Call("getElementById", patch.ID)
	if old.IsNull() {
		panic("no region " + patch.ID)
	}
	box := b.document.Call("createElement", "template")
	box.Set("innerHTML", b.trusted(patch.HTML))
	old.Call("replaceWith", box.Get("content"))
}

// trusted passes markup of our own through the page's one policy, where the
// browser has policies.
func (b *border) trusted(html string) js.Value {
	if b.policy.IsUndefined() {
		return js.ValueOf(html)
	}
	return b.policy.Call("createHTML", html)
}

// setControls gives every control its value, but for the one that is typed in.
// A phone leaves the focus in a field while a button is tapped: what the button
// did to that field is shown.
func (b *border) setControls(p *markup.Page) {
	controls := b.document.Call("querySelectorAll", "[data-path]:is(input,select,textarea)")
	active := b.document.Get("activeElement")
	for i := range controls.Length() {
		el := controls.Index(i)
		state, known := p.Controls[el.Get("dataset").Get("path").String()]
		if !known {
			continue
		}
		if (b.tapped || !el.Equal(active)) && el.Get("value").String() != state.Value {
			el.Set("value", state.Value)
		}
		if state.Invalid {
			el.Call("setAttribute", "aria-invalid", "true")
		} else {
			el.Call("removeAttribute", "aria-invalid")
		}
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
