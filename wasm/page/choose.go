package page

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// choose takes an answer on a sheet that only asks for it, and closes the sheet.
func choose(s *State, m Message) []Effect {
	effects := set(s, m)
	if n := len(s.Sheets); n > 0 {
		key := s.Sheets[n-1]
		s.Sheets = s.Sheets[: n-1 : n-1]
		return append(effects, Effect{Kind: Focus, Key: OpenerID(key)})
	}
	return effects
}

// chosen closes the sheet on which something was chosen: it has done its work.
func chosen(s *State) {
	n := len(s.Sheets)
	if n == 0 {
		return
	}
	_, part := job.Split(s.Sheets[n-1])
	if key := s.Sheets[n-1]; key == ShapesSheet || key == ReadySheet || part == AddPart || part == AboutPart {
		s.Sheets = s.Sheets[: n-1 : n-1]
	}
}

// putReady starts a build-up from a ready sequence, or an empty one; what is on
// no build-up yet gets it. On the sheet of a surface that chooses, the surface
// does.
func putReady(s *State, m Message) []Effect {
	list := job.ListAt("buildup")
	if len(s.Doc().Items("buildup")) >= list.Max {
		s.Notice = words.ListFull(list)
		return nil
	}
	doc, item := s.Doc().Add("buildup")
	doc = fresh(doc, "buildup", item, m.Text)
	if m.Path != "" {
		doc = grounded(doc.Set(m.Path+".buildup", item), m.Path)
	}
	effects := edit(s, doc, "", Effect{Kind: Focus, Key: "heading"})
	if !exists(s.Doc(), item) {
		return effects
	}
	if m.Path == "" {
		chosen(s)
		s.opened(item)
		return effects
	}
	return append(effects, back(s, Message{})...)
}

// grounded gives a surface that says no ground the usual one of its build-up.
func grounded(doc job.Document, surface string) job.Document {
	if doc.Get(surface+".ground") == "" {
		doc = doc.Set(surface+".ground", doc.Get(doc.Get(surface+".buildup")+".ground"))
	}
	return doc
}

// like adds a surface like another: all of it but its sizes, its cut-outs and
// its name.
func like(s *State, m Message) []Effect {
	list, _ := job.Split(m.Path)
	if list != "surface" || !exists(s.Doc(), m.Path) {
		return nil
	}
	if len(s.Doc().Items(list)) >= job.MaxSurfaces {
		s.Notice = words.ListFull(job.ListAt(list))
		return nil
	}
	doc, item := s.Doc().Add(list)
	doc = alike(named(doc, item), m.Path, item).Set(item+".shape", doc.Get(m.Path+".shape")).Set(item+".sides", doc.Get(m.Path+".sides"))
	for _, key := range choicesOf(doc, m.Path) {
		doc = doc.Set(item+"."+key, doc.Get(m.Path+"."+key))
	}
	return inPlaceOf(s, m.Path, shaped(doc, item), item)
}

// choicesOf gives the keys of what is chosen, not measured, of a surface's shape.
func choicesOf(doc job.Document, item string) []string {
	keys := []string{surface.FacesKey}
	for _, d := range shapeOf(doc, item).Dims {
		if d.Kind == surface.Choice {
			keys = append(keys, d.Key)
		}
	}
	return keys
}

// alike gives a surface the build-up, the ground and the orientation of another.
func alike(doc job.Document, from, item string) job.Document {
	for _, key := range append([]string{"buildup"}, onGroundSheet...) {
		doc = doc.Set(item+"."+key, doc.Get(from+"."+key))
	}
	return doc
}

func shapeOf(doc job.Document, item string) *surface.Shape {
	if shape := surface.Find(doc.Get(item + ".shape")); shape != nil {
		return shape
	}
	return surface.Shapes[0]
}

// firstMeasure gives the path of the first size of a new surface or cut-out;
// "" of anything else.
func firstMeasure(doc job.Document, item string) string {
	list, _ := job.Split(item)
	if _, key := job.Split(list); key != "cutout" && list != "surface" {
		return ""
	}
	for _, d := range shapeOf(doc, item).Dims {
		if d.Kind != surface.Choice {
			return item + "." + d.Key
		}
	}
	return ""
}

// follow sets a field, and what goes with it as long as nobody chose otherwise:
// a material's usual method and film, the faces of a box's other side, the
// ground that a build-up is meant for.
func follow(doc job.Document, path, text string) job.Document {
	item, key := job.Split(path)
	before := doc
	doc = doc.Set(path, text)
	list, _ := job.Split(item)
	switch {
	case key == "card" && isStepList(list) && job.FindStepKind(doc.Get(item+".kind")).IsCoat:
		return usual(before, doc, item)
	case key == surface.SideKey && before.Get(item+"."+surface.FacesKey) == surface.UsualFaces(before.Get(path)):
		return doc.Set(item+"."+surface.FacesKey, surface.UsualFaces(text))
	case key == "shape":
		return shaped(doc, item)
	case key == "buildup" && list == "surface":
		return grounded(doc, item)
	}
	return doc
}

// shaped gives a box its usual faces where none is chosen, and a shape of stations
// or corners the fewest that it can be measured by, yet to be typed.
func shaped(doc job.Document, item string) job.Document {
	if rows := shapeOf(doc, item).Rows; rows != nil {
		for n := len(doc.Items(item + "." + rows.Key)); n < rows.Min; n++ {
			doc, _ = doc.Add(item + "." + rows.Key)
		}
	}
	if faces := item + "." + surface.FacesKey; shapeOf(doc, item).Faces != nil && doc.Get(faces) == "" {
		return doc.Set(faces, surface.UsualFaces(doc.Get(item+"."+surface.SideKey)))
	}
	return doc
}

// usual gives a coat its material's usual method and film, and the wax or film
// that keeps air off, where they are still those of the material before.
func usual(before, doc job.Document, step string) job.Document {
	was, now := cardAt(before, step), cardAt(doc, step)
	if now == nil {
		return doc
	}
	for _, u := range usuals {
		at := step + "." + u.key
		if text := before.Get(at); text == "" || was != nil && text == u.of(was) {
			doc = doc.Set(at, u.of(now))
		}
	}
	return doc
}

// usuals are the fields that follow a coat's material.
var usuals = []struct {
	key string
	of  func(*material.Card) string
}{
	{"method", func(c *material.Card) string {
		if len(c.Methods) == 0 {
			return ""
		}
		return c.Methods[0]
	}},
	{"film", func(c *material.Card) string {
		if !c.UsualFilm.Known {
			return ""
		}
		return unit.Typed(float64(c.UsualFilm.Value), unit.InMicrometre) + " " + unit.InMicrometre.Symbol()
	}},
	{"release", func(c *material.Card) string {
		if c.Kind == material.GelCoat { // no wax in it: air would keep it tacky
			return "film"
		}
		return ""
	}},
}

// cardAt gives the card that ships of a step's material; nil: none.
func cardAt(doc job.Document, step string) *material.Card {
	key := doc.Get(step + ".card")
	if base := doc.Get("card." + key + ".base"); base != "" {
		key = base
	}
	if card, found := material.Find(key); found {
		return &card
	}
	return nil
}

// readyFor writes a ready sequence into a new build-up.
func readyFor(doc job.Document, item, key string) job.Document {
	if s := ready.Find(key); s != nil {
		return s.Put(doc, item)
	}
	return doc
}
