package page

import (
	"slices"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// elsewhere hears that another tab has kept something of a job, the one that is
// shown or the one behind it. Once that is a save, this tab keeps nothing of the job
// until the builder says which of the two goes on. Once it is a dropped permit,
// no dose is shown for that cup: the save that tells of its catalyst may never
// come.
func elsewhere(s *State, m Message) []Effect {
	for _, demo := range []bool{false, true} {
		slot := s.slot(demo)
		switch {
		case m.Path == permitKey(demo):
			slot.Doc = permitted(slot.Doc, m.Text)
			planAnew(s)
			return nil
		case slices.Contains(copiesOf(demo), m.Path):
			slot.hear(m.Text)
		}
	}
	if isAwayKey(m.Path) {
		heardAway(s, m.Path, m.Text)
	}
	return nil
}

// hear holds what another tab has kept against what is here.
func (slot *Slot) hear(text string) {
	doc, revision, err := job.Load(text)
	switch {
	case isNewer(err):
		slot.Ahead = true
	case err != nil:
	case len(job.Changes(slot.Doc, doc)) > 0:
		slot.Elsewhere, slot.IsLate = text, false
	default:
		slot.Elsewhere = ""
		slot.Revision = max(slot.Revision, revision)
	}
}

// takeTheirs shows the job as the other tab kept it. Cups that run here go on.
func takeTheirs(s *State, m Message) []Effect {
	slot := s.Slot()
	theirs, revision, err := job.Load(slot.Elsewhere)
	slot.Elsewhere = ""
	if err != nil {
		return nil
	}
	doc := withRunning(theirs, slot.Doc)
	*slot = Slot{Doc: theirs, Revision: max(revision, slot.Revision), Swapped: slot.Swapped, Stuck: slot.Stuck}
	var effects []Effect
	if len(job.Changes(theirs, doc)) > 0 {
		effects = putDoc(s, doc)
	}
	planAnew(s)
	return append(effects, clocksOf(s)...)
}

// keepMine keeps the job as it is here, over the other tab's. Cups that run
// there go on here too.
func keepMine(s *State, m Message) []Effect {
	slot := s.Slot()
	doc := slot.Doc
	var other []Effect
	if theirs, revision, err := job.Load(slot.Elsewhere); err == nil {
		slot.Revision = max(slot.Revision, revision)
		if number := theirs.Get(job.NumberPath); number != "" && number != doc.Get(job.NumberPath) {
			other = awayWith(s, number, theirs, revision) // another job, not another state of this one
		}
		doc = withRunning(besideOther(doc, theirs), theirs)
	}
	slot.Elsewhere = ""
	effects := append(other, putDoc(s, doc)...)
	return append(effects, clocksOf(s)...)
}

// withRunning is a document with every cup that runs in the other: its pot goes
// off whichever tab goes on.
func withRunning(d, other job.Document) job.Document {
	for _, cup := range OpenCups(other, Running) {
		to := cup
		switch {
		case sameCup(d, other, cup) && d.Get(cup+".in") != "":
			continue
		case !isCup(d, cup):
			list, id := job.Split(cup)
			d = d.Set(list, strings.TrimSpace(d.Get(list)+" "+id))
		case !sameCup(d, other, cup):
			d, to = d.Add("cup")
		}
		for _, line := range d.Under(to) {
			d = d.Set(line.Path, "")
		}
		for _, line := range other.Under(cup) {
			d = d.Set(to+strings.TrimPrefix(line.Path, cup), line.Text)
		}
	}
	return d
}

// sameCup reports whether a path names the same cup in both: they number theirs alike.
func sameCup(a, b job.Document, cup string) bool {
	return isCup(a, cup) && a.Get(cup+".weighed") == b.Get(cup+".weighed")
}

// clocksOf is what running cups want of the phone.
func clocksOf(s *State) []Effect {
	if len(OpenCups(s.Doc(), Running)) == 0 {
		return nil
	}
	return []Effect{{Kind: Timer, Key: "on"}, {Kind: Awake, Key: "on"}}
}

// newer hears that a newer version of the page is kept and waits.
func newer(s *State, m Message) []Effect {
	s.Newer = true
	return nil
}

// switchVersion goes to the newer version, but never under an open cup.
func switchVersion(s *State, m Message) []Effect {
	if hasOpenCup(s.Own.Doc) || hasOpenCup(s.Demo.Doc) {
		s.Notice = words.ReloadAfterCup
		return nil
	}
	return []Effect{{Kind: Switch}}
}
