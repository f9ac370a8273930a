package job

import (
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
)

// StepKind is a kind of step with the fields that it shows.
type StepKind struct {
	Key, Name string
	Fields    []string
}

// StepKinds is every kind of step, in the order of the form.
var StepKinds = []*StepKind{
	{"coat", "Coat", []string{"card", "method", "film", "film-is", "film-for", "coats", "thinner", "thinner-by"}},
	{"fill", "Fill", []string{"card", "thickness", "sanded-off"}},
	{"sand", "Sand", []string{"taken"}},
	{"polish", "Polish", []string{"card", "taken"}},
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

// StepFields is every field that a step of any kind can have.
func stepFields() []*Field {
	list := []*Field{
		{Key: "kind", Name: "kind of step", Kind: Choice},
		{Key: "card", Name: "material", Kind: Words},
		{Key: "method", Name: "method", Kind: Choice},
		quantity("film", "film", unit.Films, 1e-6, 20e-3),
		{Key: "film-is", Name: "film is measured", Kind: Choice, Options: []Option{{FilmWet, "wet, as put on"}, {FilmCured, "cured"}}},
		{Key: "film-for", Name: "film is meant for", Kind: Choice, Options: []Option{{ForAll, "all coats together"}, {ForEach, "each coat"}}},
		{Key: "coats", Name: "coats", Kind: Whole, Min: 1, Max: 50, Optional: true},
		optional(quantity("thinner", "thinner", unit.Percents, 0, 0.5)),
		{Key: "thinner-by", Name: "thinner is measured", Kind: Choice, Options: []Option{{PerMass, "by mass"}, {PerVolume, "by volume"}}},
		quantity("thickness", "mean thickness left", unit.Fills, 1e-4, 0.1),
		optional(quantity("sanded-off", "share sanded off again", unit.Percents, 0, 0.9)),
		quantity("taken", "film taken", unit.Films, 0, 5e-3),
	}
	for _, k := range StepKinds {
		list[0].Options = append(list[0].Options, Option{k.Key, k.Name})
	}
	for _, m := range material.Methods {
		list[2].Options = append(list[2].Options, Option{m.Key, m.Name})
	}
	return list
}
