package page

import ()

// Moment is a time by the shed's own clock. It comes with a message.
type Moment struct {
	Unix int64  // seconds since 1970
	Day  int    // seconds since the shed's midnight
	Date string // "2026-05-01"

	Steady int64 // seconds since 1970 by a clock that nobody sets while the page is open; 0: there is none

	Turn  int64 // a moment within a day of this one at which the time of day jumps, as where summer time begins; 0: none
	Shift int   // by how many seconds it jumps there
}

func (m Moment) minute() int64 { return m.Unix / 60 }

// timeOfDay is the shed's time of day at a moment within a day of this one, in
// seconds since midnight.
func (m Moment) timeOfDay(unix int64) int {
	const day = 86400
	at := int64(m.Day) + unix - m.Unix
	switch {
	case m.Turn == 0:
	case m.Unix < m.Turn && m.Turn <= unix:
		at += int64(m.Shift)
	case unix < m.Turn && m.Turn <= m.Unix:
		at -= int64(m.Shift)
	}
	return int((at%day + day) % day)
}
