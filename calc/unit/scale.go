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

// Scale is a unit as people write it. SI = (n + offset) × factor.
type Scale struct {
	Symbol  string   // as it is written: "mm"
	Also    []string // other spellings that are read, lower case
	Measure Dimension
	factor  float64
	offset  float64
}

// SI takes n of this unit to SI base units.
func (s *Scale) SI(n float64) float64 { return (n + s.offset) * s.factor }

// From takes a value in SI base units to this unit.
func (s *Scale) From(si float64) float64 { return si/s.factor - s.offset }

// The scales that are read and written.
var (
	InMetre      = length("m", Metre, "metre", "metres", "meter", "meters")
	InCentimetre = length("cm", Centimetre)
	InMillimetre = length("mm", Millimetre)
	InMicrometre = length("µm", Micrometre, "um", "μm", "micron", "microns")
	InFoot       = length("ft", Foot, "foot", "feet", "'", "′", "’")
	InInch       = length("in", Inch, "inch", "inches", "\"", "″", "”", "''")
	InYard       = length("yd", Yard, "yard", "yards")
	InMil        = length("mil", Mil, "mils", "thou")

	InSquareMetre      = &Scale{"m²", []string{"m2", "sq m", "sqm"}, AreaDim, float64(SquareMetre), 0}
	InSquareCentimetre = &Scale{"cm²", []string{"cm2", "sq cm"}, AreaDim, float64(SquareCentimetre), 0}
	InSquareFoot       = &Scale{"ft²", []string{"ft2", "sq ft", "sqft"}, AreaDim, float64(SquareFoot), 0}
	InSquareYard       = &Scale{"yd²", []string{"yd2", "sq yd"}, AreaDim, float64(SquareYard), 0}

	InCubicMetre         = &Scale{"m³", []string{"m3", "cu m"}, VolumeDim, float64(CubicMetre), 0}
	InLitre              = &Scale{"L", []string{"l", "litre", "litres", "liter", "liters"}, VolumeDim, float64(Litre), 0}
	InMillilitre         = &Scale{"mL", []string{"ml", "cc", "cm3", "cm³"}, VolumeDim, float64(Millilitre), 0}
	InUSGallon           = &Scale{"US gal", []string{"us gallon", "us gallons"}, VolumeDim, float64(USGallon), 0}
	InUSQuart            = &Scale{"US qt", []string{"us quart", "us quarts"}, VolumeDim, float64(USQuart), 0}
	InUSPint             = &Scale{"US pt", []string{"us pint", "us pints"}, VolumeDim, float64(USPint), 0}
	InUSFluidOunce       = &Scale{"US fl oz", []string{"us fluid ounce", "us fluid ounces"}, VolumeDim, float64(USFluidOunce), 0}
	InImperialGallon     = &Scale{"imp gal", []string{"imperial gal", "imperial gallon", "imperial gallons"}, VolumeDim, float64(ImperialGallon), 0}
	InImperialPint       = &Scale{"imp pt", []string{"imperial pt", "imperial pint", "imperial pints"}, VolumeDim, float64(ImperialPint), 0}
	InImperialFluidOunce = &Scale{"imp fl oz", []string{"imperial fl oz"}, VolumeDim, float64(ImperialFluidOunce), 0}

	InKilogram = &Scale{"kg", []string{"kilo", "kilos"}, MassDim, float64(Kilogram), 0}
	InGram     = &Scale{"g", []string{"gram", "grams"}, MassDim, float64(Gram), 0}
	InPound    = &Scale{"lb", []string{"lbs", "pound", "pounds"}, MassDim, float64(Pound), 0}
	InOunce    = &Scale{"oz", []string{"ounce", "ounces"}, MassDim, float64(Ounce), 0}

	InKilogramPerLitre       = &Scale{"kg/L", []string{"kg/l", "g/ml", "g/cm3", "g/cm³"}, DensityDim, 1000, 0}
	InKilogramPerCubicMetre  = &Scale{"kg/m³", []string{"kg/m3", "g/l"}, DensityDim, 1, 0}
	InGramPerCubicMetre      = &Scale{"g/m³", []string{"g/m3"}, DensityDim, 1e-3, 0}
	InMilligramPerCubicMetre = &Scale{"mg/m³", []string{"mg/m3"}, DensityDim, 1e-6, 0}
	InPoundPerUSGallon       = &Scale{"lb/US gal", nil, DensityDim, float64(Pound) / float64(USGallon), 0}

	InKelvin               = &Scale{"K", nil, TemperatureDim, 1, 0}
	InCelsius              = &Scale{"°C", []string{"c", "º c", "°c", "deg c"}, TemperatureDim, 1, float64(ZeroCelsius)}
	InFahrenheit           = &Scale{"°F", []string{"f", "°f", "deg f"}, TemperatureDim, 5. / 9, 459.67}
	InCelsiusDifference    = &Scale{"°C", []string{"c", "°c", "deg c", "k"}, DifferenceDim, 1, 0}
	InFahrenheitDifference = &Scale{"°F", []string{"f", "°f", "deg f"}, DifferenceDim, 5. / 9, 0}

	InSecond = &Scale{"s", []string{"sec", "second", "seconds"}, TimeDim, 1, 0}
	InMinute = &Scale{"min", []string{"minute", "minutes"}, TimeDim, float64(Minute), 0}
	InHour   = &Scale{"h", []string{"hr", "hrs", "hour", "hours"}, TimeDim, float64(Hour), 0}
	InDay    = &Scale{"d", []string{"day", "days"}, TimeDim, float64(Day), 0}

	InSquareMetrePerLitre    = &Scale{"m²/L", []string{"m2/l"}, AreaPerVolumeDim, 1000, 0}
	InSquareFootPerUSGallon  = &Scale{"ft²/US gal", []string{"ft2/us gal"}, AreaPerVolumeDim, float64(SquareFoot) / float64(USGallon), 0}
	InGramPerSquareMetre     = &Scale{"g/m²", []string{"g/m2"}, MassPerAreaDim, 1e-3, 0}
	InKilogramPerSquareMetre = &Scale{"kg/m²", []string{"kg/m2"}, MassPerAreaDim, 1, 0}
	InOuncePerSquareYard     = &Scale{"oz/yd²", []string{"oz/yd2"}, MassPerAreaDim, float64(Ounce) / float64(SquareYard), 0}
	InSquareMetrePerMinute   = &Scale{"m²/min", []string{"m2/min"}, AreaPerTimeDim, 1. / 60, 0}
	InSquareMetrePerHour     = &Scale{"m²/h", []string{"m2/h"}, AreaPerTimeDim, 1. / 3600, 0}
	InSquareFootPerMinute    = &Scale{"ft²/min", []string{"ft2/min"}, AreaPerTimeDim, float64(SquareFoot) / 60, 0}
	InKilojoulePerMole       = &Scale{"kJ/mol", []string{"kj/mol"}, MolarEnergyDim, 1000, 0}
	InSquareMillimetrePerSec = &Scale{"mm²/s", []string{"mm2/s", "cst"}, ViscosityDim, 1e-6, 0}
	InCubicMetrePerHour      = &Scale{"m³/h", []string{"m3/h"}, VolumePerTimeDim, 1. / 3600, 0}
	InCubicMetrePerSecond    = &Scale{"m³/s", []string{"m3/s"}, VolumePerTimeDim, 1, 0}
	InLitrePerMinute         = &Scale{"L/min", []string{"l/min"}, VolumePerTimeDim, 1e-3 / 60, 0}
	InCubicFootPerMinute     = &Scale{"ft³/min", []string{"ft3/min", "cfm"}, VolumePerTimeDim, 0.3048 * 0.3048 * 0.3048 / 60, 0}
	InGramPerHour            = &Scale{"g/h", nil, MassPerTimeDim, 1e-3 / 3600, 0}
	InKilogramPerHour        = &Scale{"kg/h", nil, MassPerTimeDim, 1. / 3600, 0}
	InGramPerKilogram        = &Scale{"g/kg", nil, MassPerMassDim, 1e-3, 0}
	InPoundPerShortTon       = &Scale{"lb/ton", nil, MassPerMassDim, 1. / 2000, 0}
	InHectopascal            = &Scale{"hPa", nil, PressureDim, 100, 0}
	InKilopascal             = &Scale{"kPa", nil, PressureDim, 1000, 0}
	InGramPerMole            = &Scale{"g/mol", nil, MolarMassDim, 1e-3, 0}
	InDegree                 = &Scale{"°", []string{"deg", "degrees"}, AngleDim, 0.017453292519943295, 0}
	InRadian                 = &Scale{"rad", nil, AngleDim, 1, 0}
	InPercent                = &Scale{"%", []string{"percent", "per cent"}, Pure, 0.01, 0}
	InPure                   = &Scale{"", nil, Pure, 1, 0}
	InPartsPerMillion        = &Scale{"ppm", nil, Pure, 1e-6, 0}
)

func length(symbol string, l Length, also ...string) *Scale {
	return &Scale{symbol, also, LengthDim, float64(l), 0}
}

// Scales is every scale that a field may be written in.
var Scales = []*Scale{
	InMetre, InCentimetre, InMillimetre, InMicrometre, InFoot, InInch, InYard, InMil,
	InSquareMetre, InSquareCentimetre, InSquareFoot, InSquareYard,
	InCubicMetre, InLitre, InMillilitre, InUSGallon, InUSQuart, InUSPint, InUSFluidOunce,
	InImperialGallon, InImperialPint, InImperialFluidOunce,
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
