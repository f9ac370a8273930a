package page

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// Moment is a time by the shed's own clock. It comes with a message.
type Moment struct {
	Unix int64  // seconds since 1970
	Day  int    // seconds since the shed's midnight
	Date string // "2026-05-01"
}

func (m Moment) minute() int64 { return m.Unix / 60 }

// Phase is how far a cup has come.
type Phase int

// The phases. A cup goes through them once, in this order: its dose is shown in
// Weighed alone.
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

// hasOpenCup says if a cup is weighed or running.
func hasOpenCup(d job.Document) bool {
	return len(OpenCups(d, Weighed))+len(OpenCups(d, Running)) > 0
}

// weighed starts a cup: what is on the bench is taken down as it was weighed.
func weighed(s *State, m Message) []Effect {
	b := s.Bench()
	if !b.HasDose && !b.HasParts || len(OpenCups(s.Doc(), Weighed)) > 0 {
		return nil
	}
	if s.Slot().Elsewhere != "" {
		s.Notice = "Choose first which tab's job goes on."
		return nil
	}
	if len(s.Doc().Items("cup")) >= job.ListAt("cup").Max {
		s.Notice = logFull
		return nil
	}
	doc, path := s.Doc().Add("cup")
	put := func(key, text string) { doc = doc.Set(path+"."+key, text) }
	put("card", b.Card.Key)
	put("tin", s.Doc().Get(job.BenchPath+".tin"))
	if s.Doc().Get(job.BenchPath+".for") == job.ForStep {
		put("step", s.Doc().Get(job.BenchPath+".step"))
	}
	put("mixed", unit.Typed(float64(b.Whole.Value), unit.InGram)+" g")
	put("day", s.Now.Date)
	put("weighed", strconv.FormatInt(s.Now.Unix, 10))
	put("usable", unit.Typed(float64(b.Usable.Value), unit.InMinute)+" min")
	put("early", unit.Typed(float64(b.Hand.Cup.Early.Value), unit.InMinute)+" min")
	if b.HasDose {
		put("share", unit.Typed(float64(b.Dose.OfWhole.Value), unit.InPercent)+" %")
	}
	for key, from := range map[string]string{"surface-temp": job.BenchPath + ".surface-temp", "product-temp": job.BenchPath + ".product-temp", "humidity": job.DayPath + ".read-humidity"} {
		put(key, s.Doc().Get(from))
	}
	doc = s.takenDown(doc, path)
	for _, key := range []string{"surface", "product"} { // a jump from here is asked about
		doc = doc.Set(job.BenchPath+"."+key+"-was", s.Doc().Get(job.BenchPath+"."+key+"-temp"))
	}
	if s.size(doc) > job.MaxSaved-roomForCup {
		s.Notice = logFull
		return nil
	}
	return s.record(doc, s.keepPermit(doc, path), Effect{Kind: Focus, Key: "catalyst-in"})
}

const logFull = "The log is full. Export the job, then remove old cups."

// roomForCup is kept free for what a weighed cup still gets: its start, dose, end.
const roomForCup = 4 << 10

// record puts what happened to a cup in place. It is no edit: undo doesn't
// reach it, so that no dose can come back; nor does it go back to a list of cups
// that doesn't have this one.
func (s *State) record(doc job.Document, more ...Effect) []Effect {
	slot := s.Slot()
	slot.LastPath = ""
	slot.Undo, slot.Redo = sinceCups(slot.Undo), sinceCups(slot.Redo)
	return s.put(doc, more...)
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

// NextCup is what is opened to plan another cup while one runs.
const NextCup = "bench.next"

// catalystIn starts the clock of the weighed cup; its dose is gone from here on.
func catalystIn(s *State, m Message) []Effect {
	if CupPhase(s.Doc(), m.Path) != Weighed || !s.mayDose(m.Path) {
		return nil
	}
	doc := s.Doc().Set(m.Path+".in", strconv.FormatInt(s.Now.Unix, 10))
	doc = s.catalystDown(doc, m.Path)
	if s.Bench().HasDose {
		doc = doc.Set(m.Path+".dose", s.Bench().Dose.Grams.String()+" ("+s.Bench().Dose.Millilitres.String()+")")
	}
	if s.IsOpen(NextCup) {
		open(s, Message{Path: NextCup}) // shut: the next dose waits until it is asked for
	}
	effects := s.record(doc, Effect{Kind: Focus, Key: "heading"}, Effect{Kind: Awake, Key: "on"}, Effect{Kind: Timer, Key: "on"},
		Effect{Kind: Say, Text: "Catalyst in. The clock runs."})
	return append([]Effect{s.dropPermit()}, effects...)
}

// mayDose says if the bench still stands as it stood when the cup was weighed:
// then its dose may be shown, and no other time.
func (s *State) mayDose(cup string) bool {
	b := s.Bench()
	d := s.Doc()
	return s.Slot().Elsewhere == "" && (b.HasDose || b.HasParts) && CupPhase(d, cup) == Weighed && b.Card.Key == d.Get(cup+".card") &&
		unit.Typed(float64(b.Whole.Value), unit.InGram)+" g" == d.Get(cup+".mixed")
}

// DoseFor says if a dose may be shown, and for which cup: "" for the next one,
// before anything is weighed. None is while another tab may have dosed the cup.
func (s *State) DoseFor() (cup string, may bool) {
	if open := OpenCups(s.Doc(), Weighed); len(open) > 0 {
		return open[0], s.mayDose(open[0])
	}
	return "", s.Slot().Elsewhere == "" && (s.Bench().HasDose || s.Bench().HasParts)
}

// How a cup can end, by the message's text.
var ends = map[string]string{
	"spread":  job.EndSpread,
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
	if in, err := strconv.ParseInt(s.Doc().Get(m.Path+".in"), 10, 64); err == nil && m.Text == "gelled" {
		doc = doc.Set(m.Path+".gel", unit.Number(float64(s.Now.Unix-in)/60, 3)+" min")
	}
	s.opened(m.Path)
	effects := s.record(doc, Effect{Kind: Focus, Key: "left-" + m.Path})
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

// takeTest makes a cup test of a cup that gelled: what was really used.
func takeTest(s *State, m Message) []Effect {
	d := s.Doc()
	if !isCup(d, m.Path) || d.Get(m.Path+".gel") == "" || len(d.Items("test")) >= job.ListAt("test").Max {
		return nil
	}
	if s.isTaken(m.Path) {
		s.Notice = "This cup is taken as a cup test already."
		return nil
	}
	doc, test := d.Add("test")
	for to, from := range ofTest {
		doc = doc.Set(test+"."+to, d.Get(m.Path+"."+from))
	}
	effects := s.edit(doc, "")
	s.Notice = "Taken as a cup test. The minutes of this card follow it from now on."
	return effects
}

// ofTest is where a cup test's figures come from in the log's cup.
var ofTest = map[string]string{"card": "card", "tin": "tin", "mass": "mixed", "temp": "product-temp", "share": "share", "minutes": "gel", "day": "day"}

// isTaken says if a cup stands among the cup tests as it is: twice would weigh
// double.
func (s *State) isTaken(cup string) bool {
	d := s.Doc()
	return slices.ContainsFunc(d.Items("test"), func(id string) bool {
		for to, from := range ofTest {
			if d.Get("test."+id+"."+to) != d.Get(cup+"."+from) {
				return false
			}
		}
		return true
	})
}

// Left is the seconds that a running cup has to the end of its usable time;
// below zero it is past.
func Left(d job.Document, cup string, now Moment) float64 {
	in, err := strconv.ParseInt(d.Get(cup+".in"), 10, 64)
	usable, err2 := unit.Read(d.Get(cup+".usable"), unit.InMinute)
	if err != nil || err2 != nil {
		return 0
	}
	return float64(in) + usable - float64(now.Unix)
}

// warnBefore is how long before the end of the usable time a cup warns.
const warnBefore = 60

// tick is the clock: it warns of cups that run out, each stage once.
func tick(s *State, m Message) []Effect {
	var effects []Effect
	for _, cup := range OpenCups(s.Doc(), Running) {
		left := Left(s.Doc(), cup, s.Now)
		stage := 0
		switch {
		case left <= 0:
			stage = 2
		case left <= warnBefore:
			stage = 1
		}
		if key := s.warnKey(cup); stage > s.Warned[key] {
			s.warned(key, stage)
			effects = append(effects, alarm(s, cup, stage)...)
		}
	}
	return effects
}

// warnKey tells a running cup from every other, of the other job too.
func (s *State) warnKey(cup string) string {
	return strconv.FormatBool(s.InDemo) + " " + cup + " " + s.Doc().Get(cup+".in")
}

func (s *State) warned(key string, stage int) {
	next := maps.Clone(s.Warned)
	if next == nil {
		next = map[string]int{}
	}
	next[key] = stage
	s.Warned = next
}

func alarm(s *State, cup string, stage int) []Effect {
	words := cardName(s, s.Doc().Get(cup+".card")) + ": one minute left. Finish the stretch."
	if stage == 2 {
		words = cardName(s, s.Doc().Get(cup+".card")) + ": usable time is over. Stop, and put what is left outside."
	}
	return []Effect{{Kind: Sound, Key: strconv.Itoa(stage)}, {Kind: Vibrate, Key: strconv.Itoa(stage)}, {Kind: Say, Text: words}}
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
func (s *State) noted(doc job.Document, path string) job.Document {
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
		doc = doc.Set(job.DayPath+".read-at", ClockText(s.Now.Day))
	}
	if path == job.BenchPath+".surface-temp" {
		doc = doc.Set(job.BenchPath+".read-at", ClockText(s.Now.Day))
	}
	return counted(doc, path)
}

// ClockText writes seconds after midnight as a time of day.
func ClockText(seconds int) string {
	minute := strconv.Itoa(seconds / 60 % 60)
	if len(minute) < 2 {
		minute = "0" + minute
	}
	return strconv.Itoa(seconds/3600%24) + ":" + minute
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

// isCupPath says if a path belongs to the cups, which have verbs of their own.
func isCupPath(path string) bool { return path == "cup" || strings.HasPrefix(path, "cup.") }

// cupsInTheWay says if a change can't be taken back or made again now, because
// it reaches into the cups while one of them is open.
func (slot *Slot) cupsInTheWay(changes []job.Change) bool {
	return touchesCups(changes) && hasOpenCup(slot.Doc)
}

func touchesCups(changes []job.Change) bool {
	return slices.ContainsFunc(changes, func(c job.Change) bool { return isCupPath(c.Path) })
}

// rewound is a document after undo or redo: cups that it brings back are ended.
func (slot *Slot) rewound(changes []job.Change, doc job.Document) job.Document {
	if touchesCups(changes) {
		return stillCups(doc)
	}
	return doc
}

// cupFirst tells why nothing was undone, if there was something to undo.
func (s *State) cupFirst(n int) {
	if n > 0 {
		s.Notice = "A cup is open. End it first."
	}
}

// cupOf gives the cup that a path lies under.
func cupOf(path string) string {
	parts := strings.SplitN(path, ".", 3)
	return strings.Join(parts[:min(2, len(parts))], ".")
}
