package job

import (
	"slices"
	"strconv"
	"strings"
)

// Line is one thing that was typed.
type Line struct{ Path, Text string }

// Document is a job as it was typed. It is a value: changing it gives a new
// one and leaves the old as it was. The zero value is an empty job.
type Document struct{ lines []Line } // sorted by path, no empty texts

func (d Document) find(path string) (int, bool) {
	return slices.BinarySearchFunc(d.lines, path, func(l Line, p string) int { return strings.Compare(l.Path, p) })
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

// Items gives the ids of the list at the path, in order, each once.
func (d Document) Items(list string) []string { return strings.Fields(d.Get(list)) }

// Add puts a new item at the end of the list and gives its path. Ids are never
// used again while any line of theirs is left, so undo can't mix two items up.
func (d Document) Add(list string) (Document, string) {
	id := d.nextID(list)
	return d.Set(list, strings.TrimSpace(d.Get(list)+" "+id)), list + "." + id
}

func (d Document) nextID(list string) string {
	top := 0
	for _, id := range d.Items(list) {
		n, _ := strconv.Atoi(id) // a word as id counts as 0
		top = max(top, n)
	}
	return strconv.Itoa(top + 1)
}

// Copy adds a copy of the item behind it and gives the new item's path.
func (d Document) Copy(item string) (Document, string) {
	list, id := Split(item)
	next := list + "." + d.nextID(list)
	copied := d
	for _, line := range d.Under(item) {
		copied = copied.Set(next+strings.TrimPrefix(line.Path, item), line.Text)
	}
	ids := d.Items(list)
	_, nextID := Split(next)
	ids = slices.Insert(ids, slices.Index(ids, id)+1, nextID)
	return copied.Set(list, strings.Join(ids, " ")), next
}

// Remove takes the item and all its lines away.
func (d Document) Remove(item string) Document {
	list, id := Split(item)
	lines := slices.DeleteFunc(slices.Clone(d.lines), func(l Line) bool { return strings.HasPrefix(l.Path, item+".") })
	ids := slices.DeleteFunc(d.Items(list), func(other string) bool { return other == id })
	return Document{lines}.Set(list, strings.Join(ids, " "))
}

// Move shifts the item by so many places in its list, as far as the list goes.
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

// Redo makes the changes again; Undo takes them back.
func (d Document) Redo(changes []Change) Document {
	for _, c := range changes {
		d = d.Set(c.Path, c.After)
	}
	return d
}

// Undo takes the changes back.
func (d Document) Undo(changes []Change) Document {
	for _, c := range changes {
		d = d.Set(c.Path, c.Before)
	}
	return d
}
