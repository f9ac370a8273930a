package buildup

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

const mostFilm = 50000 // µm: more than any film that is coated or sanded

func film(symbol, meaning string) working.Arg {
	return working.In(symbol, meaning, unit.InMicrometre, 0, mostFilm)
}

// Rounds is the film of a step done several times: F = n × f. Range: 1 to 50
// rounds. Source: elementary geometry.
var Rounds = working.Of2("F = n × f", source.Geometry.At("equal rounds"), source.Exact,
	film("F", "film of all rounds"),
	[]working.Arg{working.In("n", "rounds", unit.InPure, 1, MaxRounds), film("f", "film of one round")},
	func(n unit.Factor, f unit.DryFilm) unit.DryFilm { return unit.DryFilm(n) * f })

// StepSpread is how uneven a step leaves a film: s = c × F, c the sd from
// point to point as a share of the mean. Range: c 0.01 to 1. Source: definition.
var StepSpread = working.Of2("s = c × F", source.House.At("film from point to point"), source.Exact,
	film("s", "spread of the film from point to point"),
	[]working.Arg{working.In("c", "point-to-point spread as a share of the film", unit.InPure, 0.01, 1), film("F", "film")},
	func(c unit.Share, f unit.DryFilm) unit.DryFilm { return unit.DryFilm(c) * f })

// Spread is the spread of what is left: σ = √(a² + b² + u²). Films of one layer
// add their spreads (a), removals theirs (b), and both are independent of each
// other and of the unfairness u that the sanding board bridges.
// Range: a 0.001 µm to 50 mm. Source: variances of independent parts add.
var Spread = working.Of3("σ = √(a² + b² + u²)", source.House.At("film budget"), source.Assumption,
	film("σ", "spread of the film left"),
	[]working.Arg{
		working.In("a", "spread of the film put on", unit.InMicrometre, 0.001, mostFilm),
		film("b", "spread of the film taken"), film("u", "unfairness"),
	},
	func(a, b, u unit.DryFilm) unit.DryFilm {
		return unit.DryFilm(math.Sqrt(float64(a*a + b*b + u*u)))
	})

// Left is the mean film left: m = F − R; below zero there is none.
// Source: elementary geometry.
var Left = working.Of2("m = F − R", source.Geometry.At("difference"), source.Exact,
	working.In("m", "mean film left", unit.InMicrometre, -mostFilm, mostFilm),
	[]working.Arg{film("F", "film put on"), film("R", "film taken")},
	func(f, r unit.DryFilm) unit.DryFilm { return f - r })

// ThinSide is the film that all but a chosen share of the area exceeds: t = m − z ×
// σ; below zero that share and more is sanded through.
// Range: z 0 to 6. Source: normal distribution.
var ThinSide = working.Of3("t = m − z × σ", source.House.At("film budget"), source.Assumption,
	working.In("t", "film on the thin side", unit.InMicrometre, -7*mostFilm, mostFilm),
	[]working.Arg{
		working.In("m", "mean film left", unit.InMicrometre, -mostFilm, mostFilm),
		working.In("z", "deviate of the chosen share", unit.InPure, 0, 6),
		film("σ", "spread of the film left"),
	},
	func(m unit.DryFilm, z unit.Factor, sigma unit.DryFilm) unit.DryFilm { return m - unit.DryFilm(z)*sigma })

// Through is the share of the area expected to have less than l left: p = Φ((R + l
// − F) ÷ σ); with l = 0, to be sanded through.
// Range: σ 0.001 µm to 100 mm. Source: normal distribution.
var Through = working.Of4("p = Φ((R + l − F) ÷ σ)", source.House.At("film budget"), source.Assumption,
	working.In("p", "share of the area expected to go through", unit.InPure, 0, 1),
	[]working.Arg{
		film("R", "film taken"), film("l", "least film left"), film("F", "film put on"),
		working.In("σ", "spread of the film left", unit.InMicrometre, 0.001, 2*mostFilm),
	},
	func(r, l, f, sigma unit.DryFilm) unit.Share {
		return unit.Share(normal(float64((r + l - f) / sigma)))
	})

// normal is the standard normal distribution.
func normal(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// Deviate is the method of the z for a chosen share. Source: normal distribution.
var Deviate = working.Method("standard normal deviate that the chosen share lies beyond", source.Geometry.At("normal distribution"), source.Exact,
	working.In("z", "deviate of the chosen share", unit.InPure, 0, 3.1))

// deviate gives z for a chosen share. Errors: *ShareError.
func deviate(share working.Figure[unit.Share]) (working.Figure[unit.Factor], error) {
	if !(share.Value >= leastShare && share.Value <= mostShare) {
		return working.Figure[unit.Factor]{}, &ShareError{share.Value}
	}
	z := math.Sqrt2 * math.Erfinv(1-2*float64(share.Value))
	return working.By(Deviate, unit.Factor(z), share.Step), nil
}
