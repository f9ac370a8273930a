package page

import (
	"maps"
	"strconv"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// A phone's clock can be set while a cup runs. With every message comes a second
// clock that nobody sets; where the two part, a running cup keeps to the second.
// Going on at once may also be a phone that slept, which stops the second clock:
// that is only said.

// The least that the phone's clock must have moved against the other to be noticed.
const (
	leastBack = 5
	leastOn   = 60
)

// moved is by how much the phone's clock was set while a cup ran, in seconds.
type moved struct{ back, on int64 }

// lookAtClock compares the two clocks of a new message with those of the latest.
func (s *State) lookAtClock(next Moment) {
	was := s.Now
	if was.Steady == 0 || next.Steady == 0 {
		return
	}
	jump := (next.Unix - next.Steady) - (was.Unix - was.Steady)
	if -leastBack < jump && jump < leastOn {
		return
	}
	clocks := maps.Clone(s.moved)
	if clocks == nil {
		clocks = map[string]moved{}
	}
	for _, cup := range OpenCups(s.Doc(), Running) {
		m := clocks[s.warnKey(cup)]
		if jump < 0 {
			m.back -= jump
		} else {
			m.on += jump
		}
		clocks[s.warnKey(cup)] = m
	}
	s.moved = clocks
}

// Times is a running cup's times, in seconds from catalyst in. What isn't known is nothing.
type Times struct {
	Since, Left         float64 // gone; still to spread, below nothing once it is over
	Usable, Early, Late float64
	SetBack, SetOn      float64 // by how much the phone's clock was moved meanwhile
	IsTest              bool
	IsUnknown           bool // by the phone's clock its catalyst isn't in yet
}

// LastMinute is how long before the end of the usable time a cup warns.
const LastMinute = warnBefore

// clockSlack is how far ahead catalyst in may lie and still be now, in seconds.
const clockSlack = 60

// TimesOf gives a running cup's times.
func (s *State) TimesOf(cup string) Times {
	d := s.Doc()
	in, err := strconv.ParseInt(d.Get(cup+".in"), 10, 64)
	read := func(key string) float64 {
		si, err := unit.Read(d.Get(cup+"."+key), unit.InMinute)
		if err != nil {
			return 0
		}
		return si
	}
	m := s.moved[s.warnKey(cup)]
	t := Times{Usable: read("usable"), Early: read("early"), Late: read("late"), SetBack: float64(m.back), SetOn: float64(m.on), IsTest: d.Get(cup+".kind") == job.TestCup}
	t.Since = float64(s.Now.Unix - in + m.back)
	t.Left = t.Usable - t.Since
	t.IsUnknown = err != nil || t.Since < -clockSlack
	t.Since = max(0, t.Since)
	return t
}

// WontGoOff says how long a running cup's film is waited for and when it is
// scraped off.
func (s *State) WontGoOff(cup string) (cure.Stuck, error) {
	return bench.Stuck(&s.Plan, cup, bench.Now{Hour: unit.Time(s.Now.Day), Date: s.Now.Date, Unix: float64(s.Now.Unix)})
}

// HourAfter is the time of day at which so many seconds have gone since a cup's
// catalyst went in, by the phone's clock as it goes now.
func (s *State) HourAfter(cup string, after float64) string {
	const day = 86400
	at := float64(s.Now.Day) + after - s.TimesOf(cup).Since
	return ClockText((int(at)%day + day) % day)
}

// ClockList is the list of running cups: the one that is open in it stands in front.
const ClockList = "clock"

// FrontCup is the running cup whose clock is in front: the chosen one, or the one
// with the least time left; "" where none runs.
func (s *State) FrontCup() string {
	front, least := "", 0.
	for _, cup := range OpenCups(s.Doc(), Running) {
		if s.Open[ClockList] == cup {
			return cup
		}
		left := s.TimesOf(cup).Left
		if front == "" || left < least {
			front, least = cup, left
		}
	}
	return front
}

// bringFront shows the clock of one of several cups.
func bringFront(s *State, m Message) []Effect {
	if !isCup(s.Doc(), m.Path) || CupPhase(s.Doc(), m.Path) != Running {
		return nil
	}
	s.inFront(m.Path)
	return []Effect{{Kind: Focus, Key: "heading"}}
}

func (s *State) inFront(cup string) {
	s.Open = maps.Clone(s.Open)
	if s.Open == nil {
		s.Open = map[string]string{}
	}
	s.Open[ClockList] = cup
}
