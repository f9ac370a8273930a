package fairing

import (
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The shares of balloons in a putty, by volume without air: over the first the
// builder is asked, over the second it is refused. Spheres poured and shaken fill
// about 0.64 of a space, so near that no resin is left to wet them.
// Source: assumption.
const (
	AskBalloons  unit.Share = 0.55
	MostBalloons unit.Share = 0.62
)

// Kind is what a part of a putty is.
type Kind int

// The kinds of part.
const (
	Resin Kind = iota
	Hardener
	Balloons
	Silica
	OtherPart // pigment, thinner
)

// Part is one thing weighed into a putty. Density is its true density: that of the
// liquid, or of the particles of a powder, never its bulk density. A bulk volume is
// turned into a mass by MassOf with the bulk density.
type Part struct {
	Kind    Kind
	Mass    working.Figure[unit.Mass]
	Density working.Figure[unit.Density]
}

// Recipe is what goes into a putty, and the share of air stirred into it.
type Recipe struct {
	Parts []Part
	Air   working.Figure[unit.Share]
}

// Putty is what a recipe makes.
type Putty struct {
	Mass     working.Figure[unit.Mass]
	Volume   working.Figure[unit.Volume] // with its air
	Density  working.Figure[unit.Density]
	Balloons working.Figure[unit.Share] // by volume, without air
}

// IsDry says if the putty holds so many balloons that the builder is asked.
func (p Putty) IsDry() bool { return p.Balloons.Value > AskBalloons }

// ErrNothing says that a recipe adds up to nothing.
var ErrNothing = errors.New("fairing: the recipe adds up to nothing")

// BalloonError says that a recipe holds more balloons than resin can wet.
type BalloonError struct{ Share, Most unit.Share }

// Error names both shares.
func (e *BalloonError) Error() string {
	return fmt.Sprintf("fairing: balloons are %.3f of the volume; at most %.2f", float64(e.Share), float64(e.Most))
}

// PartVolume is the true volume of a part: v = m ÷ ρ. Range: true density 0.02
// to 8 kg/L. Source: rule of mixtures.
var PartVolume = working.Rule2[unit.Mass, unit.Density, unit.Volume]{Rule: &working.Rule{Formula: "v = m ÷ ρ", Source: source.Ref{Document: &source.Geometry, Place: "rule of mixtures"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "v", Meaning: "true volume of the part", Scale: unit.InLitre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "mass of the part", Scale: unit.InKilogram, Min: 0, Max: 1e4},
		{Symbol: "ρ", Meaning: "true density", Scale: unit.InKilogramPerLitre, Min: 0.02, Max: 8},
	}},
	Code: func(m unit.Mass, rho unit.Density) unit.Volume { return unit.Volume(float64(m) / float64(rho)) }}

// WithAir is the volume of a putty with the air stirred in: V = v ÷ (1 − a).
// Range: a 0 to 0.3. Source: rule of mixtures.
var WithAir = working.Rule2[unit.Volume, unit.Share, unit.Volume]{Rule: &working.Rule{Formula: "V = v ÷ (1 − a)", Source: source.Ref{Document: &source.Geometry, Place: "rule of mixtures"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "putty", Scale: unit.InLitre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "v", Meaning: "true volume of all parts", Scale: unit.InLitre, Min: 0, Max: 1e6},
		{Symbol: "a", Meaning: "share of air", Scale: unit.InPure, Min: 0, Max: 0.3},
	}},
	Code: func(v unit.Volume, air unit.Share) unit.Volume { return v / unit.Volume(1-air) }}

// MixedDensity is the density of a putty: ρ = m ÷ V. Source: rule of mixtures.
var MixedDensity = working.Rule2[unit.Mass, unit.Volume, unit.Density]{Rule: &working.Rule{Formula: "ρ = m ÷ V", Source: source.Ref{Document: &source.Geometry, Place: "rule of mixtures"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "ρ", Meaning: "mixed density", Scale: unit.InKilogramPerLitre, Min: 0, Max: 10},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "mass of the putty", Scale: unit.InKilogram, Min: 1e-6, Max: 1e6},
		{Symbol: "V", Meaning: "putty", Scale: unit.InLitre, Min: 1e-6, Max: 1e6},
	}},
	Code: func(m unit.Mass, v unit.Volume) unit.Density { return unit.Density(float64(m) / float64(v)) }}

// BalloonShare is the balloons' share of the volume: b = w ÷ v, without air.
// Source: rule of mixtures.
var BalloonShare = working.Rule2[unit.Volume, unit.Volume, unit.Share]{Rule: &working.Rule{Formula: "b = w ÷ v", Source: source.Ref{Document: &source.Geometry, Place: "rule of mixtures"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "b", Meaning: "balloons by volume, without air", Scale: unit.InPure, Min: 0, Max: 1},
	Args: []working.Arg{
		{Symbol: "w", Meaning: "true volume of the balloons", Scale: unit.InLitre, Min: 0, Max: 1e6},
		{Symbol: "v", Meaning: "true volume of all parts", Scale: unit.InLitre, Min: 1e-6, Max: 1e6},
	}},
	Code: func(w, v unit.Volume) unit.Share { return unit.Share(w / v) }}

// ToWeigh is what to weigh of a part for a wanted volume: w = m × W ÷ V, the
// recipe's mass m scaled from the volume V that it makes.
// Source: rule of mixtures.
var ToWeigh = working.Rule3[unit.Mass, unit.Volume, unit.Volume, unit.Mass]{Rule: &working.Rule{Formula: "w = m × W ÷ V", Source: source.Ref{Document: &source.Geometry, Place: "rule of mixtures"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "w", Meaning: "to weigh", Scale: unit.InGram, Min: 0, Max: 1e12},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "mass in the recipe", Scale: unit.InGram, Min: 0, Max: 1e7},
		{Symbol: "W", Meaning: "putty wanted", Scale: unit.InLitre, Min: 0, Max: 1e4},
		{Symbol: "V", Meaning: "putty that the recipe makes", Scale: unit.InLitre, Min: 1e-6, Max: 1e6},
	}},
	Code: func(m unit.Mass, wanted, makes unit.Volume) unit.Mass { return m * unit.Mass(wanted/makes) }}

var (
	allParts     = working.SumRule("true volume of all parts", unit.InLitre)
	balloonParts = working.SumRule("true volume of the balloons", unit.InLitre)
	allMass      = working.SumRule("mass of the putty", unit.InKilogram)
)

// Mix gives what the recipe makes.
// Errors: ErrNothing, *BalloonError over MostBalloons, *working.RangeError.
func (r Recipe) Mix() (p Putty, err error) {
	var volumes, balloons []working.Figure[unit.Volume]
	var masses []working.Figure[unit.Mass]
	for _, part := range r.Parts {
		v, err := PartVolume.Figure(part.Mass, part.Density)
		if err != nil {
			return p, err
		}
		volumes, masses = append(volumes, v), append(masses, part.Mass)
		if part.Kind == Balloons {
			balloons = append(balloons, v)
		}
	}
	solid := working.Sum(allParts, volumes...)
	if solid.Value <= 0 {
		return p, ErrNothing
	}
	p.Mass = working.Sum(allMass, masses...)
	if p.Balloons, err = BalloonShare.Figure(working.Sum(balloonParts, balloons...), solid); err != nil {
		return p, err
	}
	if p.Balloons.Value > MostBalloons {
		return p, &BalloonError{p.Balloons.Value, MostBalloons}
	}
	if p.Volume, err = WithAir.Figure(solid, r.Air); err != nil {
		return p, err
	}
	p.Density, err = MixedDensity.Figure(p.Mass, p.Volume)
	return p, err
}

// For gives what to weigh of each part, in the recipe's order, for a wanted
// volume. Errors: as Mix.
func (r Recipe) For(wanted working.Figure[unit.Volume]) ([]working.Figure[unit.Mass], error) {
	putty, err := r.Mix()
	if err != nil {
		return nil, err
	}
	list := make([]working.Figure[unit.Mass], len(r.Parts))
	for i, part := range r.Parts {
		if list[i], err = ToWeigh.Figure(part.Mass, wanted, putty.Volume); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// PriceError says that the prices don't fit the parts, or one is below zero.
type PriceError struct{ Parts, Prices int }

// Error names the counts.
func (e *PriceError) Error() string {
	return fmt.Sprintf("fairing: %d prices for %d parts, none below zero", e.Prices, e.Parts)
}

// CostPerLitre gives what a litre of the putty costs from the price of a
// kilogram of each part, in the recipe's order. Errors: as Mix, and *PriceError.
func (r Recipe) CostPerLitre(perKilogram []decimal.Decimal) (decimal.Decimal, error) {
	putty, err := r.Mix()
	if err != nil {
		return decimal.Zero, err
	}
	isNegative := slices.ContainsFunc(perKilogram, decimal.Decimal.IsNegative)
	if isNegative || len(perKilogram) != len(r.Parts) {
		return decimal.Zero, &PriceError{len(r.Parts), len(perKilogram)}
	}
	total := decimal.Zero
	for i, price := range perKilogram {
		total = total.Add(price.Mul(decimal.NewFromFloat(float64(r.Parts[i].Mass.Value))))
	}
	return total.Div(decimal.NewFromFloat(float64(putty.Volume.Value / unit.Litre))), nil
}
