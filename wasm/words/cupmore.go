package words

import (
	"strings"

	"shedreckoner/calc/air"
	"shedreckoner/calc/cure"
)

// The headings of what a cup needs only sometimes.
const (
	ChooseMaterial = "Choose a material"
	WhatFor        = "What the cup is for"
	CoatsToDo      = "Coats that the job has to do"
	AnyAmount      = "Any amount of"
	HowPutOn       = "How it is put on"
	Method         = "Method"
	MinutesToMix   = "Minutes to mix and to lay off"
	FlowTime       = "Thinner for a flow time"
	TinAndTests    = "The tin, and how it is timed"
	TodaysAir      = "Today's air"
	Air            = "air"
	HumidityDial   = "Humidity"
	LowDial        = "Lowest"
	HighDial       = "Highest"
	DayMore        = "The day, and the part"
	ReadNow        = "now"
	UsualSunrise   = "6:00"
	PartStands     = "the part stands"
	PartColour     = "its colour"
	WouldTake      = "What else could go on today"
	StyreneInAir   = "Styrene in the air"
	Remedies       = "Against heat and cold"
	MoreRemedies   = "What else helps"
	AllFigures     = "Every figure of this cup"
	ShedCard       = "Shed card for the wall"
	ThinnerHint    = "Counted with wax solution against the card's limit."
	DropsHint      = "Count the drops in 1\u00a0mL yourself: bottles differ more than twofold."
	ScaleHint      = "0.1\u00a0g is the tool for cups of 100 to 500\u00a0g."
	TinHint        = "A new tin, a new name: it needs its own cup test."
	HowToTime      = "A cup test, always the same way"
	EstimateFirst  = "An estimate:"
	NoFigures      = "Shown with the dose."
	FlowHint       = "Two timed cups at one temperature, with different thinner, by volume."
	NoRemedies     = "None is needed now."
)

// OfTheDay is what is known of the day besides its temperatures, or assumed.
func OfTheDay(readAt, stands, colour, sunrise string) string {
	if readAt == "" {
		readAt = ReadNow
	}
	return "read " + readAt + " · " + stands + ", " + colour + " · sunrise " + sunrise
}

// TestSteps is how a cup test is made.
var TestSteps = []string{
	"Weigh 100\u00a0g at the day's temperature.", "Catalyst in: start the clock.", "Stir 60\u00a0s, then leave the cup.",
	"Lift a string out now and then: when it snaps, it has gelled.", "Tap 'It gelled: the string snapped'. The test counts at once.",
}

// Figures of a cup.
const (
	OfAllThatCures  = "Catalyst, of all that cures"
	UsableFromIn    = "Usable, from catalyst in"
	OfTheseToMix    = "Of that, mixing"
	GelsFromFigure  = "Gels in the cup, earliest"
	GelsUntilFigure = "Gels in the cup, latest"
	SmallestCup     = "Smallest cup with this tool"
	ProductInIt     = "Product in it"
	ThinnerInIt     = "Thinner in it"
	WaxInIt         = "Wax solution in it"
	PigmentInIt     = "Pigment paste in it"
	AllInTheCup     = "All in the cup but the catalyst"
	MixForArea      = "Mix for an area"
	CupsForCoat     = "Cups for one coat"
	StaysBehind     = "Stays behind in all of them"
)

// LargestBy names a limit of the largest cup.
func LargestBy(bound string) string { return "Largest cup, " + bound }

// Styrene in the air.
const (
	VapourWaits      = "Shown once the cup and the surface's temperature are known."
	VapourCaution    = "All of it is taken to leave within an hour. A caution, never a clearance: over a wet surface there is more than the shed's average."
	AirCantDoIt      = "Air alone can't do it: no open door lets that much in. Wear a mask for organic vapours, and keep others out."
	CupGivesOff      = "This cup gives off"
	OfExplosiveLimit = "Of the explosive limit, in the closed space"
	CupsToCome       = "The cups of this coat still to come"
	TodaysVapour     = "Today, with what is still to come"
	WayNotKnown      = "Method not known, taken as sprayed"
	DayAir           = "Fresh air, averaged over 8\u00a0h, at the very least"
)

// AirToStayUnder names the fresh air for an agency's limit.
func AirToStayUnder(agency string) string { return "Fresh air to stay under " + agency }

// ExposureLimit names a limit for styrene in the air.
func ExposureLimit(agency, ppm, dated string) string {
	return agency + ": " + ppm + " ppm over 8\u00a0h (" + dated + ")"
}

// LowestListed says which limit holds while none is chosen.
func LowestListed(limit string) string { return "the lowest listed: " + limit }

// Danger says what a share of the explosive limit means.
func Danger(d air.Danger) string {
	switch d {
	case air.Hazardous:
		return "A tenth of the explosive limit or more: a hazardous space. Not without forced air at the lowest point and a second person outside."
	case air.Explosive:
		return "Over the explosive limit. Don't."
	}
	return "Under a tenth of the explosive limit. That is no clearance: the limit for the lungs is far lower. Air at the lowest point, a second person outside."
}

// Thinner towards a flow time.
const (
	FlowThinner = "Thinner, by volume of product"
	Viscosity   = "Viscosity at that time, if it flows freely"
)

// RemedyBySheet is said of what only the maker's sheet can tell.
const RemedyBySheet = "Depends on the maker's sheet."

// RemedyOpens is said of what brings a dose back.
const RemedyOpens = "Brings a dose back."

// RemedyTo says what a remedy aims at: a temperature, or a cup.
func RemedyTo(target string) string { return "To " + target + "." }

// RemedyAt says at which hour.
func RemedyAt(hour string) string { return "At " + hour + "." }

// RemedyGains says how many minutes a remedy gains.
func RemedyGains(minutes string) string { return "Gains " + minutes + "." }

// Risk says what a remedy can spoil.
func Risk(r cure.Risk) string {
	text := RiskWords[r]
	first := min(1, len(text))
	return "Risk: " + strings.ToLower(text[:first]) + text[first:]
}

// NoDoseAt heads what stands in the place of a dose.
func NoDoseAt(temp string) string {
	if temp == "" {
		return NoDose
	}
	return NoDose + " at " + temp
}

// Drops is a dose by the builder's own count.
func Drops(n string) string { return n + " drops by your own count" }

// MarkThen is the mark of a graduated cup with both parts in it.
func MarkThen(mark string) string { return "fill to the mark of " + mark }

// Setup of a cup.
const (
	NotClosed    = "not in a closed space"
	AsTheSurface = "same"
	CoatsOwn     = "coat's own"
	CardsLargest = "card's largest"
)
