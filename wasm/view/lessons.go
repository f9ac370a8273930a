package view

import (
	"shedreckoner/calc/chance"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// handTakes is what each hand takes of what is planned, a line each; the rest
// stands on its sheet.
func handTakes(s *page.State) html {
	list := s.Lessons().List
	if len(list) == 0 {
		return nothing
	}
	parts := []html{el("h2", nil, txt(words.HandTakes))}
	for i := range list {
		l := &list[i]
		text := words.NotYet
		if l.Count > 0 {
			text = words.TimesPlan(unit.Number(float64(l.After.Value), 3))
		}
		parts = append(parts, el("p", a("class", "ends"), el("span", nil, txt(l.Card.Name+", "+l.Method.Name)), el("strong", nil, txt(text))))
		if i < takesInSight {
			parts = append(parts, takesPicture(l))
		}
	}
	return join(append(parts, look("hand", words.HandLine, page.HandSheet))...)
}

// takesInSight is how many hands have their picture on the log; all have it on the
// sheet.
const takesInSight = 3

// takesPicture is what was used of what was planned, entry by entry, and the band
// that the next work likely lies in; nothing before the first entry.
func takesPicture(l *chance.Lesson) html {
	if l.Count == 0 {
		return nothing
	}
	low, high := unit.Number(float64(l.Likely[0]), 2), unit.Number(float64(l.Likely[1]), 2)
	plot := draw.TakesPlot{Title: words.TakesTitle(l.Card.Name+", "+l.Method.Name, unit.Number(float64(l.After.Value), 3), low, high, l.Count),
		Plan: words.AsPlanned, Likely: words.NextLikely(low, high), Comes: float64(l.After.Value), Low: float64(l.Likely[0]), High: float64(l.Likely[1])}
	for i := range l.Log {
		if e := &l.Log[i]; e.Err == nil {
			plot.Entries = append(plot.Entries, float64(e.Ratio))
		}
	}
	return draw.Takes(plot)
}

// handTakesSheet is what the log teaches, to be used or not.
func handTakesSheet(s *page.State) shown {
	return shown{Title: words.HandTakes, Body: region("lessons", "section", a("class", "figures"), lessons(s))}
}

// lessons is what the log teaches, before and after, for the builder to use
// or not.
func lessons(s *page.State) html {
	if len(s.Lessons().List) == 0 {
		return nothing
	}
	var parts []html
	for i := range s.Lessons().List {
		parts = append(parts, lesson(s, &s.Lessons().List[i]))
	}
	return join(parts...)
}

func lesson(s *page.State, l *chance.Lesson) html {
	id, path := "lesson."+l.Method.Key+"."+l.Card.Key, page.LessonPath(l)
	parts := []html{el("h3", nil, txt(l.Card.Name+", "+l.Method.Name))}
	if l.Count > 0 {
		parts = append(parts,
			figure(s, id+".before", words.UsedOverPlanned, unit.Number(float64(l.Before.Value), 3), l.Before.Step),
			figure(s, id+".after", words.AfterEntries(l.Count), unit.Number(float64(l.After.Value), 3), l.After.Step),
			takesPicture(l), hint(words.LikelyNext(l.Likely)))
	}
	if left := len(l.Log) - l.Count; left > 0 {
		parts = append(parts, hint(words.Counted(left, words.EntryDoesntCount, words.EntriesDontCount)))
	}
	if l.Taken != nil {
		factor := unit.Number(float64(chance.FactorOf(l.Taken)), 3)
		parts = append(parts, el("p", nil, txt(words.TakenOver(factor, l.Taken.Entries))))
	}
	var buttons []html
	if l.Count > 0 && !l.IsCurrent() {
		buttons = append(buttons, action("learn", path, "", words.UseLesson, "main"))
	}
	if l.Taken != nil {
		buttons = append(buttons, action("unlearn", path, "", words.ForgetIt, "quiet"))
	}
	return el("div", a("class", "lesson"), append(parts, el("div", a("class", "itemtools"), buttons...))...)
}
