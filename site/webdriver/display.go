package webdriver

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

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
		return nil, "", fmt.Errorf("Xvfb gave no display: %w", err)
	}
	return cmd, ":" + strings.TrimSpace(number), nil
}
