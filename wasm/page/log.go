package page

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// counted notes with a typed stock which cups it knows of: later ones lower it.
func counted(doc job.Document, path string) job.Document {
	item, key := job.Split(path)
	if list, _ := job.Split(item); list != "card" || key != "stock" {
		return doc
	}
	latest := 0
	for _, id := range doc.Items("cup") {
		n, _ := strconv.Atoi(id)
		latest = max(latest, n)
	}
	return doc.Set(item+".counted", "cup."+strconv.Itoa(latest))
}

// finish logs a step as done on surfaces: what was planned for them is frozen,
// and the ended cups of the step that belong to nothing else go with it.
func finish(s *State, m Message) []Effect {
	step, _ := s.Plan.StepAt(m.Path)
	surfaces := strings.Fields(m.Text)
	if step == nil || len(surfaces) == 0 || slices.ContainsFunc(surfaces, func(path string) bool { return !slices.Contains(step.Progress.Open, path) }) {
		return nil
	}
	if list := job.ListAt("done"); len(s.Doc().Items("done")) >= list.Max {
		s.Notice = words.ListFull(list)
		return nil
	}
	doc, item := s.Doc().Add("done")
	put := func(key, text string) { doc = doc.Set(item+"."+key, text) }
	put("step", m.Path)
	put("surface", strings.Join(surfaces, " "))
	put("day", s.Now.Date)
	put("at", strconv.FormatInt(s.Now.Unix, 10))
	put("hour", strconv.Itoa(s.Now.Day))
	put("cups", strings.Join(step.Progress.Cups, " "))
	if n := len(step.Progress.Cups); n > 0 {
		put("temp", s.Doc().Get(step.Progress.Cups[n-1]+".surface-temp"))
	}
	if planned, film, each, known := s.Plan.PlannedOn(m.Path, surfaces); known {
		put("card", step.Card.Key)
		put("method", plan.MethodOf(step).Key)
		put("planned", gramText(planned))
		put("film", gramText(film))
		if each > 0 {
			put("each", unit.Typed(float64(each), unit.InMicrometre)+" µm")
		}
	}
	s.opened(item)
	return edit(s, doc, "", Effect{Kind: Focus, Key: item})
}

// learn has the plan go by what the log teaches of a method and card; unlearn ends
// that. Nothing is learned unasked.
func learn(s *State, m Message) []Effect {
	for i := range s.Lessons().List {
		if l := &s.Lessons().List[i]; l.Count > 0 && LessonPath(l) == m.Path {
			effects := edit(s, s.Doc().Set(m.Path, l.Text()), "")
			s.Notice = words.LessonTaken
			return effects
		}
	}
	return nil
}

func unlearn(s *State, m Message) []Effect {
	if !strings.HasPrefix(m.Path, "learn.") {
		return nil
	}
	effects := edit(s, s.Doc().Set(m.Path, ""), "")
	s.Notice = words.LessonForgotten
	return effects
}

// LessonPath is where a lesson is kept while the plan goes by it.
func LessonPath(l *chance.Lesson) string { return job.LearntPath(l.Method.Key, l.Card.Key) }

// IsAhead reports whether a moment lies in the future by more than clocks differ.
func (s *State) IsAhead(path string) bool {
	at, err := strconv.ParseFloat(s.Doc().Get(path), 64)
	return err == nil && at-float64(s.Now.Unix) > slackAhead
}

// HourOf is the time of day of a moment in the log, as the phone told it then: in
// another zone, or before summer time began, that was another hour than now. An
// entry of an older job, which didn't note it, has none after a day.
func (s *State) HourOf(path string) string {
	const day = 86400
	at, err := strconv.ParseInt(s.Doc().Get(path), 10, 64)
	if err != nil || at <= 0 {
		return ""
	}
	item, key := job.Split(path)
	if hour, err := strconv.Atoi(s.Doc().Get(item + ".hour")); key != "in" && err == nil && hour >= 0 && hour < day {
		return words.Clock(hour)
	}
	if s.Now.Unix-at > day || at-s.Now.Unix > day {
		return ""
	}
	return words.Clock(s.Now.timeOfDay(at))
}

// cupColumns is what is written of a cup, by column.
var cupColumns = []struct{ name, key string }{
	{"material", "card"}, {"tin", "tin"}, {"step", "step"}, {"method", "method"}, {"mixed", "mixed"}, {"catalyst", "dose"}, {words.ColumnShare, "share"},
	{words.ColumnProductAt, "product-temp"}, {words.ColumnSurfaceAt, "surface-temp"}, {words.ColumnAirAt, "air-temp"}, {"humidity", "humidity"}, {"usable", "usable"}, {words.ColumnEarlyGel, "early"},
	{words.GelledName, "gel"}, {words.LeftOverName, "left"}, {"covered", "covered"}, {words.ColumnPerArea, "per-area"}, {words.ColumnEnd, "end"}, {words.ColumnFault, "fault"}, {"note", "note"},
}

// LogCSV is the log for a spreadsheet: each cup, then each finished piece of
// work. Amounts stand with their units, as they were taken down.
func LogCSV(s *State) string {
	head := []string{"kind", "day", "hour", "surfaces", "planned", words.PutOn}
	for _, c := range cupColumns {
		head = append(head, c.name)
	}
	t := newTable(job.HasComma(s.Doc()), head...)
	for _, cup := range OpenCups(s.Doc(), Ended) {
		cells := []string{"cup", s.Doc().Get(cup + ".day"), s.HourOf(cup + ".weighed"), "", "", t.figures(usedText(s, cup))}
		t.row(append(cells, cellsOf(s, cup, t)...)...)
	}
	for _, id := range s.Doc().Items("done") {
		item := "done." + id
		cells := []string{"done", s.Doc().Get(item + ".day"), s.HourOf(item + ".at"), s.SurfaceNames(strings.Fields(s.Doc().Get(item + ".surface"))),
			t.figures(s.Doc().Get(item + ".planned")), t.figures(usedText(s, item))}
		t.row(append(cells, cellsOf(s, item, t)...)...)
	}
	return t.text.String()
}

// cellsOf writes what there is of an item's columns, keys as their names.
func cellsOf(s *State, item string, t *table) []string {
	var list []string
	for _, c := range cupColumns {
		text := WithUnit(s, item+"."+c.key)
		switch c.key {
		case "card":
			if text != "" {
				text = cardName(s, text)
			}
		case "step":
			text = s.StepName(text)
		case "method":
			text = methodName(text)
		case "surface-temp":
			if done := WithUnit(s, item+".temp"); done != "" {
				text = done
			}
			text = t.figures(text)
		case "fault":
			text = job.OptionName(job.Faults, text)
		case "tin", "note":
		default:
			text = t.figures(text)
		}
		list = append(list, text)
	}
	return list
}

func usedText(s *State, item string) string {
	for i := range s.Lessons().List {
		for _, e := range s.Lessons().List[i].Log {
			if e.Path == item && e.Used.Step != nil {
				return unit.WithUnit(unit.Typed(float64(e.Used.Value), unit.InKilogram), unit.InKilogram)
			}
		}
	}
	return WithUnit(s, item+".used")
}

func methodName(key string) string {
	return job.OptionName(job.FieldAt("bench.now.method").Options, key)
}

// SurfaceNames names surfaces, one after the other.
func (s *State) SurfaceNames(paths []string) string {
	var names []string
	for _, path := range paths {
		name := s.Doc().Get(path + ".name")
		if name == "" {
			name = words.SurfaceGone
			if list, id := job.Split(path); slices.Contains(s.Doc().Items(list), id) {
				name = words.UnnamedSurface
			}
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// WorkOf names a step by its material, else by what it does.
func (s *State) WorkOf(path string) string {
	return words.StepTitle(job.FindStepKind(s.Doc().Get(path+".kind")), s.Plan.Job.CardByKey(s.Doc().Get(path+".card")))
}

// StepName names a step by its build-up, place and material.
func (s *State) StepName(path string) string {
	if path == "" {
		return ""
	}
	steps, _ := job.Split(path)
	buildup, _ := job.Split(steps)
	for i, id := range s.Doc().Items(steps) {
		if steps+"."+id != path {
			continue
		}
		whole := s.Doc().Get(buildup + ".name")
		if whole == "" {
			whole = words.UnnamedBuildup
		}
		return words.StepOf(whole, i+1, s.WorkOf(path))
	}
	return words.StepGone
}

func logCSV(s *State, m Message) []Effect {
	return []Effect{{Kind: Download, Key: "log.csv", Text: LogCSV(s)}}
}
