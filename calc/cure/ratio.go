package cure

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Ratio is the fixed ratio of a system of two parts, parts of A (resin, base) to
// one of B (hardener), as the tin states it: by mass or by volume. Temperature
// never changes it. The zero ratio is missing, and gives no parts.
type Ratio struct {
	byMass   working.Figure[unit.ByMass]
	byVolume working.Figure[unit.ByVolume]
	a, b     working.Figure[unit.Density]
}

// RatioByMass is a ratio that the tin states by mass. The densities may be left out:
// then nothing is said of millilitres.
func RatioByMass(aToB working.Figure[unit.ByMass], a, b working.Figure[unit.Density]) Ratio {
	return Ratio{byMass: aToB, a: a, b: b}
}

// RatioByVolume is a ratio that the tin states by volume. The densities may be left
// out: then nothing is said of grams.
func RatioByVolume(aToB working.Figure[unit.ByVolume], a, b working.Figure[unit.Density]) Ratio {
	return Ratio{byVolume: aToB, a: a, b: b}
}

// Amount is one part of a mix. A side that would need a missing density is left
// out: its Step is nil.
type Amount struct {
	Mass   working.Figure[unit.Mass]
	Volume working.Figure[unit.Volume]
}

// Parts is a mix of a fixed ratio.
type Parts struct{ A, B Amount }

// RatioCause says why a ratio gives no parts.
type RatioCause int

// The causes.
const (
	RatioMissing   RatioCause = iota // it must be typed from the tin
	DensityMissing                   // grams and millilitres can't be told apart without
)

// RatioError says why a ratio gives no parts.
type RatioError struct{ Cause RatioCause }

// Error names the cause.
func (e *RatioError) Error() string {
	return fmt.Sprintf("cure: no parts, %s", [...]string{"the ratio is missing", "a density is missing"}[e.Cause])
}

// splitter holds the rules of a ratio for masses or for volumes.
type splitter[Q, R unit.Quantity] struct{ a, b working.Rule2[Q, R, Q] }

func newSplitter[Q, R unit.Quantity](scale unit.Scale) splitter[Q, R] {
	part := func(symbol, meaning string) working.Arg {
		return working.Arg{Symbol: symbol, Meaning: meaning, Scale: scale, Min: 0.1, Max: 200000}
	}
	args := []working.Arg{part("T", "both parts"), {Symbol: "r", Meaning: "parts of A to one of B", Scale: unit.InPure, Min: 0.1, Max: 100}}
	rule := func(formula string, result working.Arg, f func(Q, R) Q) working.Rule2[Q, R, Q] {
		return working.Rule2[Q, R, Q]{Rule: &working.Rule{Formula: formula, Source: source.Ref{Document: &source.House, Place: "definition of a mixing ratio"}, Mark: source.Exact, Result: result, Args: args}, Code: f}
	}
	return splitter[Q, R]{
		rule("A = T × r ÷ (1 + r)", part("A", "part A"), func(t Q, r R) Q { return t * Q(r) / (1 + Q(r)) }),
		rule("B = T ÷ (1 + r)", part("B", "part B"), func(t Q, r R) Q { return t / (1 + Q(r)) }),
	}
}

var (
	masses  = newSplitter[unit.Mass, unit.ByMass](unit.InGram)
	volumes = newSplitter[unit.Volume, unit.ByVolume](unit.InMillilitre)
)

// split gives both parts of a total.
func (s splitter[Q, R]) split(total working.Figure[Q], r working.Figure[R]) (a, b working.Figure[Q], err error) {
	if a, err = s.a.Figure(total, r); err == nil {
		b, err = s.b.Figure(total, r)
	}
	return a, b, err
}

var (
	rhoA = working.Arg{Symbol: "ρ_A", Meaning: "density of part A", Scale: unit.InKilogramPerLitre, Min: 0.2, Max: 3}
	rhoB = working.Arg{Symbol: "ρ_B", Meaning: "density of part B", Scale: unit.InKilogramPerLitre, Min: 0.2, Max: 3}

	massRatio = working.Rule3[unit.ByVolume, unit.Density, unit.Density, unit.ByMass]{Rule: &working.Rule{Formula: "r = r_v × ρ_A ÷ ρ_B", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "r", Meaning: "parts of A to one of B by mass", Scale: unit.InPure, Min: 0.1, Max: 100},
		Args:   []working.Arg{{Symbol: "r_v", Meaning: "parts of A to one of B by volume", Scale: unit.InPure, Min: 0.1, Max: 100}, rhoA, rhoB}},
		Code: func(r unit.ByVolume, a, b unit.Density) unit.ByMass { return unit.ByMass(float64(r) * float64(a/b)) }}

	volumeRatio = working.Rule3[unit.ByMass, unit.Density, unit.Density, unit.ByVolume]{Rule: &working.Rule{Formula: "r_v = r × ρ_B ÷ ρ_A", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "r_v", Meaning: "parts of A to one of B by volume", Scale: unit.InPure, Min: 0.1, Max: 100},
		Args:   []working.Arg{{Symbol: "r", Meaning: "parts of A to one of B by mass", Scale: unit.InPure, Min: 0.1, Max: 100}, rhoB, rhoA}},
		Code: func(r unit.ByMass, b, a unit.Density) unit.ByVolume { return unit.ByVolume(float64(r) * float64(b/a)) }}

	// VolumeOf is the volume of a part or of a mix, V = m ÷ ρ.
	// Range: m 1 mg–200 kg, ρ 0.2–3 kg/L. Errors: *working.RangeError. Source: definition of density.
	VolumeOf = working.Rule2[unit.Mass, unit.Density, unit.Volume]{Rule: &working.Rule{Formula: "V = m ÷ ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "V", Meaning: "volume of the part", Scale: unit.InMillilitre, Min: 1e-3 / 3, Max: 1e6},
		Args:   []working.Arg{{Symbol: "m", Meaning: "part", Scale: unit.InGram, Min: 1e-3, Max: 200000}, {Symbol: "ρ", Meaning: "density of the part", Scale: unit.InKilogramPerLitre, Min: 0.2, Max: 3}}},
		Code: func(m unit.Mass, rho unit.Density) unit.Volume { return unit.Volume(float64(m) / float64(rho)) }}

	massOf = working.Rule2[unit.Volume, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m = V × ρ", Source: source.Ref{Document: &source.House, Place: "definition of density"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "m", Meaning: "mass of the part", Scale: unit.InGram, Min: 2e-4, Max: 6e5},
		Args:   []working.Arg{{Symbol: "V", Meaning: "part", Scale: unit.InMillilitre, Min: 1e-3, Max: 200000}, {Symbol: "ρ", Meaning: "density of the part", Scale: unit.InKilogramPerLitre, Min: 0.2, Max: 3}}},
		Code: func(v unit.Volume, rho unit.Density) unit.Mass { return unit.Mass(float64(v) * float64(rho)) }}
)

// ForTotal is the parts of a mix of a given mass.
// Range: ratio 0.1–100 to 1, 0.1 g–200 kg. Errors: *RatioError, *working.RangeError.
func (r Ratio) ForTotal(m working.Figure[unit.Mass]) (Parts, error) {
	ratio, err := r.mass()
	if err != nil {
		return Parts{}, err
	}
	a, b, err := masses.split(m, ratio)
	if err != nil {
		return Parts{}, err
	}
	p := Parts{Amount{Mass: a}, Amount{Mass: b}}
	if r.hasDensities() {
		if p.A.Volume, err = VolumeOf.Figure(a, r.a); err == nil {
			p.B.Volume, err = VolumeOf.Figure(b, r.b)
		}
	}
	return p, err
}

// ForTotalVolume is the parts of a mix whose volumes add up to a given one.
// Range: ratio 0.1–100 to 1, 0.1 mL–200 L. Errors: *RatioError, *working.RangeError.
func (r Ratio) ForTotalVolume(v working.Figure[unit.Volume]) (Parts, error) {
	ratio, err := r.volume()
	if err != nil {
		return Parts{}, err
	}
	a, b, err := volumes.split(v, ratio)
	if err != nil {
		return Parts{}, err
	}
	p := Parts{Amount{Volume: a}, Amount{Volume: b}}
	if r.hasDensities() {
		if p.A.Mass, err = massOf.Figure(a, r.a); err == nil {
			p.B.Mass, err = massOf.Figure(b, r.b)
		}
	}
	return p, err
}

func (r Ratio) hasDensities() bool { return r.a.Step != nil && r.b.Step != nil }

func (r Ratio) mass() (working.Figure[unit.ByMass], error) {
	switch {
	case r.byMass.Step != nil:
		return r.byMass, nil
	case r.byVolume.Step == nil:
		return r.byMass, &RatioError{RatioMissing}
	case !r.hasDensities():
		return r.byMass, &RatioError{DensityMissing}
	}
	return massRatio.Figure(r.byVolume, r.a, r.b)
}

func (r Ratio) volume() (working.Figure[unit.ByVolume], error) {
	switch {
	case r.byVolume.Step != nil:
		return r.byVolume, nil
	case r.byMass.Step == nil:
		return r.byVolume, &RatioError{RatioMissing}
	case !r.hasDensities():
		return r.byVolume, &RatioError{DensityMissing}
	}
	return volumeRatio.Figure(r.byMass, r.b, r.a)
}
