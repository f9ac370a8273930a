package webdriver

import (
	"context"
	"encoding/base64"
	"time"
)

// Failer ends a test: every *testing.T and *testing.B is one. Session's methods end the test themselves when the browser
// can't do what they ask, so that a test reads as what a builder does.
type Failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// Session is one browser window with a fresh profile.
type Session struct {
	Engine string // "Chromium" or "WebKit"
	t      Failer
	driver *Driver
	path   string   // of the session's calls
	faults []string // of pages that were left
}

// Session opens a window. The caller must Quit it.
func (d *Driver) Session(t Failer) *Session {
	t.Helper()
	s := &Session{Engine: d.engine.Name, t: t, driver: d}
	var answer struct{ SessionID string }
	s.path = "/session"
	s.post("", map[string]any{"capabilities": map[string]any{"alwaysMatch": d.capabilities()}}, &answer)
	s.path += "/" + answer.SessionID
	return s
}

// Quit closes the window and its browser.
func (s *Session) Quit() { s.try("DELETE", "", nil, nil) }

// Chromium reports whether the engine is Chromium: only there CDP can be used.
func (s *Session) Chromium() bool { return s.driver.engine.chromium }

// try makes a call that may fail.
func (s *Session) try(method, path string, body, out any) error {
	ctx, cancel := context.WithTimeout(context.Background(), 2*patience)
	defer cancel()
	return s.driver.send(ctx, method, s.path+path, body, out)
}

func (s *Session) post(path string, body, out any) {
	s.t.Helper()
	if err := s.try("POST", path, body, out); err != nil {
		s.t.Fatalf("%s: %s: %v", s.Engine, path, err)
	}
}

func (s *Session) get(path string) string {
	s.t.Helper()
	var text *string // null for an attribute that isn't there
	if err := s.try("GET", path, nil, &text); err != nil {
		s.t.Fatalf("%s: %s: %v", s.Engine, path, err)
	}
	if text == nil {
		return ""
	}
	return *text
}

// Open goes to an address and waits until it is loaded.
func (s *Session) Open(url string) {
	s.t.Helper()
	s.keepFaults()
	s.post("/url", map[string]any{"url": url}, nil)
}

// Refresh reloads the page.
func (s *Session) Refresh() {
	s.t.Helper()
	s.keepFaults()
	s.post("/refresh", nil, nil)
}

// Tab names the tab that the session looks at.
func (s *Session) Tab() string { s.t.Helper(); return s.get("/window") }

// NewTab opens another tab of the same browser, looks at it from now on, and names it.
func (s *Session) NewTab() string {
	s.t.Helper()
	var tab struct{ Handle string }
	s.post("/window/new", map[string]any{"type": "tab"}, &tab)
	s.SwitchTo(tab.Handle)
	return tab.Handle
}

// CloseTab closes the tab that the session looks at, and looks at another.
func (s *Session) CloseTab(next string) {
	s.t.Helper()
	s.keepFaults()
	if err := s.try("DELETE", "/window", nil, nil); err != nil {
		s.t.Fatalf("%s: closing a tab: %v", s.Engine, err)
	}
	s.post("/window", map[string]any{"handle": next}, nil)
}

// For gives the same session for another test, which its methods end from now on.
func (s *Session) For(t Failer) *Session {
	other := *s
	other.t = t
	return &other
}

// SwitchTo looks at another tab.
func (s *Session) SwitchTo(tab string) {
	s.t.Helper()
	s.keepFaults()
	s.post("/window", map[string]any{"handle": tab}, nil)
}

// Until waits until something holds.
func (s *Session) Until(what string, holds func() bool) {
	s.t.Helper()
	for deadline := time.Now().Add(patience); !holds(); time.Sleep(10 * time.Millisecond) {
		if time.Now().After(deadline) {
			s.t.Fatalf("%s: waited %v in vain for %s", s.Engine, patience, what)
		}
	}
}

// Script runs the body of a JavaScript function with args, waits if it returns a promise, and decodes its result into out
// (nil: dropped).
func (s *Session) Script(out any, js string, args ...any) {
	s.t.Helper()
	s.post("/execute/sync", script(js, args), out)
}

// AsyncScript is Script for a function that calls its last argument with its result.
func (s *Session) AsyncScript(out any, js string, args ...any) {
	s.t.Helper()
	s.post("/execute/async", script(js, args), out)
}

func script(js string, args []any) map[string]any {
	if args == nil {
		args = []any{} // null is not allowed
	}
	return map[string]any{"script": js, "args": args}
}

// Screenshot gives what the window shows, as a PNG.
func (s *Session) Screenshot() []byte {
	s.t.Helper()
	// WebKit's driver would give the last frame drawn, from before what the test has just done.
	s.AsyncScript(nil, `const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done()))`)
	png, err := base64.StdEncoding.DecodeString(s.get("/screenshot"))
	if err != nil {
		s.t.Fatalf("%s: screenshot: %v", s.Engine, err)
	}
	return png
}

// SetSize gives the page a size in CSS pixels, at least 320 wide. Chromium takes the page for a phone's from then on.
func (s *Session) SetSize(width, height int) {
	s.t.Helper()
	if s.Chromium() {
		s.CDP(nil, "Emulation.setDeviceMetricsOverride",
			map[string]any{"width": width, "height": height, "deviceScaleFactor": 2, "mobile": true})
		return
	}
	frame := 0 // what the window needs for itself, above the page
	s.Until("the window's size", func() bool {
		s.post("/window/rect", map[string]any{"width": width, "height": height + frame}, nil)
		var inner [2]int
		s.Script(&inner, `return [innerWidth, innerHeight]`)
		frame += height - inner[1]
		return inner == [2]int{width, height}
	})
}

// CDP calls a command of the Chrome DevTools Protocol and decodes its result into out (nil: dropped). Chromium only.
func (s *Session) CDP(out any, cmd string, params map[string]any) {
	s.t.Helper()
	if params == nil {
		params = map[string]any{}
	}
	s.post("/goog/cdp/execute", map[string]any{"cmd": cmd, "params": params}, out)
}
