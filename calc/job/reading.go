package job

import (
	"slices"
	"strings"
)

// Read gives the typed job and what can't be read. Lines with paths that no field
// has are ignored, and kept in the document.
func Read(d Document) (Job, []Problem) {
	r := new(Reading).Next(d)
	return r.Job, r.Problems
}

// Reading is a document as it was read, in parts, so that reading the next document
// costs no more than what differs in it. Nothing in it may be changed: readings
// share their parts.
type Reading struct {
	Job      Job
	Problems []Problem // what can't be read
	Mark     *Mark     // tells this reading from all others
	follows  *Mark     // the one before
	changed  []Line    // where they differ
	doc      Document
	parts    map[string]*part // by path
	surfaces items
	buildups items
	cards    items
	shops    items
}

// Mark tells one reading from another, without keeping it.
type Mark struct{ _ byte }

// Keeps says that the part at a path is the very same as in the reading of the
// mark; false: perhaps it is, and Part must be asked.
func (r *Reading) Keeps(mark *Mark, path string) bool {
	if mark != r.follows || len(r.changed) > fewChanges {
		return false
	}
	if card, isShop := strings.CutPrefix(path, shopList+"."); isShop {
		path = cards.Key + "." + card
	}
	for _, l := range r.changed {
		if strings.HasPrefix(l.Path, path) || l.Path == "units" || strings.HasPrefix(l.Path, "units.") {
			return false
		}
	}
	return true
}

// fewChanges is how many lines a key changes at most.
const fewChanges = 8

// items is a list that is read item by item.
type items struct {
	ids   string
	paths []string
	at    map[string]int // by path
	parts []*part
}

func (i *items) part(path string) *part {
	if at, known := i.at[path]; known {
		return i.parts[at]
	}
	return nil
}

// part is what was read of the lines at and under a path, which besides the units
// is all that its reader could see.
type part struct {
	value    any
	problems []Problem
}

// Next reads another document. A part in which neither a line nor a confirmation
// differs is kept as it was read before; with other units none is.
func (r *Reading) Next(d Document) *Reading {
	in := &reader{units: r.Job.Units, before: r, changed: changedPaths(r.doc, d)}
	in.next = &Reading{Mark: new(Mark), follows: r.Mark, changed: in.changed.lines, doc: d, parts: make(map[string]*part, len(r.parts))}
	if r.Mark == nil || len(in.changed.At("units")) > 0 {
		in.units, in.before = ReadUnits(d), new(Reading)
	}
	j := Job{Name: d.Get("name"), Currency: d.Get("currency"), Units: in.units}
	before := in.before
	j.Surfaces = itemsOf(in, surfaces.Key, surfaces.Key, d.Items, &in.next.surfaces, &before.surfaces, in.surface)
	j.Buildups = itemsOf(in, buildups.Key, buildups.Key, d.Items, &in.next.buildups, &before.buildups, in.buildup)
	keys := func(string) []string { return cardKeys(d) }
	everyCard := itemsOf(in, cards.Key, cards.Key, keys, &in.next.cards, &before.cards, in.cardAt)
	everyShop := itemsOf(in, cards.Key, shopList, keys, &in.next.shops, &before.shops, in.shopAt)
	j.Cards = slices.DeleteFunc(everyCard, func(c *Card) bool { return c == nil })
	j.Shops = slices.DeleteFunc(everyShop, func(s *Shop) bool { return s == nil })
	j.Bench, j.Day, j.Tests = again(in, "bench", in.bench), again(in, "day", in.day), again(in, "test", in.tests)
	j.Removals, j.Putties = again(in, "removal", in.removals), again(in, "putty", in.putties)
	j.Cups, j.Finished, j.Learnt = again(in, "cup", in.cups), again(in, "done", in.finished), again(in, "learn", in.learnt)
	in.next.Job = j
	return in.next
}

// Part gives what was read at the path, only to be compared: the part of another
// reading is identical where nothing differs that it was read from. For a path that
// isn't read as a part it is the text there.
func (r *Reading) Part(path string) any {
	if p, isPart := r.parts[path]; isPart {
		return p
	}
	if p := r.surfaces.part(path); p != nil {
		return p
	}
	if p := r.buildups.part(path); p != nil {
		return p
	}
	if p := r.cards.part(path); p != nil {
		return p
	}
	if p := r.shops.part(path); p != nil {
		return p
	}
	return r.doc.Get(path)
}

// CardParts gives the path of every card's part.
func (r *Reading) CardParts() []string { return r.cards.paths }

// shopList is the list of parts that the lines of a shop are read to. They stand
// among the card's, and a shop is read from those too.
const shopList = "shop"

// shopLines are the lines of a card that its shop is read from, and the card isn't.
var shopLines = []string{"stock", "counted", "pack", "grade", "buy"}

// ShopPart gives the path of the part that says how a card's material is bought.
func ShopPart(card string) string { return shopList + "." + card }

// PartOf gives the path of the part that a path belongs to: an item of the
// surfaces, build-ups or cards, or a card's shop; of all else the whole list.
func PartOf(path string) string {
	list, rest, isUnder := strings.Cut(path, ".")
	if !isUnder || list != surfaces.Key && list != buildups.Key && list != cards.Key {
		return list
	}
	id, field, _ := strings.Cut(rest, ".")
	if field, _, _ = strings.Cut(field, "."); list == cards.Key && slices.Contains(shopLines, field) {
		list = shopList
	}
	return list + "." + id
}

// changedPaths gives a line for every path at which the documents differ. What
// is confirmed of a figure counts as the figure's.
func changedPaths(before, after Document) Document {
	var lines []Line
	for _, c := range Changes(before, after) {
		lines = append(lines, Line{strings.TrimPrefix(c.Path, real), "changed"})
	}
	return Of(lines)
}

type reader struct {
	doc      Document // of the part that is read: its reader can reach nothing else
	units    Units
	problems []Problem // of this part
	before   *Reading
	changed  Document
	next     *Reading
}

// again keeps the part at the path, or reads it.
func again[T any](r *reader, path string, read func(path string) T) T {
	p := partAt(r, path, r.before.parts[path], read)
	r.next.parts[path] = p
	r.next.Problems = append(r.next.Problems, p.problems...)
	return p.value.(T)
}

// partAt gives the part as it was read before, where nothing in it differs.
func partAt[T any](r *reader, path string, before *part, read func(path string) T) *part {
	if before != nil && len(r.changed.At(path)) == 0 {
		return before
	}
	r.doc, r.problems = Document{r.next.doc.At(path)}, nil
	return &part{value: read(path), problems: r.problems}
}

// itemsOf keeps the items of a list, or reads them as parts with paths of their
// own. There may be hundreds: while the list has the same ones, those in which
// nothing differs aren't looked at.
func itemsOf[T any](r *reader, list, as string, ids func(list string) []string, now, before *items, read func(path string) T) []T {
	now.ids = r.next.doc.Get(list)
	if before.at != nil && before.ids == now.ids {
		now.paths, now.at, now.parts = before.paths, before.at, slices.Clone(before.parts)
		for _, l := range r.changed.Under(list) {
			part := PartOf(l.Path)
			_, id := Split(part)
			if i, is := now.at[as+"."+id]; is && (as == shopList || part == as+"."+id) {
				now.parts[i] = partAt(r, list+"."+id, nil, read)
			}
		}
	} else {
		now.at = map[string]int{}
		for _, id := range ids(list) {
			path := as + "." + id
			now.at[path] = len(now.parts)
			now.paths, now.parts = append(now.paths, path), append(now.parts, partAt(r, list+"."+id, before.part(path), read))
		}
	}
	values := make([]T, len(now.parts))
	for i, p := range now.parts {
		values[i] = p.value.(T)
		r.next.Problems = append(r.next.Problems, p.problems...)
	}
	return values
}
