package chance

import (
	"slices"

	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// coating is where an entry was put on, what combs were read on: its film, and what
// of the planned that film alone takes.
type coating struct {
	step     string
	surfaces []string
	each     working.Figure[unit.WetFilm]
	filmOnly unit.Mass
}

// compare compares what was used with what was planned, and says why an entry
// doesn't count. The figure typed at the path is asked about where the two are far
// apart.
func (m *learner) compare(e *LessonEntry, c coating, path string, band *plan.Band) {
	if e.Planned.Value <= 0 {
		e.Err = ErrNoPlanned
		return
	}
	hasComb := m.byComb(c, e)
	e.Ratio = unit.Factor(e.Used.Value / e.Planned.Value)
	ask, isAsked := m.plan.Question(path, band, float64(e.Ratio))
	if isAsked {
		m.out.Asks = append(m.out.Asks, ask)
	}
	_, e.Err = order.Learn(order.Belief{SD: 1}, []order.Entry{{Used: e.Used.Value, Planned: e.Planned.Value, FilmOnly: c.filmOnly, HasComb: hasComb, SD: 1}})
	if e.Err == nil && isAsked {
		e.Err = ErrUnlikely
	}
}

// usedOn is what was put on: as typed, or by the cups that went on.
func (m *learner) usedOn(f *job.Finished) (working.Figure[unit.Mass], error) {
	if f.Used.Step != nil {
		return f.Used, nil
	}
	var cups []working.Figure[unit.Mass]
	for _, path := range f.Cups {
		c := m.plan.Job.CupByPath(path)
		on, known := m.plan.PutOn(path)
		if c == nil || !known && c.In == 0 {
			continue // removed since, or never got its catalyst
		}
		if !known {
			return working.Figure[unit.Mass]{}, ErrLeftOpen
		}
		cups = append(cups, on)
	}
	if sum := working.Sum(plan.PutOnSum, cups...); sum.Value > 0 {
		return sum, nil
	}
	return working.Figure[unit.Mass]{}, ErrNoUse
}

// byComb plans an entry again for the film that a comb showed on its surfaces, and
// says if there was one.
func (m *learner) byComb(on coating, e *LessonEntry) bool {
	step := m.jobStep(on.step)
	if step == nil {
		return false
	}
	var sum unit.WetFilm
	var from []*working.Step
	for _, c := range step.Combs {
		if c.Surface != "" && !slices.Contains(on.surfaces, c.Surface) || c.FirstDry.Value <= c.LastWet.Value {
			continue
		}
		if mid, err := film.CombMid.Figure(c.LastWet, c.FirstDry); err == nil {
			sum += mid.Value
			from = append(from, mid.Step)
		}
	}
	if len(from) == 0 {
		return false
	}
	read := working.By(combMean, sum/unit.WetFilm(len(from)), from...)
	planned, err := plannedByComb.Figure(e.Planned, read, on.each)
	if err == nil {
		e.Planned = planned
	}
	return err == nil
}

func (m *learner) jobStep(path string) *job.Step {
	for i := range m.plan.Job.Buildups {
		b := &m.plan.Job.Buildups[i]
		for j := range b.Steps {
			if b.Steps[j].Path == path {
				return &b.Steps[j]
			}
		}
	}
	return nil
}
