package job

import (
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Putty is a filler mixed by hand: what goes into the bucket, and how much is
// wanted.
type Putty struct {
	Path, Name string
	Parts      []PuttyPart
	Air        working.Figure[unit.Share]
	Wanted     working.Figure[unit.Volume]
	Against    string // key of the bought filler that it is compared with
}

// PuttyPart is one thing in the bucket. Figures without a Step were not typed.
type PuttyPart struct {
	Path   string
	Kind   *material.PuttyPart
	IsBulk bool // measured by volume, as a powder is poured
	Mass   working.Figure[unit.Mass]
	Volume working.Figure[unit.Volume]
	True   working.Figure[unit.Density]
	Bulk   working.Figure[unit.Density]
	Price  string // of a kilogram, exact decimal as typed; empty: not known
}

var putties = &List{Key: "putty", Max: 20,
	Fields: []*Field{
		{Key: "name", Name: "name", Kind: Words, Optional: true},
		{Key: "wanted", Name: "putty wanted", Kind: Quantity, Measure: unit.Volumes, Min: 1e-6, Max: 1, Optional: true},
		{Key: "air", Name: "air stirred in", Kind: Quantity, Measure: unit.Percents, Max: 0.3, Optional: true},
		{Key: "against", Name: "compared with", Kind: Words, Optional: true},
	},
	Lists: []*List{{Key: "part", Max: 12, Fields: partsOfPutty()}},
}

func partsOfPutty() []*Field {
	kinds := &Field{Key: "what", Name: "part", Kind: Choice}
	for _, p := range material.PuttyParts {
		kinds.Options = append(kinds.Options, Option{p.Key, p.Name})
	}
	return []*Field{
		kinds,
		{Key: "by", Name: "measured", Kind: Choice, Options: []Option{{PerMass, "by weight"}, {PerVolume, "by volume, as poured"}}},
		{Key: "mass", Name: "goes in", Kind: Quantity, Measure: unit.CupWeights, Max: 100},
		{Key: "volume", Name: "goes in", Kind: Quantity, Measure: unit.SmallVolumes, Max: 0.1},
		{Key: "true", Name: "true density", Kind: Quantity, Measure: unit.Densities, Min: 20, Max: 8000, Optional: true},
		{Key: "bulk", Name: "bulk density", Kind: Quantity, Measure: unit.Densities, Min: 20, Max: 8000, Optional: true},
		{Key: "price", Name: "price of a kilogram", Kind: Money, Max: 1e6, Optional: true},
	}
}

// PuttyPartFields gives the fields that a part shows, by how it is measured.
func PuttyPartFields(by string) []string {
	if by == PerVolume {
		return []string{"volume", "bulk", "true", "price"}
	}
	return []string{"mass", "true", "price"}
}

func (r *reader) putties(string) []Putty {
	var list []Putty
	for _, id := range r.doc.Items("putty") {
		path := "putty." + id
		at := under(path, putties)
		p := Putty{Path: path, Name: r.words(at("name")), Against: r.words(at("against")),
			Air: typed[unit.Share](r, at, "air"), Wanted: typed[unit.Volume](r, at, "wanted")}
		for _, part := range r.doc.Items(path + ".part") {
			p.Parts = append(p.Parts, r.puttyPart(path+".part."+part))
		}
		list = append(list, p)
	}
	return list
}

func (r *reader) puttyPart(path string) PuttyPart {
	at := under(path, putties.list("part"))
	p := PuttyPart{Path: path, Kind: material.FindPuttyPart(r.choice(at("what"))), IsBulk: r.choice(at("by")) == PerVolume}
	p.True = typed[unit.Density](r, at, "true")
	if p.IsBulk {
		p.Volume, p.Bulk = typed[unit.Volume](r, at, "volume"), typed[unit.Density](r, at, "bulk")
	} else {
		p.Mass = typed[unit.Mass](r, at, "mass")
	}
	if _, ok := r.number(at("price")); ok {
		p.Price = strings.TrimSpace(r.doc.Get(path + ".price"))
	}
	return p
}
