package page

import "shedreckoner/calc/job"

// elsewhere hears that another tab has kept this job. From then on this tab
// keeps nothing until the builder says which of the two goes on.
func elsewhere(s State, m Message) (State, []Effect) {
	for _, key := range copies(s.InDemo) {
		if m.Path != key {
			continue
		}
		doc, revision, err := job.Load(m.Text)
		if err == nil && revision >= s.Slot().Revision && len(job.Changes(s.Doc(), doc)) > 0 {
			s.Elsewhere = m.Text
		}
	}
	return s, nil
}

// takeTheirs shows the job as the other tab kept it.
func takeTheirs(s State, m Message) (State, []Effect) {
	doc, revision, err := job.Load(s.Elsewhere)
	s.Elsewhere = ""
	if err != nil {
		return s, nil
	}
	*s.Slot() = Slot{Doc: doc, Revision: revision, Swapped: s.Slot().Swapped}
	return s.replanned(), nil
}

// keepMine keeps the job as it is here, over the other tab's.
func keepMine(s State, m Message) (State, []Effect) {
	doc := s.Doc()
	if theirs, revision, err := job.Load(s.Elsewhere); err == nil {
		s.Slot().Revision = max(s.Slot().Revision, revision)
		doc = besideOther(doc, theirs)
	}
	s.Elsewhere = ""
	return s.put(doc)
}

// newer hears that a newer version of the page is kept and waits.
func newer(s State, m Message) (State, []Effect) {
	s.Newer = true
	return s, nil
}

// switchVersion goes to the newer version, but never under an open cup.
func switchVersion(s State, m Message) (State, []Effect) {
	if hasOpenCup(s.Own.Doc) || hasOpenCup(s.Demo.Doc) {
		s.Notice = "A cup is open. End it first: the page reloads for the newer version."
		return s, nil
	}
	return s, []Effect{{Kind: Switch}}
}
