package job

import (
	"slices"
	"sort"
	"strconv"
	"strings"
)

// Line is one thing that was typed.
type Line struct{ Path, Text string }

// Document is a job as it was typed. It is a value: changing it gives a new
// one and leaves the old as it was. The zero value is an empty job.
type Document struct{ lines []Line } // sorted by path, no empty texts

// Of makes a document of lines in any order; of two with the same path the later
// counts, and a line with an empty text is left out.
func Of(lines []Line) Document {
	return Document{slices.DeleteFunc(sorted(lines), func(l Line) bool { return l.Text == "" })}
}

// sorted gives the lines in the order of their paths; of two with the same path,
// the later.
func sorted(lines []Line) []Line {
	lines = slices.Clone(lines)
	sort.SliceStable(lines, func(i, j int) bool { return lines[i].Path < lines[j].Path })
	kept := lines[:0]
	for i, l := range lines {
		if i == len(lines)-1 || lines[i+1].Path != l.Path {
			kept = append(kept, l)
		}
	}
	return kept
}

func (d Document) find(path string) (int, bool) {
	at := sort.Search(len(d.lines), func(i int) bool { return d.lines[i].Path >= path })
	return at, at < len(d.lines) && d.lines[at].Path == path
}

// Get gives the text at the path, or "" where nothing was typed.
func (d Document) Get(path string) string {
	if at, found := d.find(path); found {
		return d.lines[at].Text
	}
	return ""
}

// Set gives the document with the text at the path; an empty text removes the line.
func (d Document) Set(path, text string) Document {
	at, found := d.find(path)
	switch {
	case found && text == "":
		return Document{slices.Delete(slices.Clone(d.lines), at, at+1)}
	case found:
		lines := slices.Clone(d.lines)
		lines[at].Text = text
		return Document{lines}
	case text == "":
		return d
	}
	return Document{slices.Insert(slices.Clone(d.lines), at, Line{path, text})}
}

// Lines gives every line in the order of the paths. It must not be changed.
func (d Document) Lines() []Line { return d.lines }

// Under gives the lines below the path ("surface.3" has "surface.3.height").
func (d Document) Under(path string) []Line {
	from, _ := d.find(path + ".")
	to := from
	for to < len(d.lines) && strings.HasPrefix(d.lines[to].Path, path+".") {
		to++
	}
	return d.lines[from:to]
}

// At gives the lines at the path and below it.
func (d Document) At(path string) []Line {
	from, _ := d.find(path)
	under := d.Under(path)
	below, _ := d.find(path + ".")
	return d.lines[from : below+len(under)]
}

// Items gives the ids of the list at the path, in order, each once. A word with
// a dot isn't an id: it would lead into another item.
func (d Document) Items(list string) []string {
	var ids []string
	seen := map[string]bool{}
	for _, id := range strings.Fields(d.Get(list)) {
		if !strings.Contains(id, ".") && !seen[id] {
			seen[id] = true
			ids = append(ids, id)
		}
	}
	return ids
}

// Holds says if the item is in its list, as Items gives it.
func (d Document) Holds(item string) bool {
	list, id := Split(item)
	for word := range strings.FieldsSeq(d.Get(list)) {
		if word == id {
			return true
		}
	}
	return false
}

// Add puts a new item at the end of the list and gives its path. An id isn't
// used again while any line of its item is left, or any line that refers to
// it: a surface never gets another build-up than the one chosen for it.
func (d Document) Add(list string) (Document, string) {
	id := d.nextID(list)
	return d.Set(list, strings.Join(append(d.Items(list), id), " ")), list + "." + id
}

func (d Document) nextID(list string) string {
	top := 0
	count := func(id string) {
		n, _ := strconv.Atoi(id) // a word as id counts as 0
		top = max(top, n)
	}
	for _, id := range d.Items(list) {
		count(id)
	}
	for _, line := range d.lines {
		if rest, found := strings.CutPrefix(strings.TrimPrefix(line.Path, real), list+"."); found {
			id, _, _ := strings.Cut(rest, ".")
			count(id)
		}
		if rest, found := strings.CutPrefix(line.Text, list+"."); found { // refers to the item by its path
			id, _, _ := strings.Cut(rest, ".")
			count(id)
		} else if _, key := Split(line.Path); key == list && line.Path != list { // by its id: a card
			count(line.Text)
		}
	}
	return strconv.Itoa(top + 1)
}

// Copy adds a copy of the item after it and gives the new item's path. What isn't
// in its list isn't copied.
func (d Document) Copy(item string) (Document, string) {
	list, id := Split(item)
	ids := d.Items(list)
	at := slices.Index(ids, id)
	if at < 0 {
		return d, item
	}
	next := d.nextID(list)
	lines := slices.Clone(d.lines)
	for _, line := range d.Under(item) {
		lines = append(lines, Line{list + "." + next + strings.TrimPrefix(line.Path, item), line.Text})
	}
	return Of(lines).Set(list, strings.Join(slices.Insert(ids, at+1, next), " ")), list + "." + next
}

// Remove removes the item, with all its lines and what was confirmed of it. An item
// that isn't in its list stays.
func (d Document) Remove(item string) Document {
	list, id := Split(item)
	ids := d.Items(list)
	at := slices.Index(ids, id)
	if at < 0 {
		return d
	}
	lines := slices.DeleteFunc(slices.Clone(d.lines), func(l Line) bool {
		path := strings.TrimPrefix(l.Path, real)
		return path != list && IsAtOrUnder(path, item)
	})
	return Document{lines}.Set(list, strings.Join(slices.Delete(ids, at, at+1), " "))
}

// Move shifts the item by a number of places in its list, at most to its end.
func (d Document) Move(item string, by int) Document {
	list, id := Split(item)
	ids := d.Items(list)
	from := slices.Index(ids, id)
	if from < 0 {
		return d
	}
	to := min(max(from+by, 0), len(ids)-1)
	ids = slices.Insert(slices.Delete(ids, from, from+1), to, id)
	return d.Set(list, strings.Join(ids, " "))
}

// real is the prefix to the path of a figure that was asked about and confirmed.
const real = "real."

// Real gives the path under which the builder's confirmation of a figure is kept.
func Real(path string) string { return real + path }

// Split cuts a path into what it lies under and its last part.
func Split(path string) (under, last string) {
	at := strings.LastIndexByte(path, '.')
	if at < 0 {
		return "", path
	}
	return path[:at], path[at+1:]
}

// Change is one line's text before and after.
type Change struct{ Path, Before, After string }

// Changes lists what differs between two documents, by path.
func Changes(before, after Document) []Change {
	var list []Change
	a, b := before.lines, after.lines
	for len(a) > 0 || len(b) > 0 {
		switch {
		case len(a) > 0 && len(b) > 0 && a[0] == b[0]: // nearly always, and mostly the same string
			a, b = a[1:], b[1:]
		case len(b) == 0 || len(a) > 0 && a[0].Path < b[0].Path:
			list = append(list, Change{a[0].Path, a[0].Text, ""})
			a = a[1:]
		case len(a) == 0 || b[0].Path < a[0].Path:
			list = append(list, Change{b[0].Path, "", b[0].Text})
			b = b[1:]
		default:
			if a[0].Text != b[0].Text {
				list = append(list, Change{a[0].Path, a[0].Text, b[0].Text})
			}
			a, b = a[1:], b[1:]
		}
	}
	return list
}

// JoinChanges joins changes and those that followed them into one list, by path.
func JoinChanges(first, then []Change) []Change {
	list := make([]Change, 0, len(first)+len(then))
	for len(first) > 0 || len(then) > 0 {
		var c Change
		switch {
		case len(then) == 0 || len(first) > 0 && first[0].Path < then[0].Path:
			c, first = first[0], first[1:]
		case len(first) == 0 || then[0].Path < first[0].Path:
			c, then = then[0], then[1:]
		default:
			c = Change{first[0].Path, first[0].Before, then[0].After}
			first, then = first[1:], then[1:]
		}
		if c.Before != c.After {
			list = append(list, c)
		}
	}
	return list
}

// Redo makes the changes again.
func (d Document) Redo(changes []Change) Document {
	lines := make([]Line, 0, len(changes))
	for _, c := range changes {
		lines = append(lines, Line{c.Path, c.After})
	}
	return d.with(lines)
}

// Undo takes the changes back.
func (d Document) Undo(changes []Change) Document {
	lines := make([]Line, 0, len(changes))
	for _, c := range changes {
		lines = append(lines, Line{c.Path, c.Before})
	}
	return d.with(lines)
}

// with replaces the lines of the same paths; an empty text removes its line.
func (d Document) with(changed []Line) Document {
	lines, rest := make([]Line, 0, len(d.lines)+len(changed)), d
	for _, l := range sorted(changed) {
		at, found := rest.find(l.Path)
		lines, rest.lines = append(lines, rest.lines[:at]...), rest.lines[at:]
		if found {
			rest.lines = rest.lines[1:]
		}
		if l.Text != "" {
			lines = append(lines, l)
		}
	}
	return Document{append(lines, rest.lines...)}
}
