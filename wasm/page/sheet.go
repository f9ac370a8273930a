package page

import (
	"slices"
	"strings"

	"shedreckoner/calc/job"
)

// A sheet is one thing opened: a surface, a step, a material, today's air. It
// covers its list on a phone and stands beside it on a wide screen, and goes with
// ✕ or the phone's Back. Sheets may lie on one another; each is named by a key,
// of an item or of what it shows ("surface.3", "menu").

// maxTrail is how many screens Back knows the way to.
const maxTrail = 20

// openSheet lays a sheet on top; one that lies below already comes up instead.
func openSheet(s *State, m Message) []Effect {
	if m.Path == "" {
		return nil
	}
	s.raise(m.Path)
	return []Effect{{Kind: Focus, Key: SheetHeading}}
}

// SheetHeading is the id of the uppermost sheet's heading.
const SheetHeading = "sheet-heading"

// back takes away the uppermost sheet, or goes to the screen before. Beside an
// open cup there is nothing to go back to: the page must not be left by mistake.
func back(s *State, m Message) []Effect {
	if n := len(s.Sheets); n > 0 {
		key := s.Sheets[n-1]
		s.Sheets, s.Why = s.Sheets[:n-1:n-1], ""
		return []Effect{{Kind: Focus, Key: OpenerID(key)}}
	}
	if n := len(s.Trail); n > 0 {
		s.Screen, s.Trail = s.Trail[n-1], s.Trail[:n-1:n-1]
		return []Effect{keepView(s), {Kind: Focus, Key: "heading"}}
	}
	if hasOpenCup(s.Doc()) {
		cupFirst(s, 1)
	}
	return nil
}

// OpenerID is the id of the control that opens a sheet: the focus goes back to it.
func OpenerID(key string) string { return "open-" + key }

// MoverID is the id of the button that moves an item up or down: the focus stays at it.
func MoverID(path, way string) string { return "do-move-" + path + way }

// moverOf is the button that moves an item on: the one that was pressed, unless the
// item has come to an end of its list, where only the other one is left.
func moverOf(doc job.Document, m Message) string {
	list, id := job.Split(m.Path)
	ids, way := doc.Items(list), m.Text
	switch at := slices.Index(ids, id); {
	case at == 0:
		way = "down"
	case at == len(ids)-1:
		way = "up"
	}
	return MoverID(m.Path, way)
}

// Depth is how many times Back has something to do before the page is left.
func (s *State) Depth() int {
	depth := len(s.Sheets) + len(s.Trail)
	if hasOpenCup(s.Doc()) {
		depth++
	}
	return depth
}

// swept takes away the sheets of items that are gone.
func swept(s *State) {
	doc := s.Doc()
	s.Sheets = slices.DeleteFunc(slices.Clone(s.Sheets), func(key string) bool { return !exists(doc, key) })
}

// exists reports whether every item that a key names is in its list; what is no
// item's key always exists.
func exists(doc job.Document, key string) bool {
	if !hasStep(doc, key) {
		return false
	}
	parts := strings.Split(key, ".")
	for n := 2; n <= len(parts); n += 2 {
		list := strings.Join(parts[:n-1], ".")
		if list == "card" {
			return hasCard(doc, "card."+parts[1])
		}
		if l := job.ListAt(list); l == nil || l.Max == 1 {
			return true
		}
		if !doc.Holds(list + "." + parts[n-1]) {
			return false
		}
	}
	return true
}
