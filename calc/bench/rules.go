package bench

import "shedreckoner/calc/working"

// Rules is every rule that is declared here and not with the sums.
func Rules() []*working.Rule {
	return working.List(
		&productOfWhole, &partOfProduct, &massOfVolume, &coverRule, &timeToSpread,
		&mixOfOneCoat, &restOfOneCoat, proposedSize,
		&coatGivenOff, &boxVolume, &coatOnArea,
	)
}
