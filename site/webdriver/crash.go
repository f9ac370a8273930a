package webdriver

import (
	"context"
	"time"
)

// Crash ends the process that runs the page of the session's tab, as a phone short of memory does, and goes on in a new
// tab of the same browser. Chromium only.
func (s *Session) Crash() {
	s.t.Helper()
	lost := s.Tab()
	next := s.NewTab()
	s.post("/window", map[string]any{"handle": lost}, nil)
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	err := s.driver.send(ctx, "POST", s.path+"/goog/cdp/execute", map[string]any{"cmd": "Page.crash", "params": map[string]any{}}, nil)
	if err == nil { // what has crashed doesn't answer
		s.t.Fatalf("%s: the tab didn't crash", s.Engine)
	}
	s.post("/window", map[string]any{"handle": next}, nil)
}
