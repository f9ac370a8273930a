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

// groundWords gives each ground a key and a name in the words of the trade.
var groundWords = [grounds]struct{ key, name string }{
	PolystyreneFoam: {"polystyrene-foam", "polystyrene foam (EPS, XPS)"},
	OtherFoam:       {"foam", "polyurethane or PVC foam"},
	BareWood:        {"wood", "bare wood"},
	Laminate:        {"laminate", "polyester laminate or gel coat, cured"},
	TalcFiller:      {"polyester-filler", "polyester filler"},
	FreshEpoxy:      {"fresh-epoxy", "epoxy, under 7 days"},
	CuredEpoxy:      {"epoxy", "epoxy, cured"},
	OldPaint:        {"old-paint", "old paint, one-pack or two-pack"},
	BareMetal:       {"metal", "bare metal"},
	WaxedCoat:       {"waxed-coat", "waxed gel coat or flow coat"},
	UnwaxedCoat:     {"unwaxed-coat", "unwaxed gel coat"},
	TwoPackCoat:     {"two-pack-coat", "two-pack coat of this build-up"},
}

// Key is the ground's stable key: "polystyrene-foam".
func (g Ground) Key() string { return g.words().key }

// String names the ground in the words of the trade.
func (g Ground) String() string { return g.words().name }

func (g Ground) words() struct{ key, name string } {
	if g < 0 || g >= grounds {
		return struct{ key, name string }{"unknown", "unknown ground"}
	}
	return groundWords[g]
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
