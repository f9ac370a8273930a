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

var boxVolume = working.Of3("V = l × w × h", source.Geometry.At("volume of a box"), source.Exact,
	working.In("V", "air in the closed space", unit.InCubicMetre, 0, 1e6),
	[]working.Arg{
		working.In("l", "length", unit.InMetre, 1e-3, 100), working.In("w", "width", unit.InMetre, 1e-3, 100), working.In("h", "height", unit.InMetre, 1e-3, 100),
	},
	func(l, w, h unit.Length) unit.Volume { return unit.Volume(l) * unit.Volume(w) * unit.Volume(h) })

var coatOnArea = working.Of2("m = w × A", source.House.At("what goes on there"), source.Exact,
	working.In("m", "mix put on in the closed space", unit.InKilogram, 0, 1e6),
	[]working.Arg{working.In("w", "mix for the area", unit.InKilogramPerSquareMetre, 1e-3, 50), working.In("A", "area", unit.InSquareMetre, 0, 1e4)},
	func(w unit.MassPerArea, a unit.Area) unit.Mass { return unit.Mass(float64(w) * float64(a)) })

// spaces finds the closed space that comes nearest to the explosive limit: each
// inside surface of the coat is one, with what one coat puts on there and the
// volume of its box; a volume typed at the bench is used for those that have none,
// and without a coat for the cup's.
func (b vapours) spaces(v *Vapour, cup working.Figure[unit.Mass]) {
	if !v.Known {
		return
	}
	typed := b.typed.Locker
	for i := range b.plan.Job.Surfaces {
		s := &b.plan.Job.Surfaces[i]
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
