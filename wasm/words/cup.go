package words

import (
	"strings"

	"shedreckoner/calc/bench"
)

// What stands on the screens of a cup, step by step.
const (
	NextCup        = "Next cup"
	SurfaceName    = "surface"
	CupDial        = "Cup"
	AheadDial      = "Coldest ahead"
	Catalyst       = "catalyst"
	Hardener       = "hardener"
	WeighCup       = "Weigh this cup"
	ToCatalyst     = "Weighed: on to the catalyst"
	ToHardener     = "Part A in: on to the hardener"
	FillersIn      = "Stirred in: on to the hardener"
	ToWeighed      = "On to the weighed cup"
	CatalystIn     = "Catalyst in: start the clock"
	HardenerIn     = "Hardener in: start the clock"
	ScrapCup       = "Scrap this cup"
	BackToScale    = "Back to the scale"
	PlanAnother    = "Plan another cup"
	AllElse        = "Everything else for a cup"
	TypeSurface    = "Type the temperature of the surface, read by infrared where it is coldest. The dose follows."
	TapTool        = "Tap what it is measured with, above."
	TypeAhead      = "The surface is near the card's lowest. Type the coldest it will be until it has cured: the dose follows."
	NoDose         = "No dose"
	NoDoseYet      = "No dose yet"
	BringsItBack   = "What brings it back"
	StillToType    = "Still to be typed:"
	FiguresMoved   = "The figures changed since this cup was weighed, so its dose is gone. Put them back, weigh it again, or scrap the cup."
	OtherTabTitle  = "No dose in this tab"
	OtherTab       = "There are two states of this job, and in the other a cup may have its catalyst in. Choose above which of the two to keep."
	MayBeIn        = "The last cup weighed may have its catalyst in: add none. Its start isn't known here. Go by your own watch, or scrap the cup."
	WhichTool      = "What is the catalyst measured with?"
	WhichParts     = "What are the parts measured with?"
	AskedOnce      = "Asked once. A scale of 0.1\u00a0g or a syringe suits cups of 100 to 500\u00a0g."
	ScaleZero      = "Put the cup on the scale and zero it once. Each line is what the scale then shows."
	OneGraduated   = "One graduated cup. Each line is the mark to fill it to."
	InTheCup       = "In the cup"
	AsWeighed      = "as weighed: the dose follows it"
	ThenStir       = "Stir. The catalyst comes next: goggles and gloves on, eyewash in reach."
	ThenHardener   = "The hardener comes next: gloves and goggles on."
	AtCatalyst     = "Goggles and gloves on. Never on promoter. Nothing back into the bottle."
	AtHardener     = "Stir, and scrape the wall and the bottom. On the skin: soap and water, no solvent."
	AtIsocyanate   = "Isocyanate: cover skin and eyes. Never spray it without an air-fed mask. With asthma, don't."
	Warm           = "Warm to the hand: spread it now, or put it outside on something that can't burn."
	OverTwo        = "Over 2\u00a0% by mass: near the top of what is advised."
	Estimate       = "time a test cup first. The maker's sheet overrules it."
	CatalystOnce   = "Catalyst, once"
	HardenerOnce   = "Hardener, all of it"
	TimeATest      = "Time a test of 100\u00a0g"
	TestGrams      = "100\u00a0g"
	TestBare       = "100"
	TestWeighed    = "A test cup is weighed"
	NotForWork     = "This cup is only for timing the gel: put none of it on."
	FitUnchecked   = "Fit to coat: not checked."
	ReadTheSurface = "Read the temperature of the surface."
	ReadTheAir     = "Read the air's temperature and humidity."
	AnswerLabel    = "This cup"
	WeighLabel     = "What goes into the cup"
)

// Tool is one of the four tools that catalyst is measured with.
type Tool struct{ Key, Name, Small string }

// Tools are the four, by what is typed for each.
var Tools = []Tool{
	{"scale 1 g", "1\u00a0g scale", "kitchen"},
	{"scale 0.1 g", "0.1\u00a0g scale", "suits most cups"},
	{"scale 0.01 g", "0.01\u00a0g scale", "pocket"},
	{"syringe 0.1 mL", "Syringe", "marks of 0.1\u00a0mL"},
}

// Heading is what stands above a step of a cup: "Weigh: gel coat, 300 g".
func Heading(step, card, amount string) string {
	text := step + ": " + lower(card)
	if amount != "" {
		text += ", " + amount
	}
	return text
}

// The steps, as a heading begins.
const (
	WeighStep = "Weigh"
	TestStep  = "Timed test"
)

// lower gives a card's name inside a line: "Polyester gel coat" is no name of a person.
func lower(name string) string {
	if len(name) > 1 && 'A' <= name[0] && name[0] <= 'Z' && 'a' <= name[1] && name[1] <= 'z' {
		return string(name[0]+'a'-'A') + name[1:]
	}
	return name
}

// PartName names a line of the cup; card is the name of what goes in.
func PartName(p bench.Part, card string) string {
	switch p {
	case bench.Resin, bench.Filler:
		return strings.ToUpper(card[:min(1, len(card))]) + card[min(1, len(card)):]
	case bench.Pigment:
		return "Pigment paste"
	case bench.PartA:
		return "Part A"
	case bench.PartB:
		return "Part B, the hardener"
	}
	return card
}

// LineSmall is what stands under a line's name: its own amount, and its share of the product.
func LineSmall(own, share string) string {
	if share == "" {
		return own
	}
	return own + ", " + share
}

// ScaleThenShows is what the scale shows with the catalyst in.
func ScaleThenShows(bare string) string { return "the scale then shows " + bare }

// Twin is the dose in the other unit, with its share.
func Twin(twin, share string) string { return twin + ", " + share + "\u00a0by\u00a0mass" }

// TwinAlone is the dose in the other unit below the hero.
func TwinAlone(twin string, isVolume bool) string {
	if isVolume {
		return twin + ", by a syringe"
	}
	return twin + ", by a scale"
}

// MinutesFromHere is what is left to spread once the catalyst is in; area may be empty.
func MinutesFromHere(minutes, area string) (first, rest string) {
	if area != "" {
		rest = "to spread from here, " + area
	} else {
		rest = "to spread from here"
	}
	return minutes, rest
}

// HardenerTwin is a fixed ratio's other part and its ratio.
func HardenerTwin(partA string) string { return "with " + partA + " of part A" }

// OnTheResin says what the hardener of a putty mixed by hand is for.
func OnTheResin(resin string) string { return "on " + resin + " of resin, not on the fillers" }

// SameProduct and ProductAt say how warm the product is, under the surface's dial.
const SameProduct = "product the same"

// ProductAt says it where it was typed.
func ProductAt(temp string) string { return "product " + temp }

// LargestNow is the largest cup, under the cup's dial; there is none where it would be less than a gram.
func LargestNow(mass string, isNone bool) string {
	if isNone {
		return "none can be spread now"
	}
	return "largest now " + mass
}

// Bound says what holds the largest cup.
func Bound(b bench.Bound) string {
	switch b {
	case bench.ByMinutes:
		return "what can be spread in time"
	case bench.ByBatch:
		return "the card's batch at this gel time"
	case bench.ByUntimedTin:
		return "until this tin is timed"
	case bench.ByCoat:
		return "all that this coat still needs"
	case bench.ByKilogram:
		return "no larger cup is offered unasked"
	case bench.ByTestedMass:
		return "no larger cup was timed"
	case bench.ByHotTest:
		return "past the end of the table"
	}
	return ""
}

// HeldBy is the line that says which limit holds the largest cup.
func HeldBy(mass, bound string) string { return "Largest " + mass + ": " + bound }

// The facts below a dose.
const (
	Covers  = "this cup covers"
	CupsAll = "for this coat"
	Comb    = "comb, wet"
)

// Cups counts the cups of a coat.
func Cups(all string) string {
	if all == "1" {
		return "1 cup"
	}
	return all + " cups"
}

// The bar of time.
const (
	Gels       = "gels in the cup"
	GelsInTwo  = "gels in\nthe cup"
	GelsShort  = "gels"
	SpreadName = "spread"
)

// TimeBar reads the bar out.
func TimeBar(mix, spread, from, until string) string {
	return "From catalyst in: mixed after " + mix + ", spread by " + spread + ", gels in the cup from " + from + " to " + until + "."
}

// ByScale and BySyringe name the tool in the setup line.
func ByScale(step string) string { return "scale " + step }

// BySyringe names a syringe by its marks.
func BySyringe(step string) string { return "syringe, marks of " + step }

// ByDrops names a bottle whose drops were counted.
func ByDrops(count string) string { return count + " drops in 1\u00a0mL" }

// TinTimed and its likes say what is known of the tin.
func TinTimed(name string, isTimed bool) string {
	what := "never timed"
	if isTimed {
		what = "timed"
	}
	if name == "" {
		return "tin " + what
	}
	return "tin " + name + ", " + what
}

// WithThinner is how much thinner goes in.
func WithThinner(share string) string {
	if share == "" {
		return NoThinner
	}
	return share + " thinner"
}
