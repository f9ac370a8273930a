package plan

import "shedreckoner/calc/working"

// Rules is every rule that is declared here and not with the sums: what joins
// them to cards and steps.
func Rules() []*working.Rule {
	return working.List(
		&allCoats, &extraRule, &shareOfMass, &VolumeOf,
		filmLeft, coatLeft,
		&mixings, &mixForOne, &allCups, &leftInAll, &withLoss,
		&throughArea, &coatsAsRead, &placesAlike, &filletDepth, deepestReading, deepestSpot, &areaOfRounds, &coatsOfRounds, &filmOfRounds,
		&leftToDo, &leftToPutOn, &asLearnt, &restMass, &restVolume, &restPieces, &restLength, &restTime, &putOnRule,
		&roughCups, &timeOfCoat, &spellsOf, &heldInAll, &timedEarly, &cupInTime, &onePass, &areaFilled, &overCoat, &perCoat,
		&piecesOf, &piecesOfHours, &piecesWorn, &alongEdge, &massWithSpare, &forCleaning, &sprayTime, &betweenPasses,
	)
}
