package plan

import (
	"errors"
	"math"
	"slices"

	"shedreckoner/calc/air"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Schedule is what is left to do on a calendar, every day like today.
type Schedule struct {
	Waiting []string // paths of what is yet to be typed
	Works   []Work   // in the order of time
	Stopped []Stop   // build-ups that don't come to their end
}

// Stop is where a build-up can't go on, and why.
type Stop struct {
	Step *Step
	Err  error
}

// WorkKind is what is done.
type WorkKind int

// The kinds of work.
const (
	LayCoat WorkKind = iota
	LayFiller
	SandIt
	PolishIt
	WashIt
	LaunchIt // nothing to do but to have waited
)

// Work is one piece of work. Times are from today's midnight.
type Work struct {
	Kind      WorkKind
	Step      *Step
	Which, Of int // coat or pass, of so many
	From, To  unit.Time
	BeginBy   unit.Time     // to be done before its hours end; zero: it may go on another day
	StopBy    unit.Time     // end of the hours it is laid in
	Closing   []air.Finding // why they end; none: dark, or the end of the working day
	NeedsKey  bool          // sanded first: its window without sanding is over
	Closed    unit.Time     // since when; zero: it never had one
	IsLong    bool          // longer than the hours of a day: in parts
}

// Why a build-up stops.
var (
	ErrNeverCures = errors.New("plan: at these temperatures it doesn't cure")
	ErrNoWindow   = errors.New("plan: no hour of such a day takes this material")
	ErrTooLong    = errors.New("plan: more work than a calendar holds")
)

const (
	slot      = 10 * unit.Minute
	slots     = int(unit.Day / slot)
	mostDays  = 120
	mostWorks = 600
	washing   = 30 * unit.Minute
)

// How many times longer than at 20 °C a wait lasts, between 10 and 30 °C.
// Source: common practice; the straight line of its logarithm is ours.
var (
	waitLonger = working.Of1("k = 2 ^ ((20 − T) ÷ 10)", source.Practice.At("times double at 10 °C"), source.CommonPractice,
		working.In("k", "times longer than at 20 °C", unit.InPure, 1, 2),
		[]working.Arg{working.In("T", "temperature of the surface", unit.InCelsius, 10, 20)},
		func(t unit.Temperature) unit.Factor {
			return unit.Factor(math.Pow(float64(material.PaceCold.Value), (20-unit.InCelsius.From(float64(t)))/10))
		})
	waitShorter = working.Of1("k = 0.6 ^ ((T − 20) ÷ 10)", source.Practice.At("0.6 of the time at 30 °C"), source.CommonPractice,
		working.In("k", "times as long as at 20 °C", unit.InPure, 0.6, 1),
		[]working.Arg{working.In("T", "temperature of the surface", unit.InCelsius, 20, 30)},
		func(t unit.Temperature) unit.Factor {
			return unit.Factor(math.Pow(float64(material.PaceWarm.Value), (unit.InCelsius.From(float64(t))-20)/10))
		})
)

// longer is how many times longer than at 20 °C a wait lasts; false outside 10
// to 30 °C, where nothing is known.
func longer(t unit.Temperature) (unit.Factor, bool) {
	k, err := waitLonger.Of(t)
	if err != nil {
		k, err = waitShorter.Of(t)
	}
	return k, err == nil
}

// pace is hours at 20 °C gained in an hour, for each slot of the day.
type pace [slots]float64

// paces gives the pace to open by and the pace to close by, each on its safe
// side: under 10 °C nothing cures but windows run on; over 30 °C a cure gains
// nothing more, and windows run out as in hot sun.
func paces(d air.Day, s air.Surface) (opens, closes pace) {
	const warmest, coldest = unit.ZeroCelsius + 30, unit.ZeroCelsius + 10
	for i := range opens {
		at := (unit.Time(i) + 0.5) * slot
		o := s.By(d, at)
		least, most := d.Air(at)+unit.Temperature(o.Least.Value), d.Air(at)+unit.Temperature(o.Most.Value)
		if k, known := longer(min(least, warmest)); known {
			opens[i] = 1 / float64(k)
		}
		if k, known := longer(max(most, coldest)); known {
			closes[i] = 1 / float64(k)
		} else {
			closes[i] = 1 / float64(material.PaceInSun.Value)
		}
	}
	return opens, closes
}

// when is the time at which a wait of so many hours at 20 °C is over, begun at
// from; false: not within what a calendar holds.
func (p *pace) when(from, hours unit.Time) (unit.Time, bool) {
	var whole unit.Time
	for _, gain := range p {
		whole += unit.Time(gain) * slot
	}
	at := from
	if days := math.Floor(float64(hours / whole)); whole > 0 && days > 1 {
		at, hours = at+unit.Time(days-1)*unit.Day, hours-unit.Time(days-1)*whole
	}
	for hours > 1e-6 {
		if whole <= 0 || at > from+10*mostDays*unit.Day {
			return 0, false
		}
		i := int(math.Floor(float64(at / slot)))
		room := unit.Time(i+1)*slot - at
		gain := unit.Time(p[(i%slots+slots)%slots])
		if hours <= room*gain {
			return at + hours/gain, true
		}
		at, hours = unit.Time(i+1)*slot, hours-room*gain
	}
	return at, true
}

// scheduler places works one after the other: there is one pair of hands.
type scheduler struct {
	plan          *Plan
	air           *Air
	opens, closes pace
	hours         air.Interval           // of work, each day
	windows       map[*job.Card][]window // that take a card, inside these hours
	now           unit.Time              // from today's midnight
	unix          float64                // of now
	out           Schedule
}

// window is hours of a day in which a material may go on.
type window struct {
	air.Interval
	closing []air.Finding
}

// MakeSchedule puts what is left to do on a calendar, every day like the one of
// the bench's air. Unix is the moment, in seconds since 1970: what the log says
// is done goes on curing since.
func MakeSchedule(p *Plan, a *Air, now Now, unix float64) Schedule {
	s := &scheduler{plan: p, air: a, now: now.Hour, unix: unix, windows: map[*job.Card][]window{}}
	if s.out.Waiting = a.Waiting; !a.Known || a.Err != nil {
		return s.out
	}
	s.opens, s.closes = paces(a.Day, a.Surface)
	s.hours = workingHours(&p.Job.Day, a.Day)
	s.place()
	return s.out
}

// workingHours is from the hour of work, or sunrise, to the end of work, or
// dark.
func workingHours(typed *job.Day, d air.Day) air.Interval {
	h := air.Interval{From: 8 * unit.Hour, To: 18 * unit.Hour}
	if typed.WorkFrom.Step != nil {
		h.From = typed.WorkFrom.Value
	}
	if typed.WorkTo.Step != nil {
		h.To = typed.WorkTo.Value
	}
	sunrise := unit.Day - d.Sunset()
	return air.Interval{From: max(h.From, sunrise), To: min(h.To, d.Sunset())}
}

// place goes on with whatever can be begun first, until all is placed.
func (s *scheduler) place() {
	var lines []*line
	for i := range s.plan.Buildups {
		if b := &s.plan.Buildups[i]; b.Area.Value > 0 {
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
		if next.Kind != LaunchIt {
			free = max(free, next.To)
		}
	}
	s.out.Stopped = append(s.out.Stopped, Stop{nil, ErrTooLong})
}

// line is a build-up's works in their order, and how far it has come.
type line struct {
	tasks  []task
	layer  *job.Card // of the latest coat or filler; nil: none yet
	laid   unit.Time // when that was done
	ready  unit.Time // when the work before was done
	sanded bool      // since
}

type task struct {
	kind      WorkKind
	step      *Step
	which, of int
	takes     unit.Time
	wait      unit.Time // asked for by the builder, at 20 °C
}

func (l *line) did(w Work) {
	l.tasks = l.tasks[1:]
	l.ready = w.To
	switch w.Kind {
	case LayCoat, LayFiller:
		l.layer, l.laid, l.sanded = w.Step.Card, w.To, false
	case SandIt:
		l.sanded = true
	}
}

// line lists what a build-up still has to go through.
func (s *scheduler) line(b *Buildup) *line {
	l := &line{ready: s.now}
	for i := range b.Steps {
		step := &b.Steps[i]
		if step.Progress.IsDone() {
			l.done(step, s.doneAt(step.Path))
			continue
		}
		if step.Known {
			l.tasks = append(l.tasks, tasksOf(step, b.Area.Value)...)
		}
	}
	for i := len(b.Steps) - 1; i >= 0; i-- {
		if step := &b.Steps[i]; step.Coat != nil || step.Fill != nil {
			l.tasks = append(l.tasks, task{kind: LaunchIt, step: step})
			break
		}
	}
	return l
}

// done takes up what the log says of a finished step.
func (l *line) done(step *Step, at unit.Time) {
	switch {
	case step.Coat != nil || step.Fill != nil:
		l.layer, l.laid, l.sanded = step.Card, at, step.Fill != nil
	case step.Job.Kind.Key == "sand":
		l.sanded = true
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
	return min(s.now, s.now-unit.Time(s.unix-at))
}

// tasksOf takes a step apart into works that stand for themselves.
func tasksOf(step *Step, area unit.Area) []task {
	if step.Progress.Rest.Step != nil {
		area *= unit.Area(step.Progress.Rest.Value)
	}
	by := func(speed unit.SpreadingSpeed) unit.Time { return unit.Time(float64(area) / float64(speed)) }
	var list []task
	switch {
	case step.Coat != nil:
		n := int(step.Coat.AllCoats.Value)
		takes := by(step.Job.Method.Speed.Value) + mixing(step, n)
		inGo := max(1, int(step.Coat.Coats.Value))
		for i := range n {
			list = append(list, task{kind: LayCoat, step: step, which: i + 1, of: n, takes: takes})
			if isBack := (i+1)%inGo == 0 && step.Job.GoTakes.Value > 0; isBack {
				list = append(list, task{kind: SandIt, step: step, takes: by(material.DiscOnFilm.Value)})
			}
		}
	case step.Fill != nil:
		n := int(step.Fill.Passes.Value)
		for i := range n {
			list = append(list, task{kind: LayFiller, step: step, which: i + 1, of: n, takes: by(knife.Speed.Value) + mixing(step, n)},
				task{kind: SandIt, step: step, takes: by(material.BoardOnFiller.Value)})
		}
	case step.Sand != nil:
		list = append(list, task{kind: SandIt, step: step, takes: step.Sand.Hours.Value * unit.Time(restShareOf(step))})
	case step.Job.Kind.Key == "polish":
		list = append(list, task{kind: PolishIt, step: step, takes: by(material.DiscOnFilm.Value)})
	case step.Job.Kind.Key == "wash":
		list = append(list, task{kind: WashIt, step: step, takes: washing})
	default:
		list = append(list, task{kind: SandIt, step: step, takes: by(material.DiscOnFilm.Value)})
	}
	if len(list) > 0 {
		list[0].wait = step.Job.Wait.Value
	}
	return list
}

func restShareOf(step *Step) unit.Share {
	if step.Progress.Rest.Step == nil {
		return 1
	}
	return step.Progress.Rest.Value
}

// mixing is two minutes for each cup of one coat or pass.
func mixing(step *Step, n int) unit.Time {
	return 2 * unit.Minute * unit.Time(math.Ceil(float64(step.Cups.Count.Value)/float64(max(1, n))))
}

// next is the line's next work, at the soonest; false: there is none, or it
// can't be done, which is noted once.
func (s *scheduler) next(l *line, free unit.Time) (Work, bool) {
	if len(l.tasks) == 0 {
		return Work{}, false
	}
	w, err := s.work(l, l.tasks[0], free)
	if err != nil {
		s.out.Stopped = append(s.out.Stopped, Stop{l.tasks[0].step, err})
		l.tasks = nil
	}
	return w, err == nil
}

func (s *scheduler) work(l *line, t task, free unit.Time) (Work, error) {
	w := Work{Kind: t.kind, Step: t.step, Which: t.which, Of: t.of}
	from, err := s.soonest(l, t)
	if err != nil {
		return w, err
	}
	if t.kind == LaunchIt {
		w.From, w.To = max(from, s.now), max(from, s.now)
		return w, nil
	}
	from = max(from, free)
	if t.kind != LayCoat && t.kind != LayFiller {
		return s.inHours(w, from, t.takes)
	}
	if w, err = s.lay(w, from, t.takes); err != nil || l.layer == nil || l.sanded {
		return w, err
	}
	return s.keyed(l, w, from, t.takes)
}

// soonest is when the layer below lets the work begin.
func (s *scheduler) soonest(l *line, t task) (unit.Time, error) {
	from := l.ready
	wait := func(since, hours unit.Time) error {
		at, ever := s.opens.when(since, hours)
		if !ever {
			return ErrNeverCures
		}
		from = max(from, at)
		return nil
	}
	if err := wait(l.ready, t.wait); err != nil || l.layer == nil {
		return from, err
	}
	return from, wait(l.laid, map[WorkKind]unit.Time{
		LayCoat: l.layer.RecoatFrom.Value, LayFiller: l.layer.RecoatFrom.Value, SandIt: l.layer.SandFrom.Value,
		PolishIt: max(l.layer.SandFrom.Value, l.layer.PolishFrom.Value), LaunchIt: l.layer.LaunchFrom.Value,
	}[t.kind])
}

// keyed sees if a coat still falls into the window of an unsanded layer. If
// not, that is sanded first, which takes it hard enough for that.
func (s *scheduler) keyed(l *line, w Work, from, takes unit.Time) (Work, error) {
	closed, known := unit.Time(0), l.layer.RecoatTo.Value > 0 && l.layer.Wax.Value == 0
	if known {
		closed, known = s.closes.when(l.laid, l.layer.RecoatTo.Value)
		if known && w.From <= closed {
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

// inHours spends working hours, over several days if need be.
func (s *scheduler) inHours(w Work, from, takes unit.Time) (Work, error) {
	return s.spend(w, from, takes, []window{{Interval: s.hours}})
}

// lay finds the first window that holds all of a coat; one that no window
// holds is laid in parts.
func (s *scheduler) lay(w Work, from, takes unit.Time) (Work, error) {
	windows, err := s.windowsOf(w.Step.Card)
	if err != nil {
		return w, err
	}
	longest := unit.Time(0)
	for _, h := range windows {
		longest = max(longest, h.To-h.From)
	}
	if w.IsLong = takes > longest; w.IsLong {
		return s.spend(w, from, takes, windows)
	}
	for day := math.Floor(float64(from / unit.Day)); day < float64(from/unit.Day)+mostDays; day++ {
		for _, h := range windows {
			midnight := unit.Time(day) * unit.Day
			if at := max(from, midnight+h.From); at+takes <= midnight+h.To {
				w.From, w.To, w.StopBy, w.BeginBy, w.Closing = at, at+takes, midnight+h.To, midnight+h.To-takes, h.closing
				return w, nil
			}
		}
	}
	return w, ErrNoWindow
}

// spend uses up windows until the work is done.
func (s *scheduler) spend(w Work, from, takes unit.Time, windows []window) (Work, error) {
	begun := false
	for day := math.Floor(float64(from / unit.Day)); day < float64(from/unit.Day)+mostDays; day++ {
		for _, h := range windows {
			midnight := unit.Time(day) * unit.Day
			at := max(from, midnight+h.From)
			room := midnight + h.To - at
			if room <= 0 {
				continue
			}
			if !begun {
				w.From, begun = at, true
			}
			if w.To = at + min(room, takes); takes <= room {
				return w, nil
			}
			takes -= room
		}
	}
	return w, ErrNoWindow
}

// windowsOf is the hours of a day that take a card, inside the working hours.
func (s *scheduler) windowsOf(card *job.Card) ([]window, error) {
	if list, known := s.windows[card]; known {
		if len(list) == 0 {
			return nil, ErrNoWindow
		}
		return list, nil
	}
	fit, err := air.NewFit(s.air.Day, s.air.Surface, limitsOf(card))
	if err != nil {
		return nil, err
	}
	open, err := fit.Windows(today)
	if err != nil {
		return nil, err
	}
	var list []window
	for _, w := range open {
		h := window{Interval: air.Interval{From: max(w.From, s.hours.From), To: min(w.To, s.hours.To)}}
		if w.To < s.hours.To {
			h.closing = w.Closing
		}
		if h.To > h.From {
			list = append(list, h)
		}
	}
	s.windows[card] = list
	return s.windowsOf(card)
}

// Days lists the days that have works, counted from today.
func (s *Schedule) Days() []int {
	var list []int
	for _, w := range s.Works {
		list = append(list, int(math.Floor(float64(w.From/unit.Day))))
	}
	slices.Sort(list)
	return slices.Compact(list)
}
