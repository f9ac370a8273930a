package plan

import (
	"errors"
	"strings"

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

// Surfaces is the surfaces measured, in their order.
func (p *Plan) Surfaces() []Surface {
	return ask(p, "surfaces", func(m *maker) []Surface {
		typed := m.surfaces()
		list := make([]Surface, len(typed))
		for i, s := range typed {
			list[i] = m.plan.measured(s)
		}
		return list
	})
}

// Surface is the surface with the path; a zero one where there is none.
func (p *Plan) Surface(path string) Surface {
	for _, s := range p.Job.Surfaces {
		if s.Path == path {
			return p.measured(s)
		}
	}
	return Surface{}
}

func (p *Plan) measured(s *job.Surface) Surface {
	return ask(p, s.Path, func(m *maker) Surface {
		m.look(s.Path)
		return m.surface(s)
	})
}

// surfacesOn lists the paths of the surfaces that get a build-up, one after another.
func surfacesOn(p *Plan, buildup string) string {
	return askSmall(p, "surfaces on "+buildup, func(m *maker) string {
		var list []string
		for _, s := range m.surfaces() {
			m.look(s.Path + ".buildup")
			if s.Buildup == buildup {
				list = append(list, s.Path)
			}
		}
		return strings.Join(list, " ")
	})
}

// typedOn gives the surfaces that get a build-up, as they were typed. Their
// contents must be looked at part by part.
func (m *maker) typedOn(buildup string) []*job.Surface {
	paths := strings.Fields(surfacesOn(m.plan, buildup))
	list := make([]*job.Surface, 0, len(paths))
	for _, s := range m.surfaces() {
		if len(list) < len(paths) && s.Path == paths[len(list)] {
			list = append(list, s)
		}
	}
	return list
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

// cutout measures a cut-out, times the number of such cut-outs.
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

// surfaceError reports a shape's error at the field that it is about. What is
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
	case m.isRefused(path):
	case fault.Reason == surface.Missing || fault.Reason == surface.TooFew:
		m.wait(path, err)
	default:
		m.refuse(path, err)
	}
}
