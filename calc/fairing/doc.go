// Package fairing turns hollows into filler: volumes of skims, hollows and
// fillets, a grid of readings with its datum, passes, and putty mixed by hand.
//
// A reading is the distance from a straight-edge or batten to the surface:
// above zero a hollow to fill, below zero a proud spot to cut.
//
//	skim, hollow, fillet  volume.go
//	grid of readings      grid.go, integrate.go
//	raising the datum     datum.go
//	pasted readings       paste.go, readings.go
//	applied, passes       pass.go
//	putty by recipe       putty.go
package fairing

import "shedreckoner/calc/working"

// Rules is every rule of this package.
func Rules() []*working.Rule {
	return working.List(
		&Skim, &BattenHollow, &Trough, &Fillet, FillVolume, CutVolume, BestDatum,
		&Applied, &AppliedDepth, &SandedOff, &Passes, &MassOf, &HardenerByMass, &HardenerByVolume,
		&PartVolume, &WithAir, &MixedDensity, &BalloonShare, &ToWeigh,
	)
}
