package cure

import (
	"errors"
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Mix is everything in a cup that cures, before the catalyst. A part that isn't
// there is left out.
type Mix struct {
	Product working.Figure[unit.Mass] // gel coat, resin or filler as sold
	Thinner working.Figure[unit.Mass] // reactive thinner (styrene) only: a solvent doesn't cure
	Wax     working.Figure[unit.Mass] // wax solution
	Pigment working.Figure[unit.Mass] // pigment paste
}

// Part names one of the parts of a cup.
type Part int

// The parts.
const (
	ProductPart Part = iota
	ThinnerPart
	WaxPart
	PigmentPart
)

// String names the part.
func (p Part) String() string {
	return [...]string{"product", "thinner", "wax solution", "pigment paste"}[p]
}

// MostWax is the share of wax solution, by mass of product, over which a mix is
// refused: more of it weakens the bond and the film.
// Source: common practice (1–3 % in use).
const MostWax unit.ByMass = 0.04

// The masses of product that a cup may hold.
const (
	leastProduct = unit.Gram
	mostProduct  = 20 * unit.Kilogram
)

// PartError says that a part of a cup can't be right.
type PartError struct {
	Part               Part
	Value, Least, Most unit.Mass
}

// Error names the part and its limits.
func (e *PartError) Error() string {
	return fmt.Sprintf("cure: %s %s is outside %s to %s", e.Part, grams(e.Value), grams(e.Least), grams(e.Most))
}

func grams(m unit.Mass) string { return unit.Write(float64(m), unit.InGram, 4) }

// Check refuses amounts that can't be right: a product outside 1 g–20 kg, an
// addition below zero or over the product, wax solution over MostWax.
// Errors: *PartError, joined.
func (m Mix) Check() error {
	product := m.Product.Value
	return errors.Join(
		checkPart(ProductPart, product, leastProduct, mostProduct),
		checkPart(ThinnerPart, m.Thinner.Value, 0, product),
		checkPart(WaxPart, m.Wax.Value, 0, product*unit.Mass(MostWax)*(1+1e-9)),
		checkPart(PigmentPart, m.Pigment.Value, 0, product),
	)
}

func checkPart(p Part, value, least, most unit.Mass) error {
	if value >= least && value <= most { // NaN is neither
		return nil
	}
	return &PartError{p, value, least, most}
}

// Whole is the mass of all that cures: the base of the dose.
func (m Mix) Whole() working.Figure[unit.Mass] {
	return working.Sum(allThatCures, m.Product, m.Thinner, m.Wax, m.Pigment)
}

var allThatCures = working.SumRule("all that cures", unit.InGram)

// productShare is the product's part of all that cures.
var productShare = working.Rule2[unit.Mass, unit.Mass, unit.Share]{Rule: &working.Rule{Formula: "y = P ÷ W", Source: source.Ref{Document: &source.House, Place: "definition"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "y", Meaning: "product in all that cures", Scale: unit.InPure, Min: 0, Max: 1},
	Args: []working.Arg{
		{Symbol: "P", Meaning: "product", Scale: unit.InGram, Min: 1, Max: 20000},
		{Symbol: "W", Meaning: "all that cures", Scale: unit.InGram, Min: 1, Max: 80000},
	}},
	Code: func(p, w unit.Mass) unit.Share { return unit.Share(p / w) }}
