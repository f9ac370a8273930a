package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// packages prints the ten packages with the most code in the program, uncompressed: the first place to look when it grows.
func packages(ctx context.Context, program string) error {
	bytesOf, err := codeOf(ctx, program)
	if err != nil {
		return err
	}
	largest := slices.SortedFunc(maps.Keys(bytesOf), func(a, b string) int {
		return cmp.Or(cmp.Compare(bytesOf[b], bytesOf[a]), cmp.Compare(a, b))
	})
	for _, name := range largest[:min(10, len(largest))] {
		fmt.Printf("code/%s %d bytes -\n", name, bytesOf[name])
	}
	return nil
}

// codeOf builds a program and adds up its code by package.
func codeOf(ctx context.Context, program string) (map[string]int, error) {
	dir, err := os.MkdirTemp("", "shed-reckoner-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "program.wasm")
	if _, err := forBrowser(ctx, "build", "-o", out, program); err != nil { // with names, unlike what is packed
		return nil, err
	}
	module, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	list, err := forBrowser(ctx, "list", "-deps", program)
	if err != nil {
		return nil, err
	}
	return codeByPackage(module, strings.Fields(string(list)))
}

func forBrowser(ctx context.Context, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stderr = os.Stderr
	return cmd.Output()
}

// Sections of a WebAssembly module, and the part of the custom section "name" that names functions.
// Source: WebAssembly Core Specification, 5.5 Modules and 7.4.1 Name Section.
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	functionNames = 1
)

// codeByPackage adds up the code of a module's functions by their package.
func codeByPackage(module []byte, packages []string) (map[string]int, error) {
	if len(module) < 8 || string(module[:4]) != "\x00asm" {
		return nil, errors.New("not a WebAssembly module")
	}
	var sizes []int
	var names map[int]string
	imported := 0
	for r := (reader{bytes.NewReader(module[8:])}); r.Len() > 0; {
		id, content := r.section()
		switch id {
		case importSection:
			imported = content.number() // Go imports functions only
		case codeSection:
			for range content.number() {
				sizes = append(sizes, len(content.vector()))
			}
		case customSection:
			if string(content.vector()) == "name" {
				names = content.functionNames()
			}
		}
	}
	find := finder(packages)
	sum := make(map[string]int)
	for i, size := range sizes {
		sum[find(names[imported+i])] += size
	}
	return sum, nil
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

// reader reads the parts of a module. A damaged one panics: it was built a moment ago.
type reader struct{ *bytes.Reader }

func (r reader) number() int {
	n, err := binary.ReadUvarint(r) // LEB128, as in the module
	if err != nil {
		panic(err)
	}
	return int(n)
}

func (r reader) vector() []byte {
	b := make([]byte, r.number())
	if n, err := r.Read(b); n < len(b) {
		panic(err)
	}
	return b
}

func (r reader) section() (id int, content reader) {
	id = r.number()
	return id, reader{bytes.NewReader(r.vector())}
}

// functionNames gives the names by the index of the function, imported ones first.
func (r reader) functionNames() map[int]string {
	names := make(map[int]string)
	for r.Len() > 0 {
		id, content := r.section()
		if id != functionNames {
			continue
		}
		for range content.number() {
			index := content.number()
			names[index] = string(content.vector())
		}
	}
	return names
}
