package material

import "shedreckoner/calc/unit"

// bottle is what a bottle of catalyst holds beyond the doses: test cups and what
// stays in it.
var bottle = Sundries{Spare: exactly[unit.Factor](1.2, practice)}

func ketonePeroxide() *Card {
	return &Card{
		Key: "ketone-peroxide", Name: "MEKP catalyst, ketone peroxide solution", Kind: Catalyst, SoldBy: ByMass, Family: Ketone,
		Density:   spec(1.15*kgPerL, 1.10*kgPerL, 1.18*kgPerL, fromMemory),
		ShelfLife: spec(6*month, 6*month, 12*month, practice),
		Ordering:  plain,
		Sundries:  bottle,
		Packs:     packs("0.05", "0.1", "0.25", "1"),
	}
}

func ketoneLowPeroxide() *Card {
	card := ketonePeroxide()
	card.Key, card.Name, card.Family = "ketone-low-peroxide", "Low-peroxide MEKP, ketone peroxide low in hydrogen peroxide", KetoneLow
	return card
}

func benzoylPaste() *Card {
	return &Card{
		Key: "benzoyl-paste", Name: "Hardener paste, benzoyl peroxide", Kind: Catalyst, SoldBy: ByMass, Family: Benzoyl,
		Density:   exactly(1.2*kgPerL, practice),
		ShelfLife: exactly(12*month, practice),
		Ordering:  plain,
		Sundries:  bottle,
		Packs:     packs("0.03", "0.06"),
	}
}

func styrene() *Card {
	return &Card{
		Key: "styrene", Name: "Styrene", Kind: Thinner, SoldBy: ByVolume,
		Density:   exactly(0.906*kgPerL, published),
		Styrene:   exactly[unit.ByMass](1, published),
		Stays:     spec[unit.Share](0.5, 0, 1, assumption),
		Shrinks:   exactly[unit.Share](0.14, published),
		ShelfLife: exactly(6*month, practice),
		Ordering:  plain,
		Packs:     packs("0.5", "1", "5"),
	}
}

// WaxKey is the card of the wax solution that goes into flow coats.
const WaxKey = "wax-solution"

func waxSolution() *Card {
	return &Card{
		Key: WaxKey, Name: "Wax solution in styrene", Kind: WaxSolution, SoldBy: ByVolume,
		Density:   exactly(0.91*kgPerL, practice),
		Styrene:   spec[unit.ByMass](0.95, 0.94, 0.96, practice),
		Stays:     spec[unit.Share](0.5, 0, 1, assumption),
		Shrinks:   exactly[unit.Share](0.14, published),
		ShelfLife: exactly(6*month, assumption),
		Ordering:  plain,
		Packs:     packs("0.1", "1"),
	}
}

func primerThinner() *Card {
	return &Card{
		Key: "primer-thinner", Name: "Thinner of the primer's maker", Kind: Thinner, SoldBy: ByVolume,
		Density:  spec(0.87*kgPerL, 0.80*kgPerL, 0.95*kgPerL, assumption),
		Stays:    exactly[unit.Share](0, published),
		Shrinks:  exactly[unit.Share](0, published),
		Ordering: plain,
		Packs:    packs("0.5", "1", "5"),
	}
}

func topcoatThinner() *Card {
	card := primerThinner()
	card.Key, card.Name = "topcoat-thinner", "Thinner of the topcoat's maker"
	return card
}

func acetone() *Card {
	return &Card{
		Key: "acetone", Name: "Acetone, for cleaning only", Kind: Solvent, SoldBy: ByVolume,
		Density:  exactly(0.79*kgPerL, practice),
		Sundries: Sundries{Wash: exactly(0.1*unit.Litre, practice), Flush: exactly(0.25*unit.Litre, practice)},
		Ordering: plain,
		Packs:    packs("1", "5"),
	}
}

func cuttingCompound() *Card {
	return &Card{
		Key: "compound", Name: "Cutting compound", Kind: Polish, SoldBy: ByMass,
		UsedPerArea: spec[unit.MassPerArea](0.040, 0.025, 0.080, practice),
		Takes:       spec(3*umDry, 2*umDry, 6*umDry, assumption),
		Ordering:    plain,
		Packs:       packs("0.5", "1", "3"),
	}
}

func finishingPolish() *Card {
	return &Card{
		Key: "polish", Name: "Finishing polish", Kind: Polish, SoldBy: ByMass,
		UsedPerArea: spec[unit.MassPerArea](0.020, 0.010, 0.040, practice),
		Takes:       spec(1*umDry, 0.5*umDry, 2*umDry, assumption),
		Ordering:    plain,
		Packs:       packs("0.25", "1"),
	}
}
