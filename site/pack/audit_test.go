package pack_test

import (
	"encoding/json"
	"path"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What audits of pages look at without a browser, on the folder as it is packed: a search engine finds what it lists, a
// phone can install it, and nothing in it needs an insecure address. (What takes a browser is looked at in site/browser:
// names of controls, contrast, targets, no word in the console.)
func TestWhatAuditsLookAt(t *testing.T) {
	_, files := build(t)
	for _, name := range []string{"site/index.html", "shed-reckoner.html"} {
		head, _, found := strings.Cut(files[name], "</head>")
		require.True(t, found)
		content := func(meta string) string {
			m := regexp.MustCompile(`<meta name="` + meta + `" content="([^"]*)">`).FindStringSubmatch(head)
			if m == nil {
				return ""
			}
			return m[1]
		}
		assert.Regexp(t, `(?i)^<!doctype html>\s*<html lang="en"`, head, name)
		assert.Regexp(t, `<meta charset="utf-8">`, head[:min(1024, len(head))], "%s: within its first 1024 bytes", name)
		assert.Regexp(t, `<title>[^<]{5,60}</title>`, head, name)
		assert.Regexp(t, `^.{50,160}$`, content("description"), name)
		assert.Contains(t, content("viewport"), "width=device-width", name)
		assert.NotRegexp(t, `user-scalable|maximum-scale`, content("viewport"), "%s: text can be made larger by two fingers", name)
		assert.Empty(t, content("robots"), "%s: may be listed", name)
	}
	var manifest struct {
		Name, Display string
		ShortName     string `json:"short_name"`
		StartURL      string `json:"start_url"`
		Icons         []struct{ Sizes string }
	}
	require.NoError(t, json.Unmarshal([]byte(files["site/manifest.webmanifest"]), &manifest))
	assert.NotEmpty(t, manifest.Name)
	assert.LessOrEqual(t, len(manifest.ShortName), 12, "as much as stands under an icon")
	assert.Equal(t, "./", manifest.StartURL)
	assert.Equal(t, "standalone", manifest.Display)
	sizes := map[string]bool{}
	for _, icon := range manifest.Icons {
		sizes[icon.Sizes] = true
	}
	assert.True(t, sizes["192x192"] && sizes["512x512"], "%v", sizes)

	for name, text := range files {
		switch path.Ext(name) {
		case ".html", ".js", ".css", ".webmanifest":
			assert.NotRegexp(t, `(?:src|href|url|fetch|import)\W{1,3}http:`, text, "%s: an insecure address", name)
			assert.NotRegexp(t, `document\.write\(|\balert\(|@import`, text, name)
		}
	}
}
