package page

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// Place is where something typed stands: the screen, the sheets that must lie
// over it, the items that must be open for it to be seen, the outermost first,
// and what it is called.
type Place struct {
	Screen string
	Sheets []string
	Items  []string
	Name   string
}

// screenOf is the screen of what lies under a list of the job.
var screenOf = map[string]string{
	"surface": "surfaces", "buildup": "buildup", "removal": "buildup", "putty": "buildup", "bench": "cup", "day": "cup",
	"card": "cards", "cup": "log", "done": "log", "test": "log",
}

// itemKind is, by the last part of its list's path, what an item is called while
// it has no name of its own, and whether it has a line that opens it.
type itemKind struct {
	list, name string
	opens      bool
}

var itemKinds = []itemKind{
	{"surface", "surface", true}, {"cutout", "cut-out", true}, {"stations", "station", false}, {"corners", "corner", false},
	{"buildup", "build-up", true}, {"step", "step", true}, {"spot", "place", true}, {"grid", "row", true},
	{"comb", words.CombReadingItem, false}, {"witness", words.MeasuredFilmItem, false},
	{"removal", words.OwnRemovalItem, true}, {"putty", "putty", true}, {"part", "part", false},
	{"card", "card", true}, {"pack", "pack", false}, {"dose", words.TableRowItem, false},
	{"cup", "cup", true}, {"done", words.FinishedWorkItem, true}, {"test", words.CupTestItem, true},
}

func kindOf(list string) itemKind {
	for _, kind := range itemKinds {
		if kind.list == list {
			return kind
		}
	}
	return itemKind{}
}

// PlaceOf finds where the text at a path is typed.
func (s *State) PlaceOf(path string) Place {
	parts := strings.Split(path, ".")
	p := Place{Screen: screenOf[parts[0]], Sheets: sheetsOf(path)}
	if p.Screen == "" {
		p.Screen = "settings"
	}
	var names []string
	for n := 2; n <= len(parts); n += 2 {
		item := strings.Join(parts[:n], ".")
		if kindOf(parts[n-2]).opens && !hasSheet(item) {
			p.Items = append(p.Items, item)
		}
		if name := itemName(s, item); name != "" {
			names = append(names, name)
		}
	}
	if strings.HasPrefix(path, job.DayPath+".work-") {
		p.Screen, p.Sheets, p.Items = "log", []string{CalendarSheet, HoursSheet}, nil
	}
	switch {
	case p.Screen == "cup":
		p.Sheets = benchSheets(s, path)
	case p.Screen == "cards" && len(parts) > 1:
		p.Sheets = cardSheets(s, parts)
	}
	if f := job.FieldAt(path); f != nil {
		names = append(names, f.Name)
	}
	p.Name = strings.Join(names, ", ")
	return p
}

// itemName is an item's own name, or what it is and which of its list; nothing
// of what there is one of.
func itemName(s *State, item string) string {
	list, id := job.Split(item)
	if c := s.Plan.Job.CardByKey(id); list == "card" && c != nil {
		return c.Name
	}
	if name := s.Doc().Get(item + ".name"); name != "" {
		return name
	}
	_, key := job.Split(list)
	if kind := kindOf(key); kind.name != "" {
		return kind.name + " " + strconv.Itoa(slices.Index(s.Doc().Items(list), id)+1)
	}
	return ""
}

// IsShown reports whether a place is on the screen that is shown, under its sheets, with
// its items open.
func (s *State) IsShown(p Place) bool {
	return s.Screen == p.Screen && slices.Equal(s.Sheets, p.Sheets) && !slices.ContainsFunc(p.Items, func(item string) bool { return !s.IsOpen(item) })
}

// find goes to where the text at a path is typed.
func find(s *State, m Message) []Effect {
	p := s.PlaceOf(m.Path)
	if p.Screen != s.Screen {
		s.leave(p.Screen)
	}
	s.Screen, s.Sheets = p.Screen, p.Sheets
	for _, item := range p.Items {
		s.opened(item)
	}
	return []Effect{keepView(s), {Kind: Focus, Key: "f-" + m.Path}}
}
