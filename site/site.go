// Package site is what is served: the files of the page as they are in git, and a handler that serves a packed folder
// with the right headers. Package pack turns the one into the other.
package site

import (
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"io/fs"
	"net/http"
	"os"
	"path"
	"strings"
)

// Files holds the page's own files. index.html and sw.js are templates that package pack fills.
//
//go:embed index.html watch.js store.js asks.js boot.js sw.js manifest.webmanifest
var Files embed.FS

// styles are the parts of the style sheet, a subject each. Later ones override earlier ones, so their names begin with
// their place.
//
//go:embed style/*.css
var styles embed.FS

// Style is the page's one style sheet: its parts in the order of their names.
func Style() []byte {
	var whole []byte
	names, err := fs.Glob(styles, "style/*.css")
	for _, name := range names {
		var part []byte
		if part, err = styles.ReadFile(name); err != nil {
			break
		}
		whole = append(append(whole, part...), '\n')
	}
	if err != nil {
		panic(err) // what is embedded can be read
	}
	return whole
}

// Watch is watch.js, the one script that stands inside the served page: it tells of others that don't come.
//
//go:embed watch.js
var Watch string

// HashSource names an inline script or style in a content security policy.
func HashSource(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// Policy is the content security policy of the served page, without what only a header may say. It is also written into
// the page, because a plain static host sends no headers of ours.
var Policy = "default-src 'none'; script-src 'self' " + HashSource(Watch) + " 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; " + CommonPolicy

// CommonPolicy is the part of the policy that the one-file page has too.
const CommonPolicy = "base-uri 'none'; form-action 'none'; " +
	"require-trusted-types-for 'script'; trusted-types shed-reckoner"

// types are written out: what the system's own table says differs from machine to machine.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".gz":          "application/octet-stream", // and no Content-Encoding: the page unpacks it
	".html":        "text/html; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// Type is the media type that a file is served with, by its name's extension; "" if the page has no such files.
func Type(name string) string { return types[path.Ext(name)] }

// Handler serves the packed folder dir. Files in a folder of dir never change under their name, because the folder is
// named with the version, and may be kept for ever; those at the top are asked for again each time.
func Handler(dir string) http.Handler {
	files := http.FileServerFS(os.DirFS(dir))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name := strings.TrimPrefix(path.Clean("/"+r.URL.Path), "/")
		if name != "" && strings.HasSuffix(r.URL.Path, "/") {
			http.NotFound(w, r) // no listing of folders
			return
		}
		h := w.Header()
		h.Set("Content-Security-Policy", Policy+"; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cache-Control", "no-cache")
		if strings.Contains(name, "/") {
			h.Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		if t := Type(name); t != "" {
			h.Set("Content-Type", t)
		}
		files.ServeHTTP(w, r)
	})
}
