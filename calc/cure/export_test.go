package cure

import "shedreckoner/calc/unit"

// EnergyOfLine is the energy of the straight line through tests, with none of the
// checks of a fit.
func EnergyOfLine(g Gel, tests ...CupTest) unit.MolarEnergy {
	return unit.MolarEnergy(g.line(tests, g.Order.Mid.Value).slope * gasConstant)
}

// The rules behind a dose, for the published rows.
var (
	DoseRule      = dose
	LargestByTime = Work.byTime
)
