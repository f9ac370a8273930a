package words

import (
	"strconv"
)

// Putties mixed by hand.
const (
	AddAPutty          = "Add a putty"
	PuttyWithoutAName  = "Unnamed putty"
	WhatThePartsMake   = "what the parts make"
	EpoxyFairingFiller = "Epoxy fairing filler"
	WhatGoesIn         = "What goes in"
	WhatDensities      = "True density: of the liquid, or of the particles. Bulk density: weigh a full cup. The figure in an empty field is the usual one: check your tin."
	AddAPart           = "Add a part"
	Price              = "price"
	NoPrice            = "no price"
	ThePartsMake       = "The parts make"
	AndWeigh           = "and weigh"
	DensityOfThePutty  = "Density of the putty"
	BalloonsByVolume   = "Balloons by volume"
	DryPutty           = "Over 55 % balloons the putty is dry: it tears under the knife and sands to a weak skin. Is that meant?"
)

// PuttyNumber names a putty that nobody has named yet.
func PuttyNumber(id string) string { return "Putty " + id }

// PartNumber names a part of a putty by its place.
func PartNumber(n int) string { return "Part " + strconv.Itoa(n) }

// WeighPart labels what to weigh of a part.
func WeighPart(name string) string { return "Weigh " + name }

// PartWeighs labels what a part weighs.
func PartWeighs(name string) string { return Capital(name) + " weighs" }

// PuttyAgainst holds the putty's density against a filler that is bought.
func PuttyAgainst(density, filler, bought string) string {
	return "Density " + density + "; " + filler + ": " + bought + "."
}

// LitreAgainst holds the cost of a litre against the filler's.
func LitreAgainst(cost, filler, bought string) string {
	return "A litre costs " + cost + "; of " + filler + " " + bought + "."
}

// LitreAlone is the cost of a litre where the filler has no price.
func LitreAlone(cost, filler string) string {
	return "A litre costs " + cost + ". The card of " + filler + " has no price yet."
}

// PriceThem asks for the prices that a comparison takes.
func PriceThem(filler string) string {
	return "Type a price for each part, and one on the card of " + filler + ", to compare the cost."
}
