package material

import "shedreckoner/calc/unit"

// What a coat takes by the rule of thumb, as sold and with all that is lost.
// Source: common practice.
var (
	perFlowCoat = spec[unit.MassPerArea](0.5, 0.4, 0.6, practice)
	perGelCoat  = spec[unit.MassPerArea](0.5, 0.4, 0.6, practice) // rolled or brushed
	perSprayed  = spec[unit.MassPerArea](1.1, 0.8, 1.5, practice) // by the gun
)

// PerCoat is the mass of product that the trade allows for a square metre and a
// coat, losses included: a plan outside the range is asked about. It is known for
// gel coat and flow coat only.
// Source: common practice.
func (c *Card) PerCoat(m *Method) Spec[unit.MassPerArea] {
	switch {
	case c.Kind == FlowCoat:
		return perFlowCoat
	case c.Kind == GelCoat && m.IsSpray:
		return perSprayed
	case c.Kind == GelCoat:
		return perGelCoat
	}
	return Spec[unit.MassPerArea]{}
}
