package schedule

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Masking is when the masking for a coat must be off again.
type Masking struct {
	Off    unit.Time // from today's midnight; zero: nothing is masked
	IsHot  bool      // the surface gets so warm that it bakes on
	IsLate bool      // the coat isn't done by then: it is masked afresh before it
	IsLast bool      // the session's last coat: masking comes off after it
}

// mask finds by when masking must be off, session by session: the coats of a step
// until it is sanded back. It is put on before the first of them.
// Source: common practice, the tape's card.
func (s *scheduler) mask() {
	kept, isHot := MaskingKept(&s.plan.Job, &s.today)
	begun, last := map[*plan.Step]unit.Time{}, map[*plan.Step]int{}
	for i := range s.out.Works {
		w := &s.out.Works[i]
		switch w.Kind {
		case plan.LayCoat:
			from, isMasked := begun[w.Step]
			if !isMasked || w.To > from+kept { // baked on by then: masked afresh
				w.Masking.IsLate = isMasked
				from = w.From
				begun[w.Step] = from
			}
			w.Masking.Off, w.Masking.IsHot, w.Masking.IsLast = from+kept, isHot, true
			if before, isSecond := last[w.Step]; isSecond && !w.Masking.IsLate {
				s.out.Works[before].Masking.IsLast = false
			}
			last[w.Step] = i
		case plan.SandLayer: // sanded back between two sessions
			delete(begun, w.Step)
			delete(last, w.Step)
		}
	}
}

// MaskingKept is how long masking may stay on by the card of the tape, which is in
// every shed; on a day that bakes it on, the lesser of the card's two figures.
// Source: common practice, the tape's card.
func MaskingKept(j *job.Job, today *Today) (kept unit.Time, isHot bool) {
	tape := j.CardByKey("tape")
	if today.Known && today.bakes() {
		return min(tape.KeptOn.Value, tape.KeptOnHeat.Value), true
	}
	return tape.KeptOn.Value, false
}

// bakes says if the surface gets as warm in the day as bakes masking on.
func (t *Today) bakes() bool {
	for at := unit.Time(0); at < unit.Day; at += unit.Hour {
		if t.Day.Air(at)+unit.Temperature(t.Surface.By(t.Day, at).Most.Value) >= material.HotForMasking.Value {
			return true
		}
	}
	return false
}
