// Command fuzz runs every fuzz function of the sums and the page for a while, one after the other, and says in a line each
// what came of it. What it finds stays in testdata/fuzz beside the function, where every later test runs it.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// fuzzTries is how often a function may run: now and then Go reports running out of time as a failure.
const fuzzTries = 3

func main() {
	log.SetFlags(0)
	each := flag.Duration("time", 20*time.Second, "for each function")
	flag.Parse()
	if err := fuzz(context.Background(), *each); err != nil {
		log.Fatal(err)
	}
}

// fuzz runs all of them, and returns what failed at the end: a find in one function takes no time from the others.
func fuzz(ctx context.Context, each time.Duration) error {
	targets, err := targets(ctx, "./calc/...", "./wasm/...")
	if err != nil {
		return err
	}
	if len(targets) == 0 {
		return errors.New("no fuzz function was found")
	}
	var failed error
	for _, t := range targets {
		last, err := t.run(ctx, each)
		if err != nil {
			failed = errors.Join(failed, err)
			continue
		}
		fmt.Printf("%s %s: %s\n", strings.TrimPrefix(t.Package, "shedreckoner/"), t.Name, last)
	}
	return failed
}

// target is a fuzz function.
type target struct{ Package, Name string }

var fuzzFunction = regexp.MustCompile(`(?m)^func (Fuzz\w+)\(`)

// targets finds the fuzz functions in the test files of packages.
func targets(ctx context.Context, packages ...string) ([]target, error) {
	cmd := exec.CommandContext(ctx, "go", append([]string{"list", "-json=ImportPath,Dir,TestGoFiles,XTestGoFiles"}, packages...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, err
	}
	var found []target
	for list := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct {
			ImportPath, Dir           string
			TestGoFiles, XTestGoFiles []string
		}
		if err := list.Decode(&p); err == io.EOF {
			return found, nil
		} else if err != nil {
			return nil, err
		}
		for _, name := range slices.Concat(p.TestGoFiles, p.XTestGoFiles) {
			text, err := os.ReadFile(filepath.Join(p.Dir, name))
			if err != nil {
				return nil, err
			}
			for _, m := range fuzzFunction.FindAllSubmatch(text, -1) {
				found = append(found, target{p.ImportPath, string(m[1])})
			}
		}
	}
}

// run fuzzes one function, and gives the last that Go says about it. A find is made small within half a second: longer, and it
// would take the time of the others.
func (t target) run(ctx context.Context, each time.Duration) (last string, err error) {
	for try := 1; ; try++ {
		said, err := exec.CommandContext(ctx, "go", "test", t.Package, "-run", "^$", "-fuzz", "^"+t.Name+"$",
			"-fuzztime", each.String(), "-fuzzminimizetime", "500ms").CombinedOutput()
		if err == nil {
			return lastProgress(string(said)), nil
		}
		if try == fuzzTries || !ranOut(string(said)) {
			return "", fmt.Errorf("%s %s: %w\n%s", t.Package, t.Name, err, said)
		}
	}
}

// ranOut reports whether the time ran out and no input failed.
func ranOut(said string) bool {
	return strings.Contains(said, "\n    context deadline exceeded\n") && !strings.Contains(said, "Failing input")
}

// lastProgress is the last line that says how far it came.
func lastProgress(said string) string {
	for _, line := range slices.Backward(strings.Split(said, "\n")) {
		if rest, found := strings.CutPrefix(line, "fuzz: elapsed: "); found {
			return rest
		}
	}
	return "nothing was said"
}
