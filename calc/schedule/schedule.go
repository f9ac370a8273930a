package schedule

import (
	"errors"
	"math"
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Schedule is what is left to do on a calendar, every day like today.
type Schedule struct {
	Waiting []string // paths of what is yet to be typed
	Works   []Work   // in the order of time
	Stopped []Stop   // build-ups that can't be finished
}

// Stop is where a build-up can't go on, and why.
type Stop struct {
	Step *plan.Step
	Err  error
}

// Work is one piece of work. Times are from today's midnight.
type Work struct {
	Kind      plan.WorkKind
	Step      *plan.Step
	Which, Of int // coat or pass, and their number
	From, To  unit.Time
	BeginBy   unit.Time     // to be done before its hours end; zero: it may go on another day
	StopBy    unit.Time     // end of the hours it is laid in
	Closing   []air.Finding // why they end; none: dark, or the end of the working day
	NeedsKey  bool          // sanded first: its window without sanding is over
	Closed    unit.Time     // since when; zero: it never had one
	IsLong    bool          // longer than the hours of a day: in parts
	Masking   Masking       // of a coat
}

// Why a build-up stops.
var (
	ErrNeverCures = errors.New("schedule: at these temperatures it doesn't cure")
	ErrNoWindow   = errors.New("schedule: no hour of such a day takes this material")
	ErrTooLong    = errors.New("schedule: more work than a calendar holds")
)

const (
	mostDays  = 120
	mostWorks = 600
)

// scheduler places works one after the other: there is one pair of hands.
type scheduler struct {
	plan          *plan.Plan
	today         Today
	opens, closes pace
	hours         air.Interval           // of work, each day
	windows       map[*job.Card][]window // that take a card, inside these hours
	now           unit.Time              // from today's midnight
	out           Schedule
}

// Today is the day that every day is taken to be like.
type Today struct {
	Waiting []string // paths of what is yet to be typed of it
	Known   bool     // its figures make a day
	Day     air.Day
	Surface air.Surface // how warm the part is beside the air
	Hour    unit.Time   // now, from midnight
	Unix    float64     // the same, in seconds since 1970
}

// Make puts what is left to do on a calendar, every day like today. What the log
// says is done has been curing since.
func Make(p *plan.Plan, today Today) Schedule {
	s := &scheduler{plan: p, today: today, now: today.Hour, windows: map[*job.Card][]window{}}
	if s.out.Waiting = today.Waiting; !today.Known {
		return s.out
	}
	s.opens, s.closes = paces(today.Day, today.Surface)
	s.hours = workingHours(&p.Job.Day, today.Day)
	s.place()
	s.mask()
	return s.out
}

// place takes whatever can begin first, until everything is placed.
func (s *scheduler) place() {
	var lines []*line
	for i := range s.plan.Buildups() {
		if b := &s.plan.Buildups()[i]; b.Area.Value > 0 {
			lines = append(lines, s.line(b))
		}
	}
	free := s.now
	for len(s.out.Works) < mostWorks {
		var first *line
		var next Work
		for _, l := range lines {
			if w, more := s.next(l, free); more && (first == nil || w.From < next.From) {
				first, next = l, w
			}
		}
		if first == nil {
			return
		}
		s.out.Works = append(s.out.Works, next)
		first.did(next)
		if next.Kind != plan.Launch {
			free = max(free, next.To)
		}
	}
	s.out.Stopped = append(s.out.Stopped, Stop{nil, ErrTooLong})
}

// line is a build-up's works in their order, and how far it has come.
type line struct {
	tasks  []plan.Task
	layer  *job.Card // of the latest coat or filler; nil: none yet
	laid   unit.Time // when that was done
	ready  unit.Time // when the work before was done
	sanded bool      // since
}

func (l *line) did(w Work) {
	l.tasks = l.tasks[1:]
	l.ready = w.To
	switch w.Kind {
	case plan.LayCoat, plan.LayFiller:
		l.layer, l.laid, l.sanded = w.Step.Card, w.To, false
	case plan.SandLayer:
		l.sanded = true
	}
}

// line lists what a build-up still has to go through.
func (s *scheduler) line(b *plan.Buildup) *line {
	l := &line{ready: s.now}
	for i := range b.Steps {
		step := &b.Steps[i]
		if step.Progress.IsDone() {
			l.done(step, s.doneAt(step.Path))
			continue
		}
		if step.Known {
			l.tasks = append(l.tasks, step.Tasks(b.Area.Value)...)
		}
	}
	for i := len(b.Steps) - 1; i >= 0; i-- {
		if step := &b.Steps[i]; step.Coat != nil || step.Fill != nil {
			l.tasks = append(l.tasks, plan.Task{Kind: plan.Launch, Step: step})
			break
		}
	}
	return l
}

// done applies what the log says of a finished step.
func (l *line) done(step *plan.Step, at unit.Time) {
	for _, t := range step.Tasks(0) {
		switch t.Kind {
		case plan.LayCoat, plan.LayFiller:
			l.layer, l.laid, l.sanded = step.Card, at, false
		case plan.SandLayer:
			l.sanded = true
		}
	}
}

// doneAt is when a step was finished last, from today's midnight.
func (s *scheduler) doneAt(step string) unit.Time {
	at := 0.
	for i := range s.plan.Job.Finished {
		if f := &s.plan.Job.Finished[i]; f.Step == step {
			at = max(at, f.At)
		}
	}
	if at == 0 {
		return s.now
	}
	return min(s.now, s.now-unit.Time(s.today.Unix-at))
}

// next is the line's next work, at the soonest; false: there is none, or it can't
// be done, which is recorded once.
func (s *scheduler) next(l *line, free unit.Time) (Work, bool) {
	if len(l.tasks) == 0 {
		return Work{}, false
	}
	w, err := s.work(l, l.tasks[0], free)
	if err != nil {
		s.out.Stopped = append(s.out.Stopped, Stop{l.tasks[0].Step, err})
		l.tasks = nil
	}
	return w, err == nil
}

func (s *scheduler) work(l *line, t plan.Task, free unit.Time) (Work, error) {
	w := Work{Kind: t.Kind, Step: t.Step, Which: t.Which, Of: t.Of}
	from, err := s.soonest(l, t)
	if err != nil {
		return w, err
	}
	if t.Kind == plan.Launch {
		w.From, w.To = max(from, s.now), max(from, s.now)
		return w, nil
	}
	from = max(from, free)
	if t.Kind != plan.LayCoat && t.Kind != plan.LayFiller {
		return s.inHours(w, from, t.Takes)
	}
	if w, err = s.lay(w, from, t.Takes); err != nil || l.layer == nil || l.sanded {
		return w, err
	}
	return s.keyed(l, w, from, t.Takes)
}

// soonest is when the layer below allows the work to begin.
func (s *scheduler) soonest(l *line, t plan.Task) (unit.Time, error) {
	from := l.ready
	wait := func(since, hours unit.Time) error {
		at, ever := s.opens.when(since, hours)
		if !ever {
			return ErrNeverCures
		}
		from = max(from, at)
		return nil
	}
	if err := wait(l.ready, t.Wait); err != nil || l.layer == nil {
		return from, err
	}
	return from, wait(l.laid, map[plan.WorkKind]unit.Time{
		plan.LayCoat: l.layer.RecoatFrom.Value, plan.LayFiller: l.layer.RecoatFrom.Value, plan.SandLayer: l.layer.SandFrom.Value,
		plan.PolishLayer: max(l.layer.SandFrom.Value, l.layer.PolishFrom.Value), plan.Launch: l.layer.LaunchFrom.Value,
	}[t.Kind])
}

// keyed checks if a coat still falls in the window of an unsanded layer. If not,
// the layer is sanded first, once it is hard enough.
func (s *scheduler) keyed(l *line, w Work, from, takes unit.Time) (Work, error) {
	closed := unit.Time(0)
	if l.layer.RecoatTo.Value > 0 && l.layer.Wax.Value == 0 {
		if closed, _ = s.closes.when(l.laid, l.layer.RecoatTo.Value); w.From <= closed { // in any weather it closes
			return w, nil
		}
	}
	hard, ever := s.opens.when(l.laid, l.layer.SandFrom.Value)
	if !ever {
		return w, ErrNeverCures
	}
	w.NeedsKey, w.Closed = true, closed
	return s.lay(w, max(from, hard), takes)
}

// Day is the day that a work begins on, counted from today.
func (w *Work) Day() int { return int(math.Floor(float64(w.From / unit.Day))) }

// LastDay is the day that it ends on.
func (w *Work) LastDay() int { return int(math.Floor(float64(w.To / unit.Day))) }

// Days lists the days that have works, counted from today.
func (s *Schedule) Days() []int {
	var list []int
	for _, w := range s.Works {
		list = append(list, w.Day())
	}
	return slices.Compact(list)
}
