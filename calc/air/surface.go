package air

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Offset is how far a surface's temperature is above the air's: a measured one has
// one value, an allowance has a least and a most.
type Offset struct {
	Least, Most working.Figure[unit.TemperatureDifference]
}

// Difference is an infrared reading less the air temperature, Δ = ts − ta.
// Range: −45 to 100 °C and −45 to 60 °C. Errors: *working.RangeError. Source: definition.
var Difference = working.Rule2[unit.Temperature, unit.Temperature, unit.TemperatureDifference]{Rule: &working.Rule{Formula: "Δ = ts − ta", Source: source.Ref{Document: &source.House, Place: "surface against air"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "Δ", Meaning: "surface over air", Scale: unit.InCelsiusDifference, Min: -100, Max: 150},
	Args: []working.Arg{
		{Symbol: "ts", Meaning: "surface temperature, by infrared", Scale: unit.InCelsius, Min: -45, Max: 100},
		{Symbol: "ta", Meaning: "air temperature", Scale: unit.InCelsius, Min: -45, Max: 60},
	}},
	Code: func(surface, air unit.Temperature) unit.TemperatureDifference {
		return unit.TemperatureDifference(surface - air)
	}}

// Measured is the offset of a surface from an infrared reading and the air
// temperature of the same hour: by the day's curve, if it wasn't read then. Range and errors: those of Difference.
func Measured(surface, air working.Figure[unit.Temperature]) (Offset, error) {
	d, err := Difference.Figure(surface, air)
	return Offset{d, d}, err
}

// Colour is how much of the sun a surface absorbs.
type Colour int

// The colours.
const (
	White Colour = iota
	Mid          // grey, wood, light blue
	Dark
)

// Place is what is over a surface that wasn't measured.
type Place int

// The places.
const (
	Shade Place = iota // under a roof or a tent
	Sun
	NightSky // open sky, from sunset to sunrise
)

// sunMost is how far the sun may warm a surface over the air. In print: at 31 °C a white deck of
// 43 °C and a dark one of 54 °C; at 21 °C a dark hull of 27 °C and a grey deck of 46 °C. Dark is
// taken no cooler than grey. The least is zero, for a cloud, or for a side that the sun only
// grazes.
var sunMost = [...]unit.TemperatureDifference{White: 12, Mid: 25, Dark: 25}

// nightLeast is how far a clear sky may cool a surface of any colour below the air:
// an assumption; 3 to 6 °C is reported of car roofs and decks.
const nightLeast unit.TemperatureDifference = -5

// Allowance is the offset assumed where nothing was measured. Its width is its
// uncertainty: an infrared reading replaces it.
// Source: common practice for the sun, assumption for shade and night sky.
func Allowance(c Colour, p Place) Offset {
	least, most, mark := unit.TemperatureDifference(0), unit.TemperatureDifference(0), source.Assumption
	switch {
	case p == Sun:
		most, mark = sunMost[c], source.CommonPractice
	case p == NightSky:
		least = nightLeast
	}
	give := func(d unit.TemperatureDifference, name string) working.Figure[unit.TemperatureDifference] {
		return working.Given(d, name, unit.InCelsiusDifference, "allowance, not measured", mark)
	}
	return Offset{give(least, "surface over air, at least"), give(most, "surface over air, at most")}
}

// Surface is how warm a surface is beside the air: by an allowance for the day and
// one for the night, and for two hours after it was measured, by the measurement.
type Surface struct {
	Day, Night Offset
	isOpen     bool // under the open sky
	measured   Offset
	at         unit.Time // from midnight, when it was measured
	isMeasured bool
}

// HoldsFor is how long a measured offset holds.
// Source: our own assumption: by then the sun has come round.
const HoldsFor = 2 * unit.Hour

// Under is a surface that wasn't measured: under a roof, or open to the sun by day
// and the sky by night.
func Under(c Colour, isOpen bool) Surface {
	if !isOpen {
		return Surface{Day: Allowance(c, Shade), Night: Allowance(c, Shade)}
	}
	return Surface{Day: Allowance(c, Sun), Night: Allowance(c, NightSky), isOpen: true}
}

// MeasuredAt is the surface with an offset that was measured at a time from
// midnight: it holds for HoldsFor, and at night, in the open, it is no warmer than the
// allowance.
func (s Surface) MeasuredAt(o Offset, at unit.Time) Surface {
	s.measured, s.at, s.isMeasured = o, at, true
	return s
}

// IsMeasured says if a measured offset holds at a time from midnight.
func (s Surface) IsMeasured(at unit.Time) bool {
	return s.isMeasured && at >= s.at && at < s.at+HoldsFor
}

// By is the offset at a time from midnight.
func (s Surface) By(d Day, at unit.Time) Offset {
	h := clock(at)
	isDay := h >= d.sunrise.Value && h < d.Sunset()
	allowed := s.Night
	if isDay {
		allowed = s.Day
	}
	switch {
	case !s.IsMeasured(at):
		return allowed
	case isDay || !s.isOpen:
		return s.measured
	}
	return Offset{noWarmer(s.measured.Least, allowed.Least), noWarmer(s.measured.Most, allowed.Most)}
}

// noWarmer is a measured offset by night, with its working; the allowance where the
// rule can't take the figures.
func noWarmer(measured, allowed working.Figure[unit.TemperatureDifference]) working.Figure[unit.TemperatureDifference] {
	f, err := ByNight.Figure(measured, allowed)
	if err != nil {
		return allowed
	}
	return f
}

// ByNight keeps a measured offset no warmer than the sky's allowance,
// Δn = min(Δ, Δa). Range: −100 to 150 °C. Errors: *working.RangeError.
// Source: our own method, assumption.
var ByNight = working.Rule2[unit.TemperatureDifference, unit.TemperatureDifference, unit.TemperatureDifference]{Rule: &working.Rule{Formula: "Δn = min(Δ, Δa)", Source: source.Ref{Document: &source.House, Place: "surface against air"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "Δn", Meaning: "surface over air, by night", Scale: unit.InCelsiusDifference, Min: -100, Max: 150},
	Args:   []working.Arg{overAir, {Symbol: "Δa", Meaning: "allowance under the night sky", Scale: unit.InCelsiusDifference, Min: -100, Max: 150}}},
	Code: func(d, allowed unit.TemperatureDifference) unit.TemperatureDifference { return min(d, allowed) }}

var overAir = working.Arg{Symbol: "Δ", Meaning: "surface over air", Scale: unit.InCelsiusDifference, Min: -100, Max: 150}

// SurfaceTemperature is the temperature of a surface, ts = ta + Δ.
// Range: −45 to 60 °C, −100 to 150 °C. Errors: *working.RangeError. Source: definition.
var SurfaceTemperature = working.Rule2[unit.Temperature, unit.TemperatureDifference, unit.Temperature]{Rule: &working.Rule{Formula: "ts = ta + Δ", Source: source.Ref{Document: &source.House, Place: "surface against air"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "ts", Meaning: "surface temperature", Scale: unit.InCelsius, Min: -145, Max: 210},
	Args:   []working.Arg{{Symbol: "ta", Meaning: "air temperature", Scale: unit.InCelsius, Min: -45, Max: 60}, overAir}},
	Code: func(air unit.Temperature, d unit.TemperatureDifference) unit.Temperature {
		return air + unit.Temperature(d)
	}}

// OverDew is how far a surface lies above the dew point, m = ts − td.
// Range: −45 to 100 °C, −45 to 60 °C. Errors: *working.RangeError. Source: definition.
var OverDew = working.Rule2[unit.Temperature, unit.Temperature, unit.TemperatureDifference]{Rule: &working.Rule{Formula: "m = ts − td", Source: source.Ref{Document: &source.ISO8502_4}, Mark: source.Published,
	Result: working.Arg{Symbol: "m", Meaning: "surface over dew point", Scale: unit.InCelsiusDifference, Min: -105, Max: 145},
	Args: []working.Arg{
		{Symbol: "ts", Meaning: "surface temperature", Scale: unit.InCelsius, Min: -45, Max: 100},
		{Symbol: "td", Meaning: "dew point", Scale: unit.InCelsius, Min: -45, Max: 60},
	}},
	Code: func(surface, dew unit.Temperature) unit.TemperatureDifference {
		return unit.TemperatureDifference(surface - dew)
	}}
