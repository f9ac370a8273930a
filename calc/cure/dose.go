package cure

import (
	"errors"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Card is what a product's card says of its catalyst.
type Card struct {
	Table   Table
	Floor   working.Figure[unit.ByMass] // least that cures, of all that cures
	Ceiling working.Figure[unit.ByMass] // most that doesn't harm, of the product alone
	Limits  Limits                      // of product and surface
	Takes   Takes
}

// Cup is a cup about to be dosed.
type Cup struct {
	Mix      Mix // as weighed
	Card     Card
	Peroxide Peroxide
	Shed     Shed
	Tool     Tool
	Largest  Largest // asked with the dose by the table, then with the dose as measured
	Opened   *Opened // what a timed test of today opened over the table's end; nil: nothing
}

// Largest gives the largest cup for a share of catalyst, of all that cures: Hand's,
// as a rule. Left out, there is no dose.
type Largest func(catalyst working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error)

// Dose is the catalyst for one cup. Only Cup.Dose makes one; a cup gets one dose,
// and nothing is added to it later.
type Dose struct {
	Share  working.Figure[unit.ByMass] // by the table
	Whole  working.Figure[unit.Mass]   // all that cures
	Wanted working.Figure[unit.Mass]   // before it is rounded to the tool

	Mass        working.Figure[unit.Mass]   // on the tool's mark
	Volume      working.Figure[unit.Volume] // the same by volume
	Grams       Grams                       // as it is read: on the mark of a scale, else to 0.01 g
	Millilitres Millilitres                 // as it is read: on the mark of a syringe, else to 0.01 mL
	Drops       int64                       // as it is counted; 0 with another tool

	OfWhole  working.Figure[unit.ByMass] // what it comes to, of all that cures
	Error    working.Figure[unit.ByMass] // how far the tool may be off, rounding included, of all that cures
	Smallest working.Figure[unit.Mass]   // smallest cup that this tool can dose today
	Largest  working.Figure[unit.Mass]   // largest cup with the dose as measured
}

var (
	whole   = working.In("W", "all that cures", unit.InGram, 1, 80000)
	catMass = working.In("g", "catalyst", unit.InGram, 1e-4, 5000)
	floor   = working.In("c_min", "floor", unit.InPercent, 0.1, 6)
	ceiling = working.In("c_max", "ceiling, of all that cures", unit.InPercent, 0.01, 6)
)

// dose is catalyst by mass. Source: definition of a share by mass.
var dose = working.Of2("g = c × W ÷ 100", source.House.At("definition of a share by mass"), source.Exact,
	catMass, []working.Arg{share, whole},
	func(c unit.ByMass, w unit.Mass) unit.Mass { return unit.Mass(c) * w })

// DoseVolume is the volume of a dose, V_c = g ÷ ρ_c (mL, g, kg/L).
// Range: g 0.1 mg–5 kg, ρ_c 0.9–1.4 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var DoseVolume = working.Of2("V_c = g ÷ ρ_c", source.House.At("definition of density"), source.Exact,
	working.In("V_c", "catalyst by volume", unit.InMillilitre, 1e-4/1.4, 5000/0.9),
	[]working.Arg{catMass, rhoCat},
	func(g unit.Mass, rho unit.Density) unit.Volume { return unit.Volume(float64(g) / float64(rho)) })

// ofWhole is a mass of catalyst as a share of all that cures.
var ofWhole = working.Of2("c = 100 × g ÷ W", source.House.At("definition of a share by mass"), source.Exact,
	share, []working.Arg{catMass, whole},
	func(g, w unit.Mass) unit.ByMass { return unit.ByMass(g / w) })

// ceilingOfWhole takes the ceiling from the product alone to all that cures.
var ceilingOfWhole = working.Of2("c_max = C × y", source.House.At("the ceiling holds for the product alone"), source.Calculated,
	ceiling,
	[]working.Arg{
		working.In("C", "ceiling, of the product", unit.InPercent, 0.1, 6),
		working.In("y", "product in all that cures", unit.InPure, 0.1, 1),
	},
	func(c unit.ByMass, y unit.Share) unit.ByMass { return c * unit.ByMass(y) })

// smallest is the smallest cup in which a tool's error stays between floor and
// ceiling.
var smallest = working.Of4("W_min = 100 × e ÷ min(c − c_min, c_max − c)", source.House.At("the error must stay inside the limits"), source.Calculated,
	working.In("W_min", "smallest cup that this tool can dose", unit.InGram, 0.003, 4e10),
	[]working.Arg{toolErr, share, floor, ceiling},
	func(e unit.Mass, c, least, most unit.ByMass) unit.Mass { return e / unit.Mass(min(c-least, most-c)) })

// onMark is how a dose is rounded.
var onMark = working.Method("the tool's mark nearest to the dose, inside floor and ceiling",
	source.House.At("rounded once, at the end, to what the tool can show"), source.Calculated, catMass)

// bounds is the card's floor and ceiling, both of all that cures in one mix.
type bounds struct{ floor, ceiling working.Figure[unit.ByMass] }

func (c Card) bounds(m Mix) (bounds, error) {
	y, err := productShare.Figure(m.Product, m.Whole())
	if err != nil {
		return bounds{}, err
	}
	most, err := ceilingOfWhole.Figure(c.Ceiling, y)
	if err != nil {
		return bounds{}, err
	}
	if !(c.Floor.Value > 0 && c.Floor.Value <= most.Value) {
		return bounds{}, &ClashError{c.Floor.Value, c.Ceiling.Value,
			unit.Mass(c.Floor.Value) * m.Whole().Value, unit.Mass(c.Ceiling.Value) * m.Product.Value}
	}
	return bounds{c.Floor, most}, nil
}

// Smallest is the smallest cup of such a mix that the tool can dose: the tool's
// error ÷ the lesser of dose over floor and ceiling over dose.
// Errors: *PartError, *ClashError, *OutsideError, *NoRoomError, *ToolError,
// *working.RangeError.
// Source: follows from floor, ceiling and the tool's error.
func (c Card) Smallest(share working.Figure[unit.ByMass], m Mix, t Tool, p Peroxide) (working.Figure[unit.Mass], error) {
	if err := m.Check(); err != nil {
		return working.Figure[unit.Mass]{}, err
	}
	b, err := c.bounds(m)
	if err != nil {
		return working.Figure[unit.Mass]{}, err
	}
	e, err := t.Error(p.Density)
	if err != nil {
		return working.Figure[unit.Mass]{}, err
	}
	room := min(share.Value-b.floor.Value, b.ceiling.Value-share.Value)
	switch {
	case !(room >= -lastBitsOfShare):
		return working.Figure[unit.Mass]{}, &OutsideError{share.Value, b.floor.Value, b.ceiling.Value}
	case room <= lastBitsOfShare:
		return working.Figure[unit.Mass]{}, &NoRoomError{share.Value, b.floor.Value, b.ceiling.Value}
	}
	return smallest.Figure(e, share, b.floor, b.ceiling)
}

// lastBitsOfShare is too little catalyst to decide anything.
const lastBitsOfShare = unit.ByMass(1e-9)

// Dose gives the catalyst for the cup, or every reason why there is none. It comes
// from the card's table at the temperature of the surface, times all that cures; it
// is rounded to the nearest mark of the tool at which the tool's whole error stays
// above the floor (of all that cures) and below the ceiling (of the product alone).
// The cup may be no larger than the dose as measured allows.
// Errors, joined: *PeroxideError, *TemperatureError, *ApartError,
// *ColdEveningError, *PartError, *BeyondTableError, *SteepError; then one of
// *ClashError, *OutsideError, *NoRoomError, *NotWithThisToolError, *CupTooLargeError,
// *ToolError, *working.RangeError.
// Source: design of this program; shares and limits from the card.
func (c Cup) Dose() (Dose, error) {
	share, err := c.share()
	if err != nil {
		return Dose{}, err
	}
	smallest, err := c.smallest(share)
	if err != nil {
		return Dose{}, err
	}
	d := Dose{Share: share, Whole: c.Mix.Whole(), Smallest: smallest}
	if d.Largest, err = c.largest(share); err != nil {
		return Dose{}, err
	}
	if !(smallest.Value <= d.Largest.Value*(1+1e-9)) {
		return Dose{}, &NotWithThisToolError{c.Tool, d.Largest.Value, smallest.Value}
	}
	if !(d.Whole.Value >= smallest.Value*(1-1e-9)) {
		return Dose{}, &NotWithThisToolError{c.Tool, d.Whole.Value, smallest.Value}
	}
	if d.Wanted, err = dose.Figure(share, d.Whole); err != nil {
		return Dose{}, err
	}
	if d, err = c.measured(d); err != nil {
		return Dose{}, err
	}
	if d.Largest, err = c.largest(d.OfWhole); err != nil {
		return Dose{}, err
	}
	if !(d.Whole.Value <= d.Largest.Value*(1+1e-9)) {
		return Dose{}, &CupTooLargeError{d.Whole.Value, d.Largest.Value}
	}
	return d, nil
}

// largest is the largest cup for a share of catalyst; none where it isn't known.
func (c Cup) largest(share working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
	if c.Largest == nil {
		return working.Figure[unit.Mass]{}, nil
	}
	return c.Largest(share)
}

// smallest is the smallest cup that the tool can dose, now.
func (c Cup) smallest(share working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) {
	if c.isOpened() {
		share = overFloor(c.Card.Floor)
	}
	return c.Card.Smallest(share, c.Mix, c.Tool, c.Peroxide)
}

// share is the table's catalyst, once nothing rules out dosing altogether.
func (c Cup) share() (working.Figure[unit.ByMass], error) {
	limits := c.Card.Limits
	var share working.Figure[unit.ByMass]
	var err error
	if c.isOpened() {
		limits.Warmest = c.Opened.UpTo
		share, err = c.leastShare()
	} else if share, err = c.Card.Table.At(c.Shed.Surface); err == nil {
		err = c.Shed.checkSteep(c.Card.Table, share.Value)
	}
	return share, errors.Join(c.Card.Takes.Check(c.Peroxide.Family), c.Shed.Check(limits), c.Mix.Check(), err)
}

// measured rounds a wanted dose to a mark of the tool.
func (c Cup) measured(d Dose) (Dose, error) {
	rho := c.Peroxide.Density
	if _, err := DoseVolume.Figure(d.Wanted, rho); err != nil { // before the density becomes a decimal
		return Dose{}, err
	}
	base := gramsOf(d.Whole.Value)
	least, want := shareOf(c.Card.Floor.Value).Mul(base), shareOf(d.Share.Value).Mul(base)
	most := shareOf(c.Card.Ceiling.Value).Mul(gramsOf(c.Mix.Product.Value))
	off, err := c.Tool.Error(rho)
	if err != nil {
		return Dose{}, err
	}
	m, isIn := c.Tool.mark(want, least, most, gramsOf(off.Value), gramsPerMillilitre(rho.Value))
	if !isIn { // half a mark more, and the nearest mark is inside
		largeEnough := d.Smallest.Value * (1 + c.Tool.markMass(rho.Value)/2/off.Value)
		return Dose{}, &NotWithThisToolError{c.Tool, d.Whole.Value, largeEnough}
	}
	return c.read(d, m, off)
}

// read puts a mark into the dose, as it is read off the tool.
func (c Cup) read(d Dose, m marked, off working.Figure[unit.Mass]) (Dose, error) {
	d.Mass = working.By(onMark, Grams{m.exact}.Mass(), d.Wanted.Step)
	d.Grams, d.Millilitres = m.grams, m.millilitres
	if c.Tool.kind == Drops {
		d.Drops = m.steps
	}
	return d.withShares(off, c.Peroxide.Density)
}

// withShares adds what the dose comes to by volume and as shares.
func (d Dose) withShares(off working.Figure[unit.Mass], rho working.Figure[unit.Density]) (Dose, error) {
	var errs [3]error
	d.Volume, errs[0] = DoseVolume.Figure(d.Mass, rho)
	d.OfWhole, errs[1] = ofWhole.Figure(d.Mass, d.Whole)
	d.Error, errs[2] = toolShare.Figure(off, d.Whole)
	if err := errors.Join(errs[:]...); err != nil {
		return Dose{}, err
	}
	return d, nil
}

// toolShare is a tool's error as a share of all that cures.
var toolShare = working.Of2("c_e = 100 × e ÷ W", source.House.At("definition of a share by mass"), source.Exact,
	working.In("c_e", "error of the tool, by mass of all that cures", unit.InPercent, 1e-7, 4000),
	[]working.Arg{toolErr, whole},
	func(e, w unit.Mass) unit.ByMass { return unit.ByMass(e / w) })
