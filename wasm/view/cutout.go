package view

import (
	"slices"
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cutouts is the list of what is taken out of a surface.
func cutouts(s *page.State, path string) html {
	list := path + ".cutout"
	var items []html
	for i, id := range s.Doc().Items(list) {
		item := list + "." + id
		items = append(items, markup.Kept("item-"+item, cutoutLine{item, shapeAt(s, item).Key, i}, cutoutOf))
	}
	return region("list-"+list, "div", a("class", "layers", "tabindex", "-1"), append(items, action("add", list, "", words.AddCutOut, "quiet"))...)
}

// cutoutLine is all that the line of a cut-out shows.
type cutoutLine struct {
	path, shape string
	at          int
}

func cutoutOf(id string, l cutoutLine) html {
	shape := surface.Find(l.shape)
	return region(id, "div", a("class", "layer"), listRow(l.path, draw.Thumb(shape.Sketch()), cutoutName(l.at), shape.Name, ""))
}

func cutoutName(at int) string { return words.CutOut + " " + strconv.Itoa(at+1) }

// cutoutSheet is what is taken out of a surface.
func cutoutSheet(s *page.State, item string) shown {
	list, id := job.Split(item)
	at := slices.Index(s.Doc().Items(list), id)
	return shown{Title: cutoutName(at), Body: join(
		sketchOf(s, item), sizes(s, item),
		dial(s, item+".count", dialLine{Name: words.HowManyAlike, Default: "1"}),
		el("div", a("class", "itemtools"), action("remove", item, "", "Remove", "quiet"))),
		Act: act("back", "", "", words.Done)}
}
