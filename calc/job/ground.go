package job

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// groundKeys gives the key under which each ground is saved.
var groundKeys = []struct {
	key    string
	ground buildup.Ground
}{
	{"polyester", buildup.Laminate},
	{"epoxy", buildup.CuredEpoxy},
	{"fresh-epoxy", buildup.FreshEpoxy},
	{"wood", buildup.BareWood},
	{"foam", buildup.OtherFoam},
	{"polystyrene", buildup.PolystyreneFoam},
	{"polyester-filler", buildup.TalcFiller},
	{"paint", buildup.OldPaint},
	{"metal", buildup.BareMetal},
	{"waxed", buildup.WaxedCoat},
}

// Grounds is what a surface is made of or coated with.
var Grounds = grounds()

func grounds() []Option {
	var list []Option
	for _, g := range groundKeys {
		list = append(list, Option{g.key, g.ground.String()})
	}
	return list
}

// GroundByKey gives the ground of a surface's key; false: none was given.
func GroundByKey(key string) (buildup.Ground, bool) {
	for _, g := range groundKeys {
		if g.key == key {
			return g.ground, true
		}
	}
	return 0, false
}

// Prepared is what was done to a surface before its first step.
type Prepared struct {
	IsBelowWater       bool
	IsWashed, IsSanded bool
	Grade              int                       // last P grade; 0: not said
	Age                working.Figure[unit.Time] // of the ground, at 20 °C
	Patch              string                    // test patch of the first layer, as noted; empty: none
}

// preparedFields are the surface's fields of its ground.
var preparedFields = []*Field{
	{Key: "ground", Name: "ground", Kind: Choice, Options: Grounds, Optional: true},
	{Key: "water", Name: "waterline", Kind: Choice, Options: []Option{{"above", "above the waterline"}, {"below", "below the waterline"}}},
	{Key: "prepared", Name: "ground is", Kind: Choice, Options: []Option{
		{"found", "as found"}, {"washed", "washed"}, {"sanded", "sanded"}, {"both", "washed and sanded"}}},
	{Key: "prepared-grade", Name: "last grade it was sanded with", Kind: Checked, Example: "P220", Check: checkGrade, Optional: true},
	{Key: "ground-age", Name: "age of the ground, at about 20 °C", Kind: Quantity, Measure: unit.Days, Max: float64(36500 * unit.Day), Optional: true},
	{Key: "patch", Name: "test patch of the first layer on this ground, done on", Kind: Words, Optional: true},
}

func (r *reader) prepared(path string) Prepared {
	at := func(key string) (string, *Field) { return path + "." + key, surfaces.field(key) }
	how := r.choice(at("prepared"))
	return Prepared{
		IsBelowWater: r.choice(at("water")) == "below",
		IsWashed:     how == "washed" || how == "both",
		IsSanded:     how == "sanded" || how == "both",
		Grade:        r.grade(at("prepared-grade")),
		Age:          typed[unit.Time](r, at, "ground-age"),
		Patch:        r.words(at("patch")),
	}
}
