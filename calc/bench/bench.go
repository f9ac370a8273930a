package bench

import (
	"errors"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Now is the moment that the bench is planned for: it comes from a message.
type Now struct {
	Hour unit.Time // from midnight
	Date string    // of the shed's own clock: "2026-05-01"
	Unix float64   // seconds since 1970; 0: not known
}

// Bench is the next cup: what goes in, how long it lasts, how far it goes; or
// every reason why nothing is mixed now. The temperature of the surface alone
// must be typed; all else has a default on the safe side.
type Bench struct {
	Card    *job.Card
	IsRatio bool        // parts A and B instead of a catalyst
	Putty   *plan.Putty // that is mixed by hand; nil: bought
	Waiting []string    // paths of what is yet to be typed before there is a dose
	Reasons []error     // why there is no dose

	Origin  Origin                           // where material, method and film come from
	Coat    string                           // path of the step that the cup is for; empty: none
	Method  *material.Method                 // how it is put on
	Film    working.Figure[unit.WetFilm]     // of one coat
	Surface working.Figure[unit.Temperature] // as typed
	Product working.Figure[unit.Temperature] // as the surface until typed
	IsSame  bool                             // the product's temperature wasn't typed

	AsksTool     bool // the tool has yet to be chosen
	AsksAhead    bool // the surface is near the card's least temperature: the coldest hour ahead is asked for
	AsksHumidity bool // fit to coat can't be checked without air and humidity

	Size     Size
	Weigh    []Line
	Pour     *Pour // catalyst, or the hardener of a fixed ratio; nil: there is none to be poured
	Minutes  *Minutes
	Facts    Facts
	Verdicts []Verdict
	Back     []Way        // what brings a dose back, where there is none
	Offers   []cure.Offer // what would help with this cup

	Dose     cure.Dose // only where HasDose
	HasDose  bool
	Parts    cure.Parts // of a fixed ratio, where HasParts
	HasParts bool

	Mix     cure.Mix
	Whole   working.Figure[unit.Mass] // all in the cup but the catalyst; of a fixed ratio A and B together
	Hand    cure.Hand                 // with the dose as measured, where there is one
	HasHand bool
	Usable  working.Figure[unit.Time]        // from catalyst in: mixing and spreading
	PerArea working.Figure[unit.MassPerArea] // of mix that leaves the cup
	Covers  working.Figure[unit.Area]
	Cups    cure.Cups // for the whole coat, where HasCups
	HasCups bool
	Tin     cure.Tin       // how far its gel time is known
	Gel     cure.Gel       // after own tests
	Tests   []cure.CupTest // of this tin, that moved it
	Opened  *cure.Opened

	Air    Air
	Vapour Vapour
	Flow   Flow
}

// Why a bench has no dose, besides what the sums say.
var (
	ErrOtherDay    = errors.New("bench: the readings are of another day")
	ErrUnread      = errors.New("bench: something that the dose hangs on can't be read")
	ErrHotFlowCoat = errors.New("bench: over 35 °C the wax of a flow coat doesn't film over")
	ErrNoPatch     = errors.New("bench: a flow coat over 30 °C wants a test patch first")
	ErrJump        = errors.New("bench: a temperature jumped from the last cup's")
	ErrTestCooler  = errors.New("bench: a timed test opens no cups for a part that is warmer than the product in it")
	ErrNoTime      = errors.New("bench: it gels in the cup before it can be spread")
)

// Make plans the next cup of a planned job at a moment.
func Make(p *plan.Plan, now Now) Bench {
	b := &bencher{plan: p, now: now, typed: &p.Job.Bench}
	b.make()
	return b.out
}

type bencher struct {
	plan  *plan.Plan
	now   Now
	typed *job.Bench
	step  *plan.Step // that the cup is for; nil: none
	out   Bench
	share shares
	cup   cure.Cup
	work  cure.Work
	batch cure.Batch

	isEndless bool               // more cups for the coat than a day holds
	tin       *string            // of a cup in the log; nil: that on the bench
	rounded   [2]decimal.Decimal // the parts of a fixed ratio, on the tool's steps
}

func (b *bencher) wait(key string) {
	b.out.Waiting = append(b.out.Waiting, job.BenchPath+"."+key)
}

func (b *bencher) refuse(err error) {
	if err == nil {
		return
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		for _, one := range many.Unwrap() {
			b.refuse(one)
		}
		return
	}
	b.out.Reasons = append(b.out.Reasons, err)
}

func (b *bencher) make() {
	if !b.inputs() {
		b.wait("card")
		return
	}
	b.temperatures()
	b.out.Air = b.air()
	b.ahead()
	b.unread()
	b.recipe()
	b.knowledge()
	b.opened()
	b.tool()
	if b.settleSize() && len(b.out.Waiting) == 0 {
		b.settleDose()
	}
	b.covers()
	b.out.Vapour, b.out.Flow = b.vapour(), b.flow()
	b.explosive()
	b.unfit()
	if len(b.out.Reasons) > 0 || len(b.out.Waiting) > 0 {
		b.out.HasDose, b.out.Dose, b.out.HasParts, b.out.Parts = false, cure.Dose{}, false, cure.Parts{}
	}
	b.lines()
	b.minutes()
	b.out.Verdicts = b.verdicts()
	b.out.Back = b.back()
	b.out.Offers = b.offers()
}

// temperatures takes the product to be as warm as the surface until it is typed.
func (b *bencher) temperatures() {
	b.out.Surface, b.out.Product = b.typed.Surface, b.typed.Product
	if b.typed.Surface.Step == nil {
		b.wait("surface-temp")
	}
	if b.typed.Product.Step == nil {
		b.out.Product, b.out.IsSame = b.typed.Surface, true
	}
}

// unread refuses a dose while any text that it hangs on can't be read.
func (b *bencher) unread() {
	card := b.out.Card
	places := []string{"bench.", "day.", "test.", card.Path + ".", "card." + b.catalystKey() + ".", "card." + card.Thinner + "."}
	if b.step != nil { // the cup's size comes from all that is measured, its film from the step
		steps, _ := job.Split(b.step.Path)
		places = append(places, steps+".")
		if b.typed.ForStep {
			places = append(places, "surface.")
		}
	}
	for _, r := range b.plan.Refused() {
		for _, under := range places {
			if strings.HasPrefix(r.Path, under) {
				b.refuse(ErrUnread)
				return
			}
		}
	}
	if b.typed.ReadOn != b.now.Date && b.typed.Surface.Step != nil {
		b.refuse(ErrOtherDay)
	}
	if p := b.out.Putty; p != nil && b.isRefusedUnder(p.Path+".") {
		b.refuse(ErrUnread)
	}
	b.flowCoat()
	for _, a := range b.plan.Asks() {
		if a.Was != 0 {
			b.refuse(ErrJump)
			return
		}
	}
}

func (b *bencher) isRefusedUnder(path string) bool {
	return slices.ContainsFunc(b.plan.Refused(), func(r job.Problem) bool { return strings.HasPrefix(r.Path, path) })
}

// The temperatures of a flow coat: its wax melts near 37 °C.
// Source: common practice.
const (
	flowCoatMost    = unit.ZeroCelsius + 35
	flowCoatUnasked = unit.ZeroCelsius + 30
)

// flowCoat refuses a flow coat on a hot surface, and over 30 °C without a test
// patch.
func (b *bencher) flowCoat() {
	surface := b.typed.Surface.Value
	switch {
	case b.out.Card.Kind != material.FlowCoat || b.typed.Surface.Step == nil || surface <= flowCoatUnasked+1e-9:
	case surface > flowCoatMost+1e-9:
		b.refuse(ErrHotFlowCoat)
	case b.out.Card.Patch == "":
		b.refuse(ErrNoPatch)
	}
}

func (b *bencher) catalystKey() string {
	if b.typed.Catalyst != "" {
		return b.typed.Catalyst
	}
	return b.out.Card.Hardener
}
