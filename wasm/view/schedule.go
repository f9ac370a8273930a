package view

import (
	"math"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// scheduleSection is a calendar of what is left to do.
func scheduleSection(s *page.State) html {
	open := s.IsOpen(page.ScheduleList)
	button := el("button", a("class", "quiet", "type", "button", "id", "do-open-"+page.ScheduleList, "data-do", "open", "data-path", page.ScheduleList, "aria-expanded", yesNo(open)), txt("When can the rest be done?"))
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
		return hint("Shown once today's air is typed on Cup: low, high, a reading of temperature and humidity.")
	}
	if s.Bench().Air.Err != nil {
		return el("p", a("class", "bad"), txt(page.StopSentence(s.Bench().Air.Err)))
	}
	var parts []html
	for _, day := range plan.Days() {
		parts = append(parts, el("h3", nil, txt(s.DayWords(day))), el("ol", a("class", "works"), worksOf(s, plan.Works, day)...))
	}
	if len(plan.Works) == 0 && len(plan.Stopped) == 0 {
		parts = append(parts, hint("Nothing is left to do, or nothing is measured yet."))
	}
	for _, stop := range plan.Stopped {
		text := page.StopSentence(stop.Err)
		if stop.Step != nil {
			text = s.StepName(stop.Step.Path) + ". " + text
		}
		parts = append(parts, el("p", a("class", "bad"), txt(text)))
	}
	return join(append(parts, hint("Every day is taken to be like today, with one pair of hands. Waits are the card's at 20 °C, twice as long at 10 °C, 0.6 of it at 30 °C; under 10 °C nothing cures. "+
		"Common practice: the maker's sheet and a thumbnail stand above it."))...)
}

func worksOf(s *page.State, works []schedule.Work, day int) []html {
	var list []html
	for i := range works {
		w := &works[i]
		if int(math.Floor(float64(w.From/unit.Day))) != day {
			continue
		}
		parts := []html{el("p", a("class", "when"), txt(span(s, w))), el("p", nil, txt(s.WorkName(w))), hint(buildupOf(s, w.Step.Path))}
		for _, note := range s.WorkNotes(w) {
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

// span is the hours of a work; the end names its day where that is another.
func span(s *page.State, w *schedule.Work) string {
	if w.Kind == plan.LaunchIt {
		return "From " + page.Hour(w.From)
	}
	to := page.Hour(w.To)
	if from, end := math.Floor(float64(w.From/unit.Day)), math.Floor(float64(w.To/unit.Day)); end > from {
		to += " (" + words.Counted(int(end-from), "day", "days") + " on)"
	}
	return page.Hour(w.From) + "–" + to
}

func buildupOf(s *page.State, step string) string {
	steps, _ := job.Split(step)
	path, _ := job.Split(steps)
	return buildupName(s, path)
}
