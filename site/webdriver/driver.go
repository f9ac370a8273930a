// Package webdriver is a small client of the W3C WebDriver protocol: it starts a browser's driver, opens sessions in it,
// and clicks, types and reads there. It knows two engines, Chromium and WebKit: most phones have one or the other.
//
// Source: W3C, WebDriver, Recommendation of 5 June 2018, and the WebDriver Level 2 draft.
package webdriver

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strconv"
	"sync"
	"time"
)

// patience is how long a driver may take to start, and a page to show what is waited for. Generous, because a test that
// passes never waits for it to end.
const patience = 30 * time.Second

// Driver is a running chromedriver or WebKitWebDriver.
type Driver struct {
	engine  Engine
	url     string
	cmd     *exec.Cmd
	output  output
	display *exec.Cmd // an Xvfb of its own, or nil
	profile string    // folder for the browser's own files
}

// Start starts the driver of an engine, in a process group of its own, and waits until it answers.
func Start(ctx context.Context, e Engine) (*Driver, error) {
	port, err := freePort()
	if err != nil {
		return nil, err
	}
	d := &Driver{engine: e, url: "http://127.0.0.1:" + port}
	if d.profile, err = os.MkdirTemp("", "browser-"); err != nil {
		return nil, err
	}
	d.cmd = exec.Command(e.driver, "--port="+port)
	d.cmd.Env = append(os.Environ(), "HOME="+d.profile,
		"XDG_CACHE_HOME="+d.profile, "XDG_CONFIG_HOME="+d.profile, "XDG_DATA_HOME="+d.profile)
	d.cmd.Stdout, d.cmd.Stderr = &d.output, &d.output
	if err := d.start(ctx); err != nil {
		d.Close()
		return nil, fmt.Errorf("%s: %w\n%s", e.driver, err, d.output.String())
	}
	return d, nil
}

func (d *Driver) start(ctx context.Context) error {
	if d.engine.needsDisplay {
		if err := d.prepareWindow(); err != nil {
			return err
		}
	}
	if err := startGroup(d.cmd); err != nil {
		return err
	}
	return d.waitReady(ctx)
}

// Close ends the driver with all that it started.
func (d *Driver) Close() {
	endGroup(d.cmd)
	endGroup(d.display)
	os.RemoveAll(d.profile)
}

func (d *Driver) waitReady(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	for {
		var status struct{ Ready bool }
		err := d.send(ctx, "GET", "/status", nil, &status)
		if err == nil && status.Ready {
			return nil
		}
		select {
		case <-ctx.Done():
			return err
		case <-time.After(20 * time.Millisecond):
		}
	}
}

// Error is what a driver answers when it could not do what was asked.
type Error struct {
	Code    string `json:"error"` // from the protocol's closed list, such as "no such element"
	Message string `json:"message"`
}

func (e *Error) Error() string { return e.Code + ": " + e.Message }

func isCode(err error, code string) bool {
	var e *Error
	return errors.As(err, &e) && e.Code == code
}

// send makes one call: body goes as JSON (nil: none), the value of the answer's envelope comes into out (nil: dropped).
func (d *Driver) send(ctx context.Context, method, path string, body, out any) error {
	var content io.Reader
	if method == "POST" {
		if body == nil {
			body = struct{}{} // the protocol wants an object in every POST
		}
		data, err := json.Marshal(body)
		if err != nil {
			return err
		}
		content = bytes.NewReader(data)
	}
	req, err := http.NewRequestWithContext(ctx, method, d.url+path, content)
	if err != nil {
		return err
	}
	resp, err := http.DefaultClient.Do(req)
	if err != nil {
		return err
	}
	defer resp.Body.Close()
	var envelope struct{ Value json.RawMessage }
	if err := json.NewDecoder(resp.Body).Decode(&envelope); err != nil {
		return fmt.Errorf("%s %s: %s: %w", method, path, resp.Status, err)
	}
	if resp.StatusCode != http.StatusOK {
		e := &Error{Code: resp.Status}
		json.Unmarshal(envelope.Value, e) // an answer without these fields leaves the status
		return e
	}
	if out == nil {
		return nil
	}
	return json.Unmarshal(envelope.Value, out)
}

// freePort gives a port that nothing listens on now. Drivers can't all say which one they took by themselves.
func freePort() (string, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	defer l.Close()
	return strconv.Itoa(l.Addr().(*net.TCPAddr).Port), nil
}

// output keeps what a driver and its browser write.
type output struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (o *output) Write(p []byte) (int, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.text.Write(p)
}

func (o *output) String() string {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.text.String()
}
