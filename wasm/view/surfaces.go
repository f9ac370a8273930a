package view

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// surfaces is the screen where everything begins: what is to be coated, measured.
func surfaces(s *page.State) shown {
	typed := s.Plan.Job.Surfaces
	if len(typed) == 0 {
		return firstVisit(s)
	}
	rows := make([]html, 0, len(typed))
	for i := range typed {
		rows = append(rows, surfaceRow(s, i))
	}
	return shown{Body: join(
		areaInAll(s),
		region("list-surface", "div", a("class", "layers", "tabindex", "-1"), rows...),
		tiles(words.AddOneLike, usualShapes()),
	)}
}

// firstVisit says what the page is and what to mind, and the three ways to begin.
func firstVisit(s *page.State) shown {
	ways := []html{action("go", "cup", "", words.OnlyACup, "quiet")}
	if !s.InDemo {
		ways = append(ways, action("demo", "", "", words.LookAtMadeUp, "quiet"))
	}
	var cautions []html
	for _, text := range words.BeforeATin {
		cautions = append(cautions, el("li", nil, txt(text)))
	}
	return shown{Title: words.PageName, Body: join(el("p", a("class", "lead"), txt(words.WhatItIs)),
		tiles(words.AddASurface, usualShapes()),
		el("div", a("class", "menu"), ways...),
		el("ul", a("class", "cautions"), cautions...))}
}

// areaInAll is the list's heading figure, which opens to its working.
func areaInAll(s *page.State) html {
	area := of(s, s.Plan.Area(), unit.Areas)
	if s.Plan.IsWithheld("") {
		area = "–"
	}
	parts := []html{el("p", a("class", "grand"), el("span", a("class", "unseen"), txt(words.AreaInAll)), el("span", a("class", "value"), txt(area)), whyButton(s, "area"))}
	if s.Why == "area" {
		parts = append(parts, workings(s, s.Plan.Area().Step))
	}
	return region("fig-area", "div", a("class", "headline"), parts...)
}

// whyButton opens a figure's working where the figure itself is no button.
func whyButton(s *page.State, id string) html {
	return el("button", a("class", "whybutton", "type", "button", "id", "why-"+id, "data-do", "why", "data-path", id, "aria-expanded", yesNo(s.Why == id)), txt(words.Why))
}

// surfaceRow is one line of the list. There may be hundreds: they are kept.
func surfaceRow(s *page.State, at int) html {
	typed := s.Plan.Job.Surfaces[at]
	line := surfaceLine{path: typed.Path, name: nameOf(typed), small: words.SurfaceLine(typed, getsOf(s, typed)),
		shape: typed.Part.Shape.Key, girth: typed.Part.Input.Choices[surface.GirthKey], scale: s.Plan.Job.Units.Scale(unit.Areas)}
	if p := &s.Plan.Surfaces()[at]; p.Known {
		line.area, line.from = p.Area.Value, p.Area.Step
	}
	if s.AskAt(typed.Path) != nil {
		line.small = words.Listed(words.UnusualArea, line.small)
	}
	return markup.Kept("item-"+typed.Path, line, func(id string, l surfaceLine) html { return surfaceOf(id, l, &typed.Part) })
}

// surfaceLine is all that the line of a surface shows. Its sizes are where its
// area comes from, and so other ones have another area.
type surfaceLine struct {
	path, name, small, shape, girth string
	area                            unit.Area
	from                            *working.Step // nil: not known yet
	scale                           unit.Scale
}

func surfaceOf(id string, l surfaceLine, typed *job.Part) html {
	sum, thumb := words.NotMeasured, thumbOf(&job.Part{Shape: typed.Shape, Input: surface.Input{Choices: typed.Input.Choices}})
	if l.from != nil {
		sum, thumb = unit.Write(float64(l.area), l.scale, 3), thumbOf(typed)
	}
	return region(id, "div", a("class", "layer"), listRow(l.path, thumb, l.name, l.small, sum))
}

// thumbOf is a small picture of a shape in its sizes.
func thumbOf(typed *job.Part) html { return draw.Thumb(typed.Shape.Sketch(typed.Input)) }

// usualShapes are those that are offered without being asked for.
func usualShapes() []*surface.Shape {
	return []*surface.Shape{surface.Find("rectangle"), surface.Find("girths"), surface.Find("box")}
}

// tiles are the pictures that a surface is started from.
func tiles(heading string, shapes []*surface.Shape) html {
	var list []html
	for _, shape := range shapes {
		list = append(list, tile("like-", "add", "surface", shape.Key, "", draw.Thumb(shape.Sketch(surface.Input{})), words.ShapeTile(shape)))
	}
	list = append(list, el("button", a("class", "tile", "type", "button", "id", page.OpenerID(page.ShapesSheet), "data-do", "sheet", "data-path", page.ShapesSheet),
		el("span", a("class", "dots", "aria-hidden", "true"), txt("•••")), txt(words.MoreShapes(len(surface.Shapes)-len(shapes)))))
	return join(el("h2", nil, txt(heading)), el("div", a("class", "tiles"), list...))
}

func tile(id, do, path, text, pressed string, picture html, name string) html {
	attrs := a("class", "tile", "type", "button", "id", id+text, "data-do", do, "data-path", path, "data-text", text)
	if pressed != "" {
		attrs = append(attrs, a("aria-pressed", pressed)...)
	}
	return el("button", attrs, picture, txt(name))
}

// shapesSheet offers every shape for a new surface.
func shapesSheet(*page.State) shown {
	var list []html
	for _, shape := range surface.Shapes {
		list = append(list, tile("every-", "add", "surface", shape.Key, "", draw.Thumb(shape.Sketch(surface.Input{})), words.ShapeTile(shape)))
	}
	return shown{Title: words.EveryShape, Body: el("div", a("class", "tiles all"), list...)}
}

// shapeSheet asks a surface or cut-out for another shape.
func shapeSheet(s *page.State, item string) shown {
	var list []html
	now := shapeAt(s, item)
	for _, shape := range surface.Shapes {
		list = append(list, tile("shape-", "choose", item+".shape", shape.Key, yesNo(shape == now), draw.Thumb(shape.Sketch(surface.Input{})), words.ShapeTile(shape)))
	}
	return shown{Title: words.WhichShape, Body: el("div", a("class", "tiles all"), list...)}
}

func getsOf(s *page.State, typed *job.Surface) string {
	if typed.Buildup == "" || s.Doc().Get(typed.Buildup+".step") == "" && s.Doc().Get(typed.Buildup+".name") == "" {
		return ""
	}
	return buildupName(s, typed.Buildup)
}

func surfaceName(s *page.State, path string) string {
	return nameOf(&job.Surface{Name: s.Doc().Get(path + ".name")})
}

func nameOf(s *job.Surface) string {
	if s.Name == "" {
		return words.UnnamedSurface
	}
	return s.Name
}
