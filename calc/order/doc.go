// Package order turns what a plan needs into what to buy: packs, how likely the
// amount is to be enough, and what earlier work teaches about the next.
//
//	topic                                        file
//	rounding, stock, sets, reserve               need.go
//	packs at least cost                          packs.go, search.go
//	areas, films and losses as spreads           confidence.go
//	the draws, in slices                         simulation.go
//	learning from the log                        learning.go
//	which input moves a total most               sensitivity.go
//
// Every need takes the same path: simulated or planned as a float, through RoundUp
// to a decimal, less the stock, then to packs. All amounts are of the product as
// sold.
package order

import "shedreckoner/calc/working"

// Rules is every rule of the package.
func Rules() []*working.Rule {
	return working.List(
		&Reserve,
		PacksByMass, PacksByVolume, PacksByLength, PacksByCount,
		ConfidenceByMass, ConfidenceByVolume,
		Learning,
	)
}
