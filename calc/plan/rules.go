package plan

import "shedreckoner/calc/working"

// Rules is every rule that is declared here and not with the sums: what joins
// them to cards and steps.
var Rules = []*working.Rule{
	allCoats.Rule, extraRule.Rule, shareOfMass.Rule, VolumeOf.Rule,
	filmLeft, coatLeft,
	mixings.Rule, mixForOne.Rule, allCups.Rule, leftInAll.Rule, withLoss.Rule,
	throughArea.Rule, coatsAsRead.Rule, placesAlike.Rule, filletDepth.Rule, deepestReading, deepestSpot, areaOfRounds.Rule, coatsOfRounds.Rule, filmOfRounds.Rule,
	leftToDo.Rule, leftToPutOn.Rule, asLearnt.Rule, restMass.Rule, restVolume.Rule, restPieces.Rule, restLength.Rule, restTime.Rule, putOnRule.Rule,
	roughCups.Rule, timeOfCoat.Rule, spellsOf.Rule, heldInAll.Rule, timedEarly.Rule, cupInTime.Rule, onePass.Rule, areaFilled.Rule, overCoat.Rule, perCoat.Rule,
	piecesOf.Rule, piecesOfHours.Rule, piecesWorn.Rule, alongEdge.Rule, massWithSpare.Rule, forCleaning.Rule, sprayTime.Rule, betweenPasses.Rule,
}
