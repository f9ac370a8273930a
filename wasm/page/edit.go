package page

import (
	"slices"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// maxKept leaves room in a job for the cups that are logged without an edit:
// what can't be read back must never be written.
const maxKept = job.MaxSaved - 256<<10

// maxUndo is how many changes can be taken back.
const maxUndo = 200

// edit puts a changed document in place: into the history, the plan and the
// store. Keys typed in one field, one after another, are one change. A job that
// came in larger than an edit may make one can still be made smaller.
func edit(s *State, doc job.Document, path string, more ...Effect) []Effect {
	switch size := sizeOf(s, doc); {
	case size < maxKept-1<<10:
		doc = workedOn(s, doc)
	case size > maxKept && size > sizeOf(s, s.Doc()):
		s.Notice = words.TooMuchTyped
		return nil
	}
	return changeTo(s, doc, path, more...)
}

// workedOn notes with the first change of a day that the job was worked on.
func workedOn(s *State, doc job.Document) job.Document {
	today := s.Now.Date
	if s.InDemo || today == "" || doc.Get(job.WorkedPath) == today || len(job.Changes(s.Doc(), doc)) == 0 || job.IsBlank(doc) {
		return doc
	}
	return doc.Set(job.WorkedPath, today)
}

// sizeOf is how much a document takes once it is kept.
func sizeOf(s *State, doc job.Document) int { return job.SavedSize(doc, s.Slot().Revision+1) }

// changeTo is edit for what is known to have room.
func changeTo(s *State, doc job.Document, path string, more ...Effect) []Effect {
	slot := s.Slot()
	doc = begun(s, doc)
	changes := job.Changes(slot.Doc, doc)
	if len(changes) == 0 {
		return nil
	}
	undo := slot.Undo
	if n := len(undo); path != "" && path == slot.LastPath && n > 0 { // one more key in the same field
		changes, undo = job.JoinChanges(undo[n-1], changes), undo[:n-1]
	}
	undo = append(undo[:len(undo):len(undo)], changes)
	slot.Undo = undo[max(0, len(undo)-maxUndo):]
	slot.Redo, slot.LastPath = nil, path
	return putDoc(s, doc, more...)
}

// putDoc shows a document: plans it and keeps it.
func putDoc(s *State, doc job.Document, more ...Effect) []Effect {
	slot := s.Slot()
	slot.Doc = doc
	planAnew(s)
	switch {
	case slot.Elsewhere != "": // another tab has kept this job: neither overwrites the other unasked
		return more
	case len(slot.Stuck) > 0: // perhaps there is room by now
		return append(slices.Clone(slot.Stuck), more...)
	}
	effects := savesOf(s, s.InDemo)
	if !s.Persistent {
		s.Persistent = true
		effects = append(effects, Effect{Kind: Persist})
	}
	return append(effects, more...)
}

// planAnew makes the plan of what is typed, as far as it goes: no figure is older
// than its text. What depends on a text that can't be read isn't known.
func planAnew(s *State) {
	s.Plan = s.Plan.Next(s.Doc())
	swept(s)
	s.Confidence = Confidence{}
}

// BenchNow is the moment that the bench is planned for.
func (s *State) BenchNow() bench.Now {
	return bench.Now{Hour: unit.Time(s.Now.Day), Date: s.Now.Date, Unix: float64(s.Now.Unix)}
}

func undo(s *State, m Message) []Effect {
	slot := s.Slot()
	return rewind(s, &slot.Undo, &slot.Redo, slot.Doc.Undo)
}

func redo(s *State, m Message) []Effect {
	slot := s.Slot()
	return rewind(s, &slot.Redo, &slot.Undo, slot.Doc.Redo)
}

// rewind takes the latest of one history over to the other.
func rewind(s *State, from, to *[][]job.Change, apply func([]job.Change) job.Document) []Effect {
	slot, n := s.Slot(), len(*from)
	if n == 0 || slot.cupsInTheWay((*from)[n-1]) {
		cupFirst(s, n)
		return nil
	}
	changes := (*from)[n-1]
	*from = (*from)[:n-1]
	*to = append((*to)[:len(*to):len(*to)], changes)
	slot.LastPath = ""
	return putDoc(s, slot.rewound(changes, apply(changes)))
}
