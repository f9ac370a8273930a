package cure

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// warm lists what to do about cold: the temperature to bring product, part or shed
// to.
func (s Situation) warm(m Means) []Offer {
	shed, limits := s.Cup.Shed, s.Cup.Card.Limits
	coldest := limits.Coldest
	if low, _ := s.Cup.Card.Table.Ends(); low > coldest {
		coldest = low
	}
	if m.DewPoint.Step != nil {
		coldest = max(coldest, m.DewPoint.Value+unit.Temperature(dewMargin))
	}
	reach := max(limits.Coldest, shed.Surface.Value-unit.Temperature(MostApart))
	var offers []Offer
	add := func(r Remedy, has working.Figure[unit.Temperature], needs unit.Temperature) {
		if !(has.Value < needs-lastBits) {
			return
		}
		target := working.Given(needs, "least that will do", unit.InCelsius, "card and dew point", source.Calculated)
		o := Offer{Remedy: r, Risk: riskOf[r], Target: target, Opens: true}
		var err error
		if o.Degrees, err = apart.Figure(target, has); err == nil {
			offers = append(offers, o)
		}
	}
	add(WarmProduct, shed.Product, reach)
	add(WarmPart, shed.Surface, coldest)
	if shed.ColdestAhead > 0 {
		add(WarmShed, working.Given(shed.ColdestAhead, "coldest air ahead", unit.InCelsius, "today's curve", source.Calculated), limits.Coldest)
	}
	return offers
}

// dewMargin is how far above the dew point a part must be to be coated.
// Source: ISO 8502-4 as reported; air.DewMargin is the same figure.
const dewMargin unit.TemperatureDifference = 3
