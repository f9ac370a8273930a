package air

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// The constants of the Magnus form over water, for −45 to 60 °C.
// Source: WMO-No. 8, Annex 4.B.
const (
	magnusPressure = 611.2  // Pa, saturation at 0 °C
	magnusFactor   = 17.62  //
	magnusKelvin   = 243.12 // °C
)

// magnus gives the exponent of the saturation pressure at t.
func magnus(t unit.Temperature) float64 {
	c := float64(t - unit.ZeroCelsius)
	return magnusFactor * c / (magnusKelvin + c)
}

var wmo = source.Ref{Document: &source.WMO8, Place: "Annex 4.B"}

var airTemperature = working.Arg{Symbol: "t", Meaning: "air temperature", Scale: unit.InCelsius, Min: -45, Max: 60}

// Vapour is the pressure of the water vapour in air,
// e = RH ÷ 100 × 6.112 × exp(17.62 × t ÷ (243.12 + t)), e in hPa, t in °C.
// Range: −45 to 60 °C, 0 to 100 % relative humidity. Errors: *working.RangeError.
// Source: WMO-No. 8, Annex 4.B.
var Vapour = working.Rule2[unit.Temperature, unit.Share, unit.Pressure]{Rule: &working.Rule{Formula: "e = RH ÷ 100 × 6.112 × exp(17.62 × t ÷ (243.12 + t))", Source: wmo, Mark: source.Published,
	Result: working.Arg{Symbol: "e", Meaning: "vapour pressure", Scale: unit.InHectopascal, Min: 0, Max: 200},
	Args:   []working.Arg{airTemperature, {Symbol: "RH", Meaning: "relative humidity", Scale: unit.InPercent, Min: 0, Max: 100}}},
	Code: func(t unit.Temperature, rh unit.Share) unit.Pressure {
		return unit.Pressure(float64(rh) * magnusPressure * math.Exp(magnus(t)))
	}}

// Dew is the dew point of air with a vapour pressure,
// td = 243.12 × ln(e ÷ 6.112) ÷ (17.62 − ln(e ÷ 6.112)), td in °C, e in hPa.
// Range: 0.1117 to 200 hPa, dew points of −45 to 60 °C. Errors: *working.RangeError.
// Source: WMO-No. 8, Annex 4.B.
var Dew = working.Rule1[unit.Pressure, unit.Temperature]{Rule: &working.Rule{Formula: "td = 243.12 × ln(e ÷ 6.112) ÷ (17.62 − ln(e ÷ 6.112))", Source: wmo, Mark: source.Published,
	Result: working.Arg{Symbol: "td", Meaning: "dew point", Scale: unit.InCelsius, Min: -45, Max: 60},
	Args:   []working.Arg{{Symbol: "e", Meaning: "vapour pressure", Scale: unit.InHectopascal, Min: 0.1117, Max: 200}}},
	Code: func(e unit.Pressure) unit.Temperature {
		x := math.Log(float64(e) / magnusPressure)
		return unit.ZeroCelsius + unit.Temperature(magnusKelvin*x/(magnusFactor-x))
	}}

// DewPoint is the dew point of air at a temperature and a relative humidity:
// Dew of Vapour. Range and errors: theirs.
func DewPoint(t working.Figure[unit.Temperature], rh working.Figure[unit.Share]) (working.Figure[unit.Temperature], error) {
	e, err := Vapour.Figure(t, rh)
	if err != nil {
		return working.Figure[unit.Temperature]{}, err
	}
	return Dew.Figure(e)
}

// HumidityAt is the relative humidity of air with a dew point at a temperature,
// RH = min(100, 100 × exp(17.62 × td ÷ (243.12 + td) − 17.62 × t ÷ (243.12 + t))):
// air that has cooled below its dew point stays saturated.
// Range: −45 to 60 °C. Errors: *working.RangeError. Source: WMO-No. 8, Annex 4.B.
var HumidityAt = working.Rule2[unit.Temperature, unit.Temperature, unit.Share]{Rule: &working.Rule{Formula: "RH = min(100, 100 × exp(17.62 × td ÷ (243.12 + td) − 17.62 × t ÷ (243.12 + t)))", Source: wmo, Mark: source.Published,
	Result: working.Arg{Symbol: "RH", Meaning: "relative humidity", Scale: unit.InPercent, Min: 0, Max: 100},
	Args:   []working.Arg{{Symbol: "td", Meaning: "dew point", Scale: unit.InCelsius, Min: -45, Max: 60}, airTemperature}},
	Code: humidityAt}

func humidityAt(td, t unit.Temperature) unit.Share {
	return unit.Share(math.Min(1, math.Exp(magnus(td)-magnus(t))))
}

// WaterInAir is the mass of water vapour in a volume of air,
// w = 18.015 × 100 × e ÷ (8.314462618 × T), w in g/m³, e in hPa, T in kelvin.
// Range: 0 to 200 hPa, −45 to 60 °C. Errors: *working.RangeError.
// Source: ideal gas with the gas constant of CODATA 2018; molar mass of water from memory.
var WaterInAir = working.Rule2[unit.Pressure, unit.Temperature, unit.Density]{Rule: &working.Rule{Formula: "w = 18.015 × 100 × e ÷ (8.314462618 × T)", Source: source.Ref{Document: &source.CODATA, Place: "molar gas constant"}, Mark: source.Calculated,
	Result: working.Arg{Symbol: "w", Meaning: "water in the air", Scale: unit.InGramPerCubicMetre, Min: 0, Max: 200},
	Args: []working.Arg{
		{Symbol: "e", Meaning: "vapour pressure", Scale: unit.InHectopascal, Min: 0, Max: 200},
		{Symbol: "T", Meaning: "air temperature", Scale: unit.InKelvin, Min: 228.15, Max: 333.15},
	}},
	Code: func(e unit.Pressure, t unit.Temperature) unit.Density {
		return unit.Density(0.018015 * float64(e) / (unit.GasConstant * float64(t)))
	}}

// RoundUp rounds a dew point for showing: up to the next tenth of a degree of
// the scale, since a dew point that reads too low passes a wet surface.
func RoundUp(t unit.Temperature, s unit.Scale) unit.Temperature {
	const bits = 1e-7 // of a degree: forgives the last bits of a tenth
	return unit.Temperature(s.SI(math.Ceil(s.From(float64(t))*10-bits) / 10))
}
