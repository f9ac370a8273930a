package plan

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Removals is the removals that the builder measured, worked out.
func (p *Plan) Removals() []Removal { return p.removals().list }

// ownRemovals is the removals that the builder measured, and the one that counts
// for each grade: of two, the later.
type ownRemovals struct {
	list []Removal
	of   map[sanding.Grade]working.Figure[unit.DryFilm]
}

func (p *Plan) removals() ownRemovals {
	return ask(p, "removals", func(m *maker) ownRemovals {
		own := ownRemovals{of: map[sanding.Grade]working.Figure[unit.DryFilm]{}}
		typed := m.job("removal").Removals
		for i := range typed {
			r := &typed[i]
			takes, ok := m.removal(r)
			own.list = append(own.list, Removal{r.Path, r.Grade, takes})
			if ok && r.Grade > 0 {
				own.of[r.Grade] = takes
			}
		}
		return own
	})
}

// Removal is a measured removal, worked out; Takes without a step: not yet.
type Removal struct {
	Path  string
	Grade sanding.Grade
	Takes working.Figure[unit.DryFilm]
}

func (m *maker) removal(r *job.Removal) (own working.Figure[unit.DryFilm], ok bool) {
	var err error
	field := "after"
	switch r.Way {
	case job.Directly:
		return r.Direct, m.needsTyped(r.Path, "takes", r.Direct.Step)
	case job.Gauged:
		field = "read-after"
		if !m.needsTyped(r.Path, "read-before", r.ReadBefore.Step) || !m.needsTyped(r.Path, "read-after", r.ReadAfter.Step) || !m.needsTyped(r.Path, "gauge-step", r.GaugeStep.Step) {
			return own, false
		}
		own, err = sanding.Gauged(r.ReadBefore, r.ReadAfter, r.GaugeStep.Value)
	default:
		if !m.needsTyped(r.Path, "before", r.Before.Step) || !m.needsTyped(r.Path, "after", r.After.Step) || !m.needsTyped(r.Path, "area", r.Area.Step) || !m.needsTyped(r.Path, "scale-step", r.ScaleStep.Step) {
			return own, false
		}
		density := r.Density
		if density.Step == nil {
			gelcoat, _ := material.Find("gelcoat")
			density = working.Given(gelcoat.CuredDensity.Value, "density once cured", unit.InKilogramPerLitre, gelcoat.Name, gelcoat.CuredDensity.Mark)
		}
		own, err = sanding.Weighed(r.Before, r.After, r.Area, density, r.ScaleStep.Value)
	}
	if err != nil {
		m.refuse(r.Path+"."+field, err)
	}
	return own, err == nil
}

// needsTyped says if a figure of an item was typed; if not it is waited for, unless
// it is refused already.
func (m *maker) needsTyped(path, key string, step *working.Step) bool {
	if step == nil && !m.isRefused(path+"."+key) {
		m.wait(path+"."+key, ErrMissing)
	}
	return step != nil
}
