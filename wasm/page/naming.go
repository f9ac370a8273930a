package page

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// named gives a new surface a name that none has.
func named(doc job.Document, item string) job.Document {
	_, id := job.Split(item)
	name := words.SurfaceNumber(id)
	for _, other := range doc.Items("surface") {
		if strings.TrimSpace(doc.Get("surface."+other+".name")) == name {
			name += " (new)"
		}
	}
	return doc.Set(item+".name", name)
}

// numbered is the name of a copy: that of the item with the next number that no
// other of its list bears. One that would be too long stays as it is.
func numbered(doc job.Document, list, name string) string {
	taken := map[string]bool{}
	for _, id := range doc.Items(list) {
		taken[strings.TrimSpace(doc.Get(list+"."+id+".name"))] = true
	}
	base := strings.TrimRight(name, "0123456789")
	n, err := strconv.ParseInt(name[len(base):], 10, 32)
	if err != nil { // no number, or none that anybody counts with
		base, n = name, 1
	}
	for n++; ; n++ {
		next := strings.TrimSpace(strings.TrimSpace(base) + " " + strconv.FormatInt(n, 10))
		if len(next) > job.MaxWords {
			return name
		}
		if !taken[next] {
			return next
		}
	}
}
