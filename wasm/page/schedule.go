package page

import (
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
)

// Schedule puts what is left to do on a calendar, every day like today.
func (s *State) Schedule() schedule.Schedule { return schedule.Make(&s.Plan, s.today()) }

// today is the day as it was read.
func (s *State) today() schedule.Today {
	a := &s.Bench().Air
	return schedule.Today{Waiting: a.Waiting, Known: a.Known && a.Problem() == nil, Day: a.Day, Surface: a.Surface,
		Hour: unit.Time(s.Now.Day), Unix: float64(s.Now.Unix)}
}
