package air

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// leastContent and mostContent bound the styrene content in per cent by mass
// for which the emission factors are used.
const (
	leastContent = 1
	mostContent  = 60
)

var content = working.Arg{Symbol: "h", Meaning: "styrene in the product as it goes on", Scale: unit.InPercent, Min: leastContent, Max: mostContent}

// ThinnedContent is the styrene content once styrene or wax solution was added, h' = (h
// + s) ÷ (1 + s), shares by mass, s per mass of product. Wax solution counts wholly as
// styrene.
// Range: h 0 to 0.6, s 0 to 0.2. Errors: *working.RangeError. Source: balance of masses.
var ThinnedContent = working.Rule2[unit.ByMass, unit.ByMass, unit.ByMass]{Rule: &working.Rule{Formula: "h' = (h + s) ÷ (1 + s)", Source: source.Ref{Document: &source.House, Place: "balance of masses"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "h'", Meaning: "styrene in the product as it goes on", Scale: unit.InPure, Min: 0, Max: 1},
	Args: []working.Arg{
		{Symbol: "h", Meaning: "styrene in the product as sold", Scale: unit.InPure, Min: 0, Max: 0.6},
		{Symbol: "s", Meaning: "styrene and wax solution added, per mass of product", Scale: unit.InPure, Min: 0, Max: 0.2},
	}},
	Code: func(h, s unit.ByMass) unit.ByMass { return (h + s) / (1 + s) }}

// BoatEmission is the styrene given off by gel coat by the rule for boat builders,
// for every way of putting it on: B = 0.445 × h^1.675, g/kg, h in %. The rule
// counts methyl methacrylate with the styrene: a gel coat that contains it has a
// larger h.
// Range: 1 to 60 % by mass. Errors: *working.RangeError.
// Source: 40 CFR 63 Subpart VVVV, Table 3.
var BoatEmission = working.Rule1[unit.ByMass, unit.Emission]{Rule: &working.Rule{Formula: "B = 0.445 × h^1.675", Source: source.Ref{Document: &source.CFR63VVVV, Place: "Table 3"}, Mark: source.Published,
	Result: working.Arg{Symbol: "B", Meaning: "styrene given off, rule for boats", Scale: unit.InGramPerKilogram, Min: 0, Max: 600},
	Args:   []working.Arg{content}},
	Code: func(h unit.ByMass) unit.Emission {
		return unit.Emission(1e-3 * 0.445 * math.Pow(float64(h)*100, 1.675))
	}}

// SprayedEmission is the styrene given off by sprayed gel coat by the unified
// emission factors, U = 2000 × max(0.445 × h, 1.03646 × h − 0.195), lb per short
// ton. In print the first branch stands below h = 0.33 and the second from there
// on; they cross at 0.3297, so that the larger differs by 0.4 lb/ton at most.
// Range: 0.01 to 0.6 by mass. Errors: *working.RangeError.
// Source: unified emission factors, 40 CFR 63 Subpart WWWW, Table 1 (from memory).
var SprayedEmission = unified("U = 2000 × max(0.445 × h, 1.03646 × h − 0.195)", 0.445, 1.03646, 0.195)

// OtherEmission is the styrene given off by a product that isn't atomised, the
// nearest published class for rollers, brushes and knives,
// U = 2000 × max(0.185 × h, 0.4506 × h − 0.0505), lb per short ton. In print the
// branches change at h = 0.33 with a jump from 122.1 to 196.4: the larger is
// taken everywhere. Range: 0.01 to 0.6 by mass. Errors: *working.RangeError.
// Source: unified emission factors, 40 CFR 63 Subpart WWWW, Table 1 (from memory).
var OtherEmission = unified("U = 2000 × max(0.185 × h, 0.4506 × h − 0.0505)", 0.185, 0.4506, 0.0505)

func unified(formula string, low, slope, less float64) working.Rule1[unit.ByMass, unit.Emission] {
	h := content
	h.Scale, h.Min, h.Max = unit.InPure, leastContent/100., mostContent/100.
	return working.Rule1[unit.ByMass, unit.Emission]{Rule: &working.Rule{Formula: formula, Source: source.Ref{Document: &source.CFR63WWWW, Place: "Table 1"}, Mark: source.FromMemory,
		Result: working.Arg{Symbol: "U", Meaning: "styrene given off, unified factors", Scale: unit.InPoundPerShortTon, Min: 0, Max: 1200},
		Args:   []working.Arg{h}},
		Code: func(h unit.ByMass) unit.Emission { return unit.Emission(max(low*float64(h), slope*float64(h)-less)) }}
}

// LargerEmission is the emission that is shown: E = max(B, U).
// Range: 0 to 600 g/kg. Errors: *working.RangeError. Source: our own choice of two published rules.
var LargerEmission = working.Rule2[unit.Emission, unit.Emission, unit.Emission]{Rule: &working.Rule{Formula: "E = max(B, U)", Source: source.Ref{Document: &source.House, Place: "the larger of two published rules"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "E", Meaning: "styrene given off", Scale: unit.InGramPerKilogram, Min: 0, Max: 600},
	Args: []working.Arg{
		{Symbol: "B", Meaning: "styrene given off, rule for boats", Scale: unit.InGramPerKilogram, Min: 0, Max: 600},
		{Symbol: "U", Meaning: "styrene given off, unified factors", Scale: unit.InGramPerKilogram, Min: 0, Max: 600},
	}},
	Code: func(b, u unit.Emission) unit.Emission { return max(b, u) }}

// Emission is the styrene given off by a product of a content, sprayed or not:
// the larger of the rule for boats and the unified emission factors.
// Range: 1 to 60 % by mass. Errors: *working.RangeError.
func Emission(h working.Figure[unit.ByMass], sprayed bool) (working.Figure[unit.Emission], error) {
	boat, err := BoatEmission.Figure(h)
	if err != nil {
		return boat, err
	}
	rule := OtherEmission
	if sprayed {
		rule = SprayedEmission
	}
	factor, err := rule.Figure(h)
	if err != nil {
		return factor, err
	}
	return LargerEmission.Figure(boat, factor)
}

// GivenOff is the styrene that leaves an amount of product, m = E × M.
// Range: 0 to 600 g/kg, 0 to 1000 kg. Errors: *working.RangeError. Source: definition of E.
var GivenOff = working.Rule2[unit.Emission, unit.Mass, unit.Mass]{Rule: &working.Rule{Formula: "m = E × M", Source: source.Ref{Document: &source.CFR63VVVV, Place: "Table 3"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "styrene given off", Scale: unit.InGram, Min: 0, Max: 6e5},
	Args: []working.Arg{
		{Symbol: "E", Meaning: "styrene given off per product", Scale: unit.InGramPerKilogram, Min: 0, Max: 600},
		{Symbol: "M", Meaning: "product as it goes on", Scale: unit.InKilogram, Min: 0, Max: 1000},
	}},
	Code: func(e unit.Emission, m unit.Mass) unit.Mass { return unit.Mass(float64(e) * float64(m)) }}

// LeavesWithin is how long a coat gives off styrene: all of it within one hour.
// Source: our own assumption, on the short side.
var LeavesWithin = working.Given(unit.Hour, "time in which a coat gives off its styrene", unit.InHour,
	"taken short, to be safe", source.Assumption)

// Rate is how fast a mass leaves, G = m ÷ τ.
// Range: 0 to 600 kg, 0.1 to 24 h. Errors: *working.RangeError. Source: definition.
var Rate = working.Rule2[unit.Mass, unit.Time, unit.MassFlow]{Rule: &working.Rule{Formula: "G = m ÷ τ", Source: source.Ref{Document: &source.House, Place: "one coat, one hour"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "G", Meaning: "styrene into the air", Scale: unit.InGramPerHour, Min: 0, Max: 6e6},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "styrene given off", Scale: unit.InGram, Min: 0, Max: 6e5},
		{Symbol: "τ", Meaning: "time in which it leaves", Scale: unit.InHour, Min: 0.1, Max: 24},
	}},
	Code: func(m unit.Mass, t unit.Time) unit.MassFlow { return unit.MassFlow(float64(m) / float64(t)) }}
