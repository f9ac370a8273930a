package plan

import (
	"slices"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/film"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// measuredOn lists the surfaces on which films were measured, the whole
// build-up first.
func measuredOn(b *job.Buildup) []string {
	list := []string{""}
	add := func(surface string) {
		if !slices.Contains(list, surface) {
			list = append(list, surface)
		}
	}
	for _, s := range b.Steps {
		for _, c := range s.Combs {
			add(c.Surface)
		}
		for _, w := range s.Witnesses {
			add(w.Surface)
		}
	}
	return list
}

// asMeasured replaces what was planned by what was measured on the surface, or on
// no surface in particular.
func (m coater) asMeasured(planned []buildup.Step, steps []Step, surface string) ([]buildup.Step, bool) {
	list, ok := slices.Clone(planned), true
	for i := range steps {
		s := &steps[i]
		if combs, good := m.combs(s, surface); !good {
			ok = false
		} else if len(combs) > 0 {
			measured, err := buildup.Measure(combs)
			if ok = ok && m.accepts(s.Path+".comb", err); err == nil {
				var q chain.Run
				measured.Mean = chain.Do2(&q, coatsAsRead, s.Coat.Coats, measured.Mean)
				list[i].Film = list[i].Film.AsCoated(measured)
			}
		}
		if found := witnesses(s, surface); len(found) > 0 {
			measured, err := buildup.Measure(found)
			if ok = ok && m.accepts(s.Path+".witness", err); err == nil {
				list[i].Film = list[i].Film.AsFound(measured, plannedCV(planned[:i+1]))
			}
		}
	}
	return list, ok
}

func (m coater) accepts(path string, err error) bool {
	if err != nil && !m.isRefused(path) {
		m.refuse(path, err)
	}
	return err == nil
}

// plannedCV is the spread of the latest coat.
func plannedCV(steps []buildup.Step) working.Figure[unit.Share] {
	for i := len(steps) - 1; i >= 0; i-- {
		if cv := steps[i].Film.AddsCV; cv.Step != nil {
			return cv
		}
	}
	return working.Given(unit.Share(0.2), "unevenness of the film, sd ÷ mean", unit.InPercent, "no coat below it", source.Assumption)
}

// combs gives what the combs read on a surface will cure to.
func (m coater) combs(s *Step, surface string) (list []working.Figure[unit.DryFilm], ok bool) {
	if s.Coat == nil {
		return nil, true
	}
	for i, c := range s.Job.Combs {
		if c.Surface != "" && c.Surface != surface {
			continue
		}
		if !m.typedOnce(c.Path, "last-wet", c.LastWet.Step) || !m.typedOnce(c.Path, "first-dry", c.FirstDry.Step) {
			continue
		}
		read, err := s.Comb(i)
		if !m.accepts(c.Path+".first-dry", err) {
			return nil, false
		}
		list = append(list, read.CuresTo)
	}
	return list, true
}

// Comb is what a comb reading of a coat says: the films that it is between, wet and
// once cured, and what is missing from the planned film. Both teeth must have been
// typed, and the coat be known. Errors: *film.CombError, *working.RangeError.
func (s *Step) Comb(at int) (film.CombReading, error) {
	c := s.Job.Combs[at]
	return film.Comb{LastWet: c.LastWet, FirstDry: c.FirstDry}.Read(s.Coat.WetEach, s.Coat.CuredShare)
}

// typedOnce waits once for a figure that several surfaces may need.
func (m coater) typedOnce(path, key string, step *working.Step) bool {
	return step != nil || at(m.answer.notes.waiting, path+"."+key) == nil && m.needsTyped(path, key, step)
}

func witnesses(s *Step, surface string) []working.Figure[unit.DryFilm] {
	var list []working.Figure[unit.DryFilm]
	for _, w := range s.Job.Witnesses {
		if w.Film.Step != nil && (w.Surface == "" || w.Surface == surface) {
			list = append(list, w.Film)
		}
	}
	return list
}
