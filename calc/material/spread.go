package material

import "shedreckoner/calc/unit"

// How far off a plan may be. None of it was measured: the log of real work
// replaces it.
// Source: assumption, but for the share of filler sanded off (common practice).
var (
	// AreaCV is the error of an area by how it was measured.
	AreaCV = map[string]Spec[unit.Share]{
		"tape":    exactly[unit.Share](0.03, x),
		"girths":  exactly[unit.Share](0.04, x),
		"drawing": exactly[unit.Share](0.05, x),
		"paced":   exactly[unit.Share](0.10, x),
		"formula": exactly[unit.Share](0.15, x),
	}

	lossRolled  = exactly[unit.Factor](0.15, x)
	lossSprayed = exactly[unit.Factor](0.30, x)

	// SurfaceSD is the spread of the logarithm of used ÷ planned from one
	// finished piece of work to the next, by one hand.
	SurfaceSD = exactly[unit.Factor](0.20, x)

	// CupSD is the same from one cup to the next.
	CupSD = exactly[unit.Factor](0.35, x)

	// LossFiller is the spread of the logarithm of what filler takes.
	LossFiller = exactly[unit.Factor](0.25, x)

	// SandedOffSD is the spread of the logit of the share sanded off.
	SandedOffSD = exactly[unit.Factor](0.35, c)
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
