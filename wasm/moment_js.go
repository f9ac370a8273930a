package main

import (
	"syscall/js"

	"shedreckoner/wasm/page"
)

// moment reads the shed's own clock.
func (b *border) moment() page.Moment {
	date, steady := b.window.Get("Date").New(), b.window.Get("performance")
	unix, ahead := int64(date.Call("getTime").Float()/1000), aheadOfUTC(date)
	local := unix + int64(ahead) // what the phone's clock shows, if it were UTC: few questions to the browser, at every key
	m := page.Moment{
		Unix: unix,
		Day:  int(local % 86400),
		Date: b.window.Get("Date").New(float64(local) * 1000).Call("toISOString").String()[:len("2006-01-02")],

		Steady: int64((steady.Get("timeOrigin").Float() + steady.Call("now").Float()) / 1000),
	}
	m.Turn, m.Shift = b.turn(unix, ahead)
	return m
}

// turns is what was found of the phone's time zone around a moment. It is looked
// for once an hour, and anew in another zone.
type turns struct {
	hour  int64
	ahead int
	turn  int64
	shift int
}

// turn gives the moment within a day of now at which the phone's time of day
// jumps, and by how many seconds; nothing where it doesn't.
func (b *border) turn(now int64, ahead int) (at int64, shift int) {
	const day = 86400
	hour := now / 3600
	if known := b.turns; known.hour == hour && known.ahead == ahead {
		return known.turn, known.shift
	}
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
	b.turns = turns{hour, ahead, at, shift}
	return at, shift
}

// aheadAt is by how many seconds the phone's time of day is ahead of UTC at a moment.
func (b *border) aheadAt(unix int64) int {
	return aheadOfUTC(b.window.Get("Date").New(float64(unix) * 1000))
}

func aheadOfUTC(date js.Value) int { return int(-60 * date.Call("getTimezoneOffset").Float()) }
