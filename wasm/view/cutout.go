package view

import (
	"fmt"
	"slices"
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cutouts is the list of what is taken out of a surface.
func cutouts(s *page.State, surface *job.Surface) html {
	list := surface.Path + ".cutout"
	var items []html
	for i := range surface.Cutouts {
		typed := &surface.Cutouts[i]
		line := cutoutLine{i, fmt.Sprint(s.Doc().At(typed.Path))}
		items = append(items, markup.Kept("item-"+typed.Path, line, func(id string, l cutoutLine) html {
			return region(id, "div", a("class", "layer"), listRow(typed.Path, thumbOf(typed), cutoutName(l.at), typed.Shape.Name, ""))
		}))
	}
	return region("list-"+list, "div", a("class", "layers", "tabindex", "-1"), append(items, action("add", list, "", words.AddCutOut, "quiet"))...)
}

// cutoutLine is all that the line of a cut-out shows.
type cutoutLine struct {
	at    int
	typed string
}

// cutoutAt is a cut-out as it was read.
func cutoutAt(s *page.State, path string) (at int, typed *job.Part) {
	for _, surface := range s.Plan.Job.Surfaces {
		list := surface.Cutouts
		if at := slices.IndexFunc(list, func(p job.Part) bool { return p.Path == path }); at >= 0 {
			return at, &list[at]
		}
	}
	return 0, nil
}

func cutoutName(at int) string { return words.CutOut + " " + strconv.Itoa(at+1) }

// cutoutSheet is what is taken out of a surface.
func cutoutSheet(s *page.State, item string) shown {
	at, typed := cutoutAt(s, item)
	if typed == nil {
		return shown{}
	}
	return shown{Title: cutoutName(at), Body: join(
		sketchOf(s, typed), sizes(s, item),
		dial(s, item+".count", dialLine{Name: words.HowManyAlike, Default: "1"}),
		el("div", a("class", "itemtools"), action("remove", item, "", words.Remove, "quiet"))),
		Act: act("back", "", "", words.Done)}
}
