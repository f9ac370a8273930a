package material

import "shedreckoner/calc/unit"

// Sundries is the figures of what goes with the materials: how much of it the
// work uses up. A card has those that belong to it.
// Source: common practice.
type Sundries struct {
	Spare    Spec[unit.Factor] // bought for each one needed: 1.1 is a tenth more
	EachCup  Spec[unit.Factor] // pieces for each cup mixed
	EachHour Spec[unit.Factor] // pieces for each hour of sanding
	Lasts    Spec[unit.Time]   // work that one piece lasts
	OnFiller Spec[unit.Factor] // abrasives for a square metre of filler
	OnFilm   Spec[unit.Factor] // abrasives for a square metre of film, each sanding
	Wash     Spec[unit.Volume] // solvent for one wash of a roller, brush or knife
	Flush    Spec[unit.Volume] // solvent for one flush of a gun
}

// Ordering is how sure an order is to be.
// Source: common practice.
type Ordering struct {
	Chance  Spec[unit.Share] // wanted chance of not running out
	Reserve Spec[unit.Share] // kept for repairs: a later batch never matches
}

// RepairLeast is the least that is kept of a colour for repairs.
// Source: common practice.
var RepairLeast = exactly(0.5*unit.Kilogram, c)

var (
	coloured = Ordering{exactly[unit.Share](0.95, c), exactly[unit.Share](0.05, c)}
	plain    = Ordering{Chance: exactly[unit.Share](0.90, c)}
	easily   = Ordering{Chance: exactly[unit.Share](0.80, c)} // bought again anywhere
)

func sundry(key, name string, soldBy Basis, figures Sundries, sizes ...string) *Card {
	return &Card{Key: key, Name: name, Kind: Sundry, SoldBy: soldBy, Sundries: figures, Packs: packs(sizes...)}
}

// A tool or a cup for each cup mixed, and one in ten that fails.
var eachCup = Sundries{EachCup: exactly[unit.Factor](1.1, c)}

// tenthMore is what laps, torn ends and waste take of tape and sheet.
var tenthMore = Sundries{Spare: exactly[unit.Factor](1.1, c)}

func roller() *Card { return sundry("roller", "Rollers", ByPiece, eachCup, "1", "10") }
func brush() *Card  { return sundry("brush", "Brushes", ByPiece, eachCup, "1", "10") }
func cup() *Card    { return sundry("cup", "Mixing cups and sticks", ByPiece, eachCup, "10", "50") }
func tape() *Card   { return sundry("tape", "Masking tape", ByLength, tenthMore, "50") }

func sheeting() *Card {
	return sundry("sheeting", "Masking sheet, by the metre of edge", ByLength, tenthMore, "20")
}

func gloves() *Card {
	return sundry("gloves", "Gloves, in pairs", ByPiece,
		Sundries{EachCup: exactly[unit.Factor](1, c), EachHour: exactly[unit.Factor](1, c)}, "50")
}

func mask() *Card {
	return sundry("mask", "Dust masks P2 or P3", ByPiece, Sundries{Lasts: exactly(8*unit.Hour, c)}, "1", "10")
}

func cartridges() *Card {
	return sundry("cartridges", "Vapour cartridges, in pairs", ByPiece, Sundries{Lasts: exactly(8*unit.Hour, c)}, "1")
}

func disc() *Card {
	return sundry("disc", "Sanding discs 150 mm", ByPiece,
		Sundries{OnFiller: spec[unit.Factor](2, 0.7, 6, c), OnFilm: spec[unit.Factor](1.7, 0.7, 5, c)}, "10", "50")
}

// How much is sanded in an hour.
// Source: common practice.
var (
	BoardOnFiller = spec(perHour(1), perHour(0.4), perHour(2), c) // by hand with the long board
	DiscOnFilm    = spec(perHour(3), perHour(1.5), perHour(6), c) // by machine, each grade
)

func perHour(area float64) unit.SpreadingSpeed {
	return unit.Of[unit.SpreadingSpeed](area, unit.InSquareMetrePerHour)
}

// CupWall is what stays on the wall of the cup that holds a mix, of 250 mL,
// 500 mL or 1 L, on top of what stays in the tool. Over a litre it stays that of
// a litre: what is known ends there, and the share left behind is small by then.
// Source: common practice.
func CupWall(mix unit.Volume) Spec[unit.Mass] {
	switch {
	case mix <= 250*unit.Millilitre:
		return spec(8*grams, 5*grams, 15*grams, c)
	case mix <= 500*unit.Millilitre:
		return spec(15*grams, 10*grams, 25*grams, c)
	}
	return spec(25*grams, 15*grams, 40*grams, c)
}
