package webdriver

import "strings"

// Has reports whether an element is there now.
func (s *Session) Has(css string) bool {
	s.t.Helper()
	return s.find(css) != ""
}

// find gives the protocol's path to an element, empty if it isn't there, or went while it was found, with its page or alone.
func (s *Session) find(css string) string {
	s.t.Helper()
	var element map[string]string // one entry, under a key fixed by the protocol
	err := s.try("POST", "/element", map[string]any{"using": "css selector", "value": css}, &element)
	if err != nil && !isNotThere(err) {
		s.t.Fatalf("%s: %s: %v", s.Engine, css, err)
	}
	for _, id := range element {
		return "/element/" + id
	}
	return ""
}

// isNotThere reports whether a driver found nothing: no such element, or its page went meanwhile, as when a page loads itself anew.
// The last code is Chromium's own.
func isNotThere(err error) bool {
	for _, code := range []string{"no such element", "stale element reference", "no such frame", "aborted by navigation"} {
		if isCode(err, code) {
			return true
		}
	}
	return false
}

// Wait waits until an element is there, and gives the protocol's path to it.
func (s *Session) Wait(css string) (path string) {
	s.t.Helper()
	s.Until("element "+css, func() bool {
		path = s.find(css)
		return path != ""
	})
	return path
}

// Clear waits for a field and empties it.
func (s *Session) Clear(css string) { s.t.Helper(); s.onElement(css, "/clear", nil) }

// Type waits for a field and types into it, after what is there. Special keys are the protocol's: see Enter and others.
func (s *Session) Type(css, text string) {
	s.t.Helper()
	if !s.Chromium() { // WebKit's driver would type over what is there
		s.Wait(css)
		s.Script(nil, `
			const field = document.querySelector(arguments[0]);
			field.focus();
			if (field.selectionStart !== null) field.setSelectionRange(field.value.length, field.value.length);`, css)
	}
	s.onElement(css, "/value", map[string]any{"text": text})
}

// onElement waits for an element and does something to it.
func (s *Session) onElement(css, action string, body any) {
	s.t.Helper()
	if err := s.tryElement(css, action, body); err != nil {
		s.t.Fatalf("%s: %s %s: %v", s.Engine, action, css, err)
	}
}

// tryElement does to an element what is asked, once more where the page has put another in its place meanwhile.
func (s *Session) tryElement(css, action string, body any) error {
	s.t.Helper()
	err := s.try("POST", s.Wait(css)+action, body, nil)
	if isCode(err, "stale element reference") {
		err = s.try("POST", s.Wait(css)+action, body, nil)
	}
	return err
}

// Text waits for an element and gives the text that can be seen in it.
func (s *Session) Text(css string) string { s.t.Helper(); return s.get(s.Wait(css) + "/text") }

// Attr waits for an element and gives an attribute of it, empty if it has none.
func (s *Session) Attr(css, name string) string {
	s.t.Helper()
	return s.get(s.Wait(css) + "/attribute/" + name)
}

// Value waits for a field and gives its value.
func (s *Session) Value(css string) string {
	s.t.Helper()
	return s.get(s.Wait(css) + "/property/value")
}

// Special keys of the protocol, for Type and Keys.
const (
	Backspace = "\ue003"
	Tab       = "\ue004"
	Enter     = "\ue007"
	Shift     = "\ue008"
	Control   = "\ue009"
	Escape    = "\ue00c"
	Space     = "\ue00d"
	Left      = "\ue012"
	Up        = "\ue013"
	Right     = "\ue014"
	Down      = "\ue015"
	Delete    = "\ue017"
)

// Keys presses and releases keys one after the other, wherever the focus is. One argument is one press: a single letter,
// or keys held together, such as Control+"z".
func (s *Session) Keys(presses ...string) {
	s.t.Helper()
	var actions []map[string]string
	for _, press := range presses {
		keys := strings.Split(press, "")
		for _, key := range keys {
			actions = append(actions, map[string]string{"type": "keyDown", "value": key})
		}
		for i := range keys {
			actions = append(actions, map[string]string{"type": "keyUp", "value": keys[len(keys)-1-i]})
		}
	}
	s.post("/actions", map[string]any{"actions": []any{
		map[string]any{"type": "key", "id": "keyboard", "actions": actions}}}, nil)
}
