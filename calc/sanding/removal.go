package sanding

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ByWeight is the builder's own removal from an offcut weighed before and after
// sanding: r = (b − a) ÷ (A × ρ); 1 g/m² of 1 kg/L is 1 µm. Range: offcut
// 1 cm² to 4 m², cured density 0.3 to 2.5 kg/L. Source: elementary geometry.
var ByWeight = working.Rule4[unit.Mass, unit.Mass, unit.Area, unit.Density, unit.DryFilm]{Rule: &working.Rule{Formula: "r = (b − a) ÷ (A × ρ)", Source: source.Ref{Document: &source.Geometry, Place: "volume by weight"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "r", Meaning: "measured removal", Scale: unit.InMicrometre, Min: 0, Max: 5000},
	Args: []working.Arg{
		{Symbol: "b", Meaning: "offcut before sanding", Scale: unit.InGram, Min: 0.1, Max: 20000},
		{Symbol: "a", Meaning: "offcut after sanding, dry", Scale: unit.InGram, Min: 0.1, Max: 20000},
		{Symbol: "A", Meaning: "sanded area of the offcut", Scale: unit.InSquareMetre, Min: 1e-4, Max: 4},
		{Symbol: "ρ", Meaning: "cured density", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5},
	}},
	Code: func(b, a unit.Mass, area unit.Area, rho unit.Density) unit.DryFilm {
		return unit.DryFilm(float64(b-a) / (float64(area) * float64(rho)))
	}}

// ByReadings is the builder's own removal from the cured film read before and
// after sanding at the same spot: r = b − a. Range: films 0 to 20 mm.
// Source: elementary geometry.
var ByReadings = working.Rule2[unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "r = b − a", Source: source.Ref{Document: &source.Geometry, Place: "difference"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "r", Meaning: "measured removal", Scale: unit.InMicrometre, Min: 0, Max: 20000},
	Args: []working.Arg{
		{Symbol: "b", Meaning: "cured film before sanding", Scale: unit.InMicrometre, Min: 0, Max: 20000},
		{Symbol: "a", Meaning: "cured film after sanding", Scale: unit.InMicrometre, Min: 0, Max: 20000},
	}},
	Code: func(b, a unit.DryFilm) unit.DryFilm { return b - a }}

// leastSteps is how many steps of the instrument a difference must span before
// it is taken: under two, half of it may be rounding.
const leastSteps = 2

// TooFineError says that a difference is lost in the steps of the instrument, or is
// no loss at all.
type TooFineError struct {
	Difference float64 // SI, before less after
	Step       float64 // SI, one step of the scale or gauge
}

// Error names both.
func (e *TooFineError) Error() string {
	return fmt.Sprintf("sanding: a difference of %g is under %d steps of %g", e.Difference, leastSteps, e.Step)
}

// Weighed gives the builder's own removal from an offcut, on a scale of the given
// step.
// Errors: *TooFineError when the loss is under two steps, *working.RangeError.
func Weighed(before, after working.Figure[unit.Mass], area working.Figure[unit.Area], cured working.Figure[unit.Density], step unit.Mass) (working.Figure[unit.DryFilm], error) {
	if err := spans(float64(before.Value-after.Value), float64(step)); err != nil {
		return working.Figure[unit.DryFilm]{}, err
	}
	return ByWeight.Figure(before, after, area, cured)
}

// Gauged gives the builder's own removal from two readings of a gauge of the given
// step.
// Errors: *TooFineError when the loss is under two steps, *working.RangeError.
func Gauged(before, after working.Figure[unit.DryFilm], step unit.DryFilm) (working.Figure[unit.DryFilm], error) {
	if err := spans(float64(before.Value-after.Value), float64(step)); err != nil {
		return working.Figure[unit.DryFilm]{}, err
	}
	return ByReadings.Figure(before, after)
}

// spans refuses a difference that isn't clear of the steps; the slack is for the
// last bits of a subtraction.
func spans(difference, step float64) error {
	if step > 0 && difference >= leastSteps*step*(1-1e-9) {
		return nil
	}
	return &TooFineError{difference, step}
}
