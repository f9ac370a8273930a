package bench

import (
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var boxVolume = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Volume]{Rule: &working.Rule{Formula: "V = l × w × h", Source: source.Ref{Document: &source.Geometry, Place: "volume of a box"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "V", Meaning: "air in the closed space", Scale: unit.InCubicMetre, Min: 0, Max: 1e6},
	Args: []working.Arg{
		{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: 1e-3, Max: 100}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: 1e-3, Max: 100}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: 1e-3, Max: 100},
	}},
	Code: func(l, w, h unit.Length) unit.Volume { return unit.Volume(l) * unit.Volume(w) * unit.Volume(h) }}

var coatOnArea = working.Rule2[unit.MassPerArea, unit.Area, unit.Mass]{Rule: &working.Rule{Formula: "m = w × A", Source: source.Ref{Document: &source.House, Place: "what goes on there"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "m", Meaning: "mix put on in the closed space", Scale: unit.InKilogram, Min: 0, Max: 1e6},
	Args:   []working.Arg{{Symbol: "w", Meaning: "mix for the area", Scale: unit.InKilogramPerSquareMetre, Min: 1e-3, Max: 50}, {Symbol: "A", Meaning: "area", Scale: unit.InSquareMetre, Min: 0, Max: 1e4}}},
	Code: func(w unit.MassPerArea, a unit.Area) unit.Mass { return unit.Mass(float64(w) * float64(a)) }}

// spaces finds the closed space that comes nearest to the explosive limit: each
// inside surface of the coat is one, with what one coat puts on there and the
// volume of its box; a volume typed at the bench is used for those that have none,
// and without a coat for the cup's.
func (b vapours) spaces(v *Vapour, cup working.Figure[unit.Mass]) {
	if !v.Known {
		return
	}
	typed := b.typed.Locker
	for i, s := range b.plan.Job.Surfaces {
		if b.step == nil || !s.Inside || !slices.Contains(b.step.Progress.Open, s.Path) || !b.plan.Surfaces()[i].Known {
			continue
		}
		v.IsInside = true
		volume, known := volumeOf(s)
		if !known {
			volume = typed
		}
		var q chain.Run
		mass := chain.Do2(&q, coatOnArea, b.out.PerArea, b.plan.Surfaces()[i].Area)
		vapour := givenOff(&q, b.out.Card, b.out.Mix, mass, b.out.Method)
		if volume.Step != nil && q.Err == nil {
			b.nearer(v, vapour, volume)
		}
	}
	if !v.IsInside && typed.Step != nil {
		v.IsInside = true
		b.nearer(v, cup, typed)
	}
}

// nearer keeps a space that comes nearer to the limit.
func (b vapours) nearer(v *Vapour, m working.Figure[unit.Mass], volume working.Figure[unit.Volume]) {
	warmest := b.out.Surface
	if b.out.Product.Value > warmest.Value {
		warmest = b.out.Product
	}
	share, err := air.InSpace(m, volume, warmest)
	if err == nil && (v.Space.Step == nil || share.Value > v.Space.Value) {
		v.Space, v.Volume, v.Danger = share, volume, air.DangerOf(share.Value)
	}
}

// volumeOf is the air in a surface that is a box.
func volumeOf(s *job.Surface) (working.Figure[unit.Volume], bool) {
	if s.Part.Shape == nil || s.Part.Shape.Key != "box" {
		return working.Figure[unit.Volume]{}, false
	}
	in := s.Part.Input.Lengths
	var q chain.Run
	v := chain.Do3(&q, boxVolume, in["length"], in["width"], in["height"])
	return v, q.Err == nil && v.Value > 0
}
