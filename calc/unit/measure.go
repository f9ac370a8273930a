package unit

// Measure is a kind of figure that is shown and typed in a scale of the
// builder's choice: sizes in millimetres or inches, films in micrometres or
// mils. Like a Scale it is a number that stands for a row of a table.
type Measure uint8

// The measures. One that has a single scale leaves no choice.
const (
	NoMeasure Measure = iota
	Sizes
	Runs
	Areas
	Films
	Fills
	Weights
	CupWeights
	Volumes
	SmallVolumes
	Densities
	Temperatures
	Differences
	Rates
	AreaWeights
	Speeds
	Minutes
	Hours
	Days
	Percents
	Numbers
	MolarEnergies
	AirFlows
	Angles
)

type measureRow struct {
	key, name string
	scales    []Scale
	us        Scale
}

var measures = [...]measureRow{
	Sizes:         {"size", "sizes", []Scale{InMillimetre, InCentimetre, InMetre, InInch, InFoot}, InInch},
	Runs:          {"run", "lengths of tape", []Scale{InMetre, InFoot, InYard}, InFoot},
	Areas:         {"area", "areas", []Scale{InSquareMetre, InSquareFoot, InSquareYard}, InSquareFoot},
	Films:         {"film", "films", []Scale{InMicrometre, InMillimetre, InMil}, InMil},
	Fills:         {"fill", "depths of filler", []Scale{InMillimetre, InInch}, InInch},
	Weights:       {"weight", "weights", []Scale{InKilogram, InGram, InPound, InOunce}, InPound},
	CupWeights:    {"cup", "weights of a cup", []Scale{InGram, InOunce}, InGram},
	Volumes:       {"volume", "volumes", []Scale{InLitre, InUSGallon, InUSQuart, InUSPint, InImperialGallon, InImperialQuart, InImperialPint}, InUSGallon},
	SmallVolumes:  {"small-volume", "small volumes", []Scale{InMillilitre, InUSFluidOunce, InImperialFluidOunce}, InUSFluidOunce},
	Densities:     {"density", "densities", []Scale{InKilogramPerLitre, InPoundPerUSGallon}, InPoundPerUSGallon},
	Temperatures:  {"temperature", "temperatures", []Scale{InCelsius, InFahrenheit}, InFahrenheit},
	Differences:   {"difference", "temperature differences", []Scale{InCelsiusDifference, InFahrenheitDifference}, InFahrenheitDifference},
	Rates:         {"rate", "spreading rates", []Scale{InSquareMetrePerLitre, InSquareFootPerUSGallon}, InSquareFootPerUSGallon},
	AreaWeights:   {"area-weight", "weights per area", []Scale{InGramPerSquareMetre, InOuncePerSquareYard}, InOuncePerSquareYard},
	Speeds:        {"speed", "spreading speeds", []Scale{InSquareMetrePerMinute, InSquareFootPerMinute}, InSquareFootPerMinute},
	Minutes:       {"minutes", "minutes", []Scale{InMinute}, InMinute},
	Hours:         {"hours", "hours", []Scale{InHour}, InHour},
	Days:          {"days", "days", []Scale{InDay}, InDay},
	Percents:      {"percent", "shares", []Scale{InPercent}, InPercent},
	Numbers:       {"number", "numbers", []Scale{InPure}, InPure},
	MolarEnergies: {"energy", "activation energies", []Scale{InKilojoulePerMole}, InKilojoulePerMole},
	AirFlows:      {"air", "air flows", []Scale{InCubicMetrePerHour, InCubicFootPerMinute}, InCubicFootPerMinute},
	Angles:        {"angle", "angles", []Scale{InDegree}, InDegree},
}

// Choosable is every measure whose scale the builder may choose.
var Choosable = []Measure{Sizes, Runs, Areas, Films, Fills, Weights, Volumes, SmallVolumes, Densities, Temperatures, Differences, Rates, AreaWeights, Speeds, AirFlows}

// row panics on NoMeasure.
func (m Measure) row() *measureRow {
	if m == NoMeasure {
		panic("unit: no measure")
	}
	return &measures[m]
}

// Key is the measure's stable name: it is saved.
func (m Measure) Key() string { return m.row().key }

// Name says what is measured, in the plural.
func (m Measure) Name() string { return m.row().name }

// Scales is what can be chosen from. The first is the metric default.
func (m Measure) Scales() []Scale { return m.row().scales }

// US is the default in US customary units.
func (m Measure) US() Scale { return m.row().us }

// Scale finds the scale with the symbol among the measure's own; NoScale if the
// dimension doesn't have it.
func (m Measure) Scale(symbol string) Scale {
	for _, s := range m.Scales() {
		if s.Symbol() == symbol {
			return s
		}
	}
	return NoScale
}
