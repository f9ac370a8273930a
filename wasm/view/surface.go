package view

import (
	"strconv"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// surfaceSheet is one surface: its shape and sizes, its area beside the sketch,
// and behind setup lines what it gets and what it lies on.
func surfaceSheet(s *page.State, path string) shown {
	list := s.Plan.Job.Surfaces
	at := 0
	for at < len(list) && list[at].Path != path {
		at++
	}
	if at == len(list) {
		return shown{}
	}
	typed, planned := list[at], s.Plan.Surface(path)
	return shown{Title: nameOf(typed), Body: join(
		el("div", a("class", "sizeup"), sketchOf(s, &typed.Part), measuredOf(s, &planned)),
		workingOf(s, &planned),
		sizes(s, path),
		region("asked-"+path, "div", a("class", "say"), askAt(s, path)),
		el("div", a("class", "row"),
			chips(s, path+".sides", "sides", "")),
		dial(s, path+".count", dialLine{Name: words.HowManyAlike, Default: "1"}),
		cutouts(s, typed),
		plainLine(s, path+".name", words.Called),
		setup(path+".gets", words.Gets(getsOf(s, typed)), page.Part(path, page.GetsPart)),
		setup(path+".under", words.Under(typed), page.Part(path, page.GroundPart)),
		region("figures-"+path, "div", a("class", "figures"), surfaceNotes(s, &planned), surfaceFindings(s, path)),
		itemTools(path, at, len(list))),
		Act: act("like", path, "", words.NextSurface)}
}

func shapeAt(s *page.State, path string) *surface.Shape {
	if shape := surface.Find(s.Doc().Get(path + ".shape")); shape != nil {
		return shape
	}
	return surface.Shapes[0]
}

// sketchOf is the sketch of a shape in the sizes that were typed, and under it
// what opens the choice of another shape.
func sketchOf(s *page.State, typed *job.Part) html {
	path, shape := typed.Path, typed.Shape
	sketch, sheet := shape.Sketch(typed.Input), page.Part(path, page.ShapePart)
	parts := []html{draw.Sketch(sketch, words.SketchOf+shape.Name)}
	if sketch.OffScale {
		parts = append(parts, el("small", nil, txt(words.NotToScale)))
	}
	return el("div", a("class", "shape"),
		region("sketch-"+path, "div", nil, parts...),
		el("button", a("class", "quiet", "type", "button", "id", page.OpenerID(sheet), "data-do", "sheet", "data-path", sheet, "aria-label", words.OtherShape), txt(shape.Name)),
		sayRegion(path+".shape", said(s, path+".shape", job.FieldAt(path+".shape"))))
}

// measuredOf is the area that follows, beside the sketch.
func measuredOf(s *page.State, p *plan.Surface) html {
	id := p.Path + ".area"
	return region("measured-"+p.Path, "div", a("class", "measured"),
		el("strong", nil, txt(of(s, p.Area, unit.Areas))),
		whyButton(s, id))
}

// workingOf is how the area and the edge were worked out, once it is asked for.
func workingOf(s *page.State, p *plan.Surface) html {
	if s.Why != p.Path+".area" {
		return region("working-"+p.Path, "div", a("hidden", ""))
	}
	return region("working-"+p.Path, "div", nil, workings(s, p.Area.Step))
}

// sizes are the measures of anything that has a shape.
func sizes(s *page.State, path string) html {
	shape := shapeAt(s, path)
	var parts, rare []html
	for _, d := range shape.Dims {
		if d.Kind == surface.Choice && shape.Rows != nil && d.Key != surface.GirthKey {
			rare = append(rare, el("p", a("class", "label", "aria-hidden", "true"), txt(words.Capital(d.Name))),
				chips(s, path+"."+d.Key, d.Name, "")) // of stations: seldom other than usual
			continue
		}
		if d.Kind == surface.Choice {
			parts = append(parts, chips(s, path+"."+d.Key, d.Name, ""), girthHint(s, path, d))
			continue
		}
		parts = append(parts, dial(s, path+"."+d.Key, dialLine{Letter: d.Letter, Name: d.Name}))
	}
	if shape.Faces != nil {
		parts = append(parts, faces(s, path, shape))
	}
	if shape.Rows != nil {
		parts = append(parts, rows(s, path, shape.Rows))
	}
	parts = append(parts, rare...)
	return region("sizes-"+path, "div", a("class", "sizes"), parts...)
}

// girthHint says what a girth counts for: it doubles nothing by itself.
func girthHint(s *page.State, path string, d surface.Dim) html {
	if d.Key != surface.GirthKey {
		return nothing
	}
	text := words.OneSideOnly
	if s.Doc().Get(path+"."+d.Key) == surface.Round {
		text = words.AllRoundOnce
	}
	return el("p", a("class", "hint"), txt(text))
}

// faces is a row of switches, one for each face.
func faces(s *page.State, path string, shape *surface.Shape) html {
	at := path + "." + surface.FacesKey
	chosen := s.Doc().Get(at)
	var buttons []html
	for _, face := range shape.Faces {
		on := hasWord(chosen, face.Key)
		buttons = append(buttons, el("button", a("class", "chip", "type", "button", "id", "face-"+at+face.Key, "data-do", "set", "data-path", at,
			"data-text", toggled(shape.Faces, chosen, face.Key), "aria-pressed", yesNo(on)), txt(face.Name)))
	}
	return region("f-"+at, "fieldset", a("class", "chips", "tabindex", "-1"),
		append([]html{el("legend", nil, txt(words.CoatedFaces))}, append(buttons, sayRegion(at, said(s, at, job.FieldAt(at))))...)...)
}

// rows is the list of a shape's stations or corners.
func rows(s *page.State, path string, r *surface.Rows) html {
	list := path + "." + r.Key
	isSpaced := s.Doc().Get(path+"."+surface.SpacingKey) != ""
	var lines []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		var cells []html
		for _, d := range r.Columns {
			if isSpaced && d.Key == surface.PositionKey && s.Doc().Get(row+"."+d.Key) == "" {
				continue // the spacing says where it is
			}
			cells = append(cells, fieldWith(s, row+"."+d.Key, fieldExtras{Letter: d.Letter, Label: d.Name}))
		}
		cells = append(cells, action("remove", row, "", words.Remove, "quiet"))
		lines = append(lines, el("div", a("class", "row", "id", row, "tabindex", "-1"),
			el("p", a("class", "rowname"), txt(words.Capital(r.Row)+" "+strconv.Itoa(i+1))), join(cells...)))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(words.Capital(r.Name))), sayRegion(list, saidOf(s, list)), join(lines...), action("add", list, "", words.AddA(r.Row), "quiet"))
}

// groundSheet is what a surface is made of, how it lies, how it was measured.
func groundSheet(s *page.State, path string) shown {
	var fields []html
	for _, key := range page.GroundFields() {
		at := path + "." + key
		switch f := job.FieldAt(at); {
		case key == "prepared-grade":
			fields = append(fields, fieldWith(s, at, fieldExtras{Default: "P120"}))
		case key == "ground-age":
			fields = append(fields, fieldWith(s, at, fieldExtras{Default: words.NotSaid, Hint: words.ForYoungGround}))
		case key == "patch":
			fields = append(fields, fieldWith(s, at, stepExtras("patch")))
		case f.Kind == job.Choice && len(f.Options) <= 4 && !f.Optional:
			fields = append(fields, chips(s, at, f.Name, ""))
		default:
			fields = append(fields, field(s, at))
		}
	}
	return shown{Title: words.Ground, Body: join(append(fields, region("figures-"+path, "div", a("class", "figures"), surfaceFindings(s, path)))...),
		Act: act("back", "", "", words.Done)}
}

// getsSheet is which build-up a surface gets.
func getsSheet(s *page.State, path string) shown {
	at := path + ".buildup"
	var list []html
	for _, o := range buildupOptions(s) {
		list = append(list, el("button", a("class", "option", "type", "button", "id", "choose-"+o.Key, "data-do", "choose", "data-path", at, "data-text", o.Key,
			"aria-pressed", yesNo(s.Doc().Get(at) == o.Key)), txt(o.Name)))
	}
	parts := []html{el("div", a("class", "options"), list...), sayRegion(at, said(s, at, job.FieldAt(at)))}
	if len(list) > 0 {
		parts = append(parts, el("h3", nil, txt(words.OrStartOne)))
	}
	return shown{Title: words.WhatItGets, Body: join(join(parts...), readyList("gets-", path))}
}

// readyList offers the ready sequences, for a surface or for no one yet.
func readyList(id, surface string) html {
	var list []html
	for i := range ready.Sequences {
		r := &ready.Sequences[i]
		list = append(list, el("button", a("class", "option", "type", "button", "id", id+r.Key, "data-do", "ready", "data-path", surface, "data-text", r.Key),
			txt(r.Name), el("small", nil, txt(words.Sequence(r)))))
	}
	list = append(list, el("button", a("class", "option", "type", "button", "id", id, "data-do", "ready", "data-path", surface, "data-text", ""), txt(words.EmptyBuildup)))
	return el("div", a("class", "options"), list...)
}

func buildupOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, id := range s.Doc().Items("buildup") {
		path := "buildup." + id
		options = append(options, job.Option{Key: path, Name: buildupName(s, path)})
	}
	return options
}

// waits says which field is still to be typed, if the figures wait for one.
func waits(s *page.State, path string) html {
	for _, w := range s.Plan.WaitingIn(path) {
		if hasPrefix(w.Path, path+".") {
			if f := job.FieldAt(w.Path); f != nil {
				return el("p", a("class", "hint"), txt(words.YetToType(f.Name)))
			}
			return el("p", a("class", "hint"), txt(words.Sentence(w.Err, nil, s.Plan.Job.Units)))
		}
	}
	return nothing
}

func askAt(s *page.State, path string) html {
	if ask := s.AskAt(path); ask != nil {
		return question(s, ask)
	}
	return nothing
}

// surfaceNotes is what is to be said beside a surface's area: what it waits for,
// how it was taken, whether it is likely.
func surfaceNotes(s *page.State, p *plan.Surface) html {
	parts := []html{waits(s, p.Path)}
	if p.Edge.Step != nil {
		parts = append(parts, figure(s, p.Path+".edge", words.EdgeForTape, of(s, p.Edge, unit.Runs), p.Edge.Step))
	}
	for _, n := range p.Notes {
		parts = append(parts, el("p", a("class", "hint"), txt(words.SurfaceNote(n))))
	}
	return join(parts...)
}

// surfaceFindings sums up on a surface what stops its build-up.
func surfaceFindings(s *page.State, path string) html {
	b := s.Plan.Films(s.Doc().Get(path + ".buildup"))
	if b.Path == "" {
		return nothing
	}
	var red []plan.Finding
	asked := 0
	for _, f := range b.FindingsOn(path) {
		switch {
		case f.IsRed():
			red = append(red, f)
		case f.Severity == buildup.Ask:
			asked++
		}
	}
	parts := []html{}
	if s.Doc().Get(path+".ground") == "" {
		parts = append(parts, el("p", a("class", "hint"), txt(words.SayTheGround)))
	}
	parts = append(parts, findingLines(s, &b, red, true, true))
	if asked > 0 {
		parts = append(parts, el("p", a("class", "hint"), txt(words.ThingsToCheck(asked))))
	}
	if len(red)+asked > 0 {
		parts = append(parts, action("go", "buildup", b.Path, words.SeeTheBuildup, "quiet"))
	}
	return join(parts...)
}
