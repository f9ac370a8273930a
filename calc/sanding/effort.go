package sanding

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// RepeatedArea is the area sanded when a step is repeated: a = A × n. Range: 1 to
// 50 rounds.
// Source: elementary geometry.
var RepeatedArea = working.Of2("a = A × n", source.Geometry.At("repeated area"), source.Exact,
	working.In("a", "area sanded in all rounds", unit.InSquareMetre, 0, 25000),
	[]working.Arg{
		working.In("A", "area", unit.InSquareMetre, 0, 25000),
		working.In("n", "rounds", unit.InPure, 1, 50),
	},
	func(area unit.Area, n unit.Factor) unit.Area { return area * unit.Area(n) })

// Sheets is how many discs, sheets or strips an area uses, or how many pads:
// n = A × q, q per m². Not rounded: whole ones are bought for the job, not for
// the surface. Range: q 0.01 to 50 per m². Source: common practice.
var Sheets = working.Of2("n = A × q", source.Practice.At("abrasives by area"), source.CommonPractice,
	working.In("n", "discs, sheets or strips", unit.InPure, 0, 1e6),
	[]working.Arg{
		working.In("A", "area sanded", unit.InSquareMetre, 0, 25000),
		working.In("q", "used per m²", unit.InPure, 0.01, 50),
	},
	func(area unit.Area, q unit.Factor) unit.Factor { return unit.Factor(float64(area) * float64(q)) })

// Hours is the time an area takes: t = A ÷ v. Range: v 0.05 to 60 m²/h.
// Source: common practice.
var Hours = working.Of2("t = A ÷ v", source.Practice.At("sanding speeds"), source.CommonPractice,
	working.In("t", "time", unit.InHour, 0, 1e6),
	[]working.Arg{
		working.In("A", "area sanded", unit.InSquareMetre, 0, 25000),
		working.In("v", "area sanded in an hour", unit.InSquareMetrePerHour, 0.05, 60),
	},
	func(area unit.Area, v unit.SpreadingSpeed) unit.Time { return unit.Time(float64(area) / float64(v)) })

// Dust is the mass sanded off: m = A × r × ρ. Range: r 0 to 20 mm, cured
// density 0.3 to 2.5 kg/L. Source: elementary geometry.
var Dust = working.Of3("m = A × r × ρ", source.Geometry.At("volume by density"), source.Exact,
	working.In("m", "dust", unit.InGram, 0, 1e9),
	[]working.Arg{
		working.In("A", "area sanded", unit.InSquareMetre, 0, 25000),
		working.In("r", "film taken", unit.InMicrometre, 0, 20000),
		working.In("ρ", "cured density", unit.InKilogramPerLitre, 0.3, 2.5),
	},
	func(area unit.Area, r unit.DryFilm, rho unit.Density) unit.Mass {
		return unit.Mass(float64(area) * float64(r) * float64(rho))
	})

// Compound is the cutting compound or polish used: m = A × q. Range: q 1 to 500 g/m².
// Source: common practice.
var Compound = working.Of2("m = A × q", source.Practice.At("compound by area"), source.CommonPractice,
	working.In("m", "compound or polish", unit.InGram, 0, 1e8),
	[]working.Arg{
		working.In("A", "area polished", unit.InSquareMetre, 0, 1e5),
		working.In("q", "used per area", unit.InGramPerSquareMetre, 1, 500),
	},
	func(area unit.Area, q unit.MassPerArea) unit.Mass { return unit.Mass(float64(area) * float64(q)) })

// Rules is every rule of this package.
var Rules = []*working.Rule{
	Scratch.Rule, Texture.Rule, Cutting.Rule, ByWeight.Rule, ByReadings.Rule,
	RepeatedArea.Rule, Sheets.Rule, Hours.Rule, Dust.Rule, Compound.Rule,
}
