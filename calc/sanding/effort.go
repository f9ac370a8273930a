package sanding

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// RepeatedArea is the area sanded when a step is repeated: a = A × n. Range: 1 to
// 50 rounds.
// Source: elementary geometry.
var RepeatedArea = working.Rule2[unit.Area, unit.Factor, unit.Area]{Rule: &working.Rule{Formula: "a = A × n", Source: source.Ref{Document: &source.Geometry, Place: "repeated area"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "a", Meaning: "area sanded in all rounds", Scale: unit.InSquareMetre, Min: 0, Max: 25000},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 25000},
		{Symbol: "n", Meaning: "rounds", Scale: unit.InPure, Min: 1, Max: 50},
	}},
	Code: func(area unit.Area, n unit.Factor) unit.Area { return area * unit.Area(n) }}

// Sheets is how many discs, sheets or strips an area uses, or how many pads:
// n = A × q, q per m². Not rounded: whole ones are bought for the job, not for
// the surface. Range: q 0.01 to 50 per m². Source: common practice.
var Sheets = working.Rule2[unit.Area, unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "n = A × q", Source: source.Ref{Document: &source.Practice, Place: "abrasives by area"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "n", Meaning: "discs, sheets or strips", Scale: unit.InPure, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area sanded", Scale: unit.InSquareMetre, Min: 0, Max: 25000},
		{Symbol: "q", Meaning: "used per m²", Scale: unit.InPure, Min: 0.01, Max: 50},
	}},
	Code: func(area unit.Area, q unit.Factor) unit.Factor { return unit.Factor(float64(area) * float64(q)) }}

// Hours is the time an area takes: t = A ÷ v. Range: v 0.05 to 60 m²/h.
// Source: common practice.
var Hours = working.Rule2[unit.Area, unit.SpreadingSpeed, unit.Time]{Rule: &working.Rule{Formula: "t = A ÷ v", Source: source.Ref{Document: &source.Practice, Place: "sanding speeds"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "t", Meaning: "time", Scale: unit.InHour, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area sanded", Scale: unit.InSquareMetre, Min: 0, Max: 25000},
		{Symbol: "v", Meaning: "area sanded in an hour", Scale: unit.InSquareMetrePerHour, Min: 0.05, Max: 60},
	}},
	Code: func(area unit.Area, v unit.SpreadingSpeed) unit.Time { return unit.Time(float64(area) / float64(v)) }}

// Dust is the mass sanded off: m = A × r × ρ. Range: r 0 to 20 mm, cured
// density 0.3 to 2.5 kg/L. Source: elementary geometry.
var Dust = working.Rule3[unit.Area, unit.DryFilm, unit.Density, unit.Mass]{Rule: &working.Rule{Formula: "m = A × r × ρ", Source: source.Ref{Document: &source.Geometry, Place: "volume by density"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "dust", Scale: unit.InGram, Min: 0, Max: 1e9},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area sanded", Scale: unit.InSquareMetre, Min: 0, Max: 25000},
		{Symbol: "r", Meaning: "film taken", Scale: unit.InMicrometre, Min: 0, Max: 20000},
		{Symbol: "ρ", Meaning: "cured density", Scale: unit.InKilogramPerLitre, Min: 0.3, Max: 2.5},
	}},
	Code: func(area unit.Area, r unit.DryFilm, rho unit.Density) unit.Mass {
		return unit.Mass(float64(area) * float64(r) * float64(rho))
	}}

// Compound is the cutting compound or polish used: m = A × q. Range: q 1 to 500 g/m².
// Source: common practice.
var Compound = working.Rule2[unit.Area, unit.MassPerArea, unit.Mass]{Rule: &working.Rule{Formula: "m = A × q", Source: source.Ref{Document: &source.Practice, Place: "compound by area"}, Mark: source.CommonPractice,
	Result: working.Arg{Symbol: "m", Meaning: "compound or polish", Scale: unit.InGram, Min: 0, Max: 1e8},
	Args: []working.Arg{
		{Symbol: "A", Meaning: "area polished", Scale: unit.InSquareMetre, Min: 0, Max: 1e5},
		{Symbol: "q", Meaning: "used per area", Scale: unit.InGramPerSquareMetre, Min: 1, Max: 500},
	}},
	Code: func(area unit.Area, q unit.MassPerArea) unit.Mass { return unit.Mass(float64(area) * float64(q)) }}

// Rules is every rule of this package.
func Rules() []*working.Rule {
	return working.List(
		&Scratch, &Texture, &Cutting, &ByWeight, &ByReadings,
		&RepeatedArea, &Sheets, &Hours, &Dust, &Compound,
	)
}
