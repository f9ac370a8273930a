package page

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// There are several jobs and one shed. The shed and the job that is worked on
// are one document, kept as one text in two copies, so that a cup and the stock
// that it lowers can't come apart. Every other job is put away under a number,
// without the shed, in two copies of its own. A job is taken up by putting the
// one before away first: at any moment each stands whole in the store. What is
// put away under the number of the job that is worked on is an older state of it.

const awayPrefix = Prefix + "away."

// awayCopies are the two places of a job that is put away.
func awayCopies(number string) [2]string {
	return [2]string{awayPrefix + number + ".a", awayPrefix + number + ".b"}
}

func isAwayKey(key string) bool { return strings.HasPrefix(key, awayPrefix) }

// JobRow is a job in the list of jobs.
type JobRow struct {
	Number   string // "" of one that was never put away
	Name     string
	Surfaces int
	Cups     int
	Worked   string // day, as the phone had it; "" where none is known
	IsHere   bool   // the one that is worked on
	Fails    bool   // what was kept of it can't be read
}

// Jobs lists the job that is worked on and then all others, the latest first.
func (s *State) Jobs() []JobRow {
	list := []JobRow{rowOf(s.Own.Doc, s.Own.Doc.Get(job.NumberPath))}
	list[0].IsHere = true
	var rest []JobRow
	for _, number := range awayNumbers(s) {
		slot, _ := load(s.Away, awayCopies(number), nil)
		row := rowOf(slot.Doc, number)
		row.Fails = slot.Revision == 0
		rest = append(rest, row)
	}
	sort.SliceStable(rest, func(i, j int) bool { return rest[i].Worked > rest[j].Worked })
	return append(list, rest...)
}

func rowOf(d job.Document, number string) JobRow {
	return JobRow{Number: number, Name: d.Get("name"), Surfaces: len(d.Items("surface")), Cups: len(d.Items("cup")), Worked: d.Get(job.WorkedPath)}
}

// awayNumbers are the numbers of the jobs that are put away, in order.
func awayNumbers(s *State) []string {
	var list []string
	for key := range s.Away {
		number, _, _ := strings.Cut(strings.TrimPrefix(key, awayPrefix), ".")
		if number != s.Own.Doc.Get(job.NumberPath) && !slices.Contains(list, number) {
			list = append(list, number)
		}
	}
	sort.SliceStable(list, func(i, j int) bool {
		n, _ := strconv.Atoi(list[i])
		m, _ := strconv.Atoi(list[j])
		return n < m
	})
	return list
}

// freeNumber is one under which nothing is put away.
func freeNumber(s *State) string {
	top := 0
	for key := range s.Away {
		number, _, _ := strings.Cut(strings.TrimPrefix(key, awayPrefix), ".")
		n, _ := strconv.Atoi(number)
		top = max(top, n)
	}
	return strconv.Itoa(top + 1)
}

// mayChangeJobs reports whether another job can be taken up now; if not, it says why.
func mayChangeJobs(s *State) bool {
	switch {
	case hasOpenCup(s.Own.Doc) || hasOpenCup(s.Demo.Doc) && s.InDemo:
		cupFirst(s, 1)
	case s.Own.Elsewhere != "":
		s.Notice = words.ChooseATabFirst
	case s.IsKeptByNewer(), len(s.Own.Stuck) > 0:
		s.Notice = words.NoOtherJob
	default:
		return true
	}
	return false
}

// newJob puts the job away and begins one, with the shed as it is.
func newJob(s *State, m Message) []Effect {
	if !mayChangeJobs(s) {
		return nil
	}
	return takeUp(s, shedNow(s), words.NewJob)
}

// openJob takes up a job that was put away.
func openJob(s *State, m Message) []Effect {
	if m.Path == s.Own.Doc.Get(job.NumberPath) || !slices.Contains(awayNumbers(s), m.Path) {
		return own(s, m)
	}
	if !mayChangeJobs(s) {
		return nil
	}
	slot, spoilt := load(s.Away, awayCopies(m.Path), nil)
	for _, e := range spoilt {
		if e.Kind == Keep {
			s.Aside = append(slices.Clone(s.Aside), e.Text)
		}
	}
	if slot.Revision == 0 {
		s.Notice = words.JobFails
		if slot.Ahead {
			s.Notice = words.JobAhead
		}
		return spoilt
	}
	return append(spoilt, takeUp(s, job.TakeUp(shedNow(s), stillCups(slot.Doc).Set(job.NumberPath, m.Path)), "")...)
}

// copyJob takes up a new job with all that is planned of another.
func copyJob(s *State, m Message) []Effect {
	if !mayChangeJobs(s) {
		return nil
	}
	from := job.PutAway(s.Own.Doc)
	if m.Path != "" && m.Path != s.Own.Doc.Get(job.NumberPath) {
		slot, _ := load(s.Away, awayCopies(m.Path), nil)
		if slot.Revision == 0 {
			s.Notice = words.JobFails
			return nil
		}
		from = slot.Doc
	}
	doc := job.Repeat(from)
	if name := doc.Get("name"); name != "" {
		doc = doc.Set("name", name+" (copy)")
	}
	return takeUp(s, job.TakeUp(shedNow(s), doc), words.CopiedJob)
}

// removeJob takes a job away for good. In the place of the one that is worked
// on comes the one that was worked on before it, or an empty one.
func removeJob(s *State, m Message) []Effect {
	if !mayChangeJobs(s) {
		return nil
	}
	number := s.Own.Doc.Get(job.NumberPath)
	isHere := m.Path == "" || m.Path == number
	if !isHere {
		number = m.Path
	}
	gone := awayNoMore(s, number)
	if !isHere {
		s.Sheets = []string{JobsSheet}
		s.Notice = words.RemovedJob
		return append(gone, Effect{Kind: Focus, Key: SheetHeading})
	}
	next := shedNow(s)
	for _, row := range s.Jobs()[1:] {
		if slot, _ := load(s.Away, awayCopies(row.Number), nil); slot.Revision > 0 {
			next = job.TakeUp(next, stillCups(slot.Doc).Set(job.NumberPath, row.Number))
			break
		}
	}
	return append(inPlace(s, next, words.RemovedJob), gone...)
}

// takeUp puts the job that is worked on away, and another with its shed in its place.
func takeUp(s *State, doc job.Document, notice string) []Effect {
	number := s.Own.Doc.Get(job.NumberPath)
	if job.IsBlank(s.Own.Doc) {
		return append(inPlace(s, doc, notice), awayNoMore(s, number)...)
	}
	if number == "" {
		number = freeNumber(s)
	}
	if len(awayNumbers(s)) >= job.MaxJobs-1 && doc.Get(job.NumberPath) == "" {
		s.Notice = words.TooManyJobs
		return nil
	}
	before, kept := s.Own, s.Away
	effects := awayWith(s, number, before.Doc, before.Revision)
	if doc.Get(job.NumberPath) == "" { // of two new ones neither takes the other's place
		doc = doc.Set(job.NumberPath, freeNumber(s))
	}
	more := inPlace(s, doc, notice)
	if more == nil {
		s.Away = kept
		return nil
	}
	s.before = &changed{before, kept}
	for i := range more {
		if more[i].Kind == Keep && more[i].Key != viewKey {
			more[i].IfKept = true
		}
	}
	return append(effects, more...)
}

// awayWith puts a job away under a number.
func awayWith(s *State, number string, d job.Document, revision int) []Effect {
	text := job.Save(job.PutAway(d.Set(job.NumberPath, number)), revision)
	var effects []Effect
	for _, key := range awayCopies(number) {
		heardAway(s, key, text)
		effects = append(effects, Effect{Kind: Keep, Key: key, Text: text})
	}
	return effects
}

// awayNoMore drops what is put away under a number.
func awayNoMore(s *State, number string) []Effect {
	var effects []Effect
	for _, key := range awayCopies(number) {
		if _, kept := s.Away[key]; kept {
			heardAway(s, key, "")
			effects = append(effects, Effect{Kind: Revoke, Key: key})
		}
	}
	return effects
}

// inPlace puts another job with its shed in the place of the one that is worked
// on. What can be undone stays with the job before.
func inPlace(s *State, doc job.Document, notice string) []Effect {
	doc = knowing(doc)
	if job.SavedSize(doc, s.Own.Revision+1) > maxKept {
		s.Notice = words.TooMuchTyped
		return nil
	}
	s.InDemo, s.Open, s.Sheets, s.Why, s.Cell, s.Pending = false, nil, nil, "", "", nil
	s.Own = Slot{Doc: doc, Revision: s.Own.Revision, Swapped: s.Own.Swapped}
	s.Trail, s.Screen = nil, Screens[0].Key
	planAnew(s)
	s.Notice = notice
	return append(savesOf(s, false), keepView(s), Effect{Kind: Focus, Key: "heading"})
}

// shedNow is the shed with its stock as it is now: the cups that lowered it stay
// with their job.
func shedNow(s *State) job.Document {
	shed, _ := job.SplitShed(s.Own.Doc)
	read := s.Plan
	if s.InDemo {
		read = read.Next(s.Own.Doc)
	}
	for path, text := range chance.LeftInStock(&read.Job) {
		shed = shed.Set(path, text)
	}
	return shed
}

// knowing notes with every stock that the cups of this job so far don't lower it.
func knowing(d job.Document) job.Document {
	for _, l := range d.Under("card") {
		if _, key := job.Split(l.Path); key == "counted" || key == "stock" {
			at, _ := job.Split(l.Path)
			d = counted(d, at+".stock")
		}
	}
	return d
}
