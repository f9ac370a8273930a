package cure

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// warm lists what to do about cold: the least temperature to bring product, part or
// shed to, so that all of it done there is a dose. None where no warmth brings one.
func (s Situation) warm(m Means) []Offer {
	to, found := s.warmed(m)
	if !found {
		return nil
	}
	shed := s.Cup.Shed
	var offers []Offer
	add := func(r Remedy, has, target working.Figure[unit.Temperature]) {
		if !(has.Value < target.Value-lastBits) {
			return
		}
		o := Offer{Remedy: r, Risk: riskOf[r], Target: target, Opens: true}
		var err error
		if o.Degrees, err = apart.Figure(target, has); err == nil {
			offers = append(offers, o)
		}
	}
	add(WarmProduct, shed.Product, to.Product)
	add(WarmPart, shed.Surface, to.Surface)
	if shed.ColdestAhead > 0 {
		add(WarmShed, working.Given(shed.ColdestAhead, "coldest air ahead", unit.InCelsius, "today's curve", source.Calculated), leastThatDoes(to.ColdestAhead))
	}
	return offers
}

// warmed is the shed once whatever is too cold is brought to the least that has a
// dose. A part that is colder than the product is brought up until the table isn't
// too steep between the two, in whole degrees.
func (s Situation) warmed(m Means) (Shed, bool) {
	cup, limits := s.Cup, s.Cup.Card.Limits
	coldest := limits.Coldest
	if low, _ := cup.Card.Table.Ends(); low > coldest {
		coldest = low
	}
	if m.DewPoint.Step != nil {
		coldest = max(coldest, m.DewPoint.Value+unit.Temperature(dewMargin))
	}
	was := cup.Shed
	for part := max(was.Surface.Value, coldest); ; part = nextDegree(part) {
		cup.Shed = Shed{Product: was.Product, Surface: was.Surface, ColdestAhead: max(was.ColdestAhead, limits.Coldest)}
		if part > was.Surface.Value {
			cup.Shed.Surface = leastThatDoes(part)
		}
		if least := max(limits.Coldest, part-unit.Temperature(MostApart)); least > was.Product.Value {
			cup.Shed.Product = leastThatDoes(least)
		}
		if _, err := cup.share(); err == nil {
			return cup.Shed, true
		}
		if part >= was.Product.Value {
			return Shed{}, false
		}
	}
}

func nextDegree(t unit.Temperature) unit.Temperature {
	return unit.Of[unit.Temperature](math.Floor(unit.InCelsius.From(float64(t))+1e-9)+1, unit.InCelsius)
}

func leastThatDoes(t unit.Temperature) working.Figure[unit.Temperature] {
	return working.Given(t, "least that will do", unit.InCelsius, "card, table and dew point", source.Calculated)
}

// dewMargin is how far above the dew point a part must be to be coated.
// Source: ISO 8502-4 as reported; air.DewMargin is the same figure.
const dewMargin unit.TemperatureDifference = 3
