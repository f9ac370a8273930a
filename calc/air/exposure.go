package air

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ppm is one part per million by volume.
const ppm unit.Share = 1e-6

// Exposure is an agency's limit for styrene in the air breathed.
type Exposure struct {
	Agency     string
	EightHours unit.Share // mean over a working day, by volume
	Short      unit.Share // for a short time, mostly 15 min
	IsCeiling  bool       // the short-term limit is never to be exceeded
	Dated      string     // year of the figure, or of the list that holds it; from memory but for Australia's
	Source     source.Ref
	Mark       source.Mark
}

// Exposures are the limits by agency, the lowest first. Local rules take
// precedence.
var Exposures = []Exposure{
	{"ACGIH (US)", 10 * ppm, 20 * ppm, false, "2020", source.Ref{Document: &source.ACGIH, Place: "styrene"}, source.FromMemory},
	{"Germany", 20 * ppm, 40 * ppm, false, "2006", source.Ref{Document: &source.TRGS900, Place: "styrene"}, source.FromMemory},
	{"NIOSH (US)", 50 * ppm, 100 * ppm, false, "1983", source.Ref{Document: &source.NIOSH, Place: "styrene"}, source.Published},
	{"Australia", 50 * ppm, 100 * ppm, false, "1993", source.Ref{Document: &source.SafeWorkAustralia, Place: "styrene"}, source.Published},
	{"OSHA (US)", 100 * ppm, 200 * ppm, true, "1969", source.Ref{Document: &source.OSHAZ2, Place: "styrene"}, source.Published},
	{"HSE (UK)", 100 * ppm, 250 * ppm, false, "2020", source.Ref{Document: &source.EH40, Place: "styrene"}, source.Published},
}

// LowestExposure is the limit to take where none was chosen.
func LowestExposure() Exposure { return Exposures[0] }

// Limit is the eight-hour limit as a figure.
func (e Exposure) Limit() working.Figure[unit.Share] {
	return working.Given(e.EightHours, "limit of styrene over 8 h, "+e.Agency, unit.InPartsPerMillion, e.Source.String(), e.Mark)
}
