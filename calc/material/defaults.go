package material

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// The figures below come from the trade's sheets and habits; each carries its
// range and its mark, by these short names.
const (
	published  = source.Published
	fromMemory = source.FromMemory
	practice   = source.CommonPractice
	calculated = source.Calculated
	assumption = source.Assumption
)

func spec[Q unit.Quantity](value, low, high Q, mark source.Mark) Spec[Q] {
	return Spec[Q]{value, low, high, mark, true}
}

// toType is a figure that only the tin can give: known with its usual range,
// but without a value.
func toType[Q unit.Quantity](low, high Q) Spec[Q] { return Spec[Q]{Low: low, High: high} }

const (
	kgPerL = unit.Density(1000)
	um     = unit.WetFilm(1e-6)
	umDry  = unit.DryFilm(1e-6)
	mm     = unit.WetFilm(1e-3)
	month  = 30 * unit.Day
)

func celsius(n float64) unit.Temperature { return unit.Of[unit.Temperature](n, unit.InCelsius) }

// exactly is a figure whose range is the figure itself.
func exactly[Q unit.Quantity](value Q, mark source.Mark) Spec[Q] {
	return spec(value, value, value, mark)
}

// Cards is every card that ships, in the order of the work. It must not be
// changed: Card makes a copy.
var Cards = append([]*Card{
	gelCoat(), flowCoat(), vinylEster(), primer(), topcoat(),
	polyesterFiller(), lightPolyesterFiller(), epoxyFiller(),
	ketonePeroxide(), ketoneLowPeroxide(), benzoylPaste(), styrene(), waxSolution(), primerThinner(), topcoatThinner(), acetone(),
	cuttingCompound(), finishingPolish(),
	roller(), brush(), filter(), syringe(), cup(), tape(), sheeting(), releaseFilm(), gloves(), mask(), cartridges(),
	disc(), wetSheet(), strip(), pad(),
}, ingredients()...)

// Find gives a copy of the card that ships under the key.
func Find(key string) (Card, bool) {
	for _, card := range Cards {
		if card.Key == key {
			return *card, true
		}
	}
	return Card{}, false
}

func gelCoat() *Card {
	return &Card{
		Key: "gelcoat", Name: "Polyester gel coat", Kind: GelCoat, Chemistry: Polyester, SoldBy: ByMass,
		Density:       spec(1.25*kgPerL, 1.15*kgPerL, 1.40*kgPerL, practice),
		CuredRolled:   spec[unit.SolidsByVolume](0.83, 0.76, 0.92, assumption),
		CuredSprayed:  spec[unit.SolidsByVolume](0.78, 0.68, 0.88, assumption),
		CuredDensity:  spec(1.30*kgPerL, 1.25*kgPerL, 1.35*kgPerL, practice),
		Styrene:       spec[unit.ByMass](0.35, 0.28, 0.45, practice),
		CoatLimits:    gelCoatLimits,
		UsualFilm:     spec(750*um, 600*um, 1000*um, practice),
		Methods:       []string{"gravity-gun", "cup-gun", "nap-roller", "brush"},
		LeftLeast:     spec(400*umDry, 300*umDry, 500*umDry, assumption),
		Timing:        gelCoatTiming,
		LeftThinnest:  exactly(250*umDry, assumption),
		LeftMost:      exactly(640*umDry, practice),
		ThinnerAsk:    exactly[unit.Share](0.05, practice),
		ThinnerRefuse: exactly[unit.Share](0.0725, practice),
		Thinner:       "styrene",
		Hardener:      "ketone-peroxide",
		HardenerShare: spec[unit.ByMass](0.02, 0.01, 0.025, practice),
		BatchMost:     spec[unit.Mass](0.5, 0.3, 1, practice),
		SurfaceLeast:  exactly(celsius(15), practice),
		SurfaceMost:   exactly(celsius(32), practice),
		HumidityLeast: exactly[unit.Share](0.40, published),
		HumidityMost:  exactly[unit.Share](0.80, published),
		ShelfLife:     spec(6*month, 3*month, 12*month, practice),
		Ordering:      coloured,
		Promoted:      true,
		Families:      []string{Ketone, KetoneLow},
		DoseTable:     gelCoatDoses,
		Floor:         exactly[unit.ByMass](0.010, published),
		Ceiling:       exactly[unit.ByMass](0.025, published),
		GelTime:       spec(13*unit.Minute, 10*unit.Minute, 17*unit.Minute, published),
		GelAt:         exactly(celsius(25), published),
		GelWith:       exactly[unit.ByMass](0.018, published),
		GelOrder:      spec[unit.Factor](0.8, 0.5, 1, assumption),
		GelEnergy:     spec[unit.MolarEnergy](55e3, 40e3, 85e3, practice), // 40–60 in print; charts and cooling go further
		GelMass:       exactly[unit.Mass](0.1, practice),
		CureHours:     spec(4*unit.Hour, 2*unit.Hour, 8*unit.Hour, assumption),
		PigmentAsk:    exactly[unit.ByMass](0.05, practice),
		PigmentMost:   exactly[unit.ByMass](0.10, practice),
		Packs:         packs("1", "5", "20"),
	}
}

// The wet film of one coat. Source: common practice for the films; that a wall
// takes less than a floor, and overhead less still, too.
var (
	gelCoatLimits = CoatLimits{
		CoatLeast: exactly(200*um, assumption), CoatAsk: exactly(300*um, practice), CoatMost: exactly(600*um, practice),
		CoatMostRolled: exactly(500*um, practice), CoatMostWall: exactly(500*um, practice), CoatMostOverhead: exactly(400*um, practice),
		Pass: spec(130*um, 100*um, 200*um, practice),
	}
	primerLimits  = CoatLimits{CoatLeast: exactly(100*um, assumption), CoatAsk: exactly(120*um, practice), CoatMost: exactly(200*um, practice)}
	topcoatLimits = CoatLimits{CoatLeast: exactly(60*um, assumption), CoatAsk: exactly(70*um, practice), CoatMost: exactly(120*um, practice)}
)

// gelCoatDoses is catalyst over the temperature of the surface for a generic
// promoted polyester gel coat. No public body's table was found: common
// practice, inside the published 1.0–2.5 %.
var gelCoatDoses = doses(15, 2.20, 18, 2.00, 20, 1.85, 22, 1.70, 25, 1.50, 28, 1.35, 30, 1.25, 32, 1.20)

// doses makes table rows of pairs of °C and %.
func doses(pairs ...float64) []DoseRow {
	rows := make([]DoseRow, 0, len(pairs)/2)
	for i := 0; i+1 < len(pairs); i += 2 {
		rows = append(rows, DoseRow{celsius(pairs[i]), unit.Of[unit.ByMass](pairs[i+1], unit.InPercent)})
	}
	return rows
}

func flowCoat() *Card {
	card := gelCoat()
	card.Key, card.Name, card.Kind = "flowcoat", "Flow coat (gel coat with wax)", FlowCoat
	card.CuredSprayed = Spec[unit.SolidsByVolume]{}
	card.Styrene = spec[unit.ByMass](0.36, 0.28, 0.45, practice)
	card.CoatMost, card.CoatMostRolled, card.Pass = exactly(500*um, practice), Spec[unit.WetFilm]{}, Spec[unit.WetFilm]{}
	card.UsualFilm, card.Methods = spec(400*um, 350*um, 500*um, practice), []string{"nap-roller", "brush", "knife"}
	card.LeftLeast, card.LeftThinnest = spec(300*umDry, 250*umDry, 400*umDry, assumption), exactly(200*umDry, assumption)
	card.Wax = spec[unit.ByMass](0.02, 0.01, 0.03, practice)
	card.SurfaceMost = exactly(celsius(30), practice)
	card.DoseTable = doses(15, 2.20, 18, 2.00, 20, 1.85, 22, 1.70, 25, 1.50, 28, 1.35, 30, 1.25)
	return card
}

func vinylEster() *Card {
	card := gelCoat()
	card.Key, card.Name, card.Chemistry = "vinylester", "Vinyl ester gel coat", VinylEster
	card.Density = spec(1.20*kgPerL, 1.10*kgPerL, 1.30*kgPerL, practice)
	card.CuredRolled = spec[unit.SolidsByVolume](0.78, 0.72, 0.88, assumption)
	card.CuredSprayed = spec[unit.SolidsByVolume](0.72, 0.62, 0.82, assumption)
	card.Styrene = spec[unit.ByMass](0.42, 0.38, 0.48, practice)
	card.ThinnerAsk, card.ThinnerRefuse = exactly[unit.Share](0.03, assumption), exactly[unit.Share](0.05, assumption)
	card.BatchMost = exactly[unit.Mass](0.4, assumption)
	card.SurfaceLeast, card.SurfaceMost = exactly(celsius(18), practice), exactly(celsius(30), practice)
	card.ShelfLife = spec(4*month, 3*month, 6*month, practice)
	card.Families = []string{KetoneLow}
	card.Hardener = "ketone-low-peroxide"
	card.DoseTable = doses(18, 2.0, 20, 1.9, 25, 1.75, 30, 1.5)
	card.Floor = exactly[unit.ByMass](0.0125, practice)
	card.GelTime = spec(20*unit.Minute, 12*unit.Minute, 30*unit.Minute, assumption)
	card.GelAt = exactly(celsius(25), assumption)
	card.GelWith = exactly[unit.ByMass](0.0175, assumption)
	card.GelEnergy = spec[unit.MolarEnergy](60e3, 40e3, 90e3, assumption)
	return card
}

func primer() *Card {
	return &Card{
		Key: "primer", Name: "Epoxy primer, high build", Kind: Primer, Chemistry: Epoxy, SoldBy: BySet,
		Density:       spec(1.40*kgPerL, 1.25*kgPerL, 1.55*kgPerL, practice),
		CuredRolled:   spec[unit.SolidsByVolume](0.50, 0.42, 0.65, practice),
		CuredSprayed:  spec[unit.SolidsByVolume](0.50, 0.42, 0.65, practice),
		CoatLimits:    primerLimits,
		UsualFilm:     spec(450*um, 300*um, 600*um, practice),
		Methods:       []string{"foam-roller", "nap-roller", "brush", "hv-spray"},
		Timing:        primerTiming,
		LeftLeast:     spec(100*umDry, 80*umDry, 150*umDry, assumption),
		ThinnerAsk:    exactly[unit.Share](0.10, practice),
		ThinnerRefuse: exactly[unit.Share](0.20, practice),
		ThinnerBasis:  ByVolume,
		Thinner:       "primer-thinner",
		RatioByMass:   toType[unit.ByMass](0.5, 20),
		RatioByVolume: toType[unit.ByVolume](0.5, 20),
		BatchMost:     exactly[unit.Mass](2, assumption),
		SurfaceLeast:  exactly(celsius(10), practice),
		SurfaceMost:   exactly(celsius(32), practice),
		HumidityMost:  exactly[unit.Share](0.85, published),
		ShelfLife:     exactly(24*month, practice),
		Ordering:      plain,
		GelTime:       spec(4*unit.Hour, 2*unit.Hour, 8*unit.Hour, practice),
		GelAt:         exactly(celsius(20), practice),
		GelEnergy:     spec[unit.MolarEnergy](57e3, 50e3, 65e3, practice), // 55–60 in print
		GelMass:       exactly[unit.Mass](0.5, assumption),
		CureHours:     spec(8*unit.Hour, 6*unit.Hour, 16*unit.Hour, assumption),
		Packs:         packs("0.75", "2.5", "4", "20"),
	}
}

func topcoat() *Card {
	card := primer()
	card.Key, card.Name, card.Kind, card.Chemistry = "topcoat", "Two-pack topcoat", Topcoat, TwoPack
	card.Density = spec(1.20*kgPerL, 1.05*kgPerL, 1.35*kgPerL, practice)
	card.CuredRolled = spec[unit.SolidsByVolume](0.47, 0.40, 0.55, practice)
	card.CuredSprayed = card.CuredRolled
	card.CoatLimits = topcoatLimits
	card.UsualFilm, card.Methods = spec(300*um, 200*um, 360*um, practice), []string{"roll-and-tip", "foam-roller", "brush", "hv-spray"}
	card.Timing = topcoatTiming
	card.LeftLeast = spec(70*umDry, 50*umDry, 100*umDry, assumption)
	card.ThinnerAsk, card.ThinnerRefuse = exactly[unit.Share](0.25, practice), exactly[unit.Share](0.35, practice)
	card.Thinner = "topcoat-thinner"
	card.SurfaceLeast, card.SurfaceMost = exactly(celsius(12), practice), exactly(celsius(30), practice)
	card.HumidityLeast, card.HumidityMost = exactly[unit.Share](0.35, practice), exactly[unit.Share](0.80, practice)
	card.GelTime = spec(4*unit.Hour, 2*unit.Hour, 6*unit.Hour, practice)
	card.GelEnergy = spec[unit.MolarEnergy](55e3, 45e3, 70e3, assumption)
	card.Packs = packs("0.75", "2.5")
	card.Ordering = coloured
	return card
}

func polyesterFiller() *Card {
	return &Card{
		Key: "polyester-filler", Name: "Polyester filler (talc)", Kind: Filler, Chemistry: Polyester, SoldBy: ByMass,
		Density:       spec(1.75*kgPerL, 1.6*kgPerL, 1.9*kgPerL, practice),
		CuredRolled:   spec[unit.SolidsByVolume](0.97, 0.95, 0.98, practice),
		Styrene:       spec[unit.ByMass](0.20, 0.15, 0.25, practice),
		PassMost:      spec(5*mm, 3*mm, 10*mm, practice),
		Timing:        polyesterFillerTiming,
		Hardener:      "benzoyl-paste",
		HardenerShare: spec[unit.ByMass](0.02, 0.01, 0.03, practice),
		SandedOff:     spec[unit.Share](0.30, 0.20, 0.50, practice),
		BatchMost:     spec[unit.Mass](0.15, 0.1, 0.25, practice),
		SurfaceLeast:  exactly(celsius(10), practice),
		SurfaceMost:   exactly(celsius(30), practice),
		HumidityMost:  exactly[unit.Share](0.85, practice),
		ShelfLife:     exactly(12*month, practice),
		Ordering:      plain,
		Promoted:      true,
		Families:      []string{Benzoyl},
		DoseTable:     doses(10, 2.0, 30, 2.0),
		Floor:         exactly[unit.ByMass](0.01, practice),
		Ceiling:       exactly[unit.ByMass](0.03, practice),
		GelTime:       spec(5*unit.Minute, 3*unit.Minute, 8*unit.Minute, practice),
		GelAt:         exactly(celsius(20), practice),
		GelWith:       exactly[unit.ByMass](0.02, practice),
		GelOrder:      spec[unit.Factor](0.8, 0.5, 1, assumption),
		GelEnergy:     spec[unit.MolarEnergy](55e3, 40e3, 85e3, assumption),
		GelMass:       exactly[unit.Mass](0.1, practice),
		CureHours:     spec(1*unit.Hour, 1*unit.Hour, 2*unit.Hour, practice),
		Packs:         packs("1", "2.5"),
	}
}

func lightPolyesterFiller() *Card {
	card := polyesterFiller()
	card.Key, card.Name = "light-polyester-filler", "Polyester filler, light"
	card.Density = spec(1.15*kgPerL, 1.0*kgPerL, 1.3*kgPerL, practice)
	return card
}

func epoxyFiller() *Card {
	return &Card{
		Key: "epoxy-filler", Name: "Epoxy fairing filler", Kind: Filler, Chemistry: Epoxy, SoldBy: BySet,
		Density:       spec(0.75*kgPerL, 0.6*kgPerL, 0.95*kgPerL, practice),
		CuredRolled:   spec[unit.SolidsByVolume](1, 0.98, 1, practice),
		PassMost:      spec(10*mm, 6*mm, 20*mm, practice),
		Timing:        epoxyFillerTiming,
		RatioByMass:   toType[unit.ByMass](0.5, 20),
		RatioByVolume: toType[unit.ByVolume](0.5, 20),
		SandedOff:     spec[unit.Share](0.30, 0.20, 0.50, practice),
		BatchMost:     exactly[unit.Mass](0.6, assumption),
		SurfaceLeast:  exactly(celsius(12), practice),
		SurfaceMost:   exactly(celsius(32), practice),
		HumidityMost:  exactly[unit.Share](0.80, practice),
		ShelfLife:     exactly(24*month, practice),
		Ordering:      plain,
		GelTime:       spec(40*unit.Minute, 20*unit.Minute, 60*unit.Minute, practice),
		GelAt:         exactly(celsius(20), practice),
		GelEnergy:     spec[unit.MolarEnergy](57e3, 50e3, 65e3, practice), // 55–60 in print
		GelMass:       exactly[unit.Mass](0.5, practice),
		CureHours:     spec(12*unit.Hour, 8*unit.Hour, 24*unit.Hour, assumption),
		Packs:         packs("0.75", "1", "5"),
	}
}

func packs(sizes ...string) []Pack {
	list := make([]Pack, len(sizes))
	for i, size := range sizes {
		list[i].Size = size
	}
	return list
}
