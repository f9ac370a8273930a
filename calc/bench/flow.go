package bench

import (
	"shedreckoner/calc/film"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Flow is the thinner for a flow time, by the builder's own two readings.
type Flow struct {
	Thinner   working.Figure[unit.ByVolume] // Step nil: not asked for, or refused
	Err       error
	Viscosity working.Figure[unit.KinematicViscosity] // at the wanted time, where the cup's range holds it
}

var noThinnerRead = working.Given(unit.ByVolume(0), "thinner", unit.InPure, "none", source.Exact)

func (b *bencher) flow() Flow {
	t := b.typed
	if t.Flow[0].Time.Step == nil || t.Flow[1].Time.Step == nil || t.FlowWanted.Step == nil {
		return Flow{}
	}
	reading := func(r int) film.FlowReading {
		thinner := t.Flow[r].Thinner
		if thinner.Step == nil {
			thinner = noThinnerRead
		}
		return film.FlowReading{Thinner: thinner, Time: t.Flow[r].Time, Temperature: b.out.Product.Value}
	}
	var f Flow
	f.Thinner, f.Err = film.ThinnerForFlow(reading(0), reading(1), t.FlowWanted)
	for _, cup := range film.FlowCups {
		if unit.Typed(float64(cup.Orifice), unit.InMillimetre) == t.FlowCup {
			f.Viscosity, _ = cup.Viscosity.Figure(t.FlowWanted)
		}
	}
	return f
}
