package bench

import "shedreckoner/calc/working"

// Rules is every rule that is declared here and not with the sums.
var Rules = []*working.Rule{
	productOfWhole.Rule, partOfProduct.Rule, massOfVolume.Rule, coverRule.Rule, timeToSpread.Rule,
	mixOfOneCoat.Rule, restOfOneCoat.Rule, proposedSize,
	coatGivenOff.Rule, boxVolume.Rule, coatOnArea.Rule,
}
