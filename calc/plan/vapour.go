package plan

import (
	"shedreckoner/calc/air"
	"shedreckoner/calc/film"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Vapour is the styrene that a cup gives off, and the air that it asks for.
type Vapour struct {
	Known    bool
	GivenOff working.Figure[unit.Mass]
	Limit    air.Exposure
	Air      working.Figure[unit.AirFlow]
	IsBeyond bool // no open door can do it
	Locker   working.Figure[unit.Share]
	Danger   air.Danger // in the locker, where one was typed
}

// vapour works out what the cup gives off within the hour.
func (b *bencher) vapour() Vapour {
	card := b.out.Card
	if !card.Styrene.Known || card.Styrene.Value == 0 || b.out.Mix.Product.Step == nil || b.typed.Surface.Step == nil {
		return Vapour{}
	}
	var q sums
	added := unit.ByMass(0)
	for _, m := range []working.Figure[unit.Mass]{b.out.Mix.Thinner, b.out.Mix.Wax} {
		added += unit.ByMass(m.Value / b.out.Mix.Product.Value)
	}
	h := do2(&q, air.ThinnedContent, onCard(card, card.Styrene, "styrene in the product", unit.InPercent),
		working.Given(added, "thinner and wax solution by mass of product", unit.InPercent, "this cup", source.Calculated))
	if q.err != nil {
		return Vapour{}
	}
	e, err := air.Emission(h, b.method().IsSpray)
	e = keep(&q, e, err)
	v := Vapour{Limit: air.LowestExposure()}
	for _, limit := range air.Exposures {
		if limit.Agency == b.typed.Agency {
			v.Limit = limit
		}
	}
	v.GivenOff = do2(&q, air.GivenOff, e, b.out.Whole)
	rate := do2(&q, air.Rate, v.GivenOff, air.LeavesWithin)
	if q.err != nil {
		return Vapour{}
	}
	flow, err := air.StyreneAir(rate, v.Limit.Limit(), b.typed.Surface, air.MixingFactor)
	v.Air = keep(&q, flow, err)
	v.Known, v.IsBeyond = q.err == nil, air.BeyondDoor(v.Air.Value)
	if b.typed.Locker.Step != nil && v.Known {
		if share, err := air.InLocker(v.GivenOff, b.typed.Locker, b.typed.Surface); err == nil {
			v.Locker, v.Danger = share, air.DangerOf(share.Value)
		}
	}
	return v
}

// Flow is thinner towards a flow time, by the builder's own two readings.
type Flow struct {
	Thinner   working.Figure[unit.ByVolume] // Step nil: not asked for, or refused
	Err       error
	Viscosity working.Figure[unit.KinematicViscosity] // at the wanted time, where the cup's range holds it
}

func (b *bencher) flow() Flow {
	t := b.typed
	if t.Flow[0].Time.Step == nil || t.Flow[1].Time.Step == nil || t.FlowWanted.Step == nil {
		return Flow{}
	}
	reading := func(r int) film.FlowReading {
		thinner := t.Flow[r].Thinner
		if thinner.Step == nil {
			thinner = noThinner
		}
		return film.FlowReading{Thinner: thinner, Time: t.Flow[r].Time, Temperature: t.Product.Value}
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
