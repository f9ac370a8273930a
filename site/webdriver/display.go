package webdriver

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// slimToolbar lets a window of MiniBrowser be as narrow as a phone: its toolbar would keep it at 447 px.
const slimToolbar = `window.background * { min-width: 0; padding: 0; margin: 0; border: 0; font-size: 1px; -gtk-icon-source: none; }
`

// still has the windows' owner want no motion, which a page is told of as prefers-reduced-motion.
const still = "[Settings]\ngtk-enable-animations=0\n"

// prepareWindow sees to a display, and to windows that can be made narrow.
func (d *Driver) prepareWindow() error {
	settings := filepath.Join(d.profile, "gtk-3.0")
	if err := os.MkdirAll(settings, 0o755); err != nil {
		return err
	}
	for name, text := range map[string]string{"gtk.css": slimToolbar, "settings.ini": still} {
		if err := os.WriteFile(filepath.Join(settings, name), []byte(text), 0o644); err != nil {
			return err
		}
	}
	if os.Getenv("DISPLAY") != "" {
		return nil
	}
	var name string
	var err error
	d.display, name, err = startDisplay()
	d.cmd.Env = append(d.cmd.Env, "DISPLAY="+name)
	return err
}

// startDisplay starts an Xvfb on a display that it finds free by itself, and gives that display's name.
func startDisplay() (*exec.Cmd, string, error) {
	r, w, err := os.Pipe()
	if err != nil {
		return nil, "", err
	}
	defer r.Close()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1280x1600x24", "-nolisten", "tcp")
	cmd.ExtraFiles = []*os.File{w} // becomes descriptor 3
	err = startGroup(cmd)
	w.Close()
	if err != nil {
		return nil, "", err
	}
	number, err := bufio.NewReader(r).ReadString('\n') // written once it accepts clients; ends if Xvfb ends
	if err != nil {
		endGroup(cmd)
		return nil, "", fmt.Errorf("no display from Xvfb: %w", err)
	}
	return cmd, ":" + strings.TrimSpace(number), nil
}
