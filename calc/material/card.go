package material

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Spec is one figure of a card: a value with the range it usually has.
type Spec[Q unit.Quantity] struct {
	Value     Q
	Low, High Q
	Mark      source.Mark
	Known     bool // false: it must be typed from the tin
}

// Kind is what a material is used as.
type Kind int

// The kinds of material.
const (
	GelCoat Kind = iota
	FlowCoat
	Primer
	Topcoat
	Filler
	Catalyst
	Thinner
	WaxSolution
	Solvent
	Polish
	Sundry     // rollers, tape, gloves: bought by the piece or the length
	Ingredient // of a putty mixed by hand
)

// Chemistry is how a material cures, as the checks of a sequence need it.
type Chemistry int

// The chemistries.
const (
	NoCure Chemistry = iota
	Polyester
	VinylEster
	Epoxy
	TwoPack
)

// IsPolyester says if it is a polyester, vinyl ester among them: cured by a peroxide,
// and kept tacky by the air.
func (c Chemistry) IsPolyester() bool { return c == Polyester || c == VinylEster }

// Basis says in what a material is needed and sold.
type Basis int

// The bases.
const (
	ByMass   Basis = iota // kilograms
	ByVolume              // litres
	BySet                 // litres of mixed parts, sold together
	ByLength              // metres
	ByPiece
)

// Card is a maker's sheet in figures.
type Card struct {
	Key  string // stable: it is saved; a card of the builder's has a number
	Name string
	Base string // the key of the card that the builder's was copied from

	Kind      Kind
	Chemistry Chemistry
	SoldBy    Basis

	Density      Spec[unit.Density]
	CuredRolled  Spec[unit.SolidsByVolume] // cured share of the wet film, rolled or brushed
	CuredSprayed Spec[unit.SolidsByVolume] // the same, sprayed
	CuredDensity Spec[unit.Density]
	Styrene      Spec[unit.ByMass] // styrene in the product
	CoatLimits
	UsualFilm     Spec[unit.WetFilm] // of all coats, where nothing else was said
	Methods       []string           // keys of the methods that put it on, the usual one first
	PassMost      Spec[unit.WetFilm] // a filler's largest pass
	LeftLeast     Spec[unit.DryFilm] // mean film that must be left
	LeftThinnest  Spec[unit.DryFilm] // thinnest film that may be left anywhere
	LeftMost      Spec[unit.DryFilm]
	ThinnerAsk    Spec[unit.Share] // asked about above, in the card's basis
	ThinnerRefuse Spec[unit.Share]
	ThinnerBasis  Basis            // of the two limits: ByMass or ByVolume
	Stays         Spec[unit.Share] // of a thinner: the part that stays in the film
	Shrinks       Spec[unit.Share] // of a thinner: how much what stays shrinks
	Thinner       string           // key of the thinner's card; empty: none may be added
	Wax           Spec[unit.ByMass]
	Hardener      string                 // key of the catalyst's card; empty: part of the set, or none
	HardenerShare Spec[unit.ByMass]      // catalyst to order per mass of product
	RatioByMass   Spec[unit.ByMass]      // part A ÷ part B, where the tin says so
	RatioByVolume Spec[unit.ByVolume]    // the same by volume
	SandedOff     Spec[unit.Share]       // of a filler, of what was applied
	UsedPerArea   Spec[unit.MassPerArea] // of a polish
	Takes         Spec[unit.DryFilm]     // least film that a polish takes
	Timing
	Sundries // of what goes with the materials
	Ordering
	BatchMost     Spec[unit.Mass]
	SurfaceLeast  Spec[unit.Temperature]
	SurfaceMost   Spec[unit.Temperature]
	HumidityLeast Spec[unit.Share]
	HumidityMost  Spec[unit.Share]
	ShelfLife     Spec[unit.Time]
	Promoted      bool

	Floor       Spec[unit.ByMass] // least catalyst that cures, of all that cures
	Ceiling     Spec[unit.ByMass] // most that doesn't harm, of the product alone
	DoseTable   []DoseRow         // catalyst over the temperature of the surface, cold to warm
	Families    []string          // peroxides that the product takes, by key
	Family      string            // of a catalyst
	GelTime     Spec[unit.Time]   // at the reference point; a fixed ratio's pot life
	GelAt       Spec[unit.Temperature]
	GelWith     Spec[unit.ByMass]
	GelOrder    Spec[unit.Factor]
	GelEnergy   Spec[unit.MolarEnergy]
	GelMass     Spec[unit.Mass]
	CureHours   Spec[unit.Time] // from catalyst in until dew can't harm it
	PigmentAsk  Spec[unit.ByMass]
	PigmentMost Spec[unit.ByMass]

	Packs []Pack // what ships on the card; none has a price
}

// CoatLimits is what the wet film of one coat may be. Every film from the least up
// must be possible in some number of coats, so the least is at most half of every
// most.
type CoatLimits struct {
	CoatLeast        Spec[unit.WetFilm]
	CoatAsk          Spec[unit.WetFilm] // asked about below
	CoatMost         Spec[unit.WetFilm] // sprayed, lying flat
	CoatMostRolled   Spec[unit.WetFilm] // rolled or brushed
	CoatMostWall     Spec[unit.WetFilm]
	CoatMostOverhead Spec[unit.WetFilm]
	Pass             Spec[unit.WetFilm] // one pass of the gun: passes go wet on wet
}

// Pack is a size that a material is sold in: kilograms, litres, metres or
// pieces by the card's SoldBy. Price is what was typed, or nothing.
type Pack struct{ Size, Price string }

// DoseRow is one line of a catalyst table.
type DoseRow struct {
	Surface  unit.Temperature
	Catalyst unit.ByMass
}

// The keys of the peroxide families.
const (
	Ketone        = "ketone"
	KetoneLow     = "ketone-low"
	Cumene        = "cumene"
	Acetylacetone = "acetylacetone"
	Benzoyl       = "benzoyl"
)

// IsAbrasive says if a card's pieces come in grades, none of which can replace
// another.
func (c *Card) IsAbrasive() bool { return c.OnFilm.Known && c.Kind == Sundry && c.Key != padKey }
