package material

import "shedreckoner/calc/unit"

// How far off a plan may be. None of this was measured: the log of real work
// replaces it.
// Source: assumption, but for the share of filler sanded off (common practice).
var (
	// AreaCV is the error of an area by how it was measured.
	AreaCV = map[string]Spec[unit.Share]{
		"tape":    exactly[unit.Share](0.03, assumption),
		"girths":  exactly[unit.Share](0.04, assumption),
		"drawing": exactly[unit.Share](0.05, assumption),
		"paced":   exactly[unit.Share](0.10, assumption),
		"formula": exactly[unit.Share](0.15, assumption),
	}

	lossRolled  = exactly[unit.Factor](0.15, assumption)
	lossSprayed = exactly[unit.Factor](0.30, assumption)

	// SurfaceSD is the spread of the logarithm of used ÷ planned from one
	// finished piece of work to the next, by one hand.
	SurfaceSD = exactly[unit.Factor](0.20, assumption)

	// CupSD is the same from one cup to the next.
	CupSD = exactly[unit.Factor](0.35, assumption)

	// LossFiller is the spread of the logarithm of what filler takes.
	LossFiller = exactly[unit.Factor](0.25, assumption)

	// SandedOffSD is the spread of the logit of the share sanded off.
	SandedOffSD = exactly[unit.Factor](0.35, practice)
)

// LossSD is the spread of the logarithm of what a method takes against its plan,
// before anything is learned of this hand.
// Source: assumption.
func (m *Method) LossSD() Spec[unit.Factor] {
	if m.IsSpray {
		return lossSprayed
	}
	return lossRolled
}
