package view

import (
	"cmp"

	"shedreckoner/calc/job"
	"shedreckoner/calc/schedule"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// calendarSheet is when what is left to do can be done.
func calendarSheet(s *page.State) shown {
	return shown{Title: words.WhenTheRest, Body: calendarBody(s)}
}

func calendarBody(s *page.State) html {
	from, to := s.Doc().Get(workFrom), s.Doc().Get(workTo)
	return join(setup("hours", words.HoursLine(cmp.Or(from, usualFrom), cmp.Or(to, usualTo)), page.HoursSheet),
		region("calendar", "div", a("class", "calendar"), calendar(s)))
}

// The hours of work, and those that hold while none are typed.
const (
	workFrom, workTo   = job.DayPath + ".work-from", job.DayPath + ".work-to"
	usualFrom, usualTo = "8:00", "18:00"
)

// hoursSheet is when work begins and ends.
func hoursSheet(s *page.State) shown {
	return shown{Title: words.HoursOfWork, Body: join(dial(s, workFrom, dialLine{Default: usualFrom}), dial(s, workTo, dialLine{Default: usualTo}))}
}

func calendar(s *page.State) html {
	plan := s.Schedule()
	if len(plan.Waiting) > 0 {
		return hint(words.ScheduleWaits)
	}
	if err := s.Bench().Air.Problem(); err != nil {
		return el("p", a("class", "bad"), txt(words.ScheduleStop(err)))
	}
	first, later := daysInSight(&plan)
	parts := daysOf(s, &plan, first)
	if len(later) > 0 {
		parts = append(parts, look("later", words.LaterLine(words.Counted(len(later), "day", "days")), page.LaterSheet))
	}
	if len(plan.Works) == 0 && len(plan.Stopped) == 0 {
		parts = append(parts, hint(words.NothingToSchedule))
	}
	for _, stop := range plan.Stopped {
		text := words.ScheduleStop(stop.Err)
		if stop.Step != nil {
			text = s.StepName(stop.Step.Path) + ". " + text
		}
		parts = append(parts, el("p", a("class", "bad"), txt(text)))
	}
	return join(append(parts, hint(words.DaysLikeToday))...)
}

// worksInSight is how many works of the calendar stand before the line to the rest.
const worksInSight = 8

// daysInSight parts the days of the calendar: those that stand on its sheet, and
// those behind their line.
func daysInSight(plan *schedule.Schedule) (first, later []int) {
	days := plan.Days()
	works := 0
	for i, day := range days {
		for w := range plan.Works {
			if plan.Works[w].Day() == day {
				works++
			}
		}
		if works >= worksInSight {
			return days[:i+1], days[i+1:]
		}
	}
	return days, nil
}

// laterSheet is the rest of the calendar.
func laterSheet(s *page.State) shown {
	plan := s.Schedule()
	_, later := daysInSight(&plan)
	return shown{Title: words.Later, Body: el("div", a("class", "calendar"), daysOf(s, &plan, later)...)}
}

func daysOf(s *page.State, plan *schedule.Schedule, days []int) (parts []html) {
	for _, day := range days {
		parts = append(parts, el("h3", nil, txt(words.DayAhead(day, s.Now.Date))), el("ol", a("class", "works"), worksOf(s, plan.Works, day)...))
	}
	return parts
}

func worksOf(s *page.State, works []schedule.Work, day int) []html {
	var list []html
	for i := range works {
		w := &works[i]
		if w.Day() != day {
			continue
		}
		parts := []html{el("p", a("class", "when"), txt(words.WorkHours(w))), el("p", nil, txt(words.Work(w)), el("small", nil, txt(buildupOf(s, w.Step.Path))))}
		for _, note := range words.WorkNotes(w, s.Now.Date) {
			class := "hint"
			if w.NeedsKey || w.IsLong {
				class = "ask"
			}
			parts = append(parts, el("p", a("class", class), txt(note)))
		}
		list = append(list, el("li", nil, parts...))
	}
	return list
}

func buildupOf(s *page.State, step string) string {
	steps, _ := job.Split(step)
	path, _ := job.Split(steps)
	return buildupName(s, path)
}
