package plan

import (
	"errors"

	"shedreckoner/calc/job"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Surface is a measured surface.
type Surface struct {
	Path  string
	Area  working.Figure[unit.Area]   // to be coated: count, sides and cut-outs counted
	Edge  working.Figure[unit.Length] // to be taped
	Notes []surface.Note
	Known bool // the area is known
}

// measured is a surface with all that there was to say of it.
type measured struct {
	Surface
	refused, waiting []job.Problem
	asks             []Ask
}

func (m *maker) surfaces() {
	p := &m.plan
	p.measured = make([]measured, len(p.Job.Surfaces))
	p.Surfaces = make([]Surface, len(p.Job.Surfaces))
	for i := range p.Job.Surfaces {
		p.measured[i] = m.measuredAt(i)
		p.Surfaces[i] = p.measured[i].Surface
	}
}

// measuredAt is the surface in a place of the list. It follows from what was
// typed of it alone: where that is the same as in the plan before, so is it.
func (m *maker) measuredAt(i int) measured {
	p, s := &m.plan, &m.plan.Job.Surfaces[i]
	if i < len(m.before.measured) && m.before.measured[i].Path == s.Path && p.reading.Same(m.before.reading, s.Path) {
		known := m.before.measured[i]
		p.Refused, p.Waiting, p.Asks = append(p.Refused, known.refused...), append(p.Waiting, known.waiting...), append(p.Asks, known.asks...)
		return known
	}
	refused, waiting, asks := len(p.Refused), len(p.Waiting), len(p.Asks)
	planned := m.surface(s)
	return measured{
		Surface: planned,
		refused: append([]job.Problem(nil), p.Refused[refused:]...),
		waiting: append([]job.Problem(nil), p.Waiting[waiting:]...),
		asks:    append([]Ask(nil), p.Asks[asks:]...),
	}
}

func (m *maker) surface(s *job.Surface) Surface {
	out := Surface{Path: s.Path}
	whole, ok := m.measure(s.Part)
	var cutouts []surface.Measured
	for _, c := range s.Cutouts {
		cut, measured := m.cutout(c)
		if ok = ok && measured; measured {
			cutouts = append(cutouts, cut)
		}
	}
	if !ok {
		return out
	}
	total, err := surface.Total(whole, cutouts, s.Part.Count, s.Sides)
	if err != nil {
		m.surfaceError(s.Part, s.Cutouts, err)
		return out
	}
	out.Area, out.Edge, out.Notes, out.Known = total.Area, total.Edge, total.Notes, true
	m.askArea(s.Path, total.Area.Value)
	return out
}

// cutout measures a cut-out, as many as there are alike.
func (m *maker) cutout(c job.Part) (surface.Measured, bool) {
	one, ok := m.measure(c)
	if !ok {
		return one, false
	}
	all, err := surface.Total(one, nil, c.Count, oneSide)
	if err != nil {
		m.surfaceError(c, nil, err)
		return one, false
	}
	return all, true
}

var oneSide = working.Given(unit.Factor(1), "sides", unit.InPure, "", 0)

func (m *maker) measure(p job.Part) (surface.Measured, bool) {
	measured, err := p.Shape.Measure(p.Input)
	if err != nil {
		m.surfaceError(p, nil, err)
		return measured, false
	}
	return measured, true
}

// surfaceError puts a shape's error beside the field that it is about. What is
// missing is waited for, the rest is refused; a text that could not be read is
// refused already and isn't missing.
func (m *maker) surfaceError(p job.Part, cutouts []job.Part, err error) {
	var fault *surface.Error
	if !errors.As(err, &fault) {
		m.refuse(p.Path, err)
		return
	}
	path := p.FieldPath(fault.Dim, fault.Row)
	if fault.Dim == surface.CutOutsKey && fault.Row < len(cutouts) {
		path = cutouts[fault.Row].Path + ".shape"
	}
	switch {
	case at(m.plan.Refused, path) != nil:
	case fault.Reason == surface.Missing || fault.Reason == surface.TooFew:
		m.wait(path, err)
	default:
		m.refuse(path, err)
	}
}
