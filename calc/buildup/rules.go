package buildup

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

const mostFilm = 50000 // µm: more than any film that is coated or sanded

// Rounds is the film of a step done several times: F = n × f. Range: 1 to 50
// rounds. Source: elementary geometry.
var Rounds = working.Rule2[unit.Factor, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "F = n × f", Source: source.Ref{Document: &source.Geometry, Place: "equal rounds"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "F", Meaning: "film of all rounds", Scale: unit.InMicrometre, Max: mostFilm},
	Args:   []working.Arg{{Symbol: "n", Meaning: "rounds", Scale: unit.InPure, Min: 1, Max: MaxRounds}, {Symbol: "f", Meaning: "film of one round", Scale: unit.InMicrometre, Max: mostFilm}}},
	Code: func(n unit.Factor, f unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * f }}

// StepSpread is how uneven a step leaves a film: s = c × F, c the sd from
// point to point as a share of the mean. Range: c 0.01 to 1. Source: definition.
var StepSpread = working.Rule2[unit.Share, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "s = c × F", Source: source.Ref{Document: &source.House, Place: "film from point to point"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "s", Meaning: "spread of the film from point to point", Scale: unit.InMicrometre, Max: mostFilm},
	Args:   []working.Arg{{Symbol: "c", Meaning: "point-to-point spread as a share of the film", Scale: unit.InPure, Min: 0.01, Max: 1}, {Symbol: "F", Meaning: "film", Scale: unit.InMicrometre, Max: mostFilm}}},
	Code: func(c unit.Share, f unit.DryFilm) unit.DryFilm { return unit.DryFilm(c) * f }}

// Spread is the spread of what is left: σ = √(a² + b² + u²). Films of one layer
// add their spreads (a), removals theirs (b), and both are independent of each
// other and of the unfairness u that the sanding board bridges.
// Range: a 0.001 µm to 50 mm. Source: variances of independent parts add.
var Spread = working.Rule3[unit.DryFilm, unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "σ = √(a² + b² + u²)", Source: source.Ref{Document: &source.House, Place: "film budget"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "σ", Meaning: "spread of the film left", Scale: unit.InMicrometre, Max: mostFilm},
	Args: []working.Arg{
		{Symbol: "a", Meaning: "spread of the film put on", Scale: unit.InMicrometre, Min: 0.001, Max: mostFilm},
		{Symbol: "b", Meaning: "spread of the film taken", Scale: unit.InMicrometre, Max: mostFilm}, {Symbol: "u", Meaning: "unfairness", Scale: unit.InMicrometre, Max: mostFilm},
	}},
	Code: func(a, b, u unit.DryFilm) unit.DryFilm {
		return unit.DryFilm(math.Sqrt(float64(a*a + b*b + u*u)))
	}}

// Left is the mean film left: m = F − R; below zero there is none.
// Source: elementary geometry.
var Left = working.Rule2[unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "m = F − R", Source: source.Ref{Document: &source.Geometry, Place: "difference"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "mean film left", Scale: unit.InMicrometre, Min: -mostFilm, Max: mostFilm},
	Args:   []working.Arg{{Symbol: "F", Meaning: "film put on", Scale: unit.InMicrometre, Max: mostFilm}, {Symbol: "R", Meaning: "film taken", Scale: unit.InMicrometre, Max: mostFilm}}},
	Code: func(f, r unit.DryFilm) unit.DryFilm { return f - r }}

// ThinSide is the film that all but a chosen share of the area exceeds: t = m − z ×
// σ; below zero that share and more is sanded through.
// Range: z 0 to 6. Source: normal distribution.
var ThinSide = working.Rule3[unit.DryFilm, unit.Factor, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "t = m − z × σ", Source: source.Ref{Document: &source.House, Place: "film budget"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "t", Meaning: "film on the thin side", Scale: unit.InMicrometre, Min: -7 * mostFilm, Max: mostFilm},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "mean film left", Scale: unit.InMicrometre, Min: -mostFilm, Max: mostFilm},
		{Symbol: "z", Meaning: "deviate of the chosen share", Scale: unit.InPure, Min: 0, Max: 6},
		{Symbol: "σ", Meaning: "spread of the film left", Scale: unit.InMicrometre, Max: mostFilm},
	}},
	Code: func(m unit.DryFilm, z unit.Factor, sigma unit.DryFilm) unit.DryFilm { return m - unit.DryFilm(z)*sigma }}

// Through is the share of the area expected to have less than l left: p = Φ((R + l
// − F) ÷ σ); with l = 0, to be sanded through.
// Range: σ 0.001 µm to 100 mm. Source: normal distribution.
var Through = working.Rule4[unit.DryFilm, unit.DryFilm, unit.DryFilm, unit.DryFilm, unit.Share]{Rule: &working.Rule{Formula: "p = Φ((R + l − F) ÷ σ)", Source: source.Ref{Document: &source.House, Place: "film budget"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "p", Meaning: "share of the area expected to go through", Scale: unit.InPure, Min: 0, Max: 1},
	Args: []working.Arg{
		{Symbol: "R", Meaning: "film taken", Scale: unit.InMicrometre, Max: mostFilm}, {Symbol: "l", Meaning: "least film left", Scale: unit.InMicrometre, Max: mostFilm}, {Symbol: "F", Meaning: "film put on", Scale: unit.InMicrometre, Max: mostFilm},
		{Symbol: "σ", Meaning: "spread of the film left", Scale: unit.InMicrometre, Min: 0.001, Max: 2 * mostFilm},
	}},
	Code: func(r, l, f, sigma unit.DryFilm) unit.Share {
		return unit.Share(normal(float64((r + l - f) / sigma)))
	}}

// normal is the standard normal distribution.
func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// Deviate is the method of the z for a chosen share. Source: normal distribution.
var Deviate = &working.Rule{Formula: "standard normal deviate that the chosen share lies beyond", Source: source.Ref{Document: &source.Geometry, Place: "normal distribution"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "z", Meaning: "deviate of the chosen share", Scale: unit.InPure, Min: 0, Max: 3.1}, IsProse: true}

// deviate gives z for a chosen share. Errors: *ShareError.
func deviate(share working.Figure[unit.Share]) (working.Figure[unit.Factor], error) {
	if !(share.Value >= leastShare && share.Value <= mostShare) {
		return working.Figure[unit.Factor]{}, &ShareError{share.Value}
	}
	z := math.Sqrt2 * math.Erfinv(1-2*float64(share.Value))
	return working.By(Deviate, unit.Factor(z), share.Step), nil
}
