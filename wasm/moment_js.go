package main

import (
	"syscall/js"

	"shedreckoner/wasm/page"
)

// moment reads the shed's own clock.
func (b *border) moment() page.Moment {
	date := b.date.New()
	unix, ahead := int64(date.Call("getTime").Float()/1000), aheadOfUTC(date)
	local := unix + int64(ahead) // what the phone's clock shows, if it were UTC: few questions to the browser, at every key
	if hour := local / 3600; b.hour.local != hour || b.hour.ahead != ahead {
		b.hour = clockHour{local: hour, ahead: ahead, date: b.date.New(float64(local) * 1000).Call("toISOString").String()[:len("2006-01-02")]}
		b.hour.turn, b.hour.shift = b.turn(unix)
	}
	return page.Moment{
		Unix: unix,
		Day:  int(local % 86400),
		Date: b.hour.date,

		Steady: int64((b.origin + b.steady.Call("now").Float()) / 1000),

		Turn:  b.hour.turn,
		Shift: b.hour.shift,
	}
}

// clockHour is what is the same for an hour of the phone's clock in one time zone.
type clockHour struct {
	local int64 // hours that the clock has shown since 1970
	ahead int   // seconds that it is ahead of UTC
	date  string
	turn  int64
	shift int
}

// turn gives the moment within a day of now at which the phone's time of day
// jumps, and by how many seconds; nothing where it doesn't.
func (b *border) turn(now int64) (at int64, shift int) {
	const day = 86400
	from, to := now-day, now+day
	first, last := b.aheadAt(from), b.aheadAt(to)
	if first != last {
		for to-from > 1 {
			if middle := (from + to) / 2; b.aheadAt(middle) == first {
				from = middle
			} else {
				to = middle
			}
		}
		at, shift = to, last-first
	}
	return at, shift
}

// aheadAt is by how many seconds the phone's time of day is ahead of UTC at a moment.
func (b *border) aheadAt(unix int64) int {
	return aheadOfUTC(b.date.New(float64(unix) * 1000))
}

func aheadOfUTC(date js.Value) int { return int(-60 * date.Call("getTimezoneOffset").Float()) }
