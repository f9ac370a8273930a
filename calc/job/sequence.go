package job

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// one is the count where none was typed.
var one = working.Given(unit.Factor(1), "how many", unit.InPure, "", source.Exact)

// Sequence is what a step says of its place in the sequence. Figures without a Step
// were not typed.
type Sequence struct {
	Wait        working.Figure[unit.Time] // since the step before, at about 20 °C
	IsUnderFilm bool                      // cured under release film
	Patch       string                    // its test patch, as noted; empty: none
	Rounds      working.Figure[unit.Factor]
	RoundTakes  working.Figure[unit.DryFilm] // sanded back after each round
	Swallowed   working.Figure[unit.WetFilm] // by a porous ground
	Least       working.Figure[unit.DryFilm] // that the step must leave
	Combs       []CombReading
	Witnesses   []Witness
}

// CombReading is a wet film as a comb showed it: of one coat, in one place.
type CombReading struct {
	Path              string
	Surface           string // path; empty: wherever the build-up goes
	LastWet, FirstDry working.Figure[unit.WetFilm]
}

// Witness is the cured film of the whole layer as it was measured once a step
// was done.
type Witness struct {
	Path, Surface string
	Film          working.Figure[unit.DryFilm]
}

// sequenceFields are the fields for a step's place in the sequence.
var sequenceFields = []*Field{
	{Key: "wait", Name: "hours since the step before, at about 20 °C", Kind: Quantity, Measure: unit.Hours, Max: float64(36500 * unit.Day), Optional: true},
	{Key: "release", Name: "left to cure", Kind: Choice, Options: []Option{{"open", "open to the air"}, {"film", "under release film"}}},
	{Key: "patch", Name: "test patch of this layer, done on", Kind: Words, Optional: true},
	{Key: "goes", Name: "rounds: coated and sanded back again", Kind: Whole, Min: 1, Max: 50, Optional: true},
	{Key: "go-takes", Name: "sanded back after each round", Kind: Quantity, Measure: unit.Films, Max: 5e-3, Optional: true},
	{Key: "swallowed", Name: "wet film that the ground swallows", Kind: Quantity, Measure: unit.Films, Max: 5e-3, Optional: true},
}

var (
	combs = &List{Key: "comb", Max: 200, Fields: []*Field{
		{Key: "surface", Name: "read on", Kind: Words, Optional: true},
		{Key: "last-wet", Name: "last wet tooth", Kind: Quantity, Measure: unit.Films, Max: 20e-3},
		{Key: "first-dry", Name: "first dry tooth", Kind: Quantity, Measure: unit.Films, Min: 1e-6, Max: 20e-3},
	}}
	witnesses = &List{Key: "witness", Max: 200, Fields: []*Field{
		{Key: "surface", Name: "measured on", Kind: Words, Optional: true},
		{Key: "film", Name: "cured film of the layer, as found", Kind: Quantity, Measure: unit.Films, Max: 20e-3},
	}}
)

// budgetFields are the fields of a build-up's film budget.
var budgetFields = []*Field{
	{Key: "thin-share", Name: "share of the area that may go thinner", Kind: Quantity, Measure: unit.Percents, Min: 0.001, Max: 0.5, Optional: true},
	{Key: "removal-cv", Name: "how uneven sanding takes, sd ÷ mean", Kind: Quantity, Measure: unit.Percents, Min: 0.01, Max: 1, Optional: true},
	{Key: "unfair", Name: "unfairness that the board bridges, sd", Kind: Quantity, Measure: unit.Films, Max: 5e-3, Optional: true},
	{Key: "strip", Name: "width of the edge strip", Kind: Quantity, Measure: unit.Sizes, Min: 1e-3, Max: 0.2, Optional: true},
}

// IsBudget says if a path is that of a build-up's film budget.
func IsBudget(path string) bool {
	item, key := Split(path)
	list, _ := Split(item)
	return list == buildups.Key && slices.ContainsFunc(budgetFields, func(f *Field) bool { return f.Key == key })
}

// Budget is what a build-up's film is worked out with; figures without a Step were
// not typed.
type Budget struct {
	Thin       working.Figure[unit.Share]
	RemovalCV  working.Figure[unit.Share]
	Unfairness working.Figure[unit.DryFilm]
	Strip      working.Figure[unit.Length]
}

func (r *reader) budget(path string) Budget {
	at := under(path, buildups)
	return Budget{
		Thin:       typed[unit.Share](r, at, "thin-share"),
		RemovalCV:  typed[unit.Share](r, at, "removal-cv"),
		Unfairness: typed[unit.DryFilm](r, at, "unfair"),
		Strip:      typed[unit.Length](r, at, "strip"),
	}
}

// sequence reads what the kind of step shows.
func (r *reader) sequence(path string, kind *StepKind, at func(string) (string, *Field), shown map[string]bool) Sequence {
	var s Sequence
	if shown["wait"] {
		s.Wait = typed[unit.Time](r, at, "wait")
	}
	if shown["patch"] {
		s.Patch = r.words(at("patch"))
	}
	if shown["least"] {
		s.Least = typed[unit.DryFilm](r, at, "least")
	}
	s.IsUnderFilm = shown["release"] && r.choice(at("release")) == "film"
	if shown["goes"] {
		s.Rounds, s.RoundTakes = typed[unit.Factor](r, at, "goes"), typed[unit.DryFilm](r, at, "go-takes")
	}
	if shown["swallowed"] {
		s.Swallowed = typed[unit.WetFilm](r, at, "swallowed")
	}
	if kind.IsCoat {
		s.Combs = r.combs(path)
	}
	if kind.HasWitnesses {
		s.Witnesses = r.witnesses(path)
	}
	return s
}

func (r *reader) combs(path string) []CombReading {
	var list []CombReading
	for _, id := range r.doc.Items(path + ".comb") {
		at := under(path+".comb."+id, combs)
		list = append(list, CombReading{path + ".comb." + id, r.words(at("surface")),
			typed[unit.WetFilm](r, at, "last-wet"), typed[unit.WetFilm](r, at, "first-dry")})
	}
	return list
}

func (r *reader) witnesses(path string) []Witness {
	var list []Witness
	for _, id := range r.doc.Items(path + ".witness") {
		at := under(path+".witness."+id, witnesses)
		list = append(list, Witness{path + ".witness." + id, r.words(at("surface")), typed[unit.DryFilm](r, at, "film")})
	}
	return list
}
