package material

import (
	"shedreckoner/calc/unit"
)

// Method is a way of putting a material on, with what it usually does.
type Method struct {
	Key, Name string // stable key; trade name
	Speed     Spec[unit.SpreadingSpeed]
	Loss      Spec[unit.Share] // sling, overspray and rebound; not what stays in cup and tool
	Leftover  Spec[unit.Mass]  // held by the wet tool, lost once a spell
	Texture   Spec[unit.DryFilm]
	FilmCV    Spec[unit.Factor] // point to point
	MeanCV    Spec[unit.Factor] // of a whole job's mean film
	Usable    Spec[unit.Share]  // of the early end of the gel time
	LayOff    Spec[unit.Time]   // τ: to lay off one stretch
	IsSpray   bool
	IsKnife   bool
	Tool      string // key of the sundry that puts it on; empty: a gun or a knife
}

const (
	perMinute = unit.SpreadingSpeed(1. / 60)
	grams     = unit.Mass(1e-3)
)

// What is the same for most methods.
var (
	usableHand = spec[unit.Share](0.67, 0.5, 0.75, assumption)
	usableGun  = spec[unit.Share](0.6, 0.5, 0.75, assumption) // flushed once the last is out of it
	evenCV     = spec[unit.Factor](0.15, 0.10, 0.25, assumption)
	usualCV    = spec[unit.Factor](0.20, 0.12, 0.30, assumption)
)

func layOff(minutes unit.Time) Spec[unit.Time] { return exactly(minutes*unit.Minute, assumption) }

// Methods is every way of putting a material on.
// Source: common practice; the marks tell what is assumption.
var Methods = []*Method{
	{
		Key: "foam-roller", Name: "foam roller, thin coats", Tool: "roller",
		Speed:    spec(0.5*perMinute, 0.25*perMinute, 1*perMinute, practice),
		Loss:     spec[unit.Share](0.03, 0.02, 0.08, assumption),
		Leftover: spec(25*grams, 15*grams, 40*grams, practice),
		Texture:  spec(40*umDry, 20*umDry, 80*umDry, practice),
		FilmCV:   evenCV, MeanCV: exactly[unit.Factor](0.12, assumption),
		Usable: usableHand, LayOff: layOff(1),
	},
	{
		Key: "nap-roller", Name: "short nap roller, gel or flow coat", Tool: "roller",
		Speed:    spec(0.3*perMinute, 0.15*perMinute, 0.6*perMinute, practice),
		Loss:     spec[unit.Share](0.05, 0.02, 0.10, assumption),
		Leftover: spec(80*grams, 50*grams, 150*grams, practice),
		Texture:  spec(120*umDry, 60*umDry, 200*umDry, practice),
		FilmCV:   usualCV, MeanCV: exactly[unit.Factor](0.15, assumption),
		Usable: usableHand, LayOff: layOff(1),
	},
	{
		Key: "roll-and-tip", Name: "roll and tip, topcoat", Tool: "roller",
		Speed:    spec(0.4*perMinute, 0.2*perMinute, 0.8*perMinute, practice),
		Loss:     spec[unit.Share](0.03, 0.02, 0.08, assumption),
		Leftover: spec(30*grams, 15*grams, 50*grams, practice),
		Texture:  spec(25*umDry, 10*umDry, 60*umDry, practice),
		FilmCV:   evenCV, MeanCV: exactly[unit.Factor](0.12, assumption),
		Usable: usableHand, LayOff: layOff(1.5),
	},
	{
		Key: "brush", Name: "brush", Tool: "brush",
		Speed:    spec(0.15*perMinute, 0.08*perMinute, 0.30*perMinute, practice),
		Loss:     spec[unit.Share](0.05, 0.03, 0.10, assumption),
		Leftover: spec(15*grams, 10*grams, 25*grams, practice),
		Texture:  spec(150*umDry, 80*umDry, 250*umDry, practice),
		FilmCV:   spec[unit.Factor](0.25, 0.15, 0.40, assumption), MeanCV: exactly[unit.Factor](0.20, assumption),
		Usable: usableHand, LayOff: layOff(1),
	},
	{
		Key: "hv-spray", Name: "high-volume spray, topcoat", IsSpray: true,
		Speed:    spec(0.8*perMinute, 0.4*perMinute, 1.5*perMinute, practice),
		Loss:     spec[unit.Share](0.42, 0.35, 0.50, published),
		Leftover: spec(30*grams, 20*grams, 60*grams, practice),
		Texture:  spec(15*umDry, 5*umDry, 30*umDry, practice),
		FilmCV:   evenCV, MeanCV: exactly[unit.Factor](0.15, assumption),
		Usable: usableHand, LayOff: layOff(0.3),
	},
	{
		Key: "cup-gun", Name: "cup gun, gel coat", IsSpray: true,
		Speed:    spec(0.25*perMinute, 0.12*perMinute, 0.5*perMinute, practice),
		Loss:     spec[unit.Share](0.70, 0.50, 0.85, published),
		Leftover: spec(30*grams, 20*grams, 60*grams, practice),
		Texture:  spec(100*umDry, 50*umDry, 200*umDry, practice),
		FilmCV:   spec[unit.Factor](0.25, 0.15, 0.35, assumption), MeanCV: exactly[unit.Factor](0.20, assumption),
		Usable: usableGun, LayOff: layOff(0.3),
	},
	{
		Key: "gravity-gun", Name: "gravity gel coat gun", IsSpray: true,
		Speed:    spec(0.3*perMinute, 0.15*perMinute, 0.6*perMinute, practice),
		Loss:     spec[unit.Share](0.45, 0.35, 0.60, practice),
		Leftover: spec(40*grams, 20*grams, 80*grams, practice),
		Texture:  spec(100*umDry, 50*umDry, 180*umDry, practice),
		FilmCV:   usualCV, MeanCV: exactly[unit.Factor](0.18, assumption),
		Usable: usableGun, LayOff: layOff(0.3),
	},
	{
		Key: "knife", Name: "squeegee or knife", IsKnife: true,
		Speed:    spec(0.12*perMinute, 0.05*perMinute, 0.25*perMinute, practice),
		Loss:     spec[unit.Share](0.05, 0.02, 0.10, assumption),
		Leftover: spec(30*grams, 20*grams, 80*grams, practice),
		Texture:  spec(200*umDry, 100*umDry, 400*umDry, practice),
		FilmCV:   spec[unit.Factor](0.40, 0.25, 0.60, assumption), MeanCV: exactly[unit.Factor](0.20, assumption),
		Usable: usableHand, LayOff: layOff(0.5),
	},
}

// Mixing is the time from catalyst in until the first of a cup can be spread.
// Source: common practice.
var Mixing = spec(1.5*unit.Minute, 1*unit.Minute, 3*unit.Minute, practice)

// How long one wet tool is worked with: then a roller goes into the bin, a gun
// is flushed and hands are washed.
// Source: assumption.
var (
	spellPolyester = exactly(30*unit.Minute, assumption)
	spellSlow      = exactly(90*unit.Minute, assumption)
)

// Spell is how long one wet tool is worked with a material: 30 min with what
// gels in it, 90 min with epoxy and two-pack goods.
// Source: assumption.
func (c Chemistry) Spell() Spec[unit.Time] {
	if c.IsPolyester() {
		return spellPolyester
	}
	return spellSlow
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
