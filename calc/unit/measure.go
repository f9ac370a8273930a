package unit

// Measure is a kind of figure that is shown and typed in a scale of the
// builder's choice: sizes in millimetres or inches, films in micrometres or
// mils. The first scale is the metric default.
type Measure struct {
	Key    string // stable: it is saved
	Name   string // what is measured, in the plural
	Scales []Scale
	US     Scale // the default in US customary units
}

// The measures. One that has a single scale leaves no choice.
var (
	Sizes         = &Measure{"size", "sizes", []Scale{InMillimetre, InCentimetre, InMetre, InInch, InFoot}, InInch}
	Runs          = &Measure{"run", "lengths of tape", []Scale{InMetre, InFoot, InYard}, InFoot}
	Areas         = &Measure{"area", "areas", []Scale{InSquareMetre, InSquareFoot, InSquareYard}, InSquareFoot}
	Films         = &Measure{"film", "films", []Scale{InMicrometre, InMillimetre, InMil}, InMil}
	Fills         = &Measure{"fill", "depths of filler", []Scale{InMillimetre, InInch}, InInch}
	Weights       = &Measure{"weight", "weights", []Scale{InKilogram, InGram, InPound, InOunce}, InPound}
	CupWeights    = &Measure{"cup", "weights of a cup", []Scale{InGram, InOunce}, InGram}
	Volumes       = &Measure{"volume", "volumes", []Scale{InLitre, InUSGallon, InUSQuart, InUSPint, InImperialGallon, InImperialPint}, InUSGallon}
	SmallVolumes  = &Measure{"small-volume", "small volumes", []Scale{InMillilitre, InUSFluidOunce, InImperialFluidOunce}, InUSFluidOunce}
	Densities     = &Measure{"density", "densities", []Scale{InKilogramPerLitre, InPoundPerUSGallon}, InPoundPerUSGallon}
	Temperatures  = &Measure{"temperature", "temperatures", []Scale{InCelsius, InFahrenheit}, InFahrenheit}
	Differences   = &Measure{"difference", "temperature differences", []Scale{InCelsiusDifference, InFahrenheitDifference}, InFahrenheitDifference}
	Rates         = &Measure{"rate", "spreading rates", []Scale{InSquareMetrePerLitre, InSquareFootPerUSGallon}, InSquareFootPerUSGallon}
	AreaWeights   = &Measure{"area-weight", "weights per area", []Scale{InGramPerSquareMetre, InOuncePerSquareYard}, InOuncePerSquareYard}
	Speeds        = &Measure{"speed", "spreading speeds", []Scale{InSquareMetrePerMinute, InSquareFootPerMinute}, InSquareFootPerMinute}
	Minutes       = &Measure{"minutes", "minutes", []Scale{InMinute}, InMinute}
	Hours         = &Measure{"hours", "hours", []Scale{InHour}, InHour}
	Days          = &Measure{"days", "days", []Scale{InDay}, InDay}
	Percents      = &Measure{"percent", "shares", []Scale{InPercent}, InPercent}
	Numbers       = &Measure{"number", "numbers", []Scale{InPure}, InPure}
	MolarEnergies = &Measure{"energy", "activation energies", []Scale{InKilojoulePerMole}, InKilojoulePerMole}
	AirFlows      = &Measure{"air", "air flows", []Scale{InCubicMetrePerHour, InCubicFootPerMinute}, InCubicFootPerMinute}
	Angles        = &Measure{"angle", "angles", []Scale{InDegree}, InDegree}
)

// Chosen is every measure that the builder may choose a scale for.
var Chosen = []*Measure{Sizes, Runs, Areas, Films, Fills, Weights, Volumes, SmallVolumes, Densities, Temperatures, Differences, Rates, AreaWeights, Speeds, AirFlows}

// Scale finds the scale with the symbol among the measure's own; NoScale if the
// measure doesn't have it.
func (m *Measure) Scale(symbol string) Scale {
	for _, s := range m.Scales {
		if s.Symbol() == symbol {
			return s
		}
	}
	return NoScale
}
