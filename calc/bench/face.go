package bench

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Measured is a figure as the tool in the hand shows it: a count of grams, or of
// millilitres on the marks of a syringe or of one graduated cup.
type Measured struct {
	Number decimal.Decimal
	Scale  unit.Scale // InGram or InMillilitre
}

// String writes it with its unit; without one, as a bare number.
func (m Measured) String() string {
	if m.Scale == unit.NoScale {
		return m.Bare()
	}
	return unit.WithUnit(unit.Group(unit.Plain(m.Number.String())), m.Scale)
}

// Bare writes it without its unit, as the display of a scale does.
func (m Measured) Bare() string { return unit.Group(unit.Plain(m.Number.String())) }

// Part is what a line of the cup is.
type Part int

// The parts, in the order in which they go in.
const (
	Product Part = iota // gel coat, resin or filler as sold
	Thinner             // reactive thinner or solvent
	Wax                 // wax solution
	Pigment             // pigment paste
	PartA               // resin or base of a fixed ratio
	PartB               // its hardener: it starts the clock, as a catalyst does
	Resin               // of a putty mixed by hand
	Filler              // stirred into that: microballoons, silica
)

// Line is one thing to weigh out, with what the scale then shows with the cup on
// it, zeroed once. By volume the two are marks of one graduated cup.
type Line struct {
	Part  Part
	Card  *job.Card // whose name it has; part A and part B have the same; nil: pigment paste
	Name  string    // of a part of a putty mixed by hand
	Own   Measured
	Shows Measured
	Share working.Figure[unit.ByMass] // of product, of thinner, wax solution and pigment paste
}

// Pour is the catalyst of the cup: the dose alone.
type Pour struct {
	Amount Measured // in the unit of the tool
	Other  Measured // the same in the other unit
	Drops  int64    // counted; 0 with another tool
	Then   Measured // what the scale then shows, the cup on it; Scale zero: it isn't weighed in
	Share  working.Figure[unit.ByMass]
	Error  working.Figure[unit.ByMass] // how far the tool may be off, of all that cures
}

// HasThen says if the catalyst is weighed into the cup, so that the scale shows
// the whole.
func (p *Pour) HasThen() bool { return p.Then.Scale != unit.NoScale }

// Minutes is the bar of time, all counted from catalyst in. With a fixed ratio
// the pot life stands for the gel time.
type Minutes struct {
	Mix       working.Figure[unit.Time] // mixed by then
	Spread    working.Figure[unit.Time] // spread by then
	GelsFrom  working.Figure[unit.Time] // in the cup, at the earliest
	GelsUntil working.Figure[unit.Time] // in the cup, at the latest
}

// Facts is the three facts under the dose. What isn't known has no Step.
type Facts struct {
	Covers   working.Figure[unit.Area]    // by this cup
	Cups     working.Figure[unit.Factor]  // of this size for the whole coat
	CupsLeft int                          // of those, still to be mixed by the log; 0: the cup is for no coat
	Comb     working.Figure[unit.WetFilm] // one coat, as the wet-film comb reads it
}

// Kind is what a verdict comes to.
type Kind int

// The kinds.
const (
	Holds      Kind = iota // nothing found: no clearance
	Asks                   // something to look at, or to answer
	Stops                  // red: no dose, or none from a later hour on, or work that doesn't hold
	NotChecked             // its figures weren't typed
)

// Subject is what a verdict is about.
type Subject int

// The subjects, as they stand under the answer.
const (
	Dew         Subject = iota // surface over the dew point, now and through the cure
	ColdEvening                // coldest hour ahead against the card's least temperature
	Humidity                   // of the air, against the card's floor and ceiling
	Explosive                  // styrene in a closed space against its lower explosive limit
	Apart                      // product against surface
	Heat                       // surface and product against the card's own limits and its table
	Film                       // what the build-up says of this coat: film, thinner, sequence
	Fire                       // from here styrene gives a burnable vapour
	Readings                   // how old the surface's temperature is; only where it is two hours old
)

// Verdict bears on the answer and stands under it.
type Verdict struct {
	Subject    Subject
	Kind       Kind
	IsAssumed  bool      // of ColdEvening: the coldest hour ahead is only assumed
	IsLater    bool      // it is about a later hour of today's curve, not about now
	At         unit.Time // from midnight: when it begins; of Holds, until when; 0: not known
	CupsBefore int       // how many such cups can be mixed and spread before that hour
	Value      float64   // SI, in Scale; what was found
	Limit      float64   // SI, in Scale; what it is compared with
	Scale      unit.Scale
	Err        error         // of a stop: why, as the sums say it
	Finding    *plan.Finding // of Film: the first red one
	Why        *working.Step // opens to this working; nil: none
	Opens      string        // sheet or path that it leads to
}

// The sheets that a verdict, a limit or a way leads to.
const (
	AirSheet   = "air"     // today's air and its curve
	SpaceSheet = "space"   // closed space: volume, styrene
	TinSheet   = "tin"     // tin, its tests, gel time
	HandSheet  = "minutes" // minutes to mix and to lay off
)

// Bound is what limits the size of a cup.
type Bound int

// The bounds.
const (
	ByMinutes    Bound = iota // what can be spread in time
	ByBatch                   // the card's largest batch, which falls with gel time
	ByUntimedTin              // 250 g, and half of the minutes: lifted by timing the tin
	ByCoat                    // what is left of the coat
	ByKilogram                // nobody mixes more unasked
	ByTestedMass              // no gel time is known for a larger cup
	ByHotTest                 // 250 g over the table's end
)

// Limit is one thing that limits the largest cup.
type Limit struct {
	Bound Bound
	Mass  working.Figure[unit.Mass]
	Lifts string // sheet or path whose answer lifts it; empty: nothing does
}

// Size is how large the cup is, and why.
type Size struct {
	Mass     working.Figure[unit.Mass] // all in the cup but the catalyst; of a fixed ratio A and B together
	Proposed bool                      // not typed
	Step     unit.Mass                 // of the dial
	Largest  working.Figure[unit.Mass]
	Smallest working.Figure[unit.Mass] // that the tool can dose
	Limits   []Limit                   // the one that holds first
}

// Origin is where material, method and film come from.
type Origin int

// The origins.
const (
	FromTyped   Origin = iota // typed at the bench
	FromStep                  // the next step that the job has to do
	FromLastCup               // the last cup of the log
	FromShipped               // the card that ships
)

// WayKind is a kind of way back to a dose.
type WayKind int

// The ways.
const (
	AtHours        WayKind = iota // an hour of today
	AtTemperatures                // product and part brought to temperatures that do
	ByTimedTest                   // a timed test over the table's end
)

// Way is one thing that brings a dose back, worked out.
type Way struct {
	Kind             WayKind
	From, To         unit.Time                        // of AtHours, from midnight
	Coldest, Warmest unit.Temperature                 // of the surface in those hours
	Product, Surface working.Figure[unit.Temperature] // of AtTemperatures
	DewPoint         working.Figure[unit.Temperature] // that the product must stay over; no Step: not known
	Share            working.Figure[unit.ByMass]      // dose there
	Mass             working.Figure[unit.Mass]        // of the timed test
	Dose             Measured                         // of the timed test, by the tool
	OfWhole          working.Figure[unit.ByMass]      // what that comes to, of all that cures
	UpTo             unit.Temperature                 // of the timed test: cups are allowed up to here, today
	Err              error                            // why a timed test can't be made with this tool or card
}
