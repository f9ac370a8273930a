package pack

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"maps"
	"slices"
	"strings"
	"text/template"

	"shedreckoner/site"
)

// filling is what the templates index.html and sw.js are filled with. Text fields go in as they are: all of it is ours.
type filling struct {
	Version, Policy string
	Scripts         []string // in the order in which they run: their names, or in the one-file page the scripts themselves
	Files           []string // of the folder, as addresses beside sw.js

	OneFile bool // the rest is for the one-file page
	Icon    string
	Style   string
	Wasm    string
}

func fill(name string, parts map[string][]byte, f filling) ([]byte, error) {
	t, err := template.New(name).Parse(string(parts[name]))
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, f)
	return b.Bytes(), err
}

// scripts of the page, in the order in which they run.
var scripts = []string{loaderName, "asks.js", "boot.js"}

// versioned are the files that must fit each other: they stand in a folder named with the version, and a page that names
// that folder can't get one of another version.
var versioned = append([]string{"style.css", programName}, scripts...)

// folderFiles gives the files of the deployable folder by their path in it.
func folderFiles(parts map[string][]byte, version string) (map[string][]byte, error) {
	files := maps.Clone(parts)
	for _, name := range versioned {
		delete(files, name)
		files[version+"/"+name] = parts[name]
	}
	f := filling{Version: version, Policy: site.Policy, Scripts: scripts}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		switch name {
		case "sw.js": // the browser keeps it by itself
		case "index.html":
			f.Files = append(f.Files, "./") // what a visitor asks for; hosts redirect the file's own name
		default:
			f.Files = append(f.Files, name)
		}
	}
	for _, name := range []string{"index.html", "sw.js"} {
		var err error
		if files[name], err = fill(name, parts, f); err != nil {
			return nil, err
		}
	}
	return files, nil
}

// oneFile gives the page with everything inside. Its policy allows no address at all, and only the scripts and the style
// that it was packed with, by their hashes.
func oneFile(parts map[string][]byte, version string) ([]byte, error) {
	f := filling{
		Version: version,
		OneFile: true,
		Icon:    base64.StdEncoding.EncodeToString(parts["icon.svg"]),
		Style:   string(parts["style.css"]),
		Wasm:    base64.StdEncoding.EncodeToString(parts[programName]),
	}
	var hashes []string
	for _, name := range scripts {
		text := string(parts[name])
		f.Scripts = append(f.Scripts, text)
		hashes = append(hashes, hashSource(text))
	}
	for _, inside := range append(f.Scripts, f.Style) {
		for _, end := range []string{"</script", "</style", "<!--"} {
			if strings.Contains(strings.ToLower(inside), end) {
				return nil, fmt.Errorf("%q in a style or script would end it early", end)
			}
		}
	}
	f.Policy = fmt.Sprintf("default-src 'none'; script-src %s 'wasm-unsafe-eval'; style-src %s; img-src data: blob:; %s",
		strings.Join(hashes, " "), hashSource(f.Style), site.CommonPolicy)
	return fill("index.html", parts, f)
}

// hashSource names an inline script or style in a content security policy.
func hashSource(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
