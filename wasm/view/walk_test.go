package view_test

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// mostVisited is how many functions of ours one key may visit, reading what was
// typed and the smallest of helpers included. It is to fall, never to be raised.
const mostVisited = 268

// keys says how often the test that is counted types: once, or once more.
const keys = "KEYS"

// A key asks for what is looked at and no more. This test is built once more so
// that it counts what is visited, and run with one key and with two: what the
// second visits is the difference.
func TestOneKeyVisitsFewFunctions(t *testing.T) {
	if n := os.Getenv(keys); n != "" {
		typeInASheet(t, len(n))
		return
	}
	program := filepath.Join(t.TempDir(), "counted")
	build := exec.Command("go", "test", "-c", "-o", program, "-covermode=atomic", "-coverpkg=shedreckoner/calc/...,shedreckoner/wasm/...", ".")
	out, err := build.CombinedOutput()
	require.NoError(t, err, "%s", out)
	var times [2]map[block]int
	for i, n := range []string{"k", "kk"} {
		profile := filepath.Join(t.TempDir(), "profile")
		run := exec.Command(program, "-test.run=^"+t.Name()+"$", "-test.coverprofile="+profile)
		run.Env = append(os.Environ(), keys+"="+n)
		out, err := run.CombinedOutput()
		require.NoError(t, err, "%s", out)
		times[i] = timesIn(t, profile)
	}
	var more []block
	for b, n := range times[1] {
		if n > times[0][b] {
			more = append(more, b)
		}
	}
	visited := functionsIn(t, more)
	t.Logf("%d functions visited", len(visited))
	assert.Greater(t, len(visited), mostVisited/2, "no key was pressed")
	assert.LessOrEqual(t, len(visited), mostVisited, "%s", strings.Join(visited, "\n"))
}

// typeInASheet types a length so many times in a surface's sheet on a phone, and
// shows what follows.
func typeInASheet(t *testing.T, times int) {
	s, _ := page.Start(nil, noon)
	s = do(do(do(s, "demo", "", ""), "go", "surfaces", ""), "sheet", "surface.1", "")
	s.Covers = true
	shown := markup.Cut(view.Page(s))
	for n := range 1 + times {
		s = do(s, "set", "surface.1.height", strconv.Itoa(1200+100*n))
		next := shown.Next(view.Page(s))
		assert.NotEmpty(t, next.Patches(shown))
		shown = next
	}
}

// block is a stretch of code that is counted.
type block struct{ file, from string }

// timesIn reads from a coverage profile how many times each block was visited.
func timesIn(t *testing.T, profile string) map[block]int {
	t.Helper()
	f, err := os.Open(profile)
	require.NoError(t, err)
	defer f.Close()
	counted := map[block]int{}
	for lines := bufio.NewScanner(f); lines.Scan(); {
		var from, to string
		var statements, times int
		file, rest, _ := strings.Cut(lines.Text(), ":")
		if n, _ := fmt.Sscanf(strings.Replace(rest, ",", " ", 1), "%s %s %d %d", &from, &to, &statements, &times); n == 4 {
			counted[block{file, from}] += times
		}
	}
	return counted
}

// functionsIn gives the declared functions that hold the blocks, each once.
func functionsIn(t *testing.T, blocks []block) []string {
	t.Helper()
	files, names := map[string]*ast.File{}, map[string]bool{}
	set := token.NewFileSet()
	for _, b := range blocks {
		file, known := files[b.file]
		if !known {
			var err error
			file, err = parser.ParseFile(set, filepath.Join("../..", strings.TrimPrefix(b.file, "shedreckoner/")), nil, 0)
			require.NoError(t, err)
			files[b.file] = file
		}
		var line, column int
		_, err := fmt.Sscanf(b.from, "%d.%d", &line, &column)
		require.NoError(t, err)
		for _, d := range file.Decls {
			if f, isFunc := d.(*ast.FuncDecl); isFunc && set.Position(f.Pos()).Line <= line && line <= set.Position(f.End()).Line {
				names[fmt.Sprintf("%s: %s", b.file, f.Name.Name)] = true
			}
		}
	}
	var list []string
	for name := range names {
		list = append(list, name)
	}
	slices.Sort(list)
	return list
}
