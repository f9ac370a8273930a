package material

import "shedreckoner/calc/unit"

// Sundries is the figures of what goes with the materials: how much of it the
// work uses up. A card has those that belong to it.
// Source: common practice.
type Sundries struct {
	Spare            Spec[unit.Factor]  // bought for each one needed: 1.1 is a tenth more
	EachCup          Spec[unit.Factor]  // pieces for each cup mixed
	EachPolyesterCup Spec[unit.Factor]  // the same for polyester: what is left snaps out of the cup, which is used again
	EachSpell        Spec[unit.Factor]  // pieces for each spell of work with one wet tool
	EachHour         Spec[unit.Factor]  // pieces for each hour of wet sanding
	Lasts            Spec[unit.Time]    // work that one piece lasts
	OnFiller         Spec[unit.Factor]  // abrasives for a square metre of filler
	OnFilm           Spec[unit.Factor]  // abrasives or pads for a square metre of film, each time
	Wash             Spec[unit.Volume]  // solvent for hands, brush or knife, a spell
	Flush            Spec[unit.Volume]  // solvent for a gun, a spell: first rinse with the last spell's second
	OverCoat         Spec[unit.WetFilm] // of release film, over a coat left to cure under it: 50 µm is 0.05 L/m²
	KeptOn           Spec[unit.Time]    // masking: days that it may stay on
	KeptOnHeat       Spec[unit.Time]    // the same where it gets as warm as HotForMasking
}

// Ordering is how likely an order is meant to be enough.
type Ordering struct {
	Chance  Spec[unit.Share] // wanted chance of having enough, bought before the start
	AtOnce  Spec[unit.Share] // the same where all is bought at once
	Reserve Spec[unit.Share] // kept for repairs: a later batch never matches
}

// RepairLeast is the least that is kept of a colour for repairs.
// Source: common practice.
var RepairLeast = exactly(0.5*unit.Kilogram, practice)

// Chances of having enough. What can be bought again in the same batch can wait for
// what the first cups teach; a colour bought all at once has to last.
// Source: assumption; the reserve of a colour is common practice.
var (
	plain    = Ordering{Chance: exactly[unit.Share](0.80, assumption), AtOnce: exactly[unit.Share](0.90, assumption)}
	coloured = Ordering{exactly[unit.Share](0.80, assumption), exactly[unit.Share](0.95, assumption), exactly[unit.Share](0.05, practice)}
)

func sundry(key, name string, soldBy Basis, figures Sundries, sizes ...string) *Card {
	return &Card{Key: key, Name: name, Kind: Sundry, SoldBy: soldBy, Sundries: figures, Packs: packs(sizes...)}
}

// tenthMore is what laps, torn ends and waste take of tape and sheet.
const tenthMore = unit.Factor(1.1)

func roller() *Card {
	return sundry("roller", "Rollers", ByPiece, Sundries{EachSpell: exactly(tenthMore, practice)}, "1", "10")
}

func brush() *Card {
	return sundry("brush", "Brushes", ByPiece, Sundries{EachSpell: exactly(tenthMore, practice)}, "1", "10")
}

func filter() *Card {
	return sundry("filter", "Strainers for the gun", ByPiece, Sundries{EachSpell: exactly[unit.Factor](1, practice)}, "10", "50")
}

func syringe() *Card {
	return sundry("syringe", "Syringe 5 mL, one for each catalyst", ByPiece, Sundries{}, "1")
}

func cup() *Card {
	return sundry("cup", "Mixing cups and sticks", ByPiece,
		Sundries{EachCup: exactly[unit.Factor](1, practice), EachPolyesterCup: exactly[unit.Factor](1./3, practice)}, "10", "50")
}

// HotForMasking is the temperature from which masking bakes on.
// Source: common practice: paper tape and film at 40 °C.
var HotForMasking = exactly(celsius(40), practice)

// masking is what tape and sheet have in common. A day in heat and a few in the
// shade is what paper tape is safe for.
// Source: common practice: tape makers' sheets say 1 to 14 days by kind.
var masking = Sundries{
	Spare:  exactly(tenthMore, practice),
	KeptOn: spec(3*unit.Day, 1*unit.Day, 14*unit.Day, practice), KeptOnHeat: spec(1*unit.Day, unit.Day/2, 3*unit.Day, practice),
}

func tape() *Card { return sundry("tape", "Masking tape", ByLength, masking, "50") }

func sheeting() *Card {
	return sundry("sheeting", "Masking sheet, by the metre of edge", ByLength, masking, "20")
}

func releaseFilm() *Card {
	card := sundry("release-film", "Release film, liquid", ByVolume, Sundries{OverCoat: spec(50*um, 30*um, 100*um, practice)}, "1", "5")
	card.Ordering = plain
	return card
}

func gloves() *Card {
	return sundry("gloves", "Gloves, in pairs", ByPiece,
		Sundries{EachSpell: exactly[unit.Factor](1, practice), EachHour: exactly[unit.Factor](0.5, practice)}, "10", "50")
}

func mask() *Card {
	return sundry("mask", "Dust masks P2 or P3", ByPiece, Sundries{Lasts: exactly(8*unit.Hour, practice)}, "1", "10")
}

func cartridges() *Card {
	return sundry("cartridges", "Vapour cartridges, in pairs", ByPiece, Sundries{Lasts: exactly(8*unit.Hour, practice)}, "1")
}

func disc() *Card {
	return sundry("disc", "Sanding discs 150 mm", ByPiece,
		Sundries{OnFiller: spec[unit.Factor](2, 0.7, 6, practice), OnFilm: spec[unit.Factor](1.7, 0.7, 5, practice)}, "10", "50")
}

const padKey = "pad"

func pad() *Card {
	return sundry(padKey, "Polishing pads", ByPiece, Sundries{OnFilm: spec[unit.Factor](0.1, 0.05, 0.2, practice)}, "1")
}

// How much is sanded in an hour.
// Source: common practice.
var (
	BoardOnFiller = spec(perHour(1), perHour(0.4), perHour(2), practice) // by hand with the long board
	DiscOnFilm    = spec(perHour(3), perHour(1.5), perHour(6), practice) // by machine, each grade
)

func perHour(area float64) unit.SpreadingSpeed {
	return unit.Of[unit.SpreadingSpeed](area, unit.InSquareMetrePerHour)
}

// CupWall is what stays on the wall of the cup that holds a mix, of 250 mL, 500 mL
// or 1 L, once a cup. Over a litre it stays that of a litre: nothing is known
// beyond, and the share left behind is small by then.
// Source: common practice.
func CupWall(mix unit.Volume) Spec[unit.Mass] {
	switch {
	case mix <= 250*unit.Millilitre:
		return spec(8*grams, 5*grams, 15*grams, practice)
	case mix <= 500*unit.Millilitre:
		return spec(15*grams, 10*grams, 25*grams, practice)
	}
	return spec(25*grams, 15*grams, 40*grams, practice)
}
