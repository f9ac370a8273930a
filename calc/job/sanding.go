package job

import (
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The answers of a sanding step's choices.
const (
	ByTaken  = "taken"
	ByGrades = "grades"

	ByMachine = "machine"
	ByBoard   = "board"

	OverMean = "mean"
	OverPeak = "peak"
)

// Sanding is what a sanding step says beside the film it takes. Figures
// without a Step were not typed; grades of 0 neither.
type Sanding struct {
	IsRun       bool // a run of grades; else a film given as a number
	First, Last sanding.Grade
	Grades      []sanding.Grade // the run as typed; empty: the usual one
	WetFrom     sanding.Grade
	Tool        string
	Scratch     working.Figure[unit.Factor]
	IsPeak      bool // the film was read on the peaks of the texture
	Texture     working.Figure[unit.Length]
}

// sandingFields are the fields of a sanding step.
func sandingFields() []*Field {
	return []*Field{
		{Key: "by", Name: "film taken", Kind: Choice, Options: []Option{{ByTaken, "given as a number"}, {ByGrades, "by a run of grades"}}},
		optional(gradeField("first", "first grade")),
		optional(gradeField("last", "last grade")),
		optional(gradesField("grades", "grades, one after the other")),
		{Key: "tool", Name: "dry sanding with", Kind: Choice, Options: []Option{{ByMachine, "a machine, discs"}, {ByBoard, "a long board, strips"}}},
		optional(gradeField("wet-from", "wet by hand from")),
		optional(quantity("scratch", "scratch depth ÷ grain", unit.Numbers, 0.05, 1)),
		{Key: "texture-is", Name: "the film before it is", Kind: Choice, Options: []Option{{OverMean, "a mean: by weight or as planned"}, {OverPeak, "read on its peaks"}}},
		optional(quantity("texture", "texture, peak to valley", unit.Films, 0, 1e-3)),
		optional(quantity("least", "film that must be left", unit.Films, 0, 5e-3)),
	}
}

func (r *reader) sanding(s *Step, at func(string) (string, *Field), shown map[string]bool) {
	s.Sanding = Sanding{
		IsRun:  shown["by"] && r.choice(at("by")) == ByGrades,
		Tool:   r.choice(at("tool")),
		IsPeak: shown["texture-is"] && r.choice(at("texture-is")) == OverPeak,
	}
	grade := func(key string) sanding.Grade {
		if !shown[key] {
			return 0
		}
		return sanding.Grade(r.grade(at(key)))
	}
	s.Sanding.First, s.Sanding.Last, s.Sanding.WetFrom = grade("first"), grade("last"), grade("wet-from")
	if path, f := at("grades"); shown["grades"] {
		if _, ok := r.number(path, f); ok {
			s.Sanding.Grades, _ = readGrades(r.doc.Get(path))
		}
	}
	if shown["scratch"] {
		s.Sanding.Scratch = typed[unit.Factor](r, at, "scratch")
	}
	if shown["texture"] {
		s.Sanding.Texture = typed[unit.Length](r, at, "texture")
	}
}

// Removal is the builder's own film taken with one grade, measured on an offcut
// or at one spot.
type Removal struct {
	Path  string
	Grade sanding.Grade
	Way   string

	Before, After     working.Figure[unit.Mass]
	Area              working.Figure[unit.Area]
	Density           working.Figure[unit.Density]
	ScaleStep         working.Figure[unit.Mass]
	ReadBefore        working.Figure[unit.DryFilm]
	ReadAfter         working.Figure[unit.DryFilm]
	GaugeStep, Direct working.Figure[unit.DryFilm]
}

// The answers of how an own removal was found.
const (
	Weighed  = "weighed"
	Gauged   = "gauged"
	Directly = "directly"
)

var removals = &List{Key: "removal", Max: 40, Fields: []*Field{
	gradeField("grade", "grade"),
	{Key: "way", Name: "found by", Kind: Choice, Options: []Option{{Weighed, "weighing an offcut"}, {Gauged, "reading the film twice"}, {Directly, "a figure of my own"}}},
	quantity("before", "offcut before sanding", unit.CupWeights, 1e-4, 20),
	quantity("after", "offcut after sanding, dry", unit.CupWeights, 1e-4, 20),
	quantity("area", "sanded area of the offcut", unit.Areas, 1e-4, 4),
	optional(quantity("cured-density", "density once cured", unit.Densities, 300, 2500)),
	quantity("scale-step", "step of the scale", unit.CupWeights, 1e-6, 0.02),
	quantity("read-before", "cured film before", unit.Films, 0, 20e-3),
	quantity("read-after", "cured film after, at the same spot", unit.Films, 0, 20e-3),
	quantity("gauge-step", "step of the gauge", unit.Films, 1e-7, 1e-3),
	quantity("takes", "film it takes", unit.Films, 1e-7, 5e-3),
}}

// removalShown is what each way of finding a removal asks for.
var removalShown = map[string][]string{
	Weighed:  {"before", "after", "area", "cured-density", "scale-step"},
	Gauged:   {"read-before", "read-after", "gauge-step"},
	Directly: {"takes"},
}

// RemovalFields gives the fields that an own removal shows, by how it was found.
func RemovalFields(way string) []string {
	if list := removalShown[way]; list != nil {
		return list
	}
	return removalShown[Weighed]
}

func (r *reader) removals(string) []Removal {
	var list []Removal
	for _, id := range r.doc.Items("removal") {
		at := under("removal."+id, removals)
		v := Removal{Path: "removal." + id, Grade: sanding.Grade(r.grade(at("grade"))), Way: r.choice(at("way"))}
		switch v.Way {
		case Weighed:
			v.Before, v.After = typed[unit.Mass](r, at, "before"), typed[unit.Mass](r, at, "after")
			v.Area, v.Density = typed[unit.Area](r, at, "area"), typed[unit.Density](r, at, "cured-density")
			v.ScaleStep = typed[unit.Mass](r, at, "scale-step")
		case Gauged:
			v.ReadBefore, v.ReadAfter = typed[unit.DryFilm](r, at, "read-before"), typed[unit.DryFilm](r, at, "read-after")
			v.GaugeStep = typed[unit.DryFilm](r, at, "gauge-step")
		case Directly:
			v.Direct = typed[unit.DryFilm](r, at, "takes")
		}
		list = append(list, v)
	}
	return list
}
