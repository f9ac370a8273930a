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

// Engines looks for both engines on this machine. One that is not there is returned too, with what it misses.
func Engines() []Engine {
	chromium := Engine{Name: "Chromium", chromium: true}
	chromium.driver = chromium.program("chromedriver")
	chromium.browser = chromium.program("chromium", "chromium-browser", "google-chrome")

	webkit := Engine{Name: "WebKit", needsDisplay: true}
	webkit.driver = webkit.program("WebKitWebDriver")
	webkit.program("Xvfb")
	// The small browser that comes with the library stands outside the search path.
	found, _ := filepath.Glob("/usr/lib*/*/webkit2gtk-4.*/MiniBrowser") // fails for a wrong pattern only
	if slices.Sort(found); len(found) > 0 {
		webkit.browser = found[len(found)-1]
	} else {
		webkit.browser = webkit.program("MiniBrowser")
	}
	return []Engine{chromium, webkit}
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
				"args": []string{"--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run",
					"--disable-background-networking", "--disable-component-update", "--disable-sync",
					"--disable-dev-shm-usage"},
			},
			"goog:loggingPrefs": map[string]any{"browser": "ALL"},
		}
	}
	return map[string]any{
		"webkitgtk:browserOptions": map[string]any{
			"binary": d.engine.browser,
			// What the console gets is written to the driver's output, where Faults reads it.
			"args": []string{"--automation", "--enable-write-console-messages-to-stdout=true"},
		},
	}
}
