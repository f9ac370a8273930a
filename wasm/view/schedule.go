package view

import (
	"math"

	"shedreckoner/calc/job"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// scheduleSection is a calendar of what is left to do.
func scheduleSection(s *page.State) html {
	open := s.IsOpen(page.ScheduleList)
	button := el("button", a("class", "quiet", "type", "button", "id", "do-open-"+page.ScheduleList, "data-do", "open", "data-path", page.ScheduleList, "aria-expanded", yesNo(open)), txt(words.WhenTheRest))
	if !open {
		return region("schedule", "section", a("class", "schedule"), button)
	}
	at := job.DayPath
	return region("schedule", "section", a("class", "schedule"), button,
		el("div", a("class", "form"), fieldWith(s, at+".work-from", fieldExtras{Default: "8:00"}), fieldWith(s, at+".work-to", fieldExtras{Default: "18:00"})),
		region("calendar", "div", a("class", "calendar"), calendar(s)))
}

func calendar(s *page.State) html {
	plan := s.Schedule()
	if len(plan.Waiting) > 0 {
		return hint(words.ScheduleWaits)
	}
	if err := s.Bench().Air.Problem(); err != nil {
		return el("p", a("class", "bad"), txt(words.ScheduleStop(err)))
	}
	var parts []html
	for _, day := range plan.Days() {
		parts = append(parts, el("h3", nil, txt(words.DayAhead(day, s.Now.Date))), el("ol", a("class", "works"), worksOf(s, plan.Works, day)...))
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

func worksOf(s *page.State, works []schedule.Work, day int) []html {
	var list []html
	for i := range works {
		w := &works[i]
		if int(math.Floor(float64(w.From/unit.Day))) != day {
			continue
		}
		parts := []html{el("p", a("class", "when"), txt(words.WorkHours(w))), el("p", nil, txt(words.Work(w))), hint(buildupOf(s, w.Step.Path))}
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
