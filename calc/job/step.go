package job

import (
	"slices"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// StepKind is the form of a kind of step: what it asks for, and what may be
// measured on it. What the plan does with it is a row of plan.Kinds.
type StepKind struct {
	Key, Name    string
	Fields       []string // that it can show
	IsCoat       bool     // a wet film is put on: a comb can read it
	LeavesAll    bool     // it leaves film and filler as they are
	HasWitnesses bool     // once it is done the cured film can be measured
}

var coatFields = []string{"card", "method", "film", "film-is", "film-for", "coats", "thinner", "thinner-by", "goes", "go-takes", "release", "wait", "patch"}

// StepKinds is every kind of step, in the order of the form.
var StepKinds = []*StepKind{
	{Key: "coat", Name: "Coat", IsCoat: true, HasWitnesses: true, Fields: coatFields},
	{Key: "fill", Name: "Fill", Fields: []string{"card", "putty", "fill-by", "thickness", "columns", "row-gap", "column-gap", "paste", "alike", "raise", "cut-most", "cut-cost", "sanded-off", "wait", "patch"}},
	{Key: "sand", Name: "Sand", HasWitnesses: true, Fields: []string{"by", "taken", "first", "last", "grades", "tool", "wet-from", "scratch", "texture-is", "texture", "least", "wait"}},
	{Key: "polish", Name: "Polish", HasWitnesses: true, Fields: []string{"card", "taken", "least", "wait"}},
	{Key: "wash", LeavesAll: true, Name: "Wash or wipe", Fields: []string{"wait"}},
	{Key: "squeegee", Name: "Squeegee coat for pinholes", IsCoat: true, HasWitnesses: true, Fields: coatFields},
	{Key: "porous", Name: "First coat into a porous ground", IsCoat: true, HasWitnesses: true, Fields: append([]string{"swallowed"}, coatFields...)},
}

// condition is the answer to a choice for which a field of a step is shown.
type condition struct{ field, choice, answer string }

var conditions = []condition{
	{"taken", "by", ByTaken},
	{"first", "by", ByGrades}, {"grades", "by", ByGrades}, {"tool", "by", ByGrades}, {"wet-from", "by", ByGrades},
	{"scratch", "by", ByGrades}, {"texture-is", "by", ByGrades}, {"texture", "by", ByGrades},
	{"thickness", "fill-by", FillMean},
	{"columns", "fill-by", FillGrid}, {"row-gap", "fill-by", FillGrid}, {"column-gap", "fill-by", FillGrid}, {"paste", "fill-by", FillGrid},
	{"alike", "fill-by", FillGrid}, {"raise", "fill-by", FillGrid}, {"cut-most", "fill-by", FillGrid}, {"cut-cost", "fill-by", FillGrid},
}

// Shown gives the fields that a step of the kind shows, by its own choices.
func (k *StepKind) Shown(get func(key string) string) []string {
	var list []string
	for _, key := range k.Fields {
		if !slices.ContainsFunc(conditions, func(c condition) bool {
			return c.field == key && slices.Contains(k.Fields, c.choice) && answered(c.choice, get) != c.answer
		}) {
			list = append(list, key)
		}
	}
	return list
}

// answered is the answer to a choice, the first one where none was given.
func answered(choice string, get func(key string) string) string {
	if text := get(choice); text != "" {
		return text
	}
	for _, f := range buildups.list("step").Fields {
		if f.Key == choice {
			return f.Options[0].Key
		}
	}
	return ""
}

// FindStepKind gives the kind with the key; the first for an unknown one.
func FindStepKind(key string) *StepKind {
	for _, k := range StepKinds {
		if k.Key == key {
			return k
		}
	}
	return StepKinds[0]
}

// The answers of the step's choices.
const (
	FilmWet   = "wet"
	FilmCured = "cured"
	ForEach   = "each"
	ForAll    = "all"
	PerMass   = "mass"
	PerVolume = "volume"
)

var thinnerBy = &Field{Key: "thinner-by", Name: "thinner is measured", Kind: Choice, Options: []Option{{PerMass, "by mass"}, {PerVolume, "by volume"}}}

// stepFields is every field that a step of any kind can have.
func stepFields() []*Field {
	list := []*Field{
		{Key: "kind", Name: "kind of step", Kind: Choice},
		{Key: "card", Name: "material", Kind: Words},
		{Key: "method", Name: "method", Kind: Choice},
		{Key: "film", Name: "film", Kind: Quantity, Measure: unit.Films, Min: 1e-6, Max: 5e-3},
		{Key: "film-is", Name: "film is measured", Kind: Choice, Options: []Option{{FilmWet, "wet, as put on"}, {FilmCured, "cured"}}},
		{Key: "film-for", Name: "film is meant for", Kind: Choice, Options: []Option{{ForAll, "all coats together"}, {ForEach, "each coat"}}},
		{Key: "coats", Name: "coats", Kind: Whole, Min: 1, Max: 50, Optional: true},
		{Key: "thinner", Name: "thinner", Kind: Quantity, Measure: unit.Percents, Max: 0.5, Optional: true},
		thinnerBy,
		{Key: "thickness", Name: "mean thickness left", Kind: Quantity, Measure: unit.Fills, Min: 1e-4, Max: 0.1},
		{Key: "sanded-off", Name: "share sanded off again", Kind: Quantity, Measure: unit.Percents, Max: 0.9, Optional: true},
		{Key: "taken", Name: "film taken", Kind: Quantity, Measure: unit.Films, Max: 5e-3},
	}
	list = append(append(append(list, sequenceFields...), sandingFields...), fillFields...)
	for _, k := range StepKinds {
		list[0].Options = append(list[0].Options, Option{k.Key, k.Name})
	}
	for _, m := range material.Methods {
		list[2].Options = append(list[2].Options, Option{m.Key, m.Name})
	}
	return list
}
