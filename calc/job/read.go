package job

import (
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// number reads the field at the path; false where nothing was typed, or where it
// can't be read, which is reported.
func (r *reader) number(path string, f *Field) (float64, bool) {
	text := r.doc.Get(path)
	if strings.TrimSpace(text) == "" {
		return 0, false
	}
	si, err := f.Read(text, r.units)
	if err != nil {
		r.problems = append(r.problems, Problem{path, err})
		return 0, false
	}
	return si, true
}

// choice gives the key that was chosen, or the first option's.
func (r *reader) choice(path string, f *Field) string {
	if at, ok := r.number(path, f); ok {
		return f.Options[int(at)].Key
	}
	if f.Optional {
		return ""
	}
	return f.Options[0].Key
}

func (r *reader) words(path string, f *Field) string {
	r.number(path, f) // checks the length
	return r.doc.Get(path)
}

// figure makes a typed figure of the field at the path.
func figure[Q unit.Quantity](r *reader, path string, f *Field) (working.Figure[Q], bool) {
	si, ok := r.number(path, f)
	if !ok {
		return working.Figure[Q]{}, false
	}
	scale := unit.InPure
	if f.Measure != unit.NoMeasure {
		scale = r.units.Scale(f.Measure)
	}
	return working.Given(Q(si), f.Name, scale, "", source.Typed), true
}

func (r *reader) surface(path string) *Surface {
	s := &Surface{
		Path:        path,
		Name:        r.words(path+".name", surfaces.field("name")),
		Part:        r.part(path, surfaces),
		Buildup:     r.doc.Get(path + ".buildup"),
		Ground:      r.choice(path+".ground", surfaces.field("ground")),
		Prepared:    r.prepared(path),
		Orientation: r.choice(path+".lies", surfaces.field("lies")),
		Inside:      r.choice(path+".inside", surfaces.field("inside")) == "locker",
		By:          r.choice(path+".by", surfaces.field("by")),
	}
	sides := unit.Factor(1)
	if r.choice(path+".sides", surfaces.field("sides")) == "both" {
		sides = 2
	}
	s.Sides = working.Given(sides, "sides", unit.InPure, "", source.Typed)
	cutouts := surfaces.list("cutout")
	for _, id := range r.doc.Items(path + ".cutout") {
		s.Cutouts = append(s.Cutouts, r.part(path+".cutout."+id, cutouts))
	}
	return s
}

// part reads a shape and its measures from the fields under the path.
func (r *reader) part(path string, list *List) Part {
	shape := surface.Find(r.choice(path+".shape", list.field("shape")))
	p := Part{Path: path, Shape: shape}
	p.Count = working.Given(unit.Factor(1), "how many alike", unit.InPure, "", source.Typed)
	if f, ok := figure[unit.Factor](r, path+"."+surface.CountDim.Key, list.field(surface.CountDim.Key)); ok {
		p.Count = f
	}
	in := surface.Input{
		Lengths: map[string]working.Figure[unit.Length]{},
		Areas:   map[string]working.Figure[unit.Area]{},
		Counts:  map[string]working.Figure[unit.Factor]{},
		Choices: map[string]string{},
		Faces:   strings.Fields(r.doc.Get(path + "." + surface.FacesKey)),
	}
	for _, d := range shape.Dims {
		r.dim(&in, path+"."+d.Key, d)
	}
	if shape.Rows != nil {
		p.RowIDs = r.doc.Items(path + "." + shape.Rows.Key)
		in.Rows = r.rows(path+"."+shape.Rows.Key, p.RowIDs, list.list(shape.Rows.Key))
	}
	p.Input = in
	return p
}

func (r *reader) dim(in *surface.Input, path string, d surface.Dim) {
	field := DimField(d)
	switch d.Kind {
	case surface.Choice:
		in.Choices[d.Key] = r.choice(path, field)
	case surface.Area:
		put(in.Areas, d.Key, r, path, field)
	case surface.Count:
		put(in.Counts, d.Key, r, path, field)
	default:
		put(in.Lengths, d.Key, r, path, field)
	}
}

// put reads a figure into the map, where one was typed.
func put[Q unit.Quantity](into map[string]working.Figure[Q], key string, r *reader, path string, f *Field) {
	if v, ok := figure[Q](r, path, f); ok {
		into[key] = v
	}
}

func (r *reader) rows(path string, ids []string, list *List) []surface.Row {
	var rows []surface.Row
	for _, id := range ids {
		row := surface.Row{}
		for _, f := range list.Fields {
			put(row, f.Key, r, path+"."+id+"."+f.Key, f)
		}
		rows = append(rows, row)
	}
	return rows
}

func (r *reader) buildup(path string) Buildup {
	b := Buildup{Path: path, Name: r.words(path+".name", buildups.field("name")), Ground: r.choice(path+".ground", buildups.field("ground"))}
	steps := buildups.list("step")
	for _, id := range r.doc.Items(path + ".step") {
		b.Steps = append(b.Steps, r.step(path+".step."+id, steps))
	}
	b.Budget = r.budget(path)
	return b
}

func (r *reader) step(path string, list *List) Step {
	at := func(key string) (string, *Field) { return path + "." + key, list.field(key) }
	s := Step{Path: path, Kind: FindStepKind(r.choice(at("kind"))), Card: r.doc.Get(path + ".card"), Method: material.Methods[0]}
	shown := map[string]bool{}
	for _, key := range s.Kind.Shown(func(key string) string { return r.doc.Get(path + "." + key) }) { // what isn't shown can't be wrong
		shown[key] = true
		field, name := list.field(key), path+"."+key
		switch key {
		case "method":
			s.Method, _ = material.FindMethod(r.choice(name, field))
		case "film":
			s.Film, _ = figure[unit.Length](r, name, field)
		case "film-is":
			s.FilmIsCured = r.choice(name, field) == FilmCured
		case "film-for":
			s.FilmIsEach = r.choice(name, field) == ForEach
		case "coats":
			s.Coats, _ = figure[unit.Factor](r, name, field)
		case "thinner":
			s.Thinner, _ = figure[unit.Share](r, name, field)
		case "thinner-by":
			s.ThinnerByMass = r.choice(name, field) == PerMass
		case "thickness":
			s.Thickness, _ = figure[unit.Length](r, name, field)
		case "sanded-off":
			s.SandedOff, _ = figure[unit.Share](r, name, field)
		case "taken":
			s.Taken, _ = figure[unit.DryFilm](r, name, field)
		}
	}
	s.Sequence = r.sequence(path, s.Kind, at, shown)
	if shown["by"] {
		r.sanding(&s, at, shown)
	}
	if shown["fill-by"] {
		s.Hollows, s.Putty = r.hollows(path, at), r.words(at("putty"))
	}
	return s
}
