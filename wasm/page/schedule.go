package page

import (
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// Schedule puts what is left to do on a calendar, every day like today.
func (s *State) Schedule() schedule.Schedule { return schedule.Make(&s.Plan, todayOf(s)) }

// todayOf is the day as it was read.
func todayOf(s *State) schedule.Today {
	a := &s.Bench().Air
	return schedule.Today{Waiting: a.Waiting, Known: a.Known && a.Problem() == nil, Day: a.Day, Surface: a.Surface,
		Hour: unit.Time(s.Now.Day), Unix: float64(s.Now.Unix)}
}
