package schedule

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Masking is when the masking for a coat must be off again.
type Masking struct {
	Off    unit.Time // from today's midnight; zero: nothing is masked, or the card doesn't say
	IsHot  bool      // the surface gets so warm that it bakes on
	IsLate bool      // the coat isn't done by then: it is masked afresh before it
	IsLast bool      // the session's last coat: masking comes off after it
}

// mask finds by when masking must be off, session by session: the coats of a step
// until it is sanded back. It is put on before the first of them.
// Source: common practice, the tape's card.
func (s *scheduler) mask() {
	kept, isHot, known := MaskingKept(s.plan.Job.CardByKey("tape"), &s.today)
	if !known {
		return
	}
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

// MaskingKept is how long masking may stay on by the tape's card; on a day that
// bakes it on, the lesser of its two figures. It isn't known for a nil card, or one
// that doesn't say.
// Source: common practice, the tape's card.
func MaskingKept(tape *job.Card, today *Today) (kept unit.Time, isHot, known bool) {
	if tape == nil || !tape.KeptOn.Known {
		return 0, false, false
	}
	kept, isHot = tape.KeptOn.Value, today.Known && today.bakes()
	if isHot && tape.KeptOnHeat.Known {
		kept = min(kept, tape.KeptOnHeat.Value)
	}
	return kept, isHot, true
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
