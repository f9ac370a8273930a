package pack

import (
	"bytes"
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
	Watch           string // the script that stands inside the page
	Scripts         []part // in the order in which they run
	Style           part
	Files           []wholeFile // of the folder

	OneFile bool // the rest is for the one-file page
	Icon    string
	Wasm    string
}

// part is a script or the style.
type part struct{ Name, Text, Integrity string }

func partOf(name string, parts map[string][]byte) part {
	return part{name, string(parts[name]), integrity(parts[name])}
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
var scripts = []string{loaderName, "store.js", "asks.js", "boot.js"}

// watchName is the script that stands inside the page.
const watchName = "watch.js"

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
	delete(files, watchName)
	f := filling{Version: version, Policy: site.Policy, Watch: site.Watch, Style: partOf("style.css", parts)}
	for _, name := range scripts {
		f.Scripts = append(f.Scripts, partOf(name, parts))
	}
	var err error
	if files["index.html"], err = fill("index.html", parts, f); err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if name == "sw.js" { // the browser keeps it by itself
			continue
		}
		file, err := whole(name, files[name])
		if err != nil {
			return nil, err
		}
		f.Files = append(f.Files, file)
	}
	files["sw.js"], err = fill("sw.js", parts, f)
	return files, err
}

// oneFile gives the page with everything inside. Its policy allows no address at all, and only the scripts and the style
// that it was packed with, by their hashes.
func oneFile(parts map[string][]byte, version string) ([]byte, error) {
	f := filling{
		Version: version,
		OneFile: true,
		Icon:    base64.StdEncoding.EncodeToString(parts["icon.svg"]),
		Style:   partOf("style.css", parts),
		Wasm:    base64.StdEncoding.EncodeToString(parts[programName]),
	}
	var hashes []string
	for _, name := range append([]string{watchName}, scripts...) {
		f.Scripts = append(f.Scripts, partOf(name, parts))
		hashes = append(hashes, site.HashSource(string(parts[name])))
	}
	for _, inside := range append(f.Scripts, f.Style) {
		for _, end := range []string{"</script", "</style", "<!--"} {
			if strings.Contains(strings.ToLower(inside.Text), end) {
				return nil, fmt.Errorf("%q in a style or script would end it early", end)
			}
		}
	}
	f.Policy = fmt.Sprintf("default-src 'none'; script-src %s 'wasm-unsafe-eval'; style-src %s; img-src data: blob:; %s",
		strings.Join(hashes, " "), site.HashSource(f.Style.Text), site.CommonPolicy)
	return fill("index.html", parts, f)
}
