// Package pack makes what is put on a host out of what is in git: it compiles the program for the browser, compresses it,
// stamps a version, and writes the deployable folder and the one-file page. The same sources give the same bytes.
package pack

import (
	"bytes"
	"compress/gzip"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"shedreckoner/site"
	"shedreckoner/site/module"
)

// Program is the package of the real page's program.
const Program = "shedreckoner/wasm"

// names of the files that only exist once packed.
const (
	programName = "reckoner.wasm.gz"
	loaderName  = "wasm_exec.js"
)

// Options say what to pack, and where to.
type Options struct {
	Out     string // folder to write into; made if it is not there
	Program string // package to compile, as for go build; empty: Program
}

// Result is what Build wrote.
type Result struct {
	Version string         // of the whole set, from its content
	Folder  string         // for a static host: Out/site
	OneFile string         // the page as one file: Out/shed-reckoner.html
	Sizes   map[string]int // bytes by file of the first visit, compressed
	Left    string         // in one line, what was not done to make the program small; empty: all was
}

// Build packs the page. Only its own results in Out are replaced.
func Build(ctx context.Context, o Options) (Result, error) {
	if o.Program == "" {
		o.Program = Program
	}
	parts, left, err := collect(ctx, o)
	if err != nil {
		return Result{}, fmt.Errorf("pack %s: %w", o.Program, err)
	}
	unstamped, err := folderFiles(parts, "")
	if err != nil {
		return Result{}, fmt.Errorf("pack the folder: %w", err)
	}
	r := Result{
		Version: version(unstamped),
		Folder:  filepath.Join(o.Out, "site"),
		OneFile: filepath.Join(o.Out, "shed-reckoner.html"),
		Left:    left,
	}
	folder, err := folderFiles(parts, r.Version)
	if err != nil {
		return Result{}, fmt.Errorf("pack the folder: %w", err)
	}
	page, err := oneFile(parts, r.Version)
	if err != nil {
		return Result{}, fmt.Errorf("pack the one-file page: %w", err)
	}
	r.Sizes = compressedSizes(folder)
	if err := os.RemoveAll(r.Folder); err != nil { // or an older version's folder would stay
		return Result{}, err
	}
	if err := write(r.Folder, folder); err != nil {
		return Result{}, err
	}
	return r, os.WriteFile(r.OneFile, page, 0o644)
}

// collect gathers everything that the page is made of, by name, before stamping.
func collect(ctx context.Context, o Options) (parts map[string][]byte, left string, err error) {
	parts = icons()
	parts["style.css"] = site.Style()
	names, err := fs.Glob(site.Files, "*")
	if err != nil {
		return nil, "", err
	}
	for _, name := range names {
		if parts[name], err = site.Files.ReadFile(name); err != nil {
			return nil, "", err
		}
	}
	root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return nil, "", err
	}
	// From the toolchain that compiles: loader and program must be of one Go version.
	loader := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", loaderName)
	if parts[loaderName], err = os.ReadFile(loader); err != nil {
		return nil, "", err
	}
	wasm, left, err := compile(ctx, o.Program)
	if err != nil {
		return nil, "", err
	}
	parts[programName] = Compress(wasm)
	return parts, left, nil
}

// BuildFlags leave out what only a debugger reads, and everything of the place and the commit the program is built at.
var BuildFlags = append([]string{"-trimpath", "-buildvcs=false", "-ldflags=-s -w"}, InliningFlags...)

// InliningFlags are those that the code's size hangs on. Nothing is inlined but in the runtime: that saves a thirteenth of
// what is loaded and costs about a sixth of the speed. Without inlining in the runtime, whose allocator and maps are made
// of small functions, a key press would take half as long again.
var InliningFlags = []string{"-gcflags=all=-l", "-gcflags=runtime=", "-gcflags=internal/runtime/...=", "-gcflags=internal/abi="}

// compile builds a package for the browser, and makes it small.
func compile(ctx context.Context, program string) (small []byte, left string, err error) {
	dir, err := os.MkdirTemp("", "shed-reckoner-")
	if err != nil {
		return nil, "", err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "program.wasm")
	cmd := exec.CommandContext(ctx, "go", slices.Concat([]string{"build", "-o", out}, BuildFlags, []string{program})...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := cmd.CombinedOutput(); err != nil {
		return nil, "", fmt.Errorf("%w:\n%s", err, said)
	}
	built, err := os.ReadFile(out)
	if err != nil {
		return nil, "", err
	}
	return module.Small(built)
}

// Compress is the standard library's gzip at its best, without a time, so that equal input gives equal bytes.
func Compress(data []byte) []byte {
	var b bytes.Buffer
	w, _ := gzip.NewWriterLevel(&b, gzip.BestCompression) // fails for a wrong level only
	w.Write(data)                                         // a bytes.Buffer takes everything
	w.Close()
	return b.Bytes()
}

// version is a short name for exactly these files.
func version(files map[string][]byte) string {
	h := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(h, "%s %x\n", name, sha256.Sum256(files[name]))
	}
	return hex.EncodeToString(h.Sum(nil))[:12]
}

// compressedSizes are the bytes that a first visit loads, as a compressing host sends them.
func compressedSizes(files map[string][]byte) map[string]int {
	sizes := make(map[string]int)
	for name, data := range files {
		sizes[filepath.Base(name)] = len(data)
		if filepath.Ext(name) != ".gz" {
			sizes[filepath.Base(name)] = min(len(data), len(Compress(data)))
		}
	}
	return sizes
}

func write(dir string, files map[string][]byte) error {
	for name, data := range files {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(file, data, 0o644); err != nil {
			return err
		}
	}
	return nil
}
