package site_test

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site"
)

func TestHandler(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "v1"), 0o755))
	for _, name := range []string{"index.html", "sw.js", "manifest.webmanifest", "icon.svg", "v1/boot.js", "v1/style.css",
		"v1/reckoner.wasm.gz", "v1/plain.wasm"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(name), 0o644))
	}
	const asked, forEver = "no-cache", "public, max-age=31536000, immutable"
	for _, want := range []struct {
		path, contentType, cache string
		status                   int
	}{
		{"/", "text/html; charset=utf-8", asked, http.StatusOK},
		{"/sw.js", "text/javascript; charset=utf-8", asked, http.StatusOK},
		{"/manifest.webmanifest", "application/manifest+json", asked, http.StatusOK},
		{"/icon.svg", "image/svg+xml", asked, http.StatusOK},
		{"/v1/boot.js", "text/javascript; charset=utf-8", forEver, http.StatusOK},
		{"/v1/style.css", "text/css; charset=utf-8", forEver, http.StatusOK},
		{"/v1/reckoner.wasm.gz", "application/octet-stream", forEver, http.StatusOK},
		{"/v1/plain.wasm", "application/wasm", forEver, http.StatusOK},
		{"/v1/", "", "", http.StatusNotFound},
		{"/v1/none.js", "", "", http.StatusNotFound},
		{"/../site_test.go", "", "", http.StatusNotFound},
	} {
		w := httptest.NewRecorder()
		site.Handler(dir).ServeHTTP(w, httptest.NewRequest("GET", want.path, nil))
		require.Equal(t, want.status, w.Code, want.path)
		if want.status != http.StatusOK {
			assert.NotContains(t, w.Header().Get("Cache-Control"), "immutable", "%s: an error must not be kept", want.path)
			continue
		}
		h := w.Header()
		assert.Equal(t, want.contentType, h.Get("Content-Type"), want.path)
		assert.Equal(t, want.cache, h.Get("Cache-Control"), want.path)
		assert.Empty(t, h.Get("Content-Encoding"), want.path)
		assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"), want.path)
		assert.Equal(t, "no-referrer", h.Get("Referrer-Policy"), want.path)
		assert.Equal(t, "default-src 'none'; script-src 'self' "+site.HashSource(site.Watch)+" 'wasm-unsafe-eval'; style-src 'self'; "+
			"img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; "+
			"form-action 'none'; require-trusted-types-for 'script'; trusted-types shed-reckoner; frame-ancestors 'none'",
			h.Get("Content-Security-Policy"), want.path)
	}
}
