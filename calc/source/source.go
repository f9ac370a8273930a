// Package source is the bibliography: one value per document that a formula, a
// default or a check rests on. Nothing is cited that isn't here.
package source

// Document is one publication.
type Document struct {
	ID    string // short, stable: "WMO-8"
	Title string // as a reader would look it up
	By    string // publisher or author, with year where it matters
	Seen  bool   // read in a stored copy; false: remembered
}

// Ref is a place in a document.
type Ref struct {
	Document *Document
	Place    string // "Annex 4.B", "p. 74"; empty: the whole
}

// At gives the place in the document.
func (d *Document) At(place string) Ref { return Ref{d, place} }

// String gives the reference as it stands beside a figure.
func (r Ref) String() string {
	if r.Document == nil {
		return ""
	}
	if r.Place == "" {
		return r.Document.Title
	}
	return r.Document.Title + ", " + r.Place
}

// Mark says how far a figure can be trusted.
type Mark int

// The marks, from the most to the least certain.
const (
	Exact          Mark = iota // mathematics or a definition
	Published                  // in a document that was read
	FromMemory                 // published, but remembered and not seen again
	Calculated                 // follows from marked figures
	CommonPractice             // what the trade does; no citable source
	Assumption                 // ours, for lack of anything better
	Typed                      // the builder's own figure
)

var markNames = [...]string{"exact", "published", "from memory", "calculated", "common practice", "assumption", "typed by you"}

// String names the mark as it is shown.
func (m Mark) String() string {
	if m < 0 || int(m) >= len(markNames) {
		return "unmarked"
	}
	return markNames[m]
}

// CheckKinds lists the kinds of check that a row of testdata/published can be. The
// first OutsideKinds of them come from outside the project: somebody else printed,
// computed or measured the result. The others don't, however true they are: an
// identity (a definition, a conversion), a closed form of geometry, an example
// worked here from the inputs on, what the trade does, and what is remembered.
var CheckKinds = []string{
	"published example", "published table", "reference library", "measured by somebody else",
	"exact identity", "exact geometry", "worked here", "common practice", "from memory",
}

// OutsideKinds is how many of CheckKinds come from outside the project.
const OutsideKinds = 4
