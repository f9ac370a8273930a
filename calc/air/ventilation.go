package air

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The properties of styrene and of the air.
var (
	// StyreneMolarMass is 104.15 g/mol. Source: NIOSH pocket guide.
	StyreneMolarMass = working.Given(unit.MolarMass(0.10415), "molar mass of styrene", unit.InGramPerMole,
		source.NIOSH.At("styrene").String(), source.Published)
	// StyreneExplosive is the lower explosive limit, 0.9 % by volume. Source: NIOSH pocket guide.
	StyreneExplosive = working.Given(unit.Share(0.009), "lower explosive limit of styrene, by volume", unit.InPartsPerMillion,
		source.NIOSH.At("styrene").String(), source.Published)
	// Atmosphere is the standard atmosphere, 101.325 kPa.
	Atmosphere = working.Given(unit.Pressure(101325), "air pressure", unit.InKilopascal, "standard atmosphere", source.Exact)
	// MixingFactor is the K for air that mixes poorly with what is given off.
	// Source: the worked example of Abulencia and Theodore takes 5; 3 to 10 is usual.
	MixingFactor = working.Given(unit.Factor(5), "factor for poor mixing", unit.InPure, "usual in worked examples", source.CommonPractice)
)

// Concentration is the mass of a vapour in a volume of air,
// c = X × M × p ÷ (8.314462618 × T), c in mg/m³, X in ppm by volume, M in g/mol, p in kPa, T in kelvin.
// Range: 0.01 to 50000 ppm, 10 to 500 g/mol, 60 to 110 kPa, −20 to 60 °C.
// Errors: *working.RangeError. Source: ideal gas with the gas constant of CODATA 2018.
var Concentration = working.Rule4[unit.Share, unit.MolarMass, unit.Pressure, unit.Temperature, unit.Density]{Rule: &working.Rule{Formula: "c = X × M × p ÷ (8.314462618 × T)", Source: source.Ref{Document: &source.CODATA, Place: "molar gas constant"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "c", Meaning: "vapour in the air", Scale: unit.InMilligramPerCubicMetre, Min: 0, Max: 2e6},
	Args: []working.Arg{
		{Symbol: "X", Meaning: "share of the air, by volume", Scale: unit.InPartsPerMillion, Min: 0.01, Max: 50000},
		{Symbol: "M", Meaning: "molar mass", Scale: unit.InGramPerMole, Min: 10, Max: 500},
		{Symbol: "p", Meaning: "air pressure", Scale: unit.InKilopascal, Min: 60, Max: 110},
		{Symbol: "T", Meaning: "air temperature", Scale: unit.InKelvin, Min: 253.15, Max: 333.15},
	}},
	Code: func(x unit.Share, m unit.MolarMass, p unit.Pressure, t unit.Temperature) unit.Density {
		return unit.Density(float64(x) * float64(m) * float64(p) / (unit.GasConstant * float64(t)))
	}}

// AirFor is the fresh air that keeps a vapour at a concentration,
// Q = K × 1000 × G ÷ c, Q in m³/h, G in g/h, c in mg/m³.
// Range: K 1 to 20, G 0 to 6·10⁶ g/h, c 0.01 to 10⁶ mg/m³. Errors: *working.RangeError.
// Source: dilution ventilation notes of the University of Toledo, there as
// Q = 403 × SG × pints per minute × K × 10⁶ ÷ (MW × ppm) in ft³/min.
var AirFor = working.Rule3[unit.Factor, unit.MassFlow, unit.Density, unit.AirFlow]{Rule: &working.Rule{Formula: "Q = K × 1000 × G ÷ c", Source: source.Ref{Document: &source.ToledoVentilation}, Mark: source.Published,
	Result: working.Arg{Symbol: "Q", Meaning: "fresh air needed", Scale: unit.InCubicMetrePerHour, Min: 0, Max: 1e13},
	Args: []working.Arg{
		{Symbol: "K", Meaning: "factor for poor mixing", Scale: unit.InPure, Min: 1, Max: 20},
		{Symbol: "G", Meaning: "vapour into the air", Scale: unit.InGramPerHour, Min: 0, Max: 6e6},
		{Symbol: "c", Meaning: "limit", Scale: unit.InMilligramPerCubicMetre, Min: 0.01, Max: 1e6},
	}},
	Code: func(k unit.Factor, g unit.MassFlow, c unit.Density) unit.AirFlow {
		return unit.AirFlow(float64(k) * float64(g) / float64(c))
	}}

// StyreneAir is the fresh air that keeps styrene under a limit at a temperature:
// AirFor at the limit's Concentration under the standard atmosphere.
// Range and errors: theirs.
func StyreneAir(rate working.Figure[unit.MassFlow], limit working.Figure[unit.Share], t working.Figure[unit.Temperature],
	k working.Figure[unit.Factor]) (working.Figure[unit.AirFlow], error) {
	c, err := Concentration.Figure(limit, StyreneMolarMass, Atmosphere, t)
	if err != nil {
		return working.Figure[unit.AirFlow]{}, err
	}
	return AirFor.Figure(k, rate, c)
}

// DoorAir is more than an open door can be counted on to let in: with a door of 2
// m², a light air of 1 m/s, and the 0.3 of area times wind that enters an opening
// at an angle to it, 0.6 m³/s or 2160 m³/h; rounded down.
// Source: our own assumption; the 0.25 to 0.35 for wind at an angle from memory.
var DoorAir = working.Given(unit.AirFlow(2000./3600), "air through an open door", unit.InCubicMetrePerHour,
	"2 m² of door, wind of 1 m/s aslant", source.Assumption)

// ExceedsDoorAir says if no open door lets in the air that is needed. False is no
// clearance: the air breathed over a wet surface holds more vapour than the shed's
// mean.
func ExceedsDoorAir(need unit.AirFlow) bool { return !(need <= DoorAir.Value) }

// ShareOfLimit is how much of a limit a mass of vapour reaches when all of it
// stays in a closed space, x = m × 1000 ÷ (V × c), m in g, V in m³, c in mg/m³.
// Range: 0 to 6·10⁵ g, 0.01 to 10⁵ m³, 0.01 to 10⁶ mg/m³. Errors: *working.RangeError. Source: definition.
var ShareOfLimit = working.Rule3[unit.Mass, unit.Volume, unit.Density, unit.Share]{Rule: &working.Rule{Formula: "x = m × 1000 ÷ (V × c)", Source: source.Ref{Document: &source.House, Place: "closed space, no fresh air"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "x", Meaning: "share of the limit", Scale: unit.InPure, Min: 0, Max: 1e9},
	Args: []working.Arg{
		{Symbol: "m", Meaning: "vapour given off", Scale: unit.InGram, Min: 0, Max: 6e5},
		{Symbol: "V", Meaning: "volume of the space", Scale: unit.InCubicMetre, Min: 0.01, Max: 1e5},
		{Symbol: "c", Meaning: "limit", Scale: unit.InMilligramPerCubicMetre, Min: 0.01, Max: 1e6},
	}},
	Code: func(m unit.Mass, v unit.Volume, c unit.Density) unit.Share {
		return unit.Share(float64(m) / (float64(v) * float64(c)))
	}}

// StyreneVapour is the pressure of styrene vapour over styrene,
// P = exp(105.93 − 8685.9 ÷ T − 12.42 × ln(T) + 0.0000075583 × T ^ 2) ÷ 1000, P in kPa, T in kelvin.
// Range: −20 to 60 °C. Errors: *working.RangeError.
// Source: Perry's Chemical Engineers' Handbook, Table 2-8.
var StyreneVapour = working.Rule1[unit.Temperature, unit.Pressure]{Rule: &working.Rule{Formula: "P = exp(105.93 − 8685.9 ÷ T − 12.42 × ln(T) + 0.0000075583 × T ^ 2) ÷ 1000", Source: source.Ref{Document: &source.Perry8, Place: "Table 2-8"}, Mark: source.Published,
	Result: working.Arg{Symbol: "P", Meaning: "pressure of styrene vapour", Scale: unit.InKilopascal, Min: 0, Max: 10},
	Args:   []working.Arg{{Symbol: "T", Meaning: "air temperature", Scale: unit.InKelvin, Min: 253.15, Max: 333.15}}},
	Code: func(t unit.Temperature) unit.Pressure {
		k := float64(t)
		return unit.Pressure(math.Exp(105.93 - 8685.9/k - 12.42*math.Log(k) + 7.5583e-6*k*k))
	}}

// Saturated is the largest share of the air that styrene vapour can be, X = 10⁶ × P
// ÷ p, in ppm by volume.
// Range: P 0 to 10 kPa, p 60 to 110 kPa. Errors: *working.RangeError.
// Source: Procedures for Working with Chemicals in Laboratories, p. 196.
var Saturated = working.Rule2[unit.Pressure, unit.Pressure, unit.Share]{Rule: &working.Rule{Formula: "X = 1000000 × P ÷ p", Source: source.Ref{Document: &source.PrudentPractices, Place: "p. 196"}, Mark: source.Published,
	Result: working.Arg{Symbol: "X", Meaning: "styrene in saturated air, by volume", Scale: unit.InPartsPerMillion, Min: 0, Max: 2e5},
	Args:   []working.Arg{{Symbol: "P", Meaning: "pressure of styrene vapour", Scale: unit.InKilopascal, Min: 0, Max: 10}, {Symbol: "p", Meaning: "air pressure", Scale: unit.InKilopascal, Min: 60, Max: 110}}},
	Code: func(vapour, whole unit.Pressure) unit.Share { return unit.Share(vapour / whole) }}

// CappedShare is the share of the explosive limit that a closed space can come
// to: x = min(x_m, X_s ÷ X_e). Air takes up no more vapour than saturates it.
// Range: x_m 0 to 10⁹, X_s 0 to 2·10⁵ ppm, X_e 1000 to 10⁵ ppm. Errors: *working.RangeError. Source: definition.
var CappedShare = working.Rule3[unit.Share, unit.Share, unit.Share, unit.Share]{Rule: &working.Rule{Formula: "x = min(x_m, X_s ÷ X_e)", Source: source.Ref{Document: &source.House, Place: "saturated air"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "x", Meaning: "share of the explosive limit", Scale: unit.InPure, Min: 0, Max: 1e9},
	Args: []working.Arg{
		{Symbol: "x_m", Meaning: "share of the limit, were all of it vapour", Scale: unit.InPure, Min: 0, Max: 1e9},
		{Symbol: "X_s", Meaning: "styrene in saturated air, by volume", Scale: unit.InPartsPerMillion, Min: 0, Max: 2e5},
		{Symbol: "X_e", Meaning: "lower explosive limit, by volume", Scale: unit.InPartsPerMillion, Min: 1000, Max: 1e5},
	}},
	Code: func(all, saturated, limit unit.Share) unit.Share { return min(all, saturated/limit) }}

// InSpace is the share of the lower explosive limit that styrene reaches in a
// closed space with no fresh air: no more than saturates the air at that
// temperature. Range and errors: those of Concentration, ShareOfLimit and
// StyreneVapour.
func InSpace(m working.Figure[unit.Mass], v working.Figure[unit.Volume], t working.Figure[unit.Temperature]) (working.Figure[unit.Share], error) {
	none := working.Figure[unit.Share]{}
	c, err := Concentration.Figure(StyreneExplosive, StyreneMolarMass, Atmosphere, t)
	if err != nil {
		return none, err
	}
	all, err := ShareOfLimit.Figure(m, v, c)
	if err != nil {
		return none, err
	}
	p, err := StyreneVapour.Figure(t)
	if err != nil {
		return none, err
	}
	most, err := Saturated.Figure(p, Atmosphere)
	if err != nil {
		return none, err
	}
	return CappedShare.Figure(all, most, StyreneExplosive)
}

// Danger is how close a closed space comes to the explosive limit.
type Danger int

// The dangers.
const (
	BelowTenth Danger = iota // under a tenth of the limit: no clearance, the lungs have theirs far below
	Hazardous                // a tenth and more
	Explosive                // the limit itself and more
)

// hazardousShare of the explosive limit makes an enclosed space hazardous.
// Source: 29 CFR 1910.146 (from memory).
const hazardousShare = 0.1

// DangerOf grades a share of the explosive limit.
func DangerOf(x unit.Share) Danger {
	switch {
	case x < hazardousShare:
		return BelowTenth
	case x < 1:
		return Hazardous
	}
	return Explosive // NaN too
}
