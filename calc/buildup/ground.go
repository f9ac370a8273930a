package buildup

// Ground is what a layer is put on.
type Ground int

// The grounds. The last three arise only within a build-up.
const (
	PolystyreneFoam Ground = iota
	OtherFoam
	BareWood
	Laminate
	TalcFiller
	FreshEpoxy
	CuredEpoxy
	OldPaint
	BareMetal
	WaxedCoat
	UnwaxedCoat
	TwoPackCoat
	grounds
)

// groundNames names each ground in the words of the trade.
var groundNames = [grounds]string{
	PolystyreneFoam: "polystyrene foam (EPS, XPS)",
	OtherFoam:       "polyurethane or PVC foam",
	BareWood:        "bare wood",
	Laminate:        "polyester laminate or gel coat, cured",
	TalcFiller:      "polyester filler",
	FreshEpoxy:      "epoxy, under 7 days",
	CuredEpoxy:      "epoxy, cured",
	OldPaint:        "old paint, one-pack or two-pack",
	BareMetal:       "bare metal",
	WaxedCoat:       "waxed gel coat or flow coat",
	UnwaxedCoat:     "unwaxed gel coat",
	TwoPackCoat:     "two-pack coat of this build-up",
}

// String names the ground in the words of the trade.
func (g Ground) String() string {
	if g < 0 || g >= grounds {
		return "unknown ground"
	}
	return groundNames[g]
}

// Material is what a layer is made of.
type Material int

// The materials. Gel coat and flow coat are polyester or vinyl ester; high-build
// primer is epoxy.
const (
	Polyester Material = iota
	VinylEster
	Epoxy
	TwoPack
	PolyesterFiller
	EpoxyFiller
	materials
)

// column is a material's column in the table of demands.
type column int

const (
	styrenics column = iota // all that is cured by peroxide
	epoxies
	twoPacks
	columns
)

func (m Material) column() column {
	switch m {
	case Epoxy, EpoxyFiller:
		return epoxies
	case TwoPack:
		return twoPacks
	}
	return styrenics
}

// needsWax says if air keeps the material's surface from curing.
func (m Material) needsWax() bool { return m == Polyester || m == VinylEster }
