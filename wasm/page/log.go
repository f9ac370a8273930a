package page

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/order"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
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
		s.Notice = limitSentence(list)
		return nil
	}
	doc, item := s.Doc().Add("done")
	put := func(key, text string) { doc = doc.Set(item+"."+key, text) }
	put("step", m.Path)
	put("surface", strings.Join(surfaces, " "))
	put("day", s.Now.Date)
	put("at", strconv.FormatInt(s.Now.Unix, 10))
	put("cups", strings.Join(step.Progress.Cups, " "))
	if n := len(step.Progress.Cups); n > 0 {
		put("temp", s.Doc().Get(step.Progress.Cups[n-1]+".surface-temp"))
	}
	if planned, film, each, known := s.Plan.Share(m.Path, surfaces); known {
		put("card", step.Card.Key)
		put("method", plan.MethodOf(step).Key)
		put("planned", gramText(planned))
		put("film", gramText(film))
		if each > 0 {
			put("each", unit.Typed(float64(each), unit.InMicrometre)+" µm")
		}
	}
	s.opened(item)
	return s.edit(doc, "", Effect{Kind: Focus, Key: item})
}

// learn takes over what the log teaches of a method and card; unlearn takes it
// back. Nothing is taken over unasked.
func learn(s *State, m Message) []Effect {
	for i := range s.Lessons().List {
		if l := &s.Lessons().List[i]; l.Count > 0 && LessonPath(l) == m.Path {
			effects := s.edit(s.Doc().Set(m.Path, l.Text()), "")
			s.Notice = "Taken over: the order and what is left now reckon with it."
			return effects
		}
	}
	return nil
}

func unlearn(s *State, m Message) []Effect {
	if !strings.HasPrefix(m.Path, "learn.") {
		return nil
	}
	effects := s.edit(s.Doc().Set(m.Path, ""), "")
	s.Notice = "Forgotten: the plan reckons with its own figures again."
	return effects
}

// LessonPath is where a lesson is kept once it is taken over.
func LessonPath(l *chance.Lesson) string { return job.LearntPath(l.Method.Key, l.Card.Key) }

// EntrySentence says why an entry of the log isn't learned from, and what to do.
func EntrySentence(path string, err error) string {
	var refused *order.LogError
	switch {
	case errors.As(err, &refused) && refused.Cause == order.ThinFilm:
		return "Less was used than the film alone needs: that is a thin film, not a low loss. Read a wet-film comb, type it at the step, and this counts."
	case errors.As(err, &refused) && refused.Cause == order.Unlikely:
		return "Used and planned lie more than five times apart: that is a slip of unit, not a hand. Check what was used."
	case errors.Is(err, chance.ErrNoUse) && isCupPath(path):
		return "Not learned from: no catalyst went into it."
	case errors.Is(err, chance.ErrLeftOpen) && isCupPath(path):
		return "Not learned from yet: type what was left over."
	case errors.Is(err, chance.ErrNoUse):
		return "Not learned from: no cup was mixed for this step. Type what was put on."
	case errors.Is(err, chance.ErrLeftOpen):
		return "Not learned from yet: type what was left over of its cups that gelled or were left open."
	case errors.Is(err, chance.ErrUnlikely):
		return "Not learned from until you say that it is real."
	case errors.Is(err, chance.ErrNoPlanned) && isCupPath(path):
		return "Not learned from: it isn't known what this area was to take."
	case errors.Is(err, chance.ErrNoPlanned):
		return "Not learned from: nothing was planned when it was logged."
	}
	return "Not learned from: its figures can't be right."
}

// IsAhead says if a moment lies in the future by more than clocks differ.
func (s *State) IsAhead(path string) bool {
	at, err := strconv.ParseFloat(s.Doc().Get(path), 64)
	return err == nil && at-float64(s.Now.Unix) > slackAhead
}

// HourOf is the time of day of a moment of the log, by the shed's clock.
func (s *State) HourOf(path string) string {
	at, err := strconv.ParseInt(s.Doc().Get(path), 10, 64)
	if err != nil || at <= 0 {
		return ""
	}
	return ClockText(s.Now.timeOfDay(at))
}

// cupColumns is what is written of a cup, by column.
var cupColumns = []struct{ name, key string }{
	{"material", "card"}, {"tin", "tin"}, {"step", "step"}, {"method", "method"}, {"mixed", "mixed"}, {"catalyst", "dose"}, {"catalyst by mass", "share"},
	{"product at", "product-temp"}, {"surface at", "surface-temp"}, {"air at", "air-temp"}, {"humidity", "humidity"}, {"usable", "usable"}, {"early gel", "early"},
	{"gelled after", "gel"}, {"left over", "left"}, {"covered", "covered"}, {"planned per area", "per-area"}, {"how it ended", "end"}, {"what went wrong", "fault"}, {"note", "note"},
}

// LogCSV is the log for a spreadsheet: each cup, then each finished piece of
// work. Amounts stand with their units, as they were taken down.
func LogCSV(s *State) string {
	head := []string{"kind", "day", "hour", "surfaces", "planned", "put on"}
	for _, c := range cupColumns {
		head = append(head, c.name)
	}
	t := newTable(job.HasComma(s.Doc()), head...)
	for _, cup := range OpenCups(s.Doc(), Ended) {
		cells := []string{"cup", s.Doc().Get(cup + ".day"), s.HourOf(cup + ".weighed"), "", "", t.figures(s.usedText(cup))}
		t.row(append(cells, s.cells(cup, t)...)...)
	}
	for _, id := range s.Doc().Items("done") {
		item := "done." + id
		cells := []string{"done", s.Doc().Get(item + ".day"), s.HourOf(item + ".at"), s.SurfaceNames(strings.Fields(s.Doc().Get(item + ".surface"))),
			t.figures(s.Doc().Get(item + ".planned")), t.figures(s.usedText(item))}
		t.row(append(cells, s.cells(item, t)...)...)
	}
	return t.text.String()
}

// cells writes what there is of an item's columns, keys as their names.
func (s *State) cells(item string, t *table) []string {
	var list []string
	for _, c := range cupColumns {
		text := s.withUnit(item + "." + c.key)
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
			if done := s.withUnit(item + ".temp"); done != "" {
				text = done
			}
			text = t.figures(text)
		case "fault":
			text = optionName(job.Faults, text)
		case "tin", "note":
		default:
			text = t.figures(text)
		}
		list = append(list, text)
	}
	return list
}

func (s *State) usedText(item string) string {
	for i := range s.Lessons().List {
		for _, e := range s.Lessons().List[i].Log {
			if e.Path == item && e.Used.Step != nil {
				return unit.WithUnit(unit.Typed(float64(e.Used.Value), unit.InKilogram), unit.InKilogram)
			}
		}
	}
	return s.withUnit(item + ".used")
}

func optionName(list []job.Option, key string) string {
	for _, o := range list {
		if o.Key == key {
			return o.Name
		}
	}
	return ""
}

func methodName(key string) string { return optionName(job.FieldAt("bench.now.method").Options, key) }

// SurfaceNames names surfaces, one after the other.
func (s *State) SurfaceNames(paths []string) string {
	var names []string
	for _, path := range paths {
		name := s.Doc().Get(path + ".name")
		if name == "" {
			name = "a surface that is gone"
			if list, id := job.Split(path); slices.Contains(s.Doc().Items(list), id) {
				name = "a surface without a name"
			}
		}
		names = append(names, name)
	}
	return strings.Join(names, ", ")
}

// WorkOf names what a step does, with its material.
func (s *State) WorkOf(path string) string {
	name := job.FindStepKind(s.Doc().Get(path + ".kind")).Name
	if card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card")); card != nil {
		name += ", " + card.Name
	}
	return name
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
			whole = "Build-up"
		}
		return whole + ": " + strconv.Itoa(i+1) + ". " + s.WorkOf(path)
	}
	return "a step that is gone"
}

func logCSV(s *State, m Message) []Effect {
	return []Effect{{Kind: Download, Key: "log.csv", Text: LogCSV(s)}}
}
