// Package buildup walks the steps of a surface in order: the film they add and
// take from the substrate to the polish, how much must be put on so that
// enough is left, what share of the area is expected to go through, and what
// may follow what.
//
// A film has a mean and a spread from point to point. Where it is sanded, the share
// that goes through is that of a normal distribution below zero; coats of one layer
// are taken to be thick and thin in the same places, since one hand laid them. It
// takes plain values, never a card.
//
//	a step              step.go
//	film through steps  walk.go, rules.go
//	film to put on      solve.go
//	edges               edge.go
//	measured films      readings.go
//	grounds, materials  ground.go
//	ground and layer    demand.go, table.go
//	sequence            check.go, rules of it in sequence.go
//	film findings       shortfall.go
package buildup

import "shedreckoner/calc/working"

// Rules is every rule of this package.
func Rules() []*working.Rule {
	return working.List(
		&Rounds, &StepSpread, &Spread, &Left, &ThinSide, &Through, Deviate, FilmNeeded,
		&EdgeArea, &FlatArea, &Scaled, MeanReading, ReadingCV,
	)
}
