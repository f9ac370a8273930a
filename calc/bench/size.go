package bench

import (
	"math"
	"slices"
	"sort"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The sizes that are proposed.
const (
	dialStep    = 50 * unit.Gram
	smallStep   = 10 * unit.Gram
	mostUnasked = unit.Kilogram
)

var kilogram = working.Given(mostUnasked, "most in one cup, unasked", unit.InGram, "", source.Assumption)

// sizer settles how large the cup is, and how far it goes.
type sizer struct{ *bencher }

// settleSize finds how large the cup is: as typed, or the largest now, what is
// left of the coat, or a kilogram, whichever is least, down to ten grams that the tool
// can dose. It is false where there is none.
func (b sizer) settleSize() bool {
	b.out.Size.Step = dialStep
	if b.typed.Volume.Step != nil {
		var q chain.Run
		b.out.Whole = chain.Do2(&q, massOfVolume, b.typed.Volume, b.work.Density)
		b.refuse(q.Err)
	} else if !b.typed.ForStep {
		b.out.Whole = b.typed.Amount
	}
	b.out.Size.Mass = b.out.Whole
	isTyped := b.out.Whole.Step != nil
	if !isTyped {
		b.out.Size.Proposed = true
		if b.plan.RefusedAt(job.BenchPath+".amount") != nil {
			return false
		}
	}
	if b.out.Surface.Step == nil || !b.hand() || b.cup.Tool.Kind() == 0 { // a day without a dose is told whatever measures it
		return false
	}
	b.limits()
	if isTyped {
		return true
	}
	return b.propose()
}

// hand settles the time in hand with the dose by the table, and refuses the cup
// where there is none.
func (b sizer) hand() bool {
	var share working.Figure[unit.ByMass]
	var err error
	switch {
	case b.out.IsRatio:
	case b.cup.Opened != nil:
		share = b.cup.Card.Floor
	default:
		share, err = b.cup.Card.Table.At(b.out.Surface)
	}
	var hand cure.Hand
	if err == nil {
		hand, err = b.handWith(share)
	}
	if err != nil {
		b.refuse(b.cup.Card.Takes.Check(b.cup.Peroxide.Family))
		b.refuse(b.cup.Shed.Check(b.cup.Card.Limits))
		b.refuse(err)
		return false
	}
	b.out.Hand, b.out.HasHand, b.out.Size.Largest = hand, true, hand.Largest
	if hand.Largest.Value <= 0 {
		b.refuse(ErrNoTime)
		return false
	}
	return true
}

// bounds maps the sums' bounds to the bench's, with what lifts each.
var bounds = map[cure.Bound]Limit{
	cure.ByTime: {Bound: ByMinutes, Lifts: HandSheet}, cure.ByUntimed: {Bound: ByUntimedTin, Lifts: TinSheet},
	cure.ByBatch: {Bound: ByBatch}, cure.ByTestedMass: {Bound: ByTestedMass, Lifts: TinSheet}, cure.ByHeat: {Bound: ByHotTest},
}

// limits lists what limits the cup's size, the least first.
func (b sizer) limits() {
	list := []Limit{{Bound: ByKilogram, Mass: kilogram}}
	for _, l := range b.out.Hand.Limits {
		as := bounds[l.Bound]
		as.Mass = l.Mass
		list = append(list, as)
	}
	if need, known := b.coatNeed(); known {
		list = append(list, Limit{Bound: ByCoat, Mass: working.Sum(restOfCoat, need, b.work.Leftover)})
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].Mass.Value < list[j].Mass.Value })
	b.out.Size.Limits = list
}

var (
	restOfCoat = working.SumRule("what is left of the coat, with what stays behind", unit.InGram)

	mixOfOneCoat = working.Rule2[unit.Volume, unit.Factor, unit.Volume]{Rule: &working.Rule{Formula: "V = M ÷ n", Source: source.Ref{Document: &source.Geometry, Place: "equal coats"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "mix for one coat", Scale: unit.InLitre, Min: 0, Max: 1e5},
		Args:   []working.Arg{{Symbol: "M", Meaning: "mix for all coats", Scale: unit.InLitre, Min: 0, Max: 1e5}, {Symbol: "n", Meaning: "coats", Scale: unit.InPure, Min: 1, Max: 50}}},
		Code: func(m unit.Volume, n unit.Factor) unit.Volume { return m / unit.Volume(n) }}

	restOfOneCoat = working.Rule3[unit.Mass, unit.Mass, unit.Share, unit.Mass]{Rule: &working.Rule{Formula: "N = max(0, C − max(0, U − (ceil(U ÷ C + 0.000000001) − 1) × C)) × r", Source: source.Ref{Document: &source.House, Place: "what one coat still takes"}, Mark: source.Calculated,
		Result: working.Arg{Symbol: "N", Meaning: "mix that one coat still takes", Scale: unit.InGram, Min: 0, Max: 1e8},
		Args: []working.Arg{
			{Symbol: "C", Meaning: "mix for one coat", Scale: unit.InGram, Min: 100, Max: 1e6},
			{Symbol: "U", Meaning: "put on by cups of work that isn't finished", Scale: unit.InGram, Min: 0, Max: 1e5},
			{Symbol: "r", Meaning: "share of the surfaces still to be done", Scale: unit.InPure, Min: 0, Max: 1},
		}},
		Code: func(coat, on unit.Mass, r unit.Share) unit.Mass {
			begun := max(0, on-unit.Mass(math.Ceil(float64(on/coat)+1e-9)-1)*coat)
			return max(0, coat-begun) * unit.Mass(r)
		}}
)

// coatNeed is the mix that the coat on its surfaces still takes: one coat, less
// what unfinished cups have put on. Of a coat under 100 g nothing is told.
func (b sizer) coatNeed() (working.Figure[unit.Mass], bool) {
	none := working.Figure[unit.Mass]{}
	if b.step == nil || b.step.Coat == nil || b.step.Coat.Mix.Step == nil {
		return none, false
	}
	var q chain.Run
	perCoat := chain.Do2(&q, mixOfOneCoat, b.step.Coat.Mix, b.step.Coat.AllCoats)
	coat := chain.Do2(&q, massOfVolume, perCoat, b.work.Density)
	need := chain.Do3(&q, restOfOneCoat, coat, b.step.Progress.PutOn, b.openShare())
	return need, q.Err == nil && need.Value >= unit.Gram
}

// openShare is the share of the coat's area that isn't finished.
func (b sizer) openShare() working.Figure[unit.Share] {
	var open, done unit.Area
	for i := range b.plan.Surfaces() {
		s := &b.plan.Surfaces()[i]
		switch {
		case slices.Contains(b.step.Progress.Open, s.Path):
			open += s.Area.Value
		case slices.Contains(b.step.Progress.Done, s.Path):
			done += s.Area.Value
		}
	}
	share := unit.Share(1)
	if open+done > 0 {
		share = unit.Share(open / (open + done))
	}
	return working.Given(share, "share of the surfaces still to be done", unit.InPure, "by the log", source.Calculated)
}

var proposedSize = &working.Rule{Formula: "the least of what holds the cup, down to ten grams that the tool can dose",
	Source: source.Ref{Document: &source.House, Place: "proposed, and changed with one tap"}, Mark: source.Calculated, Result: working.Arg{Symbol: "m", Meaning: "cup", Scale: unit.InGram, Min: 0, Max: 1e5}, IsProse: true}

// propose goes down from the least limit, a step at a time, to a cup that the tool
// can dose.
func (b sizer) propose() bool {
	most := b.out.Size.Limits[0].Mass
	var last error
	for _, m := range sizes(most.Value) {
		whole := working.By(proposedSize, m, most.Step)
		if b.out.IsRatio {
			b.out.Whole, b.out.Size.Mass = whole, whole
			return true
		}
		_, err := b.dosed(whole)
		if err == nil || !isTooLarge(err) && !isOffMark(err, m) {
			b.out.Whole, b.out.Size.Mass = whole, whole
			return true // with or without a reason: the cup itself will report the same
		}
		if last == nil {
			last = err
		}
	}
	b.refuse(last)
	return false
}

// sizes lists the sizes to try under a largest cup, down by smallStep; one under that is
// tried in whole grams.
func sizes(most unit.Mass) (list []unit.Mass) {
	for n := math.Floor(float64(most/smallStep) + 1e-9); n >= 1; n-- {
		list = append(list, unit.Mass(n)*smallStep)
	}
	if len(list) == 0 && most >= unit.Gram {
		list = append(list, unit.Mass(math.Floor(float64(most/unit.Gram)))*unit.Gram)
	}
	return list
}
