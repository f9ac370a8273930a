package cure

import (
	"github.com/shopspring/decimal"

	"shedreckoner/calc/unit"
)

// EnergyOfLine is the energy of the straight line through tests, with none of the
// checks of a fit.
func EnergyOfLine(g Gel, tests ...CupTest) unit.MolarEnergy {
	return unit.MolarEnergy(g.line(tests, g.Order.Mid.Value).slope * unit.GasConstant)
}

// The rules behind a dose, for the published rows.
var (
	DoseRule      = dose
	LargestByTime = Work.byTime
)

// OnMark is the steps and grams of a tool's mark nearest to a dose, all in grams.
func OnMark(t Tool, want, least, most, off, rho decimal.Decimal) (steps int64, g Grams, ml Millilitres, isIn bool) {
	m, isIn := t.mark(want, least, most, off, rho)
	return m.steps, m.grams, m.millilitres, isIn
}
