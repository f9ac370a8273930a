package cure

import (
	"errors"
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Opened is what a timed test over the table's end allows for the rest of its day:
// cups of the same tin, with product and surface no warmer than UpTo.
type Opened struct{ UpTo unit.Temperature }

// The rules of heat over a table's end.
const (
	// HotMost is the warmest temperature at which a test is timed; above it nothing
	// is mixed at all. Source: assumption.
	HotMost = unit.ZeroCelsius + 42
	// OpensOver is how far above its own temperature a timed test allows cups.
	// Source: assumption.
	OpensOver unit.TemperatureDifference = 1
	// HotCup is the most in one cup over the table's end, and of a tin that was
	// never timed. Source: assumption.
	HotCup = 250 * unit.Gram
	// mostOverFloor is how far over the floor the tool's error may lift a dose
	// that takes the floor. Source: assumption.
	mostOverFloor unit.ByMass = 0.0025
)

// ShortTestError says that a timed test over the table's end leaves too little
// time to spread anything.
type ShortTestError struct{ Spreading unit.Time }

// Error names the minutes.
func (e *ShortTestError) Error() string {
	return "cure: the timed test leaves " + unit.Write(float64(e.Spreading), unit.InMinute, 3) + " to spread"
}

// OpenedBy gives what a timed test at the floor allows for the rest of its day:
// cups up to OpensOver over the test's temperature, at most HotMost, once the
// minutes that can be spread there, product and surface alike, come to
// LeastSpreading. The caller makes sure that tin and day are the same.
// Errors: as Gel.Tested, Gel.At; *ShortTestError.
// Source: assumption. The floor is the least that cures, so nothing is
// under-dosed: what heat takes is time.
func (w Work) OpenedBy(card Gel, test CupTest) (Opened, error) {
	g, err := card.Tested(test)
	if err != nil {
		return Opened{}, err
	}
	band, err := g.At(test.Temperature, test.Catalyst)
	if err != nil {
		return Opened{}, err
	}
	s, err := w.Spreading(band.Early, band.Early)
	if err != nil {
		return Opened{}, err
	}
	if s.Value < LeastSpreading-unit.Time(1e-6) {
		return Opened{}, &ShortTestError{s.Value}
	}
	return Opened{min(test.Temperature.Value+unit.Temperature(OpensOver), HotMost)}, nil
}

// isOpened says if the cup is over its table's end and a timed test allows it.
func (c Cup) isOpened() bool {
	if c.Opened == nil {
		return false
	}
	_, end := c.Card.Table.Ends()
	hottest := max(c.Shed.Surface.Value, c.Shed.Product.Value)
	return c.Shed.Surface.Value > end+lastBits && hottest <= c.Opened.UpTo+lastBits && c.Opened.UpTo <= HotMost+lastBits
}

// leastShare is the lowest dose that the tool's error can't take below the floor.
func (c Cup) leastShare() (working.Figure[unit.ByMass], error) {
	off, err := c.Tool.Error(c.Peroxide.Density)
	if err != nil {
		return working.Figure[unit.ByMass]{}, err
	}
	return lowest.Figure(c.Card.Floor, off, working.Given(c.Tool.markMass(c.Peroxide.Density.Value)/2, "half a mark, to find one", unit.InGram, "", source.Exact), c.Mix.Whole())
}

// lowest is the floor with room for the tool's whole error and the nearest mark.
var lowest = working.Rule4[unit.ByMass, unit.Mass, unit.Mass, unit.Mass, unit.ByMass]{Rule: &working.Rule{Formula: "c = c_min + 100 × (e + e_h) ÷ W", Source: source.Ref{Document: &source.House, Place: "the tool's error over the floor"}, Mark: source.Calculated, Result: share,
	Args: []working.Arg{floor, toolErr, {Symbol: "e_h", Meaning: "half a mark", Scale: unit.InGram, Min: 1e-4, Max: 20}, whole}},
	Code: func(least unit.ByMass, e, half, w unit.Mass) unit.ByMass { return least + unit.ByMass((e+half)/w) }}

// overFloor is the most that a dose at the floor may come to, for the smallest
// cup over the table's end.
func overFloor(least working.Figure[unit.ByMass]) working.Figure[unit.ByMass] {
	return working.Given(least.Value+mostOverFloor, "floor and a quarter of a point", unit.InPercent, "", source.Assumption)
}

// TestTooCoarseError says that a tool is too coarse for timing a gel: nobody would
// know what was timed.
type TestTooCoarseError struct{ Has, Most unit.ByMass }

// Error names the error and what is allowed.
func (e *TestTooCoarseError) Error() string {
	return fmt.Sprintf("cure: the tool errs by %s in a timed test, at most %s", percent(e.Has), percent(e.Most))
}

// mostTestError is the largest error of a tool in a timed test, of all that cures.
// Source: assumption.
const mostTestError unit.ByMass = 0.0025

// FloorTest is the catalyst for a timed test over the table's end: the card's
// floor, on the first mark that isn't under it. It cures or it doesn't; nothing
// is coated with it. Limits: to HotMost and to the card's own warmest for a test.
// Errors, joined: *PeroxideError, *TemperatureError, *ApartError,
// *ColdEveningError, *PartError; then *ClashError, *TestTooCoarseError,
// *NotWithThisToolError, *ToolError, *working.RangeError.
// Source: assumption.
func (c Cup) FloorTest(warmest unit.Temperature) (Dose, error) {
	limits := c.Card.Limits
	limits.Warmest = min(warmest, HotMost)
	if err := errors.Join(c.Card.Takes.Check(c.Peroxide.Family), c.Shed.Check(limits), c.Mix.Check()); err != nil {
		return Dose{}, err
	}
	if _, err := c.Card.bounds(c.Mix); err != nil {
		return Dose{}, err
	}
	rho := c.Peroxide.Density
	off, err := c.Tool.Error(rho)
	if err != nil {
		return Dose{}, err
	}
	d := Dose{Share: c.Card.Floor, Whole: c.Mix.Whole()}
	if d.Wanted, err = dose.Figure(d.Share, d.Whole); err != nil {
		return Dose{}, err
	}
	if _, err := DoseVolume.Figure(d.Wanted, rho); err != nil {
		return Dose{}, err
	}
	if e := unit.ByMass(off.Value / d.Whole.Value); e > mostTestError*(1+1e-9) {
		return Dose{}, &TestTooCoarseError{e, mostTestError}
	}
	mark := c.Tool.markMass(rho.Value)
	want := gramsOf(d.Wanted.Value)
	most := want.Add(gramsOf(mark))
	m, isIn := c.Tool.mark(want, want, most, gramsOf(0), gramsPerMillilitre(rho.Value))
	if !isIn {
		return Dose{}, &NotWithThisToolError{c.Tool, d.Whole.Value, d.Whole.Value}
	}
	return c.read(d, m, off)
}
