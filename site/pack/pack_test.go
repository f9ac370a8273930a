package pack_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image/png"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site"
	"shedreckoner/site/pack"
)

const program = "shedreckoner/site/browser/empty"

func build(t *testing.T) (pack.Result, map[string]string) { t.Helper(); return buildOf(t, program) }

func buildOf(t *testing.T, program string) (pack.Result, map[string]string) {
	t.Helper()
	out := t.TempDir()
	r, err := pack.Build(context.Background(), pack.Options{Out: out, Program: program})
	require.NoError(t, err)
	files := map[string]string{}
	require.NoError(t, filepath.WalkDir(out, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(out, path)
		files[filepath.ToSlash(name)] = string(data)
		return err
	}))
	return r, files
}

func TestSameSourcesGiveSameBytes(t *testing.T) {
	for _, program := range []string{program, pack.Program} {
		r, first := buildOf(t, program)
		again, second := buildOf(t, program)
		assert.Equal(t, r.Version, again.Version)
		assert.Contains(t, first["site/index.html"], `data-version="`+r.Version+`"`)
		assert.Contains(t, first["shed-reckoner.html"], `data-version="`+r.Version+`"`)
		require.Len(t, second, len(first))
		for name, text := range first {
			assert.True(t, text == second[name], "%s: %s differs", program, name)
		}
	}
}

func TestFolder(t *testing.T) {
	r, files := build(t)
	kept := files["site/sw.js"]
	for name := range files {
		name = strings.TrimPrefix(name, "site/")
		switch name {
		case "shed-reckoner.html", "sw.js":
		case "index.html":
			assert.Contains(t, kept, `"./"`)
		default:
			assert.Contains(t, kept, `"`+name+`"`, "the worker must keep the whole set")
		}
	}
	assert.Contains(t, kept, `prefix + "`+r.Version+`"`)
	for _, text := range []string{kept, files["site/index.html"], files["shed-reckoner.html"]} {
		assert.NotContains(t, text, "{{")
	}
	for _, m := range regexp.MustCompile(`(?:src|href)="([^"]+)"`).FindAllStringSubmatch(files["site/index.html"], -1) {
		assert.Contains(t, files, "site/"+m[1], "index.html names a file that isn't there")
	}
}

func TestManifestIcons(t *testing.T) {
	_, files := build(t)
	var manifest struct {
		Icons      []struct{ Src, Sizes, Type string }
		Background string `json:"background_color"`
		Theme      string `json:"theme_color"`
	}
	require.NoError(t, json.Unmarshal([]byte(files["site/manifest.webmanifest"]), &manifest))
	require.NotEmpty(t, manifest.Icons)
	style := string(site.Style())
	assert.Contains(t, style, "--paper: "+manifest.Background, "the page's own ground")
	assert.Contains(t, style, "--lead: "+manifest.Theme, "and its own colour")
	for _, icon := range manifest.Icons {
		require.Contains(t, files, "site/"+icon.Src)
		if icon.Type == "image/png" {
			c, err := png.DecodeConfig(bytes.NewReader([]byte(files["site/"+icon.Src])))
			require.NoError(t, err)
			assert.Equal(t, icon.Sizes, fmt.Sprintf("%dx%d", c.Width, c.Height), icon.Src)
		}
	}
}

// The one-file page must ask for nothing: whatever loads is inside it.
func TestOneFileNamesNoOtherFile(t *testing.T) {
	_, files := build(t)
	head, _, found := strings.Cut(files["shed-reckoner.html"], "<style>")
	require.True(t, found)
	for _, m := range regexp.MustCompile(`(?:src|href)="([^"]+)"`).FindAllStringSubmatch(head, -1) {
		assert.True(t, strings.HasPrefix(m[1], "data:"), m[1])
	}
	assert.NotContains(t, head, "'self'")
	assert.NotContains(t, head, "unsafe-inline")
	assert.Len(t, regexp.MustCompile(`'sha256-`).FindAllString(head, -1), 6, "five scripts and the style")
}

func TestOneFileIsRefusedWhereAScriptWouldEndEarly(t *testing.T) {
	_, err := pack.OneFile(map[string][]byte{"boot.js": []byte(`s = "</SCRIPT>"`)}, "v")
	assert.ErrorContains(t, err, "</script")
}

func TestBuildSaysWhatTheCompilerSaid(t *testing.T) {
	_, err := pack.Build(context.Background(), pack.Options{Out: t.TempDir(), Program: "shedreckoner/none"})
	assert.ErrorContains(t, err, "shedreckoner/none")
}

func TestServe(t *testing.T) {
	s, err := pack.Serve(context.Background(), program, "127.0.0.1:0")
	require.NoError(t, err)
	_, err = pack.Serve(context.Background(), program, strings.TrimSuffix(strings.TrimPrefix(s.URL, "http://"), "/"))
	assert.ErrorContains(t, err, "address already in use")
	s.Close()
	_, err = os.Stat(s.Folder)
	assert.ErrorIs(t, err, os.ErrNotExist, "the temporary folder is removed")
}
