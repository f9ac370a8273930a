package page

import (
	"maps"
	"math"
	"strconv"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// A phone's clock can be set while a cup runs. With every message comes a second
// clock that nobody sets; where the two disagree, a running cup keeps to the
// second. A jump ahead may also be a phone that slept, which stops the second
// clock: that is only said. So is a time of day that moves while both go on, in
// another time zone: the hours shown follow it.

// The least that the phone's clock must have moved against the other to be noticed.
const (
	leastBack = 5
	leastOn   = 60
)

// moved is by how much the phone's clock was set while a cup ran, and its time
// of day besides, in seconds.
type moved struct{ back, on, zone int64 }

// lookAtClock compares the two clocks of a new message with those of the latest.
func lookAtClock(s *State, next Moment) {
	was := s.Now
	if was.Steady == 0 || next.Steady == 0 {
		return
	}
	jump := (next.Unix - next.Steady) - (was.Unix - was.Steady)
	if -leastBack < jump && jump < leastOn {
		jump = 0
	}
	zone := zoneMoved(was, next)
	if jump == 0 && zone == 0 {
		return
	}
	clocks := maps.Clone(s.moved)
	if clocks == nil {
		clocks = map[string]moved{}
	}
	for _, cup := range OpenCups(s.Doc(), Running) {
		m := clocks[warnKey(s, cup)]
		m.back += max(0, -jump)
		m.on += max(0, jump)
		m.zone += zone
		clocks[warnKey(s, cup)] = m
	}
	s.moved = clocks
}

// zoneMoved is by how much more the time of day went on than the time did, apart
// from a jump that was foreseen.
func zoneMoved(was, next Moment) int64 {
	const day = 86400
	moved := int64(next.Day - was.timeOfDay(next.Unix))
	switch {
	case moved > day/2:
		return moved - day
	case moved < -day/2:
		return moved + day
	}
	return moved
}

// Times is a running cup's times, in seconds from catalyst in. What isn't known is zero.
type Times struct {
	Since, Left         float64 // gone; still to spread, negative once it is over
	Usable, Early, Late float64
	SetBack, SetOn      float64 // by how much the phone's clock was moved meanwhile
	Zone                float64 // by how much its time of day went on besides, negative if back
	IsTest              bool
	IsUnknown           bool // by the phone's clock its catalyst isn't in yet
}

// IsOld reports whether the catalyst went in more than a day ago.
func (t Times) IsOld() bool { return t.Since > 86400 }

// LastMinute is how long before the end of the usable time a cup warns.
const LastMinute = warnBefore

// clockSlack is how far in the future a cup's start may be and still count as now, in seconds.
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
	m := s.moved[warnKey(s, cup)]
	t := Times{Usable: read("usable"), Early: read("early"), Late: read("late"), SetBack: float64(m.back), SetOn: float64(m.on), Zone: float64(m.zone), IsTest: d.Get(cup+".kind") == job.TestCup}
	t.Since = float64(s.Now.Unix - in + m.back)
	t.Left = t.Usable - t.Since
	t.IsUnknown = err != nil || t.Since < -clockSlack
	t.Since = max(0, t.Since)
	return t
}

// WontGoOff says how long to wait for a running cup's film, and when to scrape it
// off.
func (s *State) WontGoOff(cup string) (cure.Stuck, error) {
	return bench.Stuck(&s.Plan, cup, bench.Now{Hour: unit.Time(s.Now.Day), Date: s.Now.Date, Unix: float64(s.Now.Unix)})
}

// HourAfter is the time of day at which so many seconds have gone since a cup's
// catalyst went in, by the phone's clock as it goes now.
func (s *State) HourAfter(cup string, after float64) string {
	return words.Clock(s.Now.timeOfDay(s.Now.Unix + int64(math.Floor(after-s.TimesOf(cup).Since))))
}

// ClockList is the list of running cups: the one open in it is in front.
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
	inFront(s, m.Path)
	return []Effect{{Kind: Focus, Key: "heading"}}
}

func inFront(s *State, cup string) {
	s.Open = maps.Clone(s.Open)
	if s.Open == nil {
		s.Open = map[string]string{}
	}
	s.Open[ClockList] = cup
}
