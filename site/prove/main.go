// Command prove runs the tests of the sums as WebAssembly under Node, compiled and made small in the same way as the page's
// program: what packing does to a program must not change what it works out. Without Node it says so.
package main

import (
	"context"
	"errors"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"shedreckoner/site/module"
	"shedreckoner/site/pack"
)

// tests are the packages whose tests are run.
const tests = "shedreckoner/calc/..."

// asRunner is the first argument with which go test calls this command to run one package's tests.
const asRunner = "-run-test"

func main() {
	log.SetFlags(0)
	var err error
	if len(os.Args) > 2 && os.Args[1] == asRunner {
		err = run(os.Args[2], os.Args[3:])
	} else {
		err = prove(context.Background())
	}
	if exit := new(exec.ExitError); errors.As(err, &exit) {
		os.Exit(exit.ExitCode()) // it has said what is wrong
	}
	if err != nil {
		log.Fatal(err)
	}
}

// prove has go test build the tests, and run them by this command.
func prove(ctx context.Context) error {
	if _, err := exec.LookPath("node"); err != nil {
		fmt.Println("NOT PROVEN: the tests of the sums did not run as WebAssembly: Node is not installed")
		return nil
	}
	self, err := os.Executable()
	if err != nil {
		return err
	}
	args := slices.Concat([]string{"test", "-timeout=11m", "-exec=" + self + " " + asRunner}, pack.BuildFlags, []string{tests})
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	return cmd.Run()
}

// run makes a test's program small and runs it with Go's own runner.
func run(file string, args []string) error {
	built, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	small, left, err := module.Small(built)
	if err != nil {
		return err
	}
	if left != "" {
		fmt.Fprintln(os.Stderr, left)
	}
	if err := os.WriteFile(file, small, 0o755); err != nil { // in go test's own temporary folder
		return err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	cmd := exec.Command(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "go_js_wasm_exec"), append([]string{file}, args...)...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	return cmd.Run()
}
