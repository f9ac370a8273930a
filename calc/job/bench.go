package job

import (
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The paths of the items of which there is only one.
const (
	BenchPath = "bench.now"
	DayPath   = "day.today"
)

// The coldest and the warmest temperature that is read.
const coldest, warmest = 253.15, 333.15

// The answers of the bench's choices.
const (
	ForAmount = "amount"
	ForStep   = "step"

	ByScale   = "scale"
	BySyringe = "syringe"
	ByDrops   = "drops"
)

// bench is what is typed at the bench for the next cup.
var bench = &List{Key: "bench", Max: 1, Fields: []*Field{
	{Key: "card", Name: "material", Kind: Words},
	{Key: "for", Name: "how much", Kind: Choice, Options: []Option{{ForAmount, "an amount"}, {ForStep, "for a coat on its surfaces"}}},
	{Key: "amount", Name: "all in the cup but the catalyst", Kind: MassOrVolume, Measure: unit.CupWeights, Min: 0.001, Max: 20},
	{Key: "step", Name: "coat", Kind: Words},
	{Key: "product-temp", Name: "temperature of the product", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "surface-temp", Name: "temperature of the surface", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "method", Name: "method", Kind: Choice, Options: methodOptions()},
	{Key: "film", Name: "wet film of one coat", Kind: Quantity, Measure: unit.Films, Min: 10e-6, Max: 20e-3, Optional: true},
	{Key: "thinner", Name: "thinner", Kind: Quantity, Measure: unit.Percents, Max: 0.5, Optional: true},
	thinnerBy,
	{Key: "pigment", Name: "pigment paste, by mass of product", Kind: Quantity, Measure: unit.Percents, Max: 0.2, Optional: true},
	{Key: "tool", Name: "catalyst is measured with", Kind: Choice, Options: []Option{{ByScale, "a scale"}, {BySyringe, "a syringe"}, {ByDrops, "drops that I counted"}}},
	{Key: "scale-step", Name: "step of the scale", Kind: Quantity, Measure: unit.CupWeights, Min: 1e-6, Max: 0.02},
	{Key: "syringe-step", Name: "step of the syringe", Kind: Quantity, Measure: unit.SmallVolumes, Min: 1e-8, Max: 1e-5},
	{Key: "drops", Name: "drops in 1 mL, counted", Kind: Quantity, Measure: unit.Numbers, Min: 8, Max: 60},
	{Key: "catalyst", Name: "catalyst", Kind: Words},
	{Key: "tin", Name: "name of the tin", Kind: Words, Optional: true},
	{Key: "stretch", Name: "minutes to lay off one stretch", Kind: Quantity, Measure: unit.Minutes, Max: 30 * 60, Optional: true},
	{Key: "mixing", Name: "minutes to mix", Kind: Quantity, Measure: unit.Minutes, Max: 30 * 60, Optional: true},
	{Key: "read-on", Name: "day of the readings", Kind: Words, Optional: true},
	{Key: "read-at", Name: "surface read at", Kind: Clock, Max: 86400, Optional: true},
	{Key: "ahead", Name: "coldest air in the next four hours", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "mark", Name: "marks of the graduated cup", Kind: Quantity, Measure: unit.SmallVolumes, Min: 1e-7, Max: 1e-4, Optional: true},
	{Key: "product-was", Name: "product before", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "surface-was", Name: "surface before", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "agency", Name: "limit for styrene in the air", Kind: Words, Optional: true},
	{Key: "locker", Name: "air in the closed space", Kind: Quantity, Measure: unit.Volumes, Min: 0.05, Max: 500, Optional: true},
	{Key: "flow-thinner-1", Name: "thinner at the first reading", Kind: Quantity, Measure: unit.Percents, Min: 0, Max: 0.5, Optional: true},
	{Key: "flow-seconds-1", Name: "first flow time, seconds", Kind: Quantity, Measure: unit.Numbers, Min: 5, Max: 600, Optional: true},
	{Key: "flow-thinner-2", Name: "thinner at the second reading", Kind: Quantity, Measure: unit.Percents, Min: 0, Max: 0.5, Optional: true},
	{Key: "flow-seconds-2", Name: "second flow time, seconds", Kind: Quantity, Measure: unit.Numbers, Min: 5, Max: 600, Optional: true},
	{Key: "flow-wanted", Name: "flow time wanted, seconds", Kind: Quantity, Measure: unit.Numbers, Min: 5, Max: 600, Optional: true},
	{Key: "flow-cup", Name: "flow cup", Kind: Choice, Options: []Option{{"4", "ISO 2431, 4 mm"}, {"3", "ISO 2431, 3 mm"}, {"5", "ISO 2431, 5 mm"}, {"6", "ISO 2431, 6 mm"}}},
}}

// day is today's weather in the shed.
var day = &List{Key: "day", Max: 1, Fields: []*Field{
	{Key: "low", Name: "lowest air of the day", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "high", Name: "highest air of the day", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "sunrise", Name: "sunrise", Kind: Clock, Min: 0, Max: 12 * 3600},
	{Key: "read-temp", Name: "air when the humidity was read", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "read-humidity", Name: "humidity of the air", Kind: Quantity, Measure: unit.Percents, Min: 0.01, Max: 1},
	{Key: "read-at", Name: "read at", Kind: Clock, Min: 0, Max: 86400},
	{Key: "sun", Name: "the part stands", Kind: Choice, Options: []Option{{"shade", "in the shade"}, {"sun", "in the sun"}}},
	{Key: "colour", Name: "its colour", Kind: Choice, Options: []Option{{"white", "white"}, {"mid", "medium"}, {"dark", "dark"}}},
	{Key: "date", Name: "day of the figures", Kind: Words, Optional: true},
	{Key: "work-from", Name: "work begins at", Kind: Clock, Max: 86400, Optional: true},
	{Key: "work-to", Name: "work ends at", Kind: Clock, Max: 86400, Optional: true},
}}

// tests lists the builder's cup tests.
var tests = &List{Key: "test", Max: 100, Fields: []*Field{
	{Key: "card", Name: "material", Kind: Words},
	{Key: "tin", Name: "name of the tin", Kind: Words, Optional: true},
	{Key: "day", Name: "day of the test", Kind: Words, Optional: true},
	{Key: "mass", Name: "mass of the cup", Kind: Quantity, Measure: unit.CupWeights, Min: 0.02, Max: 2},
	{Key: "temp", Name: "temperature of the product", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest},
	{Key: "share", Name: "catalyst, by mass", Kind: Quantity, Measure: unit.Percents, Min: 0.002, Max: 0.05},
	{Key: "minutes", Name: "minutes to gel", Kind: Quantity, Measure: unit.Minutes, Min: 30, Max: 24 * 3600},
}}

func methodOptions() []Option {
	var list []Option
	for _, m := range material.Methods {
		list = append(list, Option{m.Key, m.Name})
	}
	return list
}

// Bench is what was typed at the bench. Figures without a Step were not typed.
type Bench struct {
	Card          string
	ForStep       bool
	Step          string
	Amount        working.Figure[unit.Mass]
	Volume        working.Figure[unit.Volume] // where the amount was typed as one
	Product       working.Figure[unit.Temperature]
	Surface       working.Figure[unit.Temperature]
	Method        *material.Method
	Film          working.Figure[unit.WetFilm]
	Thinner       working.Figure[unit.Share] // of product, by mass or by volume
	ThinnerByMass bool
	Pigment       working.Figure[unit.ByMass]
	Tool          string
	ToolStep      string // decimal text in g, mL or drops
	Catalyst      string
	Tin           string
	Stretch       working.Figure[unit.Time]
	Mixing        working.Figure[unit.Time]
	ReadOn        string
	ReadAt        working.Figure[unit.Time]        // when the surface was read
	Ahead         working.Figure[unit.Temperature] // coldest air of the next four hours
	Mark          string                           // decimal text in mL: marks of the graduated cup
	HasMethod     bool                             // the method was chosen
	HasAmount     bool                             // an amount was chosen: the cup is for no coat
	ProductWas    working.Figure[unit.Temperature]
	SurfaceWas    working.Figure[unit.Temperature]
	Agency        string
	Locker        working.Figure[unit.Volume]
	Flow          [2]FlowReading
	FlowWanted    working.Figure[unit.Time]
	FlowCup       string
}

// FlowReading is one timed flow cup.
type FlowReading struct {
	Thinner working.Figure[unit.ByVolume]
	Time    working.Figure[unit.Time]
}

// Day is today's weather, typed.
type Day struct {
	Low, High, ReadTemp working.Figure[unit.Temperature]
	ReadHumidity        working.Figure[unit.Share]
	Sunrise, ReadAt     working.Figure[unit.Time]
	WorkFrom, WorkTo    working.Figure[unit.Time]
	InSun               bool
	Colour              string
	Date                string
}

// Test is one of the builder's cup tests.
type Test struct {
	Path, Card, Tin string
	Day             string // by the shed's own clock; empty: not recorded
	Mass            working.Figure[unit.Mass]
	Temperature     working.Figure[unit.Temperature]
	Catalyst        working.Figure[unit.ByMass]
	Gel             working.Figure[unit.Time]
}
