package plan

import (
	"errors"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Now is the moment that the bench is planned for: it comes from a message.
type Now struct {
	Hour unit.Time // from midnight
	Date string    // of the shed's own clock: "2026-05-01"
}

// Bench is the next cup: what goes in, how long it lasts, how far it goes; or
// every reason why nothing is mixed now.
type Bench struct {
	Card     *job.Card
	IsRatio  bool      // parts A and B instead of a catalyst
	Waiting  []string  // paths of what is yet to be typed
	Reasons  []error   // why there is no dose
	Dose     cure.Dose // only where HasDose
	HasDose  bool
	Parts    cure.Parts // of a fixed ratio, where HasParts
	HasParts bool

	Mix     cure.Mix
	Whole   working.Figure[unit.Mass] // all in the cup but the catalyst
	Hand    cure.Hand
	HasHand bool
	Usable  working.Figure[unit.Time]        // from catalyst in: mixing and spreading
	PerArea working.Figure[unit.MassPerArea] // of mix that leaves the cup
	Covers  working.Figure[unit.Area]
	Film    working.Figure[unit.WetFilm]
	Cups    cure.Cups // for a whole coat, where HasCups
	HasCups bool
	Tested  bool     // a cup test of this card and tin is logged
	Gel     cure.Gel // after own tests
	Offers  []cure.Offer

	Air    Air
	Vapour Vapour
	Flow   Flow
}

// Why a bench has no dose, besides what the sums say.
var (
	ErrOtherDay    = errors.New("plan: the readings are of another day")
	ErrUnread      = errors.New("plan: something that the dose hangs on can't be read")
	ErrHotFlowCoat = errors.New("plan: over 35 °C the wax of a flow coat doesn't film over")
	ErrNoPatch     = errors.New("plan: a flow coat over 30 °C wants a test patch first")
	ErrTestFirst   = errors.New("plan: no cup test of this tin, and its cup is too small for a coat")
	ErrJump        = errors.New("plan: a temperature jumped from the last cup's")
)

// MakeBench plans the next cup of a planned job at a moment.
func MakeBench(p *Plan, now Now) Bench {
	b := &bencher{plan: p, now: now, typed: &p.Job.Bench}
	b.make()
	return b.out
}

type bencher struct {
	plan  *Plan
	now   Now
	typed *job.Bench
	out   Bench
	cup   cure.Cup
	work  cure.Work
	batch cure.Batch
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
	card := b.plan.Job.CardByKey(BenchCard(&b.plan.Job))
	if card == nil || !canCoat(card) && !canFill(card) {
		b.wait("card")
		return
	}
	b.out.Card, b.out.IsRatio = card, len(card.Families) == 0
	b.out.Air = b.air()
	b.unread()
	b.out.Film = b.film()
	b.mixAndWork()
	b.hand()
	if b.out.IsRatio {
		b.parts()
	} else {
		b.dose()
	}
	b.covers()
	b.out.Vapour, b.out.Flow = b.vapour(), b.flow()
}

// unread refuses a dose while any text that it hangs on can't be read.
func (b *bencher) unread() {
	card := b.out.Card
	places := []string{"bench.", "day.", "test.", card.Path + ".", "card." + b.catalystKey() + ".", "card." + card.Thinner + "."}
	if b.typed.ForStep { // the cup's size comes from all that is measured
		steps, _ := job.Split(b.typed.Step)
		places = append(places, "surface.", steps+".")
	}
	for _, r := range b.plan.Refused {
		for _, under := range places {
			if strings.HasPrefix(r.Path, under) {
				b.refuse(ErrUnread)
				return
			}
		}
	}
	if b.typed.ReadOn != b.now.Date && b.typed.Product.Step != nil {
		b.refuse(ErrOtherDay)
	}
	b.flowCoat()
	for _, a := range b.plan.Asks {
		if a.Was != 0 {
			b.refuse(ErrJump)
			return
		}
	}
}

// flowCoat refuses a flow coat on a hot surface: its wax melts near 37 °C.
// Source: common practice.
func (b *bencher) flowCoat() {
	surface := unit.InCelsius.From(float64(b.typed.Surface.Value))
	switch {
	case b.out.Card.Kind != material.FlowCoat || b.typed.Surface.Step == nil || surface <= 30+1e-9:
	case surface > 35+1e-9:
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

// film is the wet film of one coat: typed, or the step's, or the card's largest.
func (b *bencher) film() working.Figure[unit.WetFilm] {
	if b.typed.Film.Step != nil {
		return b.typed.Film
	}
	if s := b.step(); s != nil && s.Coat != nil {
		return s.Coat.WetEach
	}
	card := b.out.Card
	if card.Kind == material.Filler {
		return chain.OnCard(card, card.PassMost, "largest pass", unit.InMillimetre)
	}
	return chain.OnCard(card, card.CoatMost, "largest wet film in one coat", unit.InMicrometre)
}

// step is the planned step that the cup is for; nil: none.
func (b *bencher) step() *Step {
	if !b.typed.ForStep {
		return nil
	}
	for i := range b.plan.Buildups {
		for j := range b.plan.Buildups[i].Steps {
			if s := &b.plan.Buildups[i].Steps[j]; s.Path == b.typed.Step && s.Card == b.out.Card {
				return s
			}
		}
	}
	return nil
}

// method is how the cup is put on: the step's, or the bench's.
func (b *bencher) method() *material.Method {
	if s := b.step(); s != nil && s.Job.Method != nil && s.Coat != nil {
		return s.Job.Method
	}
	return b.typed.Method
}

// dose asks for the one dose of the cup, once all that it hangs on is typed.
func (b *bencher) dose() {
	c := &b.cup
	c.Mix = b.out.Mix
	b.tool(c)
	if len(b.out.Waiting) > 0 {
		return
	}
	if !b.out.HasHand {
		return // the reasons are told already
	}
	c.Largest = b.out.Hand.Largest
	b.out.Offers = cure.Situation{Cup: *c, Gel: b.out.Gel, Work: b.work}.Remedies(b.means())
	if c.Mix.Product.Step == nil {
		return
	}
	d, err := c.Dose()
	b.refuse(err)
	if len(b.out.Reasons) == 0 {
		b.out.Dose, b.out.HasDose = d, true
	}
}

func (b *bencher) tool(c *cure.Cup) {
	kinds := map[string]cure.ToolKind{job.ByScale: cure.Scale, job.BySyringe: cure.Syringe, job.ByDrops: cure.Drops}
	keys := map[string]string{job.ByScale: "scale-step", job.BySyringe: "syringe-step", job.ByDrops: "drops"}
	if b.typed.ToolStep == "" {
		b.wait(keys[b.typed.Tool])
		return
	}
	step, err := decimal.NewFromString(b.typed.ToolStep)
	if err == nil {
		c.Tool, err = cure.NewTool(kinds[b.typed.Tool], step)
	}
	b.refuse(err)
}

// parts is a mix of a fixed ratio.
func (b *bencher) parts() {
	card := b.out.Card
	var ratio cure.Ratio
	none := working.Figure[unit.Density]{}
	switch {
	case card.RatioByMass.Known:
		ratio = cure.RatioByMass(chain.OnCard(card, card.RatioByMass, "ratio by mass", unit.InPure), none, none)
	case card.RatioByVolume.Known:
		ratio = cure.RatioByVolume(chain.OnCard(card, card.RatioByVolume, "ratio by volume", unit.InPure), none, none)
	}
	if len(b.out.Waiting) > 0 {
		return
	}
	b.refuse(b.cup.Shed.Check(b.cup.Card.Limits))
	if b.out.HasHand && b.out.Whole.Value > b.out.Hand.Largest.Value*(1+1e-9) {
		b.refuse(&cure.CupTooLargeError{Cup: b.out.Whole.Value, Largest: b.out.Hand.Largest.Value})
	}
	parts, err := ratio.ForTotal(b.out.Mix.Product)
	if card.RatioByVolume.Known && !card.RatioByMass.Known {
		var q chain.Run
		volume := chain.Do2(&q, VolumeOf, b.out.Mix.Product, chain.DensityOf(card))
		if err = q.Err; err == nil {
			parts, err = ratio.ForTotalVolume(volume)
		}
	}
	b.refuse(err)
	if len(b.out.Reasons) == 0 {
		b.out.Parts, b.out.HasParts = parts, true
	}
}

// covers is how far the cup goes at its film.
func (b *bencher) covers() {
	if b.out.Whole.Step == nil {
		return
	}
	var q chain.Run
	perArea, err := b.work.PerArea()
	b.out.PerArea = chain.Keep(&q, perArea, err)
	b.out.Covers = chain.Do3(&q, coverRule, b.out.Whole, b.work.Leftover, b.out.PerArea)
}

var coverRule = working.Of3("A = max(0, m − L) ÷ w", source.House.At("what leaves the cup"), source.Calculated,
	working.In("A", "area that the cup covers", unit.InSquareMetre, 0, 1e4),
	[]working.Arg{
		working.In("m", "all in the cup", unit.InKilogram, 0, 100),
		working.In("L", "left in cup and tool", unit.InKilogram, 0, 2),
		working.In("w", "mix for the area", unit.InKilogramPerSquareMetre, 1e-3, 50),
	},
	func(m, left unit.Mass, w unit.MassPerArea) unit.Area {
		return unit.Area(max(0, float64(m-left)) / float64(w))
	})

// BenchCard is the material on the bench: the chosen one, or the first that the
// build-ups coat with, or gel coat.
func BenchCard(j *job.Job) string {
	if j.Bench.Card != "" {
		return j.Bench.Card
	}
	for _, b := range j.Buildups {
		for _, s := range b.Steps {
			if s.Kind.HasCombs && !KindOf(s.Kind).opensPores && s.Card != "" {
				return s.Card
			}
		}
	}
	return "gelcoat"
}
