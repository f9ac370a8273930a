// Command exec runs a test that was built as WebAssembly, made small as the page's program is, under Node with Go's own
// runner: go test -exec.
package main

import (
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"shedreckoner/site/module"
)

func main() {
	log.SetFlags(0)
	if err := run(os.Args[1], os.Args[2:]); err != nil {
		log.Fatal(err)
	}
}

func run(file string, args []string) error {
	built, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	small, err := module.Small(built)
	if err != nil {
		return err
	}
	if err := os.WriteFile(file, small, 0o755); err != nil { // in go test's own temporary folder
		return err
	}
	runner := filepath.Join(runtime.GOROOT(), "lib", "wasm", "go_js_wasm_exec")
	cmd := exec.Command(runner, append([]string{file}, args...)...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	return cmd.Run()
}
