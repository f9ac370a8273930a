package webdriver

import (
	"os/exec"
	"path/filepath"
	"slices"
)

// Engine is a browser engine with its driver, as found on this machine.
type Engine struct {
	Name         string   // "Chromium" or "WebKit"
	Missing      []string // what it needs and this machine has not; empty: it can be started
	driver       string
	browser      string
	needsDisplay bool // its browser has no mode without a window
	chromium     bool
}

// Engines are both, whether they are on this machine or not.
func Engines() []Engine { return []Engine{Chromium(), WebKit()} }

// Chromium looks for Chromium, or a browser built on it, on this machine.
func Chromium() Engine {
	e := Engine{Name: "Chromium", chromium: true}
	e.driver = e.program("chromedriver")
	e.browser = e.program("chromium", "chromium-browser", "google-chrome")
	return e
}

// WebKit looks for WebKitGTK on this machine, and for the X server that its browser needs.
func WebKit() Engine {
	e := Engine{Name: "WebKit", needsDisplay: true}
	e.driver = e.program("WebKitWebDriver")
	e.program("Xvfb")
	// The small browser that comes with the library is outside the search path.
	found, _ := filepath.Glob("/usr/lib*/*/webkit2gtk-4.*/MiniBrowser") // fails for a wrong pattern only
	if len(found) == 0 {
		e.browser = e.program("MiniBrowser")
		return e
	}
	e.browser = slices.Max(found)
	return e
}

// program finds the first of several names of a program, and notes the first as missing if none is there.
func (e *Engine) program(names ...string) string {
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	e.Missing = append(e.Missing, names[0])
	return ""
}

// capabilities says which browser a session wants, and how it is started.
func (d *Driver) capabilities() map[string]any {
	if d.engine.chromium {
		return map[string]any{
			"browserName": "chrome",
			"goog:chromeOptions": map[string]any{
				"binary": d.engine.browser,
				"args":   flags(""),
			},
			"goog:loggingPrefs": map[string]any{"browser": "ALL"},
		}
	}
	return map[string]any{
		"webkitgtk:browserOptions": map[string]any{
			"binary": d.engine.browser,
			"args":   []string{"--automation"},
		},
	}
}

// flags start Chromium without a window, with a folder for all that it keeps; empty: one of its own.
func flags(profile string) []string {
	list := []string{"--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--disable-dev-shm-usage"}
	if profile != "" {
		list = append(list, "--user-data-dir="+profile)
	}
	return list
}
