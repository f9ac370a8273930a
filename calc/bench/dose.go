package bench

import (
	"errors"
	"math"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var (
	toolKinds = map[string]cure.ToolKind{job.ByScale: cure.Scale, job.BySyringe: cure.Syringe, job.ByDrops: cure.Drops}
	toolKeys  = map[string]string{job.ByScale: "scale-step", job.BySyringe: "syringe-step", job.ByDrops: "drops"}
)

// doser settles what is poured into the cup, with what.
type doser struct{ *bencher }

// tool is what the catalyst, or the parts, are measured with: asked once, then
// remembered. Parts by volume alone are read on the marks of a graduated cup.
func (b doser) tool() {
	if b.isByVolume() {
		mark := b.typed.Mark
		if mark == "" {
			mark = defaultMark
		}
		b.takeTool(cure.Syringe, mark)
		return
	}
	if b.out.IsRatio && b.typed.Tool != job.ByScale || b.typed.ToolStep == "" {
		b.out.AsksTool = true
		b.wait(toolKeys[b.typed.Tool])
		return
	}
	b.takeTool(toolKinds[b.typed.Tool], b.typed.ToolStep)
}

// defaultMark is a graduated cup's marks, as they are read between the lines, in
// millilitres. Source: assumption.
const defaultMark = "1"

func (b doser) takeTool(kind cure.ToolKind, text string) {
	step, err := decimal.NewFromString(text)
	if err == nil {
		b.cup.Tool, err = cure.NewTool(kind, step)
	}
	b.refuse(err)
}

// isByVolume says if the parts are measured by volume: the tin gives no ratio by
// mass.
func (b *bencher) isByVolume() bool {
	c := b.out.Card
	return b.out.IsRatio && b.out.Putty == nil && !c.RatioByMass.Known && c.RatioByVolume.Known
}

// handWith is the time in hand and the largest cup with a share of catalyst.
func (b *bencher) handWith(share working.Figure[unit.ByMass]) (cure.Hand, error) {
	return b.work.InHand(b.out.Gel, b.cup.Shed, share, b.batch, b.out.Tin)
}

// settleDose asks for the one dose of the cup, or for the parts of a fixed ratio.
func (b doser) settleDose() {
	if b.out.IsRatio {
		b.parts()
		return
	}
	d, err := b.dosed(b.out.Whole)
	if err != nil {
		b.refuse(err)
		return
	}
	b.out.Dose, b.out.HasDose = d, true
	if hand, err := b.handWith(d.OfWhole); err == nil { // the minutes follow from what is measured
		b.out.Hand, b.out.Size.Largest = hand, d.Largest
	}
}

// dosed is the dose for a cup of a given mass.
func (b *bencher) dosed(whole working.Figure[unit.Mass]) (cure.Dose, error) {
	b.fill(whole)
	cup := b.cup
	cup.Mix = b.out.Mix
	cup.Largest = func(share working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
		hand, err := b.handWith(share)
		return hand.Largest, err
	}
	return cup.Dose()
}

// parts is a mix of a fixed ratio: all of it is the cup's amount, but for the
// thinner.
func (b doser) parts() {
	b.fill(b.out.Whole)
	card := b.out.Card
	none := working.Figure[unit.Density]{}
	var parts cure.Parts
	var err error
	if b.out.Putty != nil {
		parts, err = weighing(b).puttyParts()
	} else if b.isByVolume() {
		var q chain.Run
		volume := chain.Do2(&q, cure.VolumeOf, b.out.Mix.Product, chain.DensityOf(card))
		if err = q.Err; err == nil {
			parts, err = cure.RatioByVolume(chain.OnCard(card, card.RatioByVolume, "ratio by volume", unit.InPure), none, none).ForTotalVolume(volume)
		}
	} else {
		var ratio cure.Ratio
		if card.RatioByMass.Known {
			ratio = cure.RatioByMass(chain.OnCard(card, card.RatioByMass, "ratio by mass", unit.InPure), none, none)
		}
		parts, err = ratio.ForTotal(b.out.Mix.Product)
	}
	b.refuse(err)
	b.refuse(b.cup.Shed.Check(b.cup.Card.Limits))
	if b.out.HasHand && b.out.Whole.Value > b.out.Hand.Largest.Value*(1+1e-9) {
		b.refuse(&cure.CupTooLargeError{Cup: b.out.Whole.Value, Largest: b.out.Hand.Largest.Value})
	}
	if err == nil {
		err = weighing(b).roundParts(parts)
		b.refuse(err)
	}
	if err == nil {
		b.out.Parts, b.out.HasParts = parts, true
	}
}

// isTooLarge says if a cup is refused for its size alone.
func isTooLarge(err error) bool {
	var large *cure.CupTooLargeError
	return errors.As(err, &large)
}

// isOffMark says if no mark of the tool is inside the limits for a cup that is
// otherwise large enough.
func isOffMark(err error, whole unit.Mass) bool {
	var small *cure.NotWithThisToolError
	return errors.As(err, &small) && math.Abs(float64(small.Cup-whole)) < 1e-9
}

// covers is how far the cup goes at its film, and what the coat takes.
func (b sizer) covers() {
	if b.out.Whole.Step == nil {
		return
	}
	var q chain.Run
	perArea, err := b.work.PerArea()
	b.out.PerArea = chain.Keep(&q, perArea, err)
	b.out.Covers = chain.Do3(&q, coverRule, b.out.Whole, b.work.Leftover, b.out.PerArea)
	need, known := b.coatNeed()
	if !known {
		return
	}
	cups, err := cure.CupsFor(need, b.out.Whole, noSmallest, b.work.Leftover)
	if b.out.HasCups = err == nil; b.out.HasCups {
		b.out.Cups = cups
	}
	b.isEndless = err != nil
}

var noSmallest = working.Given(unit.Mass(0), "smallest cup", unit.InGram, "the cup is chosen already", source.Exact)

var coverRule = working.Rule3[unit.Mass, unit.Mass, unit.MassPerArea, unit.Area]{Rule: &working.Rule{Formula: "A = max(0, m − L) ÷ w", Source: source.Ref{Document: &source.House, Place: "what leaves the cup"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "A", Meaning: "area that the cup covers", Scale: unit.InSquareMetre, Min: 0, Max: 1e4},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "all in the cup", Scale: unit.InKilogram, Min: 0, Max: 100},
		{Symbol: "L", Meaning: "left in cup and tool", Scale: unit.InKilogram, Min: 0, Max: 2},
		{Symbol: "w", Meaning: "mix for the area", Scale: unit.InKilogramPerSquareMetre, Min: 1e-3, Max: 50},
	}},
	Code: func(m, left unit.Mass, w unit.MassPerArea) unit.Area {
		return unit.Area(max(0, float64(m-left)) / float64(w))
	}}
