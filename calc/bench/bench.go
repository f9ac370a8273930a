package bench

import (
	"errors"
	"slices"
	"strings"
	"sync"

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
	Chosen
	Waiting []string // paths of what is yet to be typed before there is a dose
	Reasons []error  // why there is no dose

	Surface working.Figure[unit.Temperature] // as typed
	Product working.Figure[unit.Temperature] // as the surface until typed
	IsSame  bool                             // the product's temperature wasn't typed

	AsksTool     bool // the tool has yet to be chosen
	AsksAhead    bool // the surface is near the card's least temperature: the coldest hour ahead is asked for
	AsksHumidity bool // fit to coat can't be checked without air and humidity

	Size    Size
	Weigh   []Line
	Pour    *Pour // catalyst, or the hardener of a fixed ratio; nil: there is none to be poured
	Minutes *Minutes
	Facts   Facts

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
	Gel     cure.Gel       // corrected by the builder's cup tests
	Tests   []cure.CupTest // of this tin, that moved it
	Opened  *cure.Opened

	Air    Air
	Vapour Vapour

	verdicts func() []Verdict
	ways     func() []Way
	offers   func() []cure.Offer
	cards    func() []CardToday
	flow     func() Flow
}

// What no dose depends on is worked out when first asked for.

// Verdicts is all that bears on the answer.
func (b *Bench) Verdicts() []Verdict { return asked(b.verdicts) }

// Ways lists what brings a dose back, where there is none.
func (b *Bench) Ways() []Way { return asked(b.ways) }

// Offers is what would help with this cup.
func (b *Bench) Offers() []cure.Offer { return asked(b.offers) }

// CardsToday is what the day would do to each card that can be coated.
func (b *Bench) CardsToday() []CardToday { return asked(b.cards) }

// Flow is the thinner for a flow time.
func (b *Bench) Flow() Flow { return asked(b.flow) }

// asked answers a question; a bench without a material has no answers.
func asked[T any](question func() T) T {
	if question == nil {
		var none T
		return none
	}
	return question()
}

// Why a bench has no dose, besides what the sums say.
var (
	ErrOtherDay    = errors.New("bench: the readings are of another day")
	ErrUnread      = errors.New("bench: something that the dose depends on can't be read")
	ErrHotFlowCoat = errors.New("bench: over 35 °C the wax of a flow coat doesn't film over")
	ErrNoPatch     = errors.New("bench: a flow coat over 30 °C needs a test patch first")
	ErrJump        = errors.New("bench: a temperature jumped from the last cup's")
	ErrTestCooler  = errors.New("bench: a timed test allows no cups for a part that is warmer than its product")
	ErrNoTime      = errors.New("bench: it gels in the cup before it can be spread")
)

// Make plans the next cup of a planned job at a moment.
func Make(p *plan.Plan, now Now) Bench {
	b := newBencher(p, now)
	b.make()
	return b.out
}

func newBencher(p *plan.Plan, now Now) *bencher {
	return &bencher{plan: p, now: now, typed: &p.Job.Bench}
}

// bencher settles a cup piece by piece: each part of the work has a type of its
// own, which builds on what was settled before it.
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
	choose, sky, mix, gel := chooser{b}, weather{b}, mixer{b}, gelling{b}
	size, dose, air, scale := sizer{b}, doser{b}, vapours{b}, weighing{b}
	if !choose.inputs() {
		b.wait("card")
		return
	}
	b.temperatures()
	b.out.Air = sky.air()
	sky.ahead()
	b.unread()
	mix.recipe()
	gel.knowledge()
	gel.opened()
	dose.tool()
	if size.settleSize() && len(b.out.Waiting) == 0 {
		dose.settleDose()
	}
	size.covers()
	b.out.Vapour = air.vapour()
	b.explosive()
	b.unfit()
	if len(b.out.Reasons) > 0 || len(b.out.Waiting) > 0 {
		b.out.HasDose, b.out.Dose, b.out.HasParts, b.out.Parts = false, cure.Dose{}, false, cure.Parts{}
	}
	scale.lines()
	scale.minutes()
	b.out.verdicts = sync.OnceValue(judge{b}.verdicts)
	b.out.ways, b.out.offers = sync.OnceValue(rescue{b}.ways), sync.OnceValue(rescue{b}.offers)
	b.out.cards, b.out.flow = sync.OnceValue(sky.cardsToday), sync.OnceValue(b.flow)
}

// temperatures takes the product to be as warm as the surface until its temperature
// is typed.
func (b *bencher) temperatures() {
	b.out.Surface, b.out.Product = b.typed.Surface, b.typed.Product
	if b.typed.Surface.Step == nil {
		b.wait("surface-temp")
	}
	if b.typed.Product.Step == nil {
		b.out.Product, b.out.IsSame = b.typed.Surface, true
	}
}

// unread refuses a dose while any text that it depends on can't be read.
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
	if slices.ContainsFunc(places, b.isRefusedUnder) {
		b.refuse(ErrUnread)
		return
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
