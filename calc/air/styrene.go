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

var content = working.In("h", "styrene in the product as it goes on", unit.InPercent, leastContent, mostContent)

// ThinnedContent is the styrene content once styrene or wax solution was added, h' = (h
// + s) ÷ (1 + s), shares by mass, s per mass of product. Wax solution counts wholly as
// styrene.
// Range: h 0 to 0.6, s 0 to 0.2. Errors: *working.RangeError. Source: balance of masses.
var ThinnedContent = working.Of2("h' = (h + s) ÷ (1 + s)", source.House.At("balance of masses"), source.Exact,
	working.In("h'", "styrene in the product as it goes on", unit.InPure, 0, 1),
	[]working.Arg{
		working.In("h", "styrene in the product as sold", unit.InPure, 0, 0.6),
		working.In("s", "styrene and wax solution added, per mass of product", unit.InPure, 0, 0.2),
	},
	func(h, s unit.ByMass) unit.ByMass { return (h + s) / (1 + s) })

// BoatEmission is the styrene given off by gel coat by the rule for boat builders,
// for every way of putting it on: B = 0.445 × h^1.675, g/kg, h in %. The rule
// counts methyl methacrylate with the styrene: a gel coat that contains it has a
// larger h.
// Range: 1 to 60 % by mass. Errors: *working.RangeError.
// Source: 40 CFR 63 Subpart VVVV, Table 3.
var BoatEmission = working.Of1("B = 0.445 × h^1.675", source.CFR63VVVV.At("Table 3"), source.Published,
	working.In("B", "styrene given off, rule for boats", unit.InGramPerKilogram, 0, 600),
	[]working.Arg{content},
	func(h unit.ByMass) unit.Emission {
		return unit.Emission(1e-3 * 0.445 * math.Pow(float64(h)*100, 1.675))
	})

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
	return working.Of1(formula, source.CFR63WWWW.At("Table 1"), source.FromMemory,
		working.In("U", "styrene given off, unified factors", unit.InPoundPerShortTon, 0, 1200),
		[]working.Arg{h},
		func(h unit.ByMass) unit.Emission { return unit.Emission(max(low*float64(h), slope*float64(h)-less)) })
}

// LargerEmission is the emission that is shown: E = max(B, U).
// Range: 0 to 600 g/kg. Errors: *working.RangeError. Source: our own choice of two published rules.
var LargerEmission = working.Of2("E = max(B, U)", source.House.At("the larger of two published rules"), source.Calculated,
	working.In("E", "styrene given off", unit.InGramPerKilogram, 0, 600),
	[]working.Arg{
		working.In("B", "styrene given off, rule for boats", unit.InGramPerKilogram, 0, 600),
		working.In("U", "styrene given off, unified factors", unit.InGramPerKilogram, 0, 600),
	},
	func(b, u unit.Emission) unit.Emission { return max(b, u) })

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
var GivenOff = working.Of2("m = E × M", source.CFR63VVVV.At("Table 3"), source.Exact,
	working.In("m", "styrene given off", unit.InGram, 0, 6e5),
	[]working.Arg{
		working.In("E", "styrene given off per product", unit.InGramPerKilogram, 0, 600),
		working.In("M", "product as it goes on", unit.InKilogram, 0, 1000),
	},
	func(e unit.Emission, m unit.Mass) unit.Mass { return unit.Mass(float64(e) * float64(m)) })

// LeavesWithin is how long a coat gives off styrene: all of it within one hour.
// Source: our own assumption, on the short side.
var LeavesWithin = working.Given(unit.Hour, "time in which a coat gives off its styrene", unit.InHour,
	"taken short, to be safe", source.Assumption)

// Rate is how fast a mass leaves, G = m ÷ τ.
// Range: 0 to 600 kg, 0.1 to 24 h. Errors: *working.RangeError. Source: definition.
var Rate = working.Of2("G = m ÷ τ", source.House.At("one coat, one hour"), source.Assumption,
	working.In("G", "styrene into the air", unit.InGramPerHour, 0, 6e6),
	[]working.Arg{
		working.In("m", "styrene given off", unit.InGram, 0, 6e5),
		working.In("τ", "time in which it leaves", unit.InHour, 0.1, 24),
	},
	func(m unit.Mass, t unit.Time) unit.MassFlow { return unit.MassFlow(float64(m) / float64(t)) })
