package words

// Putties mixed by hand.
const (
	AddAPutty          = "Add a putty"
	PuttyWithoutAName  = "Putty without a name"
	WhatThePartsMake   = "what the parts make"
	EpoxyFairingFiller = "Epoxy fairing filler"
	WhatGoesIn         = "What goes in"
	WhatDensities      = "True density: of the liquid, or of the particles. As it lies: weigh a full cup. What stands in an empty field is usual: check your tin."
	AddAPart           = "Add a part"
	NoPrice            = "no price"
	ThePartsMake       = "The parts make"
	AndWeigh           = "and weigh"
	DensityOfThePutty  = "Density of the putty"
	BalloonsByVolume   = "Balloons by volume"
	DryPutty           = "Over 55 % balloons the putty is dry: it tears under the knife and sands to a weak skin. Is that meant?"
)

// PuttyNumber names a putty that nobody has named yet.
func PuttyNumber(id string) string { return "Putty " + id }
