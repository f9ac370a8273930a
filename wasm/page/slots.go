package page

import (
	"slices"

	"shedreckoner/calc/job"
)

// Slots is the builder's job and the made-up one, of which one is shown.
type Slots struct {
	Own, Demo Slot
	InDemo    bool // the made-up job is shown; the builder's own waits untouched
}

// Slot is a job with its history.
type Slot struct {
	Doc        job.Document
	Revision   int
	Swapped    bool           // its two copies stand in each other's places
	Undo, Redo [][]job.Change // the latest last
	LastPath   string         // the field that the latest change typed in
	Elsewhere  string         // the job as another tab has kept it, or as it came late; empty: none did
	IsLate     bool           // Elsewhere came late from the durable store
	Ahead      bool           // what is kept of it was saved by a newer version of the page
	Stuck      []Effect       // what a full store didn't set aside; no save goes over it
}

// Slot gives the job that is shown.
func (s *Slots) Slot() *Slot { return s.slot(s.InDemo) }

func (s *Slots) slot(demo bool) *Slot {
	if demo {
		return &s.Demo
	}
	return &s.Own
}

// Doc gives the document that is shown. (By a pointer: a state is thousands of
// bytes, and the views ask hundreds of times.)
func (s *Slots) Doc() job.Document { return s.Slot().Doc }

// IsStuck reports whether something spoilt stands in the way of saves.
func (s *Slots) IsStuck() bool { return len(s.Own.Stuck)+len(s.Demo.Stuck) > 0 }

// stuck notes what the store didn't set aside.
func (s *Slots) stuck(demo bool, aside Effect) {
	slot := s.slot(demo)
	if !slices.Contains(slot.Stuck, aside) {
		slot.Stuck = append(slices.Clone(slot.Stuck), aside)
	}
}

// IsKeptByNewer reports whether a newer version of the page has kept what stands in the store.
func (s *Slots) IsKeptByNewer() bool { return s.Own.Ahead || s.Demo.Ahead }
