package material

import (
	"shedreckoner/calc/unit"
)

// Method is a way of putting a material on, with what it usually does.
type Method struct {
	Key, Name string // stable key; trade name
	Speed     Spec[unit.SpreadingSpeed]
	Loss      Spec[unit.Share] // sling, overspray and rebound; not what stays in cup and tool
	Leftover  Spec[unit.Mass]  // stays in cup and tool, per cup
	Texture   Spec[unit.DryFilm]
	FilmCV    Spec[unit.Factor] // point to point
	MeanCV    Spec[unit.Factor] // of a whole job's mean film
	Usable    Spec[unit.Share]  // of the early end of the gel time
	IsSpray   bool
	IsKnife   bool
	Tool      string // key of the sundry that puts it on; empty: a gun or a knife
}

const (
	perMinute = unit.SpreadingSpeed(1. / 60)
	grams     = unit.Mass(1e-3)
)

// Methods is every way of putting a material on.
// Source: common practice; the marks tell what is assumption.
var Methods = []*Method{
	{"foam-roller", "foam roller, thin coats", spec(0.5*perMinute, 0.25*perMinute, 1*perMinute, c), spec[unit.Share](0.03, 0.02, 0.08, x),
		spec(25*grams, 15*grams, 40*grams, c), spec(40*umDry, 20*umDry, 80*umDry, c), spec[unit.Factor](0.15, 0.10, 0.25, x), exactly[unit.Factor](0.12, x), spec[unit.Share](0.6, 0.5, 0.7, x), false, false, "roller"},
	{"nap-roller", "short nap roller, gel or flow coat", spec(0.3*perMinute, 0.15*perMinute, 0.6*perMinute, c), spec[unit.Share](0.05, 0.02, 0.10, x),
		spec(80*grams, 50*grams, 150*grams, c), spec(120*umDry, 60*umDry, 200*umDry, c), spec[unit.Factor](0.20, 0.12, 0.30, x), exactly[unit.Factor](0.15, x), spec[unit.Share](0.6, 0.5, 0.7, x), false, false, "roller"},
	{"roll-and-tip", "roll and tip, topcoat", spec(0.4*perMinute, 0.2*perMinute, 0.8*perMinute, c), spec[unit.Share](0.03, 0.02, 0.08, x),
		spec(30*grams, 15*grams, 50*grams, c), spec(25*umDry, 10*umDry, 60*umDry, c), spec[unit.Factor](0.15, 0.10, 0.25, x), exactly[unit.Factor](0.12, x), spec[unit.Share](0.5, 0.4, 0.6, x), false, false, "roller"},
	{"brush", "brush", spec(0.15*perMinute, 0.08*perMinute, 0.30*perMinute, c), spec[unit.Share](0.05, 0.03, 0.10, x),
		spec(15*grams, 10*grams, 25*grams, c), spec(150*umDry, 80*umDry, 250*umDry, c), spec[unit.Factor](0.25, 0.15, 0.40, x), exactly[unit.Factor](0.20, x), spec[unit.Share](0.6, 0.5, 0.7, x), false, false, "brush"},
	{"hv-spray", "high-volume spray, topcoat", spec(0.8*perMinute, 0.4*perMinute, 1.5*perMinute, c), spec[unit.Share](0.42, 0.35, 0.50, p),
		spec(30*grams, 20*grams, 60*grams, c), spec(15*umDry, 5*umDry, 30*umDry, c), spec[unit.Factor](0.15, 0.10, 0.25, x), exactly[unit.Factor](0.15, x), spec[unit.Share](0.5, 0.4, 0.6, x), true, false, ""},
	{"cup-gun", "cup gun, gel coat", spec(0.25*perMinute, 0.12*perMinute, 0.5*perMinute, c), spec[unit.Share](0.70, 0.50, 0.85, p),
		spec(30*grams, 20*grams, 60*grams, c), spec(100*umDry, 50*umDry, 200*umDry, c), spec[unit.Factor](0.25, 0.15, 0.35, x), exactly[unit.Factor](0.20, x), spec[unit.Share](0.5, 0.4, 0.6, x), true, false, ""},
	{"gravity-gun", "gravity gel coat gun", spec(0.3*perMinute, 0.15*perMinute, 0.6*perMinute, c), spec[unit.Share](0.45, 0.35, 0.60, c),
		spec(40*grams, 20*grams, 80*grams, c), spec(100*umDry, 50*umDry, 180*umDry, c), spec[unit.Factor](0.20, 0.12, 0.30, x), exactly[unit.Factor](0.18, x), spec[unit.Share](0.5, 0.4, 0.6, x), true, false, ""},
	{"knife", "squeegee or knife", spec(0.12*perMinute, 0.05*perMinute, 0.25*perMinute, c), spec[unit.Share](0.05, 0.02, 0.10, x),
		spec(30*grams, 20*grams, 80*grams, c), spec(200*umDry, 100*umDry, 400*umDry, c), spec[unit.Factor](0.40, 0.25, 0.60, x), exactly[unit.Factor](0.20, x), spec[unit.Share](0.6, 0.5, 0.7, x), false, true, ""},
}

// FindMethod gives the method with the key.
func FindMethod(key string) (*Method, bool) {
	for _, method := range Methods {
		if method.Key == key {
			return method, true
		}
	}
	return nil, false
}
