package page

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// Phase is how far a cup has come.
type Phase int

// The phases. A cup goes through them once, in this order: its dose is shown only
// in Weighed.
const (
	Weighed Phase = iota // resin weighed, no catalyst yet
	Running              // catalyst in
	Ended                // spread, gelled or scrapped
)

// CupPhase gives the phase of a cup in the document.
func CupPhase(d job.Document, path string) Phase {
	switch {
	case d.Get(path+".ended") != "":
		return Ended
	case d.Get(path+".in") != "":
		return Running
	}
	return Weighed
}

// OpenCups are the paths of the cups in a phase, the oldest first.
func OpenCups(d job.Document, phase Phase) []string {
	var list []string
	for _, id := range d.Items("cup") {
		if path := "cup." + id; CupPhase(d, path) == phase {
			list = append(list, path)
		}
	}
	return list
}

// hasOpenCup reports whether a cup is weighed or running.
func hasOpenCup(d job.Document) bool {
	return len(OpenCups(d, Weighed))+len(OpenCups(d, Running)) > 0
}

// weighed takes down what is in the cup as it was weighed: a new cup, or the one
// that waits for its catalyst, weighed again.
func weighed(s *State, m Message) []Effect {
	b := s.Bench()
	isTest := s.Sheet() == WeighTestSheet && !b.IsRatio // a fixed ratio has no dose to time
	if !b.HasDose && !b.HasParts && !(isTest && s.TestWay() != nil) {
		return nil
	}
	if s.Slot().Elsewhere != "" {
		s.Notice = words.ChooseATabFirst
		return nil
	}
	doc, path := s.Doc(), ""
	if open := OpenCups(doc, Weighed); len(open) > 0 {
		if path = open[0]; doc.Get(path+".card") != b.Card.Key {
			return nil
		}
	} else {
		if len(doc.Items("cup")) >= job.ListAt("cup").Max {
			s.Notice = words.LogFull
			return nil
		}
		doc, path = doc.Add("cup")
		doc = doc.Set(path+".weighed", strconv.FormatInt(s.Now.Unix, 10)).Set(path+".hour", strconv.Itoa(s.Now.Day)).Set(path+".amount-was", doc.Get(job.BenchPath+".amount"))
	}
	if doc = takenDown(s, doc, path); isTest {
		doc = testDown(s, doc, path)
	}
	for _, key := range []string{"surface", "product"} { // a jump from here is asked about
		doc = doc.Set(job.BenchPath+"."+key+"-was", s.Doc().Get(job.BenchPath+"."+key+"-temp"))
	}
	if sizeOf(s, doc) > job.MaxSaved-roomForCup {
		s.Notice = words.LogFull
		return nil
	}
	s.raise(CatalystSheet)
	return record(s, doc, keepPermit(s, doc, path), Effect{Kind: Focus, Key: SheetHeading})
}

// roomForCup is kept free for what a weighed cup still gets: its start, dose, end.
const roomForCup = 4 << 10

// record stores what happened to a cup. It is no edit: undo doesn't reach it, so
// that no dose can come back; nor does undo go back to a list of cups without
// this one.
func record(s *State, doc job.Document, more ...Effect) []Effect {
	slot := s.Slot()
	slot.LastPath = ""
	slot.Undo, slot.Redo = sinceCups(slot.Undo), sinceCups(slot.Redo)
	return putDoc(s, doc, more...)
}

// sinceCups is the history after the last change of the list of cups.
func sinceCups(history [][]job.Change) [][]job.Change {
	for i := len(history) - 1; i >= 0; i-- {
		if slices.ContainsFunc(history[i], func(c job.Change) bool { return c.Path == "cup" }) {
			return history[i+1:]
		}
	}
	return history
}

// catalystIn starts the clock of the weighed cup; its dose is gone from here on.
func catalystIn(s *State, m Message) []Effect {
	if CupPhase(s.Doc(), m.Path) != Weighed || !mayDose(s, m.Path) {
		return nil
	}
	doc := s.Doc().Set(m.Path+".in", strconv.FormatInt(s.Now.Unix, 10))
	doc = catalystDown(s, doc, m.Path)
	if p := s.PourFor(m.Path); p != nil && !s.Bench().IsRatio {
		doc = doc.Set(m.Path+".dose", pourText(p))
	}
	doc = doc.Set(job.BenchPath+".amount", doc.Get(m.Path+".amount-was")) // the next cup is proposed anew, or as it was typed
	stepsDone(s)
	inFront(s, m.Path)
	effects := record(s, doc, Effect{Kind: Focus, Key: "heading"}, Effect{Kind: Awake, Key: "on"}, Effect{Kind: Timer, Key: "on"})
	effects = append(effects, Effect{Kind: Say, Text: s.Local(inWords(s, m.Path))})
	return append(append([]Effect{dropPermit(s)}, effects...), Effect{Kind: Settle})
}

// pourText is a dose as the log keeps it: grams, then millilitres where both are known.
func pourText(p *bench.Pour) string {
	switch {
	case p.Other.Scale == unit.NoScale:
		return p.Amount.String()
	case p.Amount.Scale == unit.InGram:
		return p.Amount.String() + " (" + p.Other.String() + ")"
	}
	return p.Other.String() + " (" + p.Amount.String() + ")"
}

// mayDose reports whether the bench is still as it was when the cup was weighed:
// only then may its dose be shown.
func mayDose(s *State, cup string) bool {
	b, d := s.Bench(), s.Doc()
	if s.Slot().Elsewhere != "" || CupPhase(d, cup) != Weighed || b.Card == nil || b.Card.Key != d.Get(cup+".card") {
		return false
	}
	whole, has := b.Whole.Value, b.HasDose || b.HasParts
	if w := s.TestWay(); w != nil && IsTestCup(d, cup) {
		whole, has = w.Mass.Value, true
	}
	return has && gramText(whole) == d.Get(cup+".mixed")
}

// DoseFor reports whether a dose may be shown, and for which cup: "" for the next one,
// before anything is weighed. None is while another tab may have dosed the cup.
func (s *State) DoseFor() (cup string, may bool) {
	if open := OpenCups(s.Doc(), Weighed); len(open) > 0 {
		return open[0], mayDose(s, open[0])
	}
	return "", s.Slot().Elsewhere == "" && (s.Bench().HasDose || s.Bench().HasParts)
}

// How a cup can end, by the message's text. Where some is left, how much is asked.
var ends = map[string]string{
	"spread":  job.EndSpread,
	"left":    job.EndSpread,
	"gelled":  job.EndGelled,
	"scrap":   job.EndScrapped,
	"no-cure": job.EndNoCure,
}

// endCup ends a cup, in any phase before.
func endCup(s *State, m Message) []Effect {
	how, known := ends[m.Text]
	if !known || !isCup(s.Doc(), m.Path) || CupPhase(s.Doc(), m.Path) == Ended {
		return nil
	}
	doc := s.Doc().Set(m.Path+".ended", strconv.FormatInt(s.Now.Unix, 10)).Set(m.Path+".end", how)
	focus := Effect{Kind: Focus, Key: "heading"}
	if t := s.TimesOf(m.Path); CupPhase(s.Doc(), m.Path) == Running && m.Text == "gelled" && !t.IsUnknown {
		doc = doc.Set(m.Path+".gel", unit.Number(t.Since/60, 3)+" min")
	}
	switch {
	case s.Doc().Get(m.Path+".kind") == job.TestCup:
		doc = doc.Set(m.Path+".left", doc.Get(m.Path+".mixed"))
		doc = testTaken(s, doc, m.Path)
	case m.Text == "left" || m.Text == "gelled" || m.Text == "no-cure":
		s.opened(m.Path)
		focus.Key = "left-" + m.Path
	}
	if CupPhase(s.Doc(), m.Path) == Weighed {
		doc = doc.Set(job.BenchPath+".amount", doc.Get(m.Path+".amount-was"))
	}
	effects := record(s, doc, focus)
	if len(OpenCups(s.Doc(), Running)) == 0 {
		effects = append(effects, Effect{Kind: Awake, Key: "off"}, Effect{Kind: Timer, Key: "off"})
	}
	return effects
}

func isCup(d job.Document, path string) bool {
	for _, id := range d.Items("cup") {
		if path == "cup."+id {
			return true
		}
	}
	return false
}

func cardName(s *State, key string) string {
	if c := s.Plan.Job.CardByKey(key); c != nil {
		return c.Name
	}
	return "Cup"
}

// readings is what is read anew every day, by where its day is noted.
var readings = map[string][]string{
	job.BenchPath + ".read-on": {job.BenchPath + ".product-temp", job.BenchPath + ".surface-temp", job.BenchPath + ".ahead"},
	job.DayPath + ".date":      {job.DayPath + ".low", job.DayPath + ".high", job.DayPath + ".read-temp", job.DayPath + ".read-humidity"},
}

// noted adds to a typed reading the day and hour at which it was typed: a dose
// never rests on yesterday's. The first reading of a day puts away the older
// ones beside it.
func noted(s *State, doc job.Document, path string) job.Document {
	for date, group := range readings {
		if !slices.Contains(group, path) {
			continue
		}
		for _, other := range group {
			if other != path && doc.Get(date) != s.Now.Date {
				doc = doc.Set(other, "")
			}
		}
		doc = doc.Set(date, s.Now.Date)
	}
	if path == job.DayPath+".read-temp" || path == job.DayPath+".read-humidity" {
		doc = doc.Set(job.DayPath+".read-at", words.Clock(s.Now.Day))
	}
	if path == job.BenchPath+".surface-temp" {
		doc = doc.Set(job.BenchPath+".read-at", words.Clock(s.Now.Day))
	}
	return counted(doc, path)
}

// stillCups ends every cup that a file, a link or an undone import brings in
// unfinished: nobody stands beside it, and its dose must not be shown again.
func stillCups(d job.Document) job.Document {
	for _, id := range d.Items("cup") {
		if path := "cup." + id; CupPhase(d, path) != Ended {
			d = d.Set(path+".ended", "0").Set(path+".end", job.EndInFile)
		}
	}
	return d
}

// IsCup reports whether a path belongs to the cups, which have verbs of their own.
func IsCup(path string) bool { return path == "cup" || strings.HasPrefix(path, "cup.") }

// cupsInTheWay reports whether a change can't be taken back or made again now, because
// it reaches into the cups while one of them is open.
func (slot *Slot) cupsInTheWay(changes []job.Change) bool {
	return touchesCups(changes) && hasOpenCup(slot.Doc)
}

func touchesCups(changes []job.Change) bool {
	return slices.ContainsFunc(changes, func(c job.Change) bool { return IsCup(c.Path) })
}

// rewound is a document after undo or redo: cups that it brings back are ended.
func (slot *Slot) rewound(changes []job.Change, doc job.Document) job.Document {
	if touchesCups(changes) {
		return stillCups(doc)
	}
	return doc
}

// cupFirst tells why nothing was undone, if there was something to undo.
func cupFirst(s *State, n int) {
	if n > 0 {
		s.Notice = words.EndTheCupFirst
	}
}

// cupOf gives the cup that a path lies under.
func cupOf(path string) string {
	parts := strings.SplitN(path, ".", 3)
	return strings.Join(parts[:min(2, len(parts))], ".")
}
