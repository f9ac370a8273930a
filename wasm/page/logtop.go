package page

import (
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// StepsDone counts the steps of the build-ups that surfaces get, and gives the
// path of the first that isn't done; "" where all are.
func (s *State) StepsDone() (done, all int, first string) {
	for i := range s.Plan.Buildups() {
		b := &s.Plan.Buildups()[i]
		if len(b.Surfaces) == 0 {
			continue
		}
		for j := range b.Steps {
			all++
			switch {
			case b.Steps[j].Progress.IsDone():
				done++
			case first == "":
				first = b.Steps[j].Path
			}
		}
	}
	return done, all, first
}

// Due is what must be done by a moment.
type Due struct{ Name, When string }

// MaskingDue is by when the masking of steps that are begun must be off: the tape's
// days, in heat the fewer, from the first of their cups.
func (s *State) MaskingDue() []Due {
	if s.Now.Unix == 0 {
		return nil
	}
	today := todayOf(s)
	kept, _ := schedule.MaskingKept(&s.Plan.Job, &today)
	var list []Due
	for i := range s.Plan.Buildups() {
		for j := range s.Plan.Buildups()[i].Steps {
			step := &s.Plan.Buildups()[i].Steps[j]
			if step.Coat == nil || step.Progress.IsDone() {
				continue
			}
			if began := firstCup(s, step.Progress.Cups); began > 0 {
				off := unit.Time(began-float64(s.Now.Unix)+float64(s.Now.Day)) + kept
				list = append(list, Due{s.StepName(step.Path), words.Moment(off, s.Now.Date)})
			}
		}
	}
	return list
}

// firstCup is when the first of the cups got its catalyst; zero where none did.
func firstCup(s *State, paths []string) float64 {
	first := 0.
	for _, path := range paths {
		if c := s.Plan.Job.CupByPath(path); c != nil && c.In > 0 && (first == 0 || c.In < first) {
			first = c.In
		}
	}
	return first
}
