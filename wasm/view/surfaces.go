package view

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// surfaces is the screen where everything begins: what is to be coated, measured.
func surfaces(s *page.State) html {
	typed := s.Plan.Job.Surfaces
	if len(typed) == 0 {
		return emptySurfaces(s)
	}
	items := make([]html, 0, len(typed))
	for i := range typed {
		items = append(items, surfaceItem(s, i))
	}
	return join(
		figure(s, "area", "Area in all", of(s, s.Plan.Area, unit.Areas), s.Plan.Area.Step),
		region("list-surface", "div", a("class", "list", "tabindex", "-1"), items...),
		action("add", "surface", "", "Add a surface", "main"),
	)
}

func emptySurfaces(s *page.State) html {
	demo := nothing
	if !s.InDemo {
		demo = el("p", nil, action("demo", "", "", "Look at a made-up job first", "quiet"))
	}
	return el("div", a("class", "empty"),
		el("p", nil, txt("Measure what you are going to coat: one surface for each part, with a tape along the skin.")),
		el("p", nil, txt("From the surfaces follow the film, the cup and the order list.")),
		action("add", "surface", "", "Add a surface", "main"), demo)
}

// surfaceItem is one line of the list; the open one has its form below it. There
// may be hundreds, all the others shut: these are kept.
func surfaceItem(s *page.State, at int) html {
	typed := &s.Plan.Job.Surfaces[at]
	line := surfaceLine{path: typed.Path, name: nameOf(typed), scale: s.Plan.Job.Units.Scale(unit.Areas)}
	if p := plannedSurface(s, typed.Path, at); p != nil && p.Known {
		line.isKnown, line.area = true, p.Area.Value
	}
	id := "item-" + typed.Path
	if !s.IsOpen(typed.Path) {
		return markup.Kept(id, line, shutSurface)
	}
	return region(id, "article", a("class", "item", "data-open", "true"),
		itemLine(typed.Path, true, line.name, line.sum()), surfaceForm(s, typed.Path, at), itemTools(typed.Path, at, len(s.Plan.Job.Surfaces)))
}

// surfaceLine is all that the line of a surface shows.
type surfaceLine struct {
	path, name string
	isKnown    bool
	area       unit.Area
	scale      unit.Scale
}

func (l surfaceLine) sum() string {
	if !l.isKnown {
		return "not measured yet"
	}
	return unit.Write(float64(l.area), l.scale, 3)
}

func shutSurface(id string, l surfaceLine) html {
	return region(id, "article", a("class", "item", "data-open", "false"), itemLine(l.path, false, l.name, l.sum()))
}

// itemLine is the line that opens an item: its name, and in a region of its
// own what it comes to.
func itemLine(path string, open bool, name, sum string) html {
	return el("button", a("class", "line", "type", "button", "id", path, "data-do", "open", "data-path", path, "aria-expanded", yesNo(open)),
		region("name-"+path, "span", a("class", "name"), txt(name)),
		region("sum-"+path, "span", a("class", "sum"), txt(sum)))
}

func itemTools(path string, at, count int) html {
	tools := []html{action("copy", path, "", "Copy", "quiet")}
	if at > 0 {
		tools = append(tools, action("move", path, "up", "Move up", "quiet"))
	}
	if at < count-1 {
		tools = append(tools, action("move", path, "down", "Move down", "quiet"))
	}
	tools = append(tools, action("remove", path, "", "Remove", "quiet"))
	return el("div", a("class", "itemtools"), tools...)
}

func surfaceName(s *page.State, path string) string {
	return nameOf(&job.Surface{Name: s.Doc().Get(path + ".name")})
}

func nameOf(s *job.Surface) string {
	if s.Name == "" {
		return "Surface without a name"
	}
	return s.Name
}

// plannedSurface finds a surface in the plan, which may be older than the list;
// nil: it isn't there. Mostly it has the same place.
func plannedSurface(s *page.State, path string, at int) *plan.Surface {
	if list := s.Plan.Surfaces; at < len(list) && list[at].Path == path {
		return &list[at]
	}
	for i := range s.Plan.Surfaces {
		if s.Plan.Surfaces[i].Path == path {
			return &s.Plan.Surfaces[i]
		}
	}
	return nil
}

func surfaceForm(s *page.State, path string, at int) html {
	return el("div", a("class", "form"),
		field(s, path+".name"),
		partForm(s, path),
		field(s, path+".sides"),
		cutouts(s, path),
		fieldWith(s, path+".buildup", fieldExtras{Options: buildupOptions(s)}),
		field(s, path+".ground"), field(s, path+".water"), field(s, path+".prepared"),
		fieldWith(s, path+".prepared-grade", fieldExtras{Default: "P120"}),
		fieldWith(s, path+".ground-age", fieldExtras{Default: "not said", Hint: "For epoxy and laminate that is younger than a few weeks."}),
		fieldWith(s, path+".patch", stepExtras("patch")),
		field(s, path+".lies"), field(s, path+".inside"), field(s, path+".by"),
		surfaceFigures(s, path, at),
	)
}

func shapeAt(s *page.State, path string) *surface.Shape {
	if shape := surface.Find(s.Doc().Get(path + ".shape")); shape != nil {
		return shape
	}
	return surface.Shapes[0]
}

// partForm is the measures of anything that has a shape, beside its sketch.
func partForm(s *page.State, path string) html {
	shape := shapeAt(s, path)
	parts := []html{field(s, path+".shape"), draw.Sketch(shape.Sketch(), "Sketch of the shape: "+shape.Name)}
	for _, d := range shape.Dims {
		parts = append(parts, fieldWith(s, path+"."+d.Key, fieldExtras{Letter: d.Letter, Label: d.Name}))
	}
	if shape.Faces != nil {
		parts = append(parts, faces(s, path, shape))
	}
	if shape.Rows != nil {
		parts = append(parts, rows(s, path, shape.Rows))
	}
	parts = append(parts, fieldWith(s, path+".count", fieldExtras{Default: "1"}))
	return el("div", a("class", "part"), parts...)
}

// faces is a row of switches, one for each face.
func faces(s *page.State, path string, shape *surface.Shape) html {
	at := path + "." + surface.FacesKey
	chosen := s.Doc().Get(at)
	var buttons []html
	for _, face := range shape.Faces {
		on := hasWord(chosen, face.Key)
		buttons = append(buttons, el("button", a("class", "switch", "type", "button", "id", "face-"+at+face.Key, "data-do", "set", "data-path", at,
			"data-text", toggled(shape.Faces, chosen, face.Key), "aria-pressed", yesNo(on)), txt(face.Name)))
	}
	return region("faces-"+path, "fieldset", a("class", "switches"),
		append([]html{el("legend", nil, txt("Faces that are coated"))}, append(buttons, said(s, at, job.FieldAt(at)))...)...)
}

// rows is the list of a shape's stations or corners.
func rows(s *page.State, path string, r *surface.Rows) html {
	list := path + "." + r.Key
	var lines []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		var cells []html
		for _, d := range r.Columns {
			cells = append(cells, fieldWith(s, row+"."+d.Key, fieldExtras{Letter: d.Letter, Label: d.Name}))
		}
		cells = append(cells, action("remove", row, "", "Remove", "quiet"))
		lines = append(lines, el("div", a("class", "row", "id", row, "tabindex", "-1"),
			el("p", a("class", "rowname"), txt(capital(r.Row)+" "+unit.Number(float64(i+1), 3))), join(cells...)))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(capital(r.Name))), join(lines...), action("add", list, "", "Add a "+r.Row, "quiet"))
}

func cutouts(s *page.State, path string) html {
	list := path + ".cutout"
	var items []html
	ids := s.Doc().Items(list)
	for i, id := range ids {
		item := list + "." + id
		open := s.IsOpen(item)
		parts := []html{itemLine(item, open, "Cut-out "+unit.Number(float64(i+1), 3), shapeAt(s, item).Name)}
		if open {
			parts = append(parts, partForm(s, item), action("remove", item, "", "Remove", "quiet"))
		}
		items = append(items, region("item-"+item, "div", a("class", "item inner", "data-open", yesNo(open)), parts...))
	}
	return region("list-"+list, "div", a("class", "cutouts", "tabindex", "-1"),
		join(items...), action("add", list, "", "Add a cut-out", "quiet"))
}

func surfaceFigures(s *page.State, path string, at int) html {
	p := plannedSurface(s, path, at)
	if p == nil {
		p = new(plan.Surface)
	}
	return region("figures-"+path, "div", a("class", "figures"),
		waits(s, path),
		figure(s, path+".area", "Area", of(s, p.Area, unit.Areas), p.Area.Step),
		figure(s, path+".edge", "Edge, for tape", of(s, p.Edge, unit.Runs), p.Edge.Step),
		surfaceNotes(p), askAt(s, path), surfaceFindings(s, path))
}

// waits says which field is still to be typed, if the figures wait for one.
func waits(s *page.State, path string) html {
	for _, w := range s.Plan.Waiting {
		if hasPrefix(w.Path, path+".") {
			if f := job.FieldAt(w.Path); f != nil {
				return el("p", a("class", "hint"), txt("Still to be typed: "+f.Name+"."))
			}
			return el("p", a("class", "hint"), txt(words.Sentence(w.Err, nil, s.Plan.Job.Units)))
		}
	}
	return nothing
}

func askAt(s *page.State, path string) html {
	if ask := s.AskAt(path); ask != nil {
		return question(ask, s.Plan.Job.Units)
	}
	return nothing
}

var noteWords = map[surface.Note]string{
	surface.EdgeAtLeast:     "The edge is the shortest that these measures allow.",
	surface.NoEdge:          "No edge was given, so no tape is counted for it.",
	surface.ByFirstRule:     "Taken by Simpson's first rule.",
	surface.BySecondRule:    "Taken by Simpson's second rule.",
	surface.ByTrapezoids:    "Taken by trapezoids: an even spacing would be more exact.",
	surface.GirthsReadLow:   "Stations measured straight read 1 to 2 % low on beamy ends.",
	surface.CornersNotEdges: "Inside a box the corners are hollow: only open rims are counted as edge.",
}

func surfaceNotes(p *plan.Surface) html {
	var lines []html
	for _, n := range p.Notes {
		lines = append(lines, el("p", a("class", "hint"), txt(noteWords[n])))
	}
	return join(lines...)
}

func buildupOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, id := range s.Doc().Items("buildup") {
		path := "buildup." + id
		options = append(options, job.Option{Key: path, Name: buildupName(s, path)})
	}
	return options
}
