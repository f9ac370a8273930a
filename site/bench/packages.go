package main

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"shedreckoner/site/module"
	"shedreckoner/site/pack"
)

// packages prints the ten packages with the most code in the program, each compressed by itself: the first place to look
// when it grows.
func packages(ctx context.Context, program string) error {
	code, err := codeOf(ctx, program)
	if err != nil {
		return err
	}
	bytesOf := make(map[string]int)
	for name, bodies := range code {
		bytesOf[name] = len(pack.Compress(bodies))
	}
	largest := slices.SortedFunc(maps.Keys(bytesOf), func(a, b string) int {
		return cmp.Or(cmp.Compare(bytesOf[b], bytesOf[a]), cmp.Compare(a, b))
	})
	for _, name := range largest[:min(10, len(largest))] {
		fmt.Printf("code/%s %d bytes -\n", name, bytesOf[name])
	}
	return nil
}

// codeOf builds a program as it is packed, but with names, and gives its code by package.
func codeOf(ctx context.Context, program string) (map[string][]byte, error) {
	dir, err := os.MkdirTemp("", "shed-reckoner-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "program.wasm")
	if _, err := forBrowser(ctx, slices.Concat([]string{"build", "-o", out}, pack.InliningFlags, []string{program})...); err != nil {
		return nil, err
	}
	built, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	list, err := forBrowser(ctx, "list", "-deps", program)
	if err != nil {
		return nil, err
	}
	return codeByPackage(built, strings.Fields(string(list)))
}

func forBrowser(ctx context.Context, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stderr = os.Stderr
	return cmd.Output()
}

// codeByPackage gathers the code of a module's functions by their package.
func codeByPackage(program []byte, packages []string) (map[string][]byte, error) {
	functions, err := module.Functions(program)
	find, code := finder(packages), make(map[string][]byte)
	for _, f := range functions {
		name := find(f.Name)
		code[name] = append(code[name], f.Body...)
	}
	return code, err
}

// finder gives a function that finds the package of a function by its name as the linker writes it into a module: what
// is no letter, digit, underscore or point is an underscore.
func finder(packages []string) func(string) string {
	other := regexp.MustCompile(`[^\w.]`)
	prefixes := make(map[string]string)
	for _, name := range packages {
		prefixes[other.ReplaceAllString(name, "_")] = name
	}
	return func(function string) string {
		for end := len(function); end > 0; end = strings.LastIndexByte(function[:end], '.') {
			if name, ok := prefixes[function[:end]]; ok {
				return name
			}
		}
		return "other"
	}
}
