package bench

import (
	"errors"
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// rescue looks for what helps a settled cup, or brings back a dose where there is
// none.
type rescue struct{ *bencher }

// ways lists what brings a dose back where air or temperatures rule it out: an hour
// of the day, temperatures that work, and over the table's end a timed test. Each
// is worked out, and nothing is extrapolated.
func (b rescue) ways() []Way {
	if b.out.Surface.Step == nil || !b.isForTemperature() {
		return nil
	}
	list := b.hours()
	if w, found := b.betterTemperatures(); found {
		list = append(list, w)
	}
	if w, found := b.timedTest(); found {
		list = append(list, w)
	}
	return list
}

// isForTemperature says if a dose is refused for the weather, so that another hour
// or other temperatures could change it.
func (b rescue) isForTemperature() bool {
	for _, err := range b.out.Reasons {
		var (
			beyond *cure.BeyondTableError
			limits *cure.TemperatureError
			apart  *cure.ApartError
			steep  *cure.SteepError
			cold   *cure.ColdEveningError
			unfit  *UnfitError
		)
		switch {
		case errors.As(err, &beyond), errors.As(err, &limits), errors.As(err, &apart), errors.As(err, &steep), errors.As(err, &cold), errors.As(err, &unfit),
			errors.Is(err, ErrHotFlowCoat), errors.Is(err, ErrNoPatch), errors.Is(err, ErrNoTime):
			return true
		}
	}
	return false
}

// waysOfHours is how many stretches of hours are listed.
const waysOfHours = 2

// hours lists the next hours, until this time tomorrow, at which air and surface
// fit and the table has a dose.
func (b rescue) hours() []Way {
	a := &b.out.Air
	if !a.HasCurve {
		return nil
	}
	var list []Way
	for _, open := range b.openHours(air.Interval{From: b.now.Hour, To: b.now.Hour + unit.Day}) {
		w := Way{Kind: AtHours, From: open.From, To: open.To}
		w.Coldest, w.Warmest = b.surfaceIn(open)
		if _, end := b.cup.Card.Table.Ends(); !b.out.IsRatio {
			w.Warmest = min(w.Warmest, end) // but for the last bits of an hour it is
		}
		at := working.Given(w.Warmest, "warmest surface in these hours", unit.InCelsius, "today's curve", source.Assumption)
		if b.out.IsRatio {
			list = append(list, w)
		} else if share, err := b.cup.Card.Table.At(at); err == nil {
			w.Share = share
			list = append(list, w)
		}
		if len(list) == waysOfHours {
			break
		}
	}
	return list
}

// openHours is when a dose may go in: fit to coat where the air is known, the
// surface inside table and card, and no cold evening ahead. Stretches shorter than
// a quarter of an hour are left out.
func (b rescue) openHours(asked air.Interval) []air.Interval {
	a := &b.out.Air
	asked.To = min(asked.To, 2*unit.Day)
	card := b.out.Card
	least, most := card.SurfaceLeast.Value, card.SurfaceMost.Value
	if coldest, warmest := b.cup.Card.Table.Ends(); !b.out.IsRatio {
		least, most = max(least, coldest), min(most, warmest)
	}
	open, err := air.SurfaceWithin(a.Day, a.Surface, least, most, asked)
	if err != nil {
		return nil
	}
	if a.Known {
		fit, err := air.NewFit(a.Day, a.Surface, chain.AirLimits(card))
		if err != nil {
			return nil
		}
		windows, err := fit.Windows(asked)
		if err != nil {
			return nil
		}
		var both []air.Interval
		for _, w := range windows {
			for _, o := range open {
				both = append(both, w.Intersect(o))
			}
		}
		open = both
	}
	var list []air.Interval
	for _, o := range open {
		for o.From < o.To && a.Day.ColdestAhead(a.Surface, o.From) < card.SurfaceLeast.Value {
			o.From += 5 * unit.Minute
		}
		for o.From < o.To && a.Day.ColdestAhead(a.Surface, o.To) < card.SurfaceLeast.Value {
			o.To -= 5 * unit.Minute
		}
		if o.To-o.From >= 15*unit.Minute {
			list = append(list, o)
		}
	}
	return list
}

// surfaceIn is the coldest and the warmest of the surface in a stretch of hours,
// looked at every ten minutes.
func (b rescue) surfaceIn(i air.Interval) (coldest, warmest unit.Temperature) {
	a := &b.out.Air
	for at := i.From; ; at = min(at+10*unit.Minute, i.To) {
		o := a.Surface.By(a.Day, at)
		low, high := a.Day.Air(at)+unit.Temperature(o.Least.Value), a.Day.Air(at)+unit.Temperature(o.Most.Value)
		if at == i.From {
			coldest, warmest = low, high
		}
		coldest, warmest = min(coldest, low), max(warmest, high)
		if at >= i.To {
			return coldest, warmest
		}
	}
}

// betterTemperatures finds temperatures of surface and product that have a dose
// now: the part as it is or brought to the nearest end of what works, the product
// warmed, or cooled to above the dew point.
func (b rescue) betterTemperatures() (Way, bool) {
	card, shed := b.cup.Card, b.cup.Shed
	least, most := card.Limits.Coldest, card.Limits.Warmest
	if !b.out.IsRatio {
		coldest, warmest := card.Table.Ends()
		least, most = max(least, coldest), min(most, warmest)
	}
	dew := b.out.Air.DewPoint
	if dew.Step != nil {
		least = max(least, dew.Value+unit.Temperature(air.DewMargin.Value))
	}
	if least > most {
		return Way{}, false
	}
	surface := min(max(shed.Surface.Value, least), most)
	to := cure.Shed{ColdestAhead: max(shed.ColdestAhead, card.Limits.Coldest)}
	to.Surface = working.Given(surface, "part, brought to what does", unit.InCelsius, "shade, or a warm shed", source.Calculated)
	cup := b.cup
	cup.Shed = to
	to.Product = cup.CoolTo(surface, dew)
	if !b.isShort() && shed.Product.Value <= most && shed.Product.Value >= max(least, card.Limits.Coldest) && shed.Product.Value <= surface {
		to.Product = shed.Product // as it is
	}
	if to.Product.Value > surface {
		to.Product = working.Given(surface, "product as warm as the part", unit.InCelsius, "", source.Calculated)
	}
	if isSameTemperature(to.Surface.Value, shed.Surface.Value) && isSameTemperature(to.Product.Value, shed.Product.Value) {
		return Way{}, false
	}
	if err := to.Check(card.Limits); err != nil {
		return Way{}, false
	}
	w := Way{Kind: AtTemperatures, Product: to.Product, Surface: to.Surface, DewPoint: dew}
	if b.out.IsRatio {
		return w, true
	}
	share, err := card.Table.At(to.Surface)
	if err != nil {
		return Way{}, false
	}
	hand, err := b.work.InHand(chain.GelOf(b.out.Card), to, share, b.batch, cure.Untimed)
	if err != nil || hand.Largest.Value <= 0 {
		return Way{}, false
	}
	w.Share = share
	return w, true
}

// isShort says if there is too little time.
func (b rescue) isShort() bool {
	return slices.ContainsFunc(b.out.Reasons, func(err error) bool { return errors.Is(err, ErrNoTime) })
}

func isSameTemperature(a, b unit.Temperature) bool { return a-b < 0.05 && b-a < 0.05 }

// timedTest is the test that allows cups over the table's end for the rest of the
// day, with its dose by the tool in the hand.
func (b rescue) timedTest() (Way, bool) {
	_, end := b.cup.Card.Table.Ends()
	hottest := max(b.out.Surface.Value, b.out.Product.Value)
	if b.out.IsRatio || b.cup.Tool.Kind() == 0 || !mayTestHot(b.out.Card) || b.out.Surface.Value <= end+1e-9 || hottest > testMost(b.out.Card)+1e-9 || b.cup.Opened != nil {
		return Way{}, false
	}
	if b.flowCoatRefused() {
		return Way{}, false
	}
	w := Way{Kind: ByTimedTest, Share: b.cup.Card.Floor, Mass: testMass, UpTo: min(hottest+unit.Temperature(cure.OpensOver), testMost(b.out.Card))}
	if b.out.Product.Value < b.out.Surface.Value-unit.Temperature(cure.OpensOver)-1e-9 {
		w.Err = ErrTestCooler
		return w, true
	}
	w.UpTo = min(b.out.Product.Value+unit.Temperature(cure.OpensOver), testMost(b.out.Card))
	cup := b.cup
	cup.Mix = cure.Mix{Product: testMass}
	d, err := cup.FloorTest(testMost(b.out.Card))
	if err != nil {
		w.Err = err
		return w, true
	}
	w.Dose = Measured{d.Grams.Number(), unit.InGram}
	if cup.Tool.Kind() != cure.Scale {
		w.Dose = Measured{d.Millilitres.Number(), unit.InMillilitre}
	}
	w.OfWhole = d.OfWhole
	return w, true
}

// flowCoatRefused says if a flow coat may not be tested: it is too hot, or there is
// no test patch.
func (b rescue) flowCoatRefused() bool {
	for _, err := range b.out.Reasons {
		if errors.Is(err, ErrHotFlowCoat) || errors.Is(err, ErrNoPatch) {
			return true
		}
	}
	return false
}

var testMass = working.Given(cure.TestCup, "cup for timing the gel", unit.InGram, "", source.CommonPractice)

// offers lists what would help with this cup, or bring one back.
func (b rescue) offers() []cure.Offer {
	if b.out.IsRatio || b.out.Surface.Step == nil || b.cup.Tool.Kind() == 0 {
		return nil
	}
	cup := b.cup
	if cup.Mix = b.out.Mix; cup.Mix.Product.Step == nil { // no cup was settled: whether a remedy brings a dose back doesn't hang on its size
		cup.Mix = cure.Mix{Product: testMass}
	}
	var m cure.Means
	a := &b.out.Air
	m.DewPoint = a.DewPoint
	if d := &b.plan.Job.Day; a.HasCurve && d.InSun {
		m.Shaded = working.Given(a.Day.Air(b.now.Hour), "air, as in the shade", unit.InCelsius, "today's curve", source.Assumption)
	}
	if a.HasCurve {
		if at, shed, found := b.coolerHour(); found {
			m.Hour, m.AtHour = at, shed
		}
	}
	return cure.Situation{Cup: cup, Gel: b.out.Gel, Work: b.work}.Remedies(m)
}

// coolerHour is the coolest hour until this time tomorrow that still takes a
// dose, with product and part at what they are then.
func (b rescue) coolerHour() (unit.Time, cure.Shed, bool) {
	a := &b.out.Air
	best, coolest := unit.Time(0), b.out.Surface.Value
	for _, open := range b.openHours(air.Interval{From: b.now.Hour, To: b.now.Hour + unit.Day}) {
		for at := open.From; at <= open.To; at += 10 * unit.Minute {
			if t := a.Day.Air(at) + unit.Temperature(a.Surface.By(a.Day, at).Most.Value); t < coolest-1 {
				best, coolest = at, t
			}
		}
	}
	if best == 0 {
		return 0, cure.Shed{}, false
	}
	f := working.Given(coolest, "part at that hour", unit.InCelsius, "today's curve", source.Assumption)
	return best, cure.Shed{Product: f, Surface: f, ColdestAhead: a.Day.ColdestAhead(a.Surface, best)}, true
}
