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

// Sanding is what a sanding step says besides the film it takes. Figures without a
// Step and grades of 0 were not typed.
type Sanding struct {
	IsRun       bool // a run of grades; else a film given as a number
	First, Last sanding.Grade
	Grades      []sanding.Grade // the run as typed; empty: the usual one
	WetFrom     sanding.Grade
	Tool        string // of a run
	Scratch     working.Figure[unit.Factor]
	IsPeak      bool // the film was read on the peaks of the texture
	Texture     working.Figure[unit.Length]
}

// sandingFields are the fields of a sanding step.
var sandingFields = []*Field{
	{Key: "by", Name: "film taken", Kind: Choice, Options: []Option{{ByTaken, "as a number"}, {ByGrades, "by its grades"}}},
	{Key: "first", Name: "first grade", Kind: Checked, Example: "P220", Check: checkGrade, Optional: true},
	{Key: "last", Name: "last grade", Kind: Checked, Example: "P220", Check: checkGrade, Optional: true},
	{Key: "grades", Name: "grades, one after the other", Kind: Checked, Example: "P220 P320 P400", Check: checkGrades, Optional: true},
	{Key: "tool", Name: "dry sanding with", Kind: Choice, Options: []Option{{ByMachine, "a machine, discs"}, {ByBoard, "a long board, strips"}}},
	{Key: "wet-from", Name: "wet by hand from", Kind: Checked, Example: "P220", Check: checkGrade, Optional: true},
	{Key: "scratch", Name: "scratch depth ÷ grain", Kind: Quantity, Measure: unit.Numbers, Min: 0.05, Max: 1, Optional: true},
	{Key: "texture-is", Name: "the film before it is", Kind: Choice, Options: []Option{{OverMean, "a mean: by weight or as planned"}, {OverPeak, "read on its peaks"}}},
	{Key: "texture", Name: "texture, peak to valley", Kind: Quantity, Measure: unit.Films, Max: 1e-3, Optional: true},
	{Key: "least", Name: "film that must be left", Kind: Quantity, Measure: unit.Films, Max: 5e-3, Optional: true},
}

func (r *reader) sanding(s *Step, at func(string) (string, *Field), shown map[string]bool) {
	choice := func(key string) string {
		if !shown[key] {
			return ""
		}
		return r.choice(at(key))
	}
	s.Sanding = Sanding{IsRun: choice("by") == ByGrades, Tool: choice("tool"), IsPeak: choice("texture-is") == OverPeak}
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

// The answers of how a removal was found.
const (
	Weighed  = "weighed"
	Gauged   = "gauged"
	Directly = "directly"
)

var removals = &List{Key: "removal", Max: 40, Fields: []*Field{
	{Key: "grade", Name: "grade", Kind: Checked, Example: "P220", Check: checkGrade},
	{Key: "way", Name: "found by", Kind: Choice, Options: []Option{{Weighed, "weighing an offcut"}, {Gauged, "reading the film twice"}, {Directly, "a figure of my own"}}},
	{Key: "before", Name: "offcut before sanding", Kind: Quantity, Measure: unit.CupWeights, Min: 1e-4, Max: 20},
	{Key: "after", Name: "offcut after sanding, dry", Kind: Quantity, Measure: unit.CupWeights, Min: 1e-4, Max: 20},
	{Key: "area", Name: "sanded area of the offcut", Kind: Quantity, Measure: unit.Areas, Min: 1e-4, Max: 4},
	{Key: "cured-density", Name: "density once cured", Kind: Quantity, Measure: unit.Densities, Min: 300, Max: 2500, Optional: true},
	{Key: "scale-step", Name: "step of the scale", Kind: Quantity, Measure: unit.CupWeights, Min: 1e-6, Max: 0.02},
	{Key: "read-before", Name: "cured film before", Kind: Quantity, Measure: unit.Films, Max: 20e-3},
	{Key: "read-after", Name: "cured film after, at the same spot", Kind: Quantity, Measure: unit.Films, Max: 20e-3},
	{Key: "gauge-step", Name: "step of the gauge", Kind: Quantity, Measure: unit.Films, Min: 1e-7, Max: 1e-3},
	{Key: "takes", Name: "film it takes", Kind: Quantity, Measure: unit.Films, Min: 1e-7, Max: 5e-3},
}}

// removalShown lists the fields for each way of finding a removal.
var removalShown = map[string][]string{
	Weighed:  {"before", "after", "area", "cured-density", "scale-step"},
	Gauged:   {"read-before", "read-after", "gauge-step"},
	Directly: {"takes"},
}

// RemovalFields gives the fields that a removal shows, by how it was found.
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
