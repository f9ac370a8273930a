package webdriver

import (
	"os"
	"os/exec"
)

// Bare is a browser without a driver, whose profile outlives it: a script in the page does what a test wants done there.
// (WebKit's driver gives each session a store of its own, which ends with it.)
type Bare struct {
	engine  Engine
	profile string
	running *exec.Cmd
	display *exec.Cmd
	env     []string
}

// Bare prepares a browser that keeps its files in a folder. The caller must Close it.
func (e Engine) Bare(profile string) (*Bare, error) {
	b := &Bare{engine: e, profile: profile}
	b.env = append(os.Environ(), "HOME="+profile,
		"XDG_CACHE_HOME="+profile, "XDG_CONFIG_HOME="+profile, "XDG_DATA_HOME="+profile)
	if !e.needsDisplay || os.Getenv("DISPLAY") != "" {
		return b, nil
	}
	var name string
	var err error
	b.display, name, err = startDisplay()
	b.env = append(b.env, "DISPLAY="+name)
	return b, err
}

// Open starts the browser with a page.
func (b *Bare) Open(url string) error {
	args := []string{url}
	if b.engine.chromium {
		args = append(flags(b.profile), url)
	}
	b.running = exec.Command(b.engine.browser, args...)
	b.running.Env = b.env
	return startGroup(b.running)
}

// Kill ends the browser with all its processes at once: none of them writes anything more.
func (b *Bare) Kill() {
	endGroup(b.running)
	b.running = nil
}

// Close ends what was started.
func (b *Bare) Close() {
	b.Kill()
	endGroup(b.display)
}
