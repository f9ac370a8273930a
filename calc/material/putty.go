package material

import "shedreckoner/calc/unit"

// PuttyPart is what goes into a putty mixed by hand, with the densities that hold
// where none was typed: the true one, of the liquid or of the particles, and the
// bulk density of a powder.
type PuttyPart struct {
	Key, Name  string
	Card       string // key of the card that it is bought by; empty: none ships
	True, Bulk Spec[unit.Density]
}

// PuttyParts is every kind of part.
// Source: makers of spheres and data sheets; the resins common practice.
var PuttyParts = []*PuttyPart{
	{"resin", "resin", "putty-resin", spec(1.15*kgPerL, 1.08*kgPerL, 1.20*kgPerL, practice), spec(1.15*kgPerL, 1.08*kgPerL, 1.20*kgPerL, practice)},
	{"hardener", "hardener", "putty-hardener", spec(1.00*kgPerL, 0.94*kgPerL, 1.05*kgPerL, practice), spec(1.00*kgPerL, 0.94*kgPerL, 1.05*kgPerL, practice)},
	{"balloons", "microballoons", "microballoons", spec(0.25*kgPerL, 0.15*kgPerL, 0.60*kgPerL, published), spec(0.10*kgPerL, 0.07*kgPerL, 0.35*kgPerL, published)},
	{"silica", "fumed silica", "fumed-silica", spec(2.2*kgPerL, 2.2*kgPerL, 2.3*kgPerL, published), spec(0.04*kgPerL, 0.03*kgPerL, 0.05*kgPerL, published)},
	{"other", "another part", "", spec(1.0*kgPerL, 0.8*kgPerL, 4*kgPerL, assumption), spec(1.0*kgPerL, 0.3*kgPerL, 4*kgPerL, assumption)},
}

// FindPuttyPart gives the kind of part with the key; the first for an unknown one.
func FindPuttyPart(key string) *PuttyPart {
	for _, part := range PuttyParts {
		if part.Key == key {
			return part
		}
	}
	return PuttyParts[0]
}

// ingredient is the card that a part of a putty is bought by. A powder has no
// density there: it is bought by weight.
func ingredient(key, name string, density Spec[unit.Density], sizes ...string) *Card {
	return &Card{Key: key, Name: name, Kind: Ingredient, SoldBy: ByMass, Density: density, Ordering: plain, Packs: packs(sizes...)}
}

func ingredients() []*Card {
	return []*Card{
		ingredient("putty-resin", "Resin for putty", PuttyParts[0].True, "1", "5"),
		ingredient("putty-hardener", "Hardener for putty", PuttyParts[1].True, "0.25", "1"),
		ingredient("microballoons", "Microballoons", Spec[unit.Density]{}, "0.5", "1"),
		ingredient("fumed-silica", "Fumed silica", Spec[unit.Density]{}, "0.25", "0.5"),
	}
}
