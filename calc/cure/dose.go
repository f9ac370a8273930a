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
	whole   = working.Arg{Symbol: "W", Meaning: "all that cures", Scale: unit.InGram, Min: 1, Max: 80000}
	catMass = working.Arg{Symbol: "g", Meaning: "catalyst", Scale: unit.InGram, Min: 1e-4, Max: 5000}
	floor   = working.Arg{Symbol: "c_min", Meaning: "floor", Scale: unit.InPercent, Min: 0.1, Max: 6}
	ceiling = working.Arg{Symbol: "c_max", Meaning: "ceiling, of all that cures", Scale: unit.InPercent, Min: 0.01, Max: 6}
)

// dose is catalyst by mass. Source: definition of a share by mass.
var dose = working.Rule2[unit.ByMass, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "g = c × W ÷ 100", Source: source.Ref{Document: &source.House, Place: "definition of a share by mass"}, Mark: source.Exact,
	Result: catMass, Args: []working.Arg{share, whole}},
	Code: func(c unit.ByMass, w unit.Mass) unit.Mass { return unit.Mass(c) * w }}

// DoseVolume is the volume of a dose, V_c = g ÷ ρ_c (mL, g, kg/L).
// Range: g 0.1 mg–5 kg, ρ_c 0.9–1.4 kg/L. Errors: *working.RangeError.
// Source: definition of density.
var DoseVolume = working.Rule2[unit.Mass, unit.Density, unit.Volume]{Rule: &working.Rule{Formula: "V_c = g ÷ ρ_c", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V_c", Meaning: "catalyst by volume", Scale: unit.InMillilitre, Min: 1e-4 / 1.4, Max: 5000 / 0.9},
	Args:   []working.Arg{catMass, rhoCat}},
	Code: func(g unit.Mass, rho unit.Density) unit.Volume { return unit.Volume(float64(g) / float64(rho)) }}

// ofWhole is a mass of catalyst as a share of all that cures.
var ofWhole = working.Rule2[unit.Mass, unit.Mass, unit.ByMass]{Rule: &working.Rule{Formula: "c = 100 × g ÷ W", Source: source.Ref{Document: &source.House, Place: "definition of a share by mass"}, Mark: source.Exact,
	Result: share, Args: []working.Arg{catMass, whole}},
	Code: func(g, w unit.Mass) unit.ByMass { return unit.ByMass(g / w) }}

// ceilingOfWhole takes the ceiling from the product alone to all that cures.
var ceilingOfWhole = working.Rule2[unit.ByMass, unit.Share, unit.ByMass]{Rule: &working.Rule{Formula: "c_max = C × y", Source: source.Ref{Document: &source.House, Place: "the ceiling holds for the product alone"}, Mark: source.Calculated,
	Result: ceiling,
	Args: []working.Arg{
		{Symbol: "C", Meaning: "ceiling, of the product", Scale: unit.InPercent, Min: 0.1, Max: 6},
		{Symbol: "y", Meaning: "product in all that cures", Scale: unit.InPure, Min: 0.1, Max: 1},
	}},
	Code: func(c unit.ByMass, y unit.Share) unit.ByMass { return c * unit.ByMass(y) }}

// smallest is the smallest cup in which a tool's error stays between floor and
// ceiling.
var smallest = working.Rule4[unit.Mass, unit.ByMass, unit.ByMass, unit.ByMass, unit.Mass]{Rule: &working.Rule{Formula: "W_min = 100 × e ÷ min(c − c_min, c_max − c)", Source: source.Ref{Document: &source.House, Place: "the error must stay inside the limits"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "W_min", Meaning: "smallest cup that this tool can dose", Scale: unit.InGram, Min: 0.003, Max: 4e10},
	Args:   []working.Arg{toolErr, share, floor, ceiling}},
	Code: func(e unit.Mass, c, least, most unit.ByMass) unit.Mass { return e / unit.Mass(min(c-least, most-c)) }}

// onMark is how a dose is rounded.
var onMark = &working.Rule{Formula: "the tool's mark nearest to the dose, inside floor and ceiling",
	Source: source.Ref{Document: &source.House, Place: "rounded once, at the end, to what the tool can show"}, Mark: source.Calculated, Result: catMass, IsProse: true}

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
var toolShare = working.Rule2[unit.Mass, unit.Mass, unit.ByMass]{Rule: &working.Rule{Formula: "c_e = 100 × e ÷ W", Source: source.Ref{Document: &source.House, Place: "definition of a share by mass"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "c_e", Meaning: "error of the tool, by mass of all that cures", Scale: unit.InPercent, Min: 1e-7, Max: 4000},
	Args:   []working.Arg{toolErr, whole}},
	Code: func(e, w unit.Mass) unit.ByMass { return unit.ByMass(e / w) }}
