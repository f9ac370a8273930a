package page

import (
	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// The durable store may come so late that the page has started from the quick one
// alone. What it holds may be newer than what the page started from: the quick
// store loses its last seconds with the whole browser.

// Late hears what both stores held at the start, once the durable one has come. A
// job that it has newer is shown at once where nothing was changed meanwhile;
// otherwise what was changed is kept, and the builder asked. It gives no dose: its
// catalyst may be in.
func Late(before *State, quick, durable map[string]string) (*State, []Effect) {
	next := *before
	s := &next
	s.Behind = false
	var effects []Effect
	for _, demo := range []bool{false, true} {
		effects = append(effects, lateJob(s, demo, quick, durable)...)
	}
	for key, text := range durable {
		if isAwayKey(key) && s.Away[key] == quick[key] && standing(text) > standing(quick[key]) {
			heardAway(s, key, text)
		}
	}
	planAnew(s)
	return s, untouched(s, confident(s, append(effects, clocksOf(s)...)))
}

// lateJob is Late for one of the two jobs.
func lateJob(s *State, demo bool, quick, durable map[string]string) []Effect {
	slot := s.slot(demo)
	started, _ := load(quick, copies(demo), nil)
	late, _ := load(durable, copies(demo), nil)
	slot.Ahead = slot.Ahead || late.Ahead
	if late.Revision <= started.Revision || slot.Elsewhere != "" || len(slot.Stuck) > 0 {
		return nil
	}
	theirs := permitted(late.Doc, "")
	isChanged := slot.Revision > started.Revision
	slot.Revision = max(slot.Revision, late.Revision)
	switch {
	case len(job.Changes(slot.Doc, theirs)) == 0, isChanged && demo:
	case isChanged:
		effects := savesOf(s, demo)
		slot.Elsewhere, slot.IsLate = job.Save(theirs, late.Revision), true
		return effects
	default:
		late = loadHistory(late, durable[historyKey(demo)])
		slot.Doc, slot.Undo, slot.Redo, slot.LastPath = withRunning(theirs, slot.Doc), late.Undo, late.Redo, ""
		if demo == s.InDemo {
			s.Notice = words.CameLate
		}
	}
	return savesOf(s, demo)
}
