// Package film turns films into amounts and amounts into films: what a wet film
// cures to, how far a litre goes, what an area takes, in how many coats.
//
//	topic                                     file
//	thinning, wet and dry film                solids.go
//	spreading rates, losses                   rate.go
//	amounts by volume and by mass             amount.go
//	shares by volume and by mass, mixtures    share.go
//	coats within a card's limits              coats.go
//	wet-film comb                             comb.go
//	what a rough ground swallows              ground.go
//	flow cups                                 flowcup.go
//
// Product as sold and mix as thinned are never confused: the name of every rule
// says which it means. Losses are what never reaches the surface (sling, overspray,
// rebound); what stays in cup, roller or gun is counted with the cups, and what the
// ground swallows is a term of its own.
//
// Sources: UFC 3-190-06, ISO 2431; what follows from conservation of volume and
// mass is marked as calculated.
package film

import "shedreckoner/calc/working"

// Rules is every rule of the package.
func Rules() []*working.Rule {
	return working.List(
		&Thinned, &Wet, &Dry, &MeanOfPeak,
		&RateAsThinned, &RateAsSold, &Practical,
		&Mix, &AsSold, &Thinner, &Weight, &MassPerArea, &FilmOfMass, &CuredDensity, &Kept,
		&ThinnerByVolume, &ThinnerByMass, &MixDensity, Thinners,
		&CoatCount, &FilmPerCoat,
		&CombMid, &Missing,
		Dead,
		ThinnerForTime, &Cup3, &Cup4, &Cup5, &Cup6,
	)
}
