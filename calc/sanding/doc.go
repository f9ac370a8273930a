// Package sanding works out what abrasives take: the film each grade costs, a
// sequence of grades, discs, hours and dust, and the removal that the builder has
// measured.
//
// Grades are FEPA P grades with their published mean grain sizes (ISO 6344);
// American grades are kept apart, and read only where a P grade is published for
// them. How deep a grain scratches has no citable rule: the share of the grain size
// is an argument, and a removal that the builder has weighed or measured takes its
// place.
//
//	grade, size       grade.go     P12 to P2500
//	film each takes   ladder.go    texture, scratches, polish
//	sequence          sequence.go  proposal and checks
//	measured removal  removal.go   by weight, by readings
//	effort            effort.go    discs, hours, dust, compound
package sanding
