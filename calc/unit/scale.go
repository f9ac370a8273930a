package unit

// The exact conversions, each a quantity of one unit.
// Source: NIST SP 811, appendix B; the identities in the comments are exact.
const (
	Metre      Length = 1
	Centimetre        = Metre / 100
	Millimetre        = Metre / 1000
	Micrometre        = Metre / 1e6
	Inch              = 25.4 * Millimetre // by definition
	Foot              = 12 * Inch         // 304.8 mm
	Yard              = 3 * Foot
	Mil               = Inch / 1000 // 25.4 µm

	SquareMetre      Area = 1
	SquareCentimetre      = SquareMetre / 1e4
	SquareFoot            = SquareMetre * 0.3048 * 0.3048
	SquareYard            = 9 * SquareFoot

	CubicMetre         Volume = 1
	Litre                     = CubicMetre / 1000
	Millilitre                = Litre / 1000
	USGallon                  = 231 * 0.0254 * 0.0254 * 0.0254 * CubicMetre // 231 in³
	USQuart                   = USGallon / 4
	USPint                    = USGallon / 8
	USFluidOunce              = USGallon / 128
	ImperialGallon            = 4.54609 * Litre // by definition
	ImperialQuart             = ImperialGallon / 4
	ImperialPint              = ImperialGallon / 8
	ImperialFluidOunce        = ImperialGallon / 160

	Kilogram Mass = 1
	Gram          = Kilogram / 1000
	Pound         = 0.45359237 * Kilogram // by definition
	Ounce         = Pound / 16

	Second Time = 1
	Minute      = 60 * Second
	Hour        = 60 * Minute
	Day         = 24 * Hour

	// ZeroCelsius is 0 °C on the kelvin scale.
	ZeroCelsius Temperature = 273.15
)

// GasConstant is the molar gas constant R in J/(mol·K), cut to ten digits.
// Source: CODATA 2018; exact since the SI of 2019.
const GasConstant = 8.314462618

// Scale is a unit as people write it. SI = (n + offset) × factor. It is a number
// that stands for a row of a table, so that a list which names scales is laid out
// when the program is built and needs no code at its start.
type Scale uint8

// The scales that are read and written.
const (
	NoScale Scale = iota
	InMetre
	InCentimetre
	InMillimetre
	InMicrometre
	InFoot
	InInch
	InYard
	InMil

	InSquareMetre
	InSquareCentimetre
	InSquareFoot
	InSquareYard

	InCubicMetre
	InLitre
	InMillilitre
	InUSGallon
	InUSQuart
	InUSPint
	InUSFluidOunce
	InImperialGallon
	InImperialQuart
	InImperialPint
	InImperialFluidOunce

	InKilogram
	InGram
	InPound
	InOunce

	InKilogramPerLitre
	InKilogramPerCubicMetre
	InGramPerCubicMetre
	InMilligramPerCubicMetre
	InPoundPerUSGallon

	InKelvin
	InCelsius
	InFahrenheit
	InCelsiusDifference
	InFahrenheitDifference

	InSecond
	InMinute
	InHour
	InDay

	InSquareMetrePerLitre
	InSquareFootPerUSGallon
	InGramPerSquareMetre
	InKilogramPerSquareMetre
	InOuncePerSquareYard
	InSquareMetrePerMinute
	InSquareMetrePerHour
	InSquareFootPerMinute
	InKilojoulePerMole
	InSquareMillimetrePerSec
	InCubicMetrePerHour
	InCubicMetrePerSecond
	InLitrePerMinute
	InCubicFootPerMinute
	InGramPerHour
	InKilogramPerHour
	InGramPerKilogram
	InPoundPerShortTon
	InHectopascal
	InKilopascal
	InGramPerMole
	InDegree
	InRadian
	InPercent
	InPure
	InPartsPerMillion
)

type scaleRow struct {
	symbol    string
	also      []string // other spellings
	dimension Dimension
	factor    float64
	offset    float64
}

var scales = [...]scaleRow{
	InMetre:      {"m", []string{"metre", "metres", "meter", "meters"}, LengthDim, float64(Metre), 0},
	InCentimetre: {"cm", nil, LengthDim, float64(Centimetre), 0},
	InMillimetre: {"mm", nil, LengthDim, float64(Millimetre), 0},
	InMicrometre: {"µm", []string{"um", "μm", "micron", "microns"}, LengthDim, float64(Micrometre), 0},
	InFoot:       {"ft", []string{"foot", "feet", "'", "′", "’"}, LengthDim, float64(Foot), 0},
	InInch:       {"in", []string{"inch", "inches", "\"", "″", "”", "''"}, LengthDim, float64(Inch), 0},
	InYard:       {"yd", []string{"yard", "yards"}, LengthDim, float64(Yard), 0},
	InMil:        {"mil", []string{"mils", "thou"}, LengthDim, float64(Mil), 0},

	InSquareMetre:      {"m²", []string{"m2", "sq m", "sqm"}, AreaDim, float64(SquareMetre), 0},
	InSquareCentimetre: {"cm²", []string{"cm2", "sq cm"}, AreaDim, float64(SquareCentimetre), 0},
	InSquareFoot:       {"ft²", []string{"ft2", "sq ft", "sqft"}, AreaDim, float64(SquareFoot), 0},
	InSquareYard:       {"yd²", []string{"yd2", "sq yd"}, AreaDim, float64(SquareYard), 0},

	InCubicMetre:         {"m³", []string{"m3", "cu m"}, VolumeDim, float64(CubicMetre), 0},
	InLitre:              {"L", []string{"l", "litre", "litres", "liter", "liters"}, VolumeDim, float64(Litre), 0},
	InMillilitre:         {"mL", []string{"ml", "cc", "cm3", "cm³"}, VolumeDim, float64(Millilitre), 0},
	InUSGallon:           {"US gal", []string{"us gallon", "us gallons"}, VolumeDim, float64(USGallon), 0},
	InUSQuart:            {"US qt", []string{"us quart", "us quarts"}, VolumeDim, float64(USQuart), 0},
	InUSPint:             {"US pt", []string{"us pint", "us pints"}, VolumeDim, float64(USPint), 0},
	InUSFluidOunce:       {"US fl oz", []string{"us fluid ounce", "us fluid ounces"}, VolumeDim, float64(USFluidOunce), 0},
	InImperialGallon:     {"imp gal", []string{"imperial gal", "imperial gallon", "imperial gallons"}, VolumeDim, float64(ImperialGallon), 0},
	InImperialQuart:      {"imp qt", []string{"imperial qt", "imperial quart", "imperial quarts"}, VolumeDim, float64(ImperialQuart), 0},
	InImperialPint:       {"imp pt", []string{"imperial pt", "imperial pint", "imperial pints"}, VolumeDim, float64(ImperialPint), 0},
	InImperialFluidOunce: {"imp fl oz", []string{"imperial fl oz"}, VolumeDim, float64(ImperialFluidOunce), 0},

	InKilogram: {"kg", []string{"kilo", "kilos"}, MassDim, float64(Kilogram), 0},
	InGram:     {"g", []string{"gram", "grams"}, MassDim, float64(Gram), 0},
	InPound:    {"lb", []string{"lbs", "pound", "pounds"}, MassDim, float64(Pound), 0},
	InOunce:    {"oz", []string{"ounce", "ounces"}, MassDim, float64(Ounce), 0},

	InKilogramPerLitre:       {"kg/L", []string{"kg/l", "g/ml", "g/cm3", "g/cm³"}, DensityDim, 1000, 0},
	InKilogramPerCubicMetre:  {"kg/m³", []string{"kg/m3", "g/l"}, DensityDim, 1, 0},
	InGramPerCubicMetre:      {"g/m³", []string{"g/m3"}, DensityDim, 1e-3, 0},
	InMilligramPerCubicMetre: {"mg/m³", []string{"mg/m3"}, DensityDim, 1e-6, 0},
	InPoundPerUSGallon:       {"lb/US gal", nil, DensityDim, float64(Pound) / float64(USGallon), 0},

	InKelvin:               {"K", nil, TemperatureDim, 1, 0},
	InCelsius:              {"°C", []string{"c", "º c", "°c", "deg c"}, TemperatureDim, 1, float64(ZeroCelsius)},
	InFahrenheit:           {"°F", []string{"f", "°f", "deg f"}, TemperatureDim, 5. / 9, 459.67},
	InCelsiusDifference:    {"°C", []string{"c", "°c", "deg c", "k"}, DifferenceDim, 1, 0},
	InFahrenheitDifference: {"°F", []string{"f", "°f", "deg f"}, DifferenceDim, 5. / 9, 0},

	InSecond: {"s", []string{"sec", "second", "seconds"}, TimeDim, 1, 0},
	InMinute: {"min", []string{"minute", "minutes"}, TimeDim, float64(Minute), 0},
	InHour:   {"h", []string{"hr", "hrs", "hour", "hours"}, TimeDim, float64(Hour), 0},
	InDay:    {"d", []string{"day", "days"}, TimeDim, float64(Day), 0},

	InSquareMetrePerLitre:    {"m²/L", []string{"m2/l"}, AreaPerVolumeDim, 1000, 0},
	InSquareFootPerUSGallon:  {"ft²/US gal", []string{"ft2/us gal"}, AreaPerVolumeDim, float64(SquareFoot) / float64(USGallon), 0},
	InGramPerSquareMetre:     {"g/m²", []string{"g/m2"}, MassPerAreaDim, 1e-3, 0},
	InKilogramPerSquareMetre: {"kg/m²", []string{"kg/m2"}, MassPerAreaDim, 1, 0},
	InOuncePerSquareYard:     {"oz/yd²", []string{"oz/yd2"}, MassPerAreaDim, float64(Ounce) / float64(SquareYard), 0},
	InSquareMetrePerMinute:   {"m²/min", []string{"m2/min"}, AreaPerTimeDim, 1. / 60, 0},
	InSquareMetrePerHour:     {"m²/h", []string{"m2/h"}, AreaPerTimeDim, 1. / 3600, 0},
	InSquareFootPerMinute:    {"ft²/min", []string{"ft2/min"}, AreaPerTimeDim, float64(SquareFoot) / 60, 0},
	InKilojoulePerMole:       {"kJ/mol", []string{"kj/mol"}, MolarEnergyDim, 1000, 0},
	InSquareMillimetrePerSec: {"mm²/s", []string{"mm2/s", "cst"}, ViscosityDim, 1e-6, 0},
	InCubicMetrePerHour:      {"m³/h", []string{"m3/h"}, VolumePerTimeDim, 1. / 3600, 0},
	InCubicMetrePerSecond:    {"m³/s", []string{"m3/s"}, VolumePerTimeDim, 1, 0},
	InLitrePerMinute:         {"L/min", []string{"l/min"}, VolumePerTimeDim, 1e-3 / 60, 0},
	InCubicFootPerMinute:     {"ft³/min", []string{"ft3/min", "cfm"}, VolumePerTimeDim, 0.3048 * 0.3048 * 0.3048 / 60, 0},
	InGramPerHour:            {"g/h", nil, MassPerTimeDim, 1e-3 / 3600, 0},
	InKilogramPerHour:        {"kg/h", nil, MassPerTimeDim, 1. / 3600, 0},
	InGramPerKilogram:        {"g/kg", nil, MassPerMassDim, 1e-3, 0},
	InPoundPerShortTon:       {"lb/ton", nil, MassPerMassDim, 1. / 2000, 0},
	InHectopascal:            {"hPa", nil, PressureDim, 100, 0},
	InKilopascal:             {"kPa", nil, PressureDim, 1000, 0},
	InGramPerMole:            {"g/mol", nil, MolarMassDim, 1e-3, 0},
	InDegree:                 {"°", []string{"deg", "degrees"}, AngleDim, 0.017453292519943295, 0},
	InRadian:                 {"rad", nil, AngleDim, 1, 0},
	InPercent:                {"%", []string{"percent", "per cent"}, Pure, 0.01, 0},
	InPure:                   {"", nil, Pure, 1, 0},
	InPartsPerMillion:        {"ppm", nil, Pure, 1e-6, 0},
}

// row panics on NoScale.
func (s Scale) row() *scaleRow {
	if s == NoScale {
		panic("unit: no scale")
	}
	return &scales[s]
}

// Symbol is the unit as it is written: "mm". That of a bare number is empty.
func (s Scale) Symbol() string { return s.row().symbol }

// Also gives the other spellings that are read, in lower case.
func (s Scale) Also() []string { return s.row().also }

// Dimension says what the unit measures: a length, an area.
func (s Scale) Dimension() Dimension { return s.row().dimension }

// SI takes n of this unit to SI base units.
func (s Scale) SI(n float64) float64 { return (n + s.row().offset) * s.row().factor }

// From takes a value in SI base units to this unit.
func (s Scale) From(si float64) float64 { return si/s.row().factor - s.row().offset }

// Scales is every scale that a field may be written in.
var Scales = []Scale{
	InMetre, InCentimetre, InMillimetre, InMicrometre, InFoot, InInch, InYard, InMil,
	InSquareMetre, InSquareCentimetre, InSquareFoot, InSquareYard,
	InCubicMetre, InLitre, InMillilitre, InUSGallon, InUSQuart, InUSPint, InUSFluidOunce,
	InImperialGallon, InImperialQuart, InImperialPint, InImperialFluidOunce,
	InKilogram, InGram, InPound, InOunce,
	InKilogramPerLitre, InKilogramPerCubicMetre, InPoundPerUSGallon,
	InCelsius, InFahrenheit, InCelsiusDifference, InFahrenheitDifference,
	InSecond, InMinute, InHour, InDay,
	InSquareMetrePerLitre, InSquareFootPerUSGallon,
	InGramPerSquareMetre, InKilogramPerSquareMetre, InOuncePerSquareYard,
	InSquareMetrePerMinute, InSquareMetrePerHour, InSquareFootPerMinute,
	InKilojoulePerMole, InSquareMillimetrePerSec,
	InCubicMetrePerHour, InCubicMetrePerSecond, InLitrePerMinute, InCubicFootPerMinute,
	InGramPerHour, InKilogramPerHour, InGramPerKilogram, InPoundPerShortTon,
	InDegree, InRadian, InPercent, InPartsPerMillion,
}
