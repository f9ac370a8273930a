package calc_test

import (
	"encoding/json"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var wrong = flag.Bool("wrong", false, "make each wrong change of testdata/drift/changes.txt, and run the tests that must notice")

// Wrong changes to the code, one at a time, each of which would have cost a
// builder something: the tests that are named beside it must fail. It takes a few
// seconds a change, so it is run by hand: go test ./calc -run WrongChanges -wrong -v.
func TestWrongChangesAreNoticed(t *testing.T) {
	rows := drift(t, "changes.txt", 5)
	if *wrong {
		needsTools(t)
	}
	tried, noticed := 0, 0
	for _, row := range rows {
		file, right, change, packages, why := row[0], unescaped(row[1]), unescaped(row[2]), row[3], row[4]
		path, err := filepath.Abs(filepath.Join("..", filepath.FromSlash(file)))
		require.NoError(t, err)
		code, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, 1, strings.Count(string(code), right), "testdata/drift/changes.txt follows the code: %s has %q once", file, right)
		if !*wrong {
			continue
		}
		t.Run(why, func(t *testing.T) {
			tried++
			said, passes := testedWith(t, path, strings.Replace(string(code), right, change, 1), strings.Fields(packages))
			require.NotContains(t, said, "[build failed]", "%s", said)
			if assert.False(t, passes, "nobody notices %s with %q for %q", file, change, right) {
				noticed++
			}
		})
	}
	t.Logf("%d wrong changes are written down; %d tried, %d noticed", len(rows), tried, noticed)
}

// unescaped gives Go its or back: the cells of a row are separated by bars.
func unescaped(cell string) string { return strings.ReplaceAll(cell, `\|`, "|") }

// testedWith runs the tests of packages with other code in one file.
func testedWith(t *testing.T, path, code string, packages []string) (said string, passes bool) {
	t.Helper()
	dir := t.TempDir()
	changed := filepath.Join(dir, "changed.go")
	require.NoError(t, os.WriteFile(changed, []byte(code), 0o644))
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{path: changed}})
	require.NoError(t, err)
	name := filepath.Join(dir, "overlay.json")
	require.NoError(t, os.WriteFile(name, overlay, 0o644))
	cmd := exec.Command("go", append([]string{"test", "-vet=off", "-failfast", "-overlay=" + name}, packages...)...)
	cmd.Dir = ".."
	out, err := cmd.CombinedOutput()
	return string(out), err == nil
}
