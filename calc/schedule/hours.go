package schedule

import (
	"iter"
	"math"

	"shedreckoner/calc/air"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// window is hours of a day in which a material may go on.
type window struct {
	air.Interval
	closing []air.Finding
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
	return h.Intersect(air.Interval{From: sunrise, To: d.Sunset()})
}

// inHours spends working hours, over several days if need be.
func (s *scheduler) inHours(w Work, from, takes unit.Time) (Work, error) {
	return s.spend(w, from, takes, []window{{Interval: s.hours}})
}

// lay finds the first window long enough for a coat; one too long for any window is
// laid in parts.
func (s *scheduler) lay(w Work, from, takes unit.Time) (Work, error) {
	windows := s.windowsOf(w.Step.Card)
	longest := unit.Time(0)
	for _, h := range windows {
		longest = max(longest, h.To-h.From)
	}
	if w.IsLong = takes > longest; w.IsLong {
		return s.spend(w, from, takes, windows)
	}
	for midnight := range midnights(from) {
		for _, h := range windows {
			if at := max(from, midnight+h.From); at+takes <= midnight+h.To {
				w.From, w.To, w.StopBy, w.BeginBy, w.Closing = at, at+takes, midnight+h.To, midnight+h.To-takes, h.closing
				return w, nil
			}
		}
	}
	return w, ErrNoWindow
}

// midnights gives the day that a time lies in and those after it, as many as a
// calendar holds.
func midnights(from unit.Time) iter.Seq[unit.Time] {
	return func(yield func(unit.Time) bool) {
		first := unit.Time(math.Floor(float64(from / unit.Day)))
		for n := range mostDays {
			if !yield((first + unit.Time(n)) * unit.Day) {
				return
			}
		}
	}
}

// spend uses up windows until the work is done.
func (s *scheduler) spend(w Work, from, takes unit.Time, windows []window) (Work, error) {
	begun := false
	for midnight := range midnights(from) {
		for _, h := range windows {
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

// windowsOf is the hours of a day that suit a card, within the working hours: none
// where no air meets the card's own limits. One that lies outside the working hours
// ends before it begins, and holds no work.
func (s *scheduler) windowsOf(card *job.Card) []window {
	list, known := s.windows[card]
	if known {
		return list
	}
	if fit, err := air.NewFit(s.today.Day, s.today.Surface, chain.AirLimits(card)); err == nil {
		open, _ := fit.Windows(air.WholeDay) // fails for other hours than a day's only
		for _, w := range open {
			h := window{Interval: w.Intersect(s.hours)}
			if w.To < s.hours.To {
				h.closing = w.Closing
			}
			list = append(list, h)
		}
	}
	s.windows[card] = list
	return list
}
