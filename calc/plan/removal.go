package plan

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// removals works out the builder's own removals, by grade; of two the later
// counts.
func (m *maker) removals() {
	m.own = map[sanding.Grade]working.Figure[unit.DryFilm]{}
	for i := range m.plan.Job.Removals {
		r := &m.plan.Job.Removals[i]
		own, ok := m.removal(r)
		m.plan.Removals = append(m.plan.Removals, Removal{r.Path, r.Grade, own})
		if ok && r.Grade > 0 {
			m.own[r.Grade] = own
		}
	}
}

// Removal is an own removal worked out; without a step: not yet.
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
		return r.Direct, m.typed(r.Path, "takes", r.Direct.Step)
	case job.Gauged:
		field = "read-after"
		if !m.typed(r.Path, "read-before", r.ReadBefore.Step) || !m.typed(r.Path, "read-after", r.ReadAfter.Step) || !m.typed(r.Path, "gauge-step", r.GaugeStep.Step) {
			return own, false
		}
		own, err = sanding.Gauged(r.ReadBefore, r.ReadAfter, r.GaugeStep.Value)
	default:
		if !m.typed(r.Path, "before", r.Before.Step) || !m.typed(r.Path, "after", r.After.Step) || !m.typed(r.Path, "area", r.Area.Step) || !m.typed(r.Path, "scale-step", r.ScaleStep.Step) {
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

// typed says if a figure of an item was typed; if not it is waited for, unless
// it is refused already.
func (m *maker) typed(path, key string, step *working.Step) bool {
	if step == nil && at(m.plan.Refused, path+"."+key) == nil {
		m.wait(path+"."+key, ErrMissing)
	}
	return step != nil
}
