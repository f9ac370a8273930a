package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
)

// logScreen is what became of each cup, what is done, what both teach, when the
// rest can be done, and the builder's own cup tests.
func logScreen(s page.State) html {
	return join(
		region("list-cup", "section", a("class", "list", "tabindex", "-1"), loggedCups(s)),
		region("progress", "section", a("class", "list", "tabindex", "-1"), progress(s)),
		region("list-done", "section", a("class", "list", "tabindex", "-1"), finishedWork(s)),
		region("lessons", "section", a("class", "figures"), lessons(s)),
		scheduleSection(s),
		cupTests(s),
		el("div", a("class", "itemtools"), action("log-csv", "", "", "Save the log as CSV", "quiet")))
}

// justEnded asks of a cup that has just ended what was left over: the second
// tap from the clock.
func justEnded(s page.State) html {
	cup := s.Open["cup"]
	d := s.Doc()
	if cup == "" || page.CupPhase(d, cup) != page.Ended || d.Get(cup+".left") != "" || d.Get(cup+".end") == job.EndScrapped || d.Get(cup+".end") == job.EndInFile {
		return nothing
	}
	c := s.Fresh.Job.CupByPath(cup)
	if c == nil || c.Mixed.Step == nil {
		return nothing
	}
	buttons := []html{action("open", cup, "", "Only what clings", "main")}
	for _, part := range []struct {
		name  string
		share unit.Mass
	}{{"A quarter", 0.25}, {"Half", 0.5}, {"All of it", 1}} {
		buttons = append(buttons, action("set", cup+".left", unit.Typed(float64(c.Mixed.Value*part.share), unit.InGram)+" g", part.name, "quiet"))
	}
	return el("article", a("class", "logged"),
		el("h2", a("id", "left-"+cup, "tabindex", "-1"), txt("Logged: "+cupName(s, cup))),
		el("p", nil, txt("What was left over, in cup and tool?")),
		el("div", a("class", "itemtools"), join(buttons...), action("go", "log", "", "Weigh it, note more", "quiet")))
}

func loggedCups(s page.State) html {
	cups := page.OpenCups(s.Doc(), page.Ended)
	if len(cups) == 0 {
		return el("div", a("class", "empty"), el("p", nil, txt("Nothing logged yet. A cup lands here when it ends, with what was left over.")),
			action("go", "cup", "", "Go to the cup", "main"))
	}
	items := []html{el("h2", nil, txt("Cups"))}
	for i := len(cups) - 1; i >= 0; i-- {
		items = append(items, loggedCup(s, cups[i]))
	}
	return join(items...)
}

func cupName(s page.State, cup string) string {
	name := strings.ReplaceAll(s.Doc().Get(cup+".mixed"), " ", "\u00a0")
	if c := s.Plan.Job.CardByKey(s.Doc().Get(cup + ".card")); c != nil {
		name = c.Name + ", " + name
	}
	return name
}

func loggedCup(s page.State, cup string) html {
	d := s.Doc()
	open := s.IsOpen(cup)
	parts := []html{itemLine(s, cup, open, cupName(s, cup), d.Get(cup+".day")+" "+d.Get(cup+".end"))}
	if open {
		parts = append(parts, noCure(d, cup), el("div", a("class", "form"),
			fieldWith(s, cup+".left", fieldExtras{Default: "the usual", Hint: "Weighed back. Left empty, what usually clings to cup and tool is taken."}),
			fieldWith(s, cup+".step", fieldExtras{Options: stepsOf(s, d.Get(cup+".card")), First: "none of the plan", Label: "it went on for"}),
			field(s, cup+".gel"), fieldWith(s, cup+".fault", fieldExtras{First: "nothing"}), field(s, cup+".note")),
			region("fault-"+cup, "div", a("class", "fault"), faultAnswer(s, cup)),
			region("taken-"+cup, "div", a("class", "figures"), takenDown(s, cup)),
			region("tools-"+cup, "div", a("class", "itemtools"), testOf(d, cup), action("remove", cup, "", "Remove", "quiet")))
	}
	return region("item-"+cup, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

// stepsOf is every step that puts a material on.
func stepsOf(s page.State, card string) []job.Option {
	options := []job.Option{}
	for _, b := range s.Plan.Buildups {
		for i := range b.Steps {
			if step := &b.Steps[i]; step.Leaves.Step != nil && step.Card.Key == card {
				options = append(options, job.Option{Key: step.Path, Name: s.StepName(step.Path)})
			}
		}
	}
	return options
}

// noCure answers a cup that won't go off, without ever adding.
func noCure(d job.Document, cup string) html {
	if d.Get(cup+".end") != job.EndNoCure {
		return nothing
	}
	return el("ul", a("class", "reasons"),
		el("li", nil, txt("Warm the part, and wait: on a cold part it may take hours.")),
		el("li", nil, txt("Add nothing: a second dose can run away, and doesn't mix in.")),
		el("li", nil, txt("Still wet the next day: scrape it off, wash, and coat again.")))
}

// takenDown is what the page noted of a cup by itself.
func takenDown(s page.State, cup string) html {
	d := s.Doc()
	var lines []html
	add := func(name, text string) {
		if text != "" {
			lines = append(lines, el("li", nil, txt(name+": "+text)))
		}
	}
	add("Weighed at", s.HourOf(cup+".weighed"))
	add("Catalyst that went in", d.Get(cup+".dose"))
	c := s.Fresh.Job.CupByPath(cup)
	if c == nil {
		return join(aheadOf(s, cup+".weighed"), el("ul", nil, lines...))
	}
	units := s.Plan.Job.Units
	add("Catalyst, by mass", written(c.Share, unit.InPercent))
	add("Product", written(c.ProductTemp, units.Scale(unit.Temperatures)))
	add("Surface", written(c.SurfaceTemp, units.Scale(unit.Temperatures)))
	add("Air", written(c.AirTemp, units.Scale(unit.Temperatures)))
	add("Humidity", written(c.Humidity, unit.InPercent))
	add("Usable, as reckoned", written(c.Usable, unit.InMinute))
	add("Gels at the soonest, as reckoned", written(c.Early, unit.InMinute))
	add("Tin", c.Tin)
	if c.Gel.Step != nil && c.Early.Step != nil {
		verdict := "as expected or later"
		if c.Gel.Value < c.Early.Value {
			verdict = "sooner than the early end that was expected"
		}
		add("It gelled", verdict)
	}
	return join(aheadOf(s, cup+".weighed"), el("ul", nil, lines...))
}

// cupsThatWentOn names the cups of a finished piece of work, and when those
// gelled that were timed.
func cupsThatWentOn(s page.State, path string) html {
	var lines []html
	for _, cup := range strings.Fields(s.Doc().Get(path + ".cups")) {
		c := s.Fresh.Job.CupByPath(cup)
		if c == nil {
			continue
		}
		text := c.Day + " " + cupName(s, cup) + ", " + c.End
		if c.Gel.Step != nil && c.Early.Step != nil {
			text += ", gelled after " + written(c.Gel, unit.InMinute) + " (at the soonest " + written(c.Early, unit.InMinute) + " was reckoned)"
		}
		lines = append(lines, el("li", nil, txt(text)))
	}
	if len(lines) == 0 {
		return nothing
	}
	return join(hint("Its cups:"), el("ul", nil, lines...))
}

// written is a figure as it was taken down; "" where none was.
func written[Q unit.Quantity](f working.Figure[Q], scale *unit.Scale) string {
	if f.Step == nil {
		return ""
	}
	return unit.Write(float64(f.Value), scale, 3)
}

// aheadOf asks about a moment that lies in the future.
func aheadOf(s page.State, path string) html {
	if !s.IsAhead(path) {
		return nothing
	}
	return el("p", a("class", "bad"), txt("This lies in the future, by this phone's clock. Is one of the two clocks wrong?"))
}

func testOf(d job.Document, cup string) html {
	if d.Get(cup+".gel") == "" {
		return nothing
	}
	return action("take", cup, "", "Take as a cup test", "quiet")
}

// cupTests is the builder's own timed cups: they move the minutes of a card.
func cupTests(s page.State) html {
	var items []html
	for i, id := range s.Doc().Items("test") {
		path := "test." + id
		open := s.IsOpen(path)
		parts := []html{itemLine(s, path, open, "Cup test "+unit.Number(float64(i+1), 3), s.Doc().Get(path+".minutes"))}
		if open {
			parts = append(parts, el("div", a("class", "form"), fieldWith(s, path+".card", fieldExtras{Options: benchCards(s)}),
				field(s, path+".mass"), field(s, path+".temp"), field(s, path+".share"), field(s, path+".minutes"), field(s, path+".tin")),
				el("div", a("class", "itemtools"), action("remove", path, "", "Remove", "quiet")))
		}
		items = append(items, region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...))
	}
	return region("list-test", "section", a("class", "list", "tabindex", "-1"), el("h2", nil, txt("Cup tests")),
		el("p", a("class", "hint"), txt("100 g, stirred 60 s, the clock from catalyst in, gelled when a lifted string snaps.")),
		join(items...), action("add", "test", "", "Add a cup test", "quiet"))
}

// progress is every step of every build-up that has surfaces: where it is done,
// and what of it is left.
func progress(s page.State) html {
	var items []html
	for i := range s.Plan.Buildups {
		b := &s.Plan.Buildups[i]
		if len(b.Surfaces) == 0 {
			continue
		}
		items = append(items, el("h3", nil, txt(buildupName(s, b.Path))))
		for j := range b.Steps {
			items = append(items, progressStep(s, &b.Steps[j], j+1))
		}
	}
	if len(items) == 0 {
		return nothing
	}
	return join(el("h2", nil, txt("What is done")), join(items...), toBuyAgain(s))
}

func progressStep(s page.State, step *plan.Step, place int) html {
	path := "progress." + strings.ReplaceAll(step.Path, ".", "-")
	p, open := &step.Progress, s.IsOpen(path)
	parts := []html{itemLine(s, path, open, strconv.Itoa(place)+". "+s.WorkOf(step.Path), progressWords(step))}
	if open {
		parts = append(parts, progressFigures(s, step), doneButtons(s, step))
		if p.IsDone() {
			parts = append(parts, hint("Removed below, it is open again."))
		}
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func progressWords(step *plan.Step) string {
	p := &step.Progress
	switch {
	case p.IsDone():
		return "done"
	case len(p.Done) > 0:
		return strconv.Itoa(len(p.Done)) + " of " + strconv.Itoa(len(p.Done)+len(p.Open)) + " done"
	case len(p.Cups) > 0:
		return "begun: " + counted(len(p.Cups), "cup", "cups")
	}
	return "to do"
}

func progressFigures(s page.State, step *plan.Step) html {
	id := "progress." + step.Path
	parts := []html{}
	if step.Leaves.Step != nil {
		parts = append(parts, figure(s, id+".leaves", "To be put on, as planned", of(s, step.Leaves, unit.Weights), step.Leaves.Step))
	}
	if step.Progress.PutOn.Value > 0 {
		parts = append(parts, figure(s, id+".on", "Put on by cups since", of(s, step.Progress.PutOn, unit.Weights), step.Progress.PutOn.Step))
	}
	if left := step.Progress.Rest; left.Step != nil {
		parts = append(parts, figure(s, id+".rest", "Left to do", unit.Write(float64(left.Value), unit.InPercent, 2), left.Step))
	}
	return el("div", a("class", "figures"), parts...)
}

// doneButtons logs the step as done: on one surface, or on all that are open.
func doneButtons(s page.State, step *plan.Step) html {
	open := step.Progress.Open
	var buttons []html
	for _, surface := range open[:min(len(open), 12)] {
		buttons = append(buttons, action("done", step.Path, surface, "Done on "+s.SurfaceNames([]string{surface}), "quiet"))
	}
	if len(open) > 1 {
		buttons = append(buttons, action("done", step.Path, strings.Join(open, " "), "Done on all of them", "main"))
	}
	return el("div", a("class", "itemtools"), buttons...)
}

// toBuyAgain is what the rest still takes beyond what is in stock.
func toBuyAgain(s page.State) html {
	var lines []html
	for i := range s.Plan.Order.Lines {
		if l := &s.Plan.Order.Lines[i]; (l.Scale == unit.InKilogram || l.Scale == unit.InLitre) && l.ToBuy.IsPositive() {
			lines = append(lines, el("li", nil, txt(l.Card.Name+": "+lineAmount(s, l, l.ToBuy)+" more than is in stock ("+page.BuyWords(l, s.Plan.Job.Units)+").")))
		}
	}
	if len(lines) == 0 {
		return hint("What is in stock is enough for the rest, as planned.")
	}
	return join(el("h3", nil, txt("To buy for the rest")), el("ul", nil, lines...),
		hint("As planned, with what you took over from the log. Order says for what chance it is enough."), action("go", "order", "", "Go to the order", "quiet"))
}

// finishedWork is the log of what is done.
func finishedWork(s page.State) html {
	ids := s.Doc().Items("done")
	if len(ids) == 0 {
		return nothing
	}
	items := []html{el("h2", nil, txt("Finished work"))}
	for i := len(ids) - 1; i >= 0; i-- {
		items = append(items, finishedItem(s, "done."+ids[i]))
	}
	return join(items...)
}

func finishedItem(s page.State, path string) html {
	d := s.Doc()
	open := s.IsOpen(path)
	parts := []html{itemLine(s, path, open, s.SurfaceNames(strings.Fields(d.Get(path+".surface"))), d.Get(path+".day")+" "+s.StepName(d.Get(path+".step")))}
	if open {
		parts = append(parts, el("div", a("class", "form"),
			fieldWith(s, path+".used", fieldExtras{Default: "by its cups"}), field(s, path+".temp"), field(s, path+".note")),
			region("figures-"+path, "div", a("class", "figures"), entryFigures(s, path)),
			el("div", a("class", "itemtools"), action("remove", path, "", "Remove", "quiet")))
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func entryFigures(s page.State, path string) html {
	parts := []html{aheadOf(s, path+".at"), cupsThatWentOn(s, path)}
	for i := range s.Fresh.Lessons {
		for _, e := range s.Fresh.Lessons[i].Log {
			if e.Path != path {
				continue
			}
			if e.Used.Step != nil {
				parts = append(parts, figure(s, path+".on", "Put on", of(s, e.Used, unit.Weights), e.Used.Step))
			}
			if e.Planned.Step != nil {
				parts = append(parts, figure(s, path+".planned", "Planned", of(s, e.Planned, unit.Weights), e.Planned.Step))
			}
			if e.Ratio > 0 {
				parts = append(parts, hint("Used ÷ planned: "+unit.Number(float64(e.Ratio), 3)+"."))
			}
			if e.Err != nil {
				parts = append(parts, el("p", a("class", "ask"), txt(page.EntrySentence(e.Err))))
			}
		}
	}
	return join(parts...)
}

// lessons is what the log teaches, before and after, for the builder to take
// over or not.
func lessons(s page.State) html {
	if len(s.Plan.Lessons) == 0 {
		return nothing
	}
	parts := []html{el("h2", nil, txt("What the log teaches"))}
	for i := range s.Plan.Lessons {
		parts = append(parts, lesson(s, &s.Plan.Lessons[i]))
	}
	return join(parts...)
}

func lesson(s page.State, l *plan.Lesson) html {
	id, path := "lesson."+l.Method.Key+"."+l.Card.Key, page.LessonPath(l)
	parts := []html{el("h3", nil, txt(l.Card.Name+", "+l.Method.Name))}
	if l.Count > 0 {
		parts = append(parts,
			figure(s, id+".before", "Used ÷ planned, before", unit.Number(float64(l.Before.Value), 3), l.Before.Step),
			figure(s, id+".after", "After "+counted(l.Count, "entry", "entries"), unit.Number(float64(l.After.Value), 3), l.After.Step),
			hint("The next work will likely take "+unit.Number(float64(l.Likely[0]), 2)+" to "+unit.Number(float64(l.Likely[1]), 2)+" times what is planned."))
	}
	if left := len(l.Log) - l.Count; left > 0 {
		parts = append(parts, hint(counted(left, "entry doesn't count yet: open it to see why.", "entries don't count yet: open them to see why.")))
	}
	if l.Taken != nil {
		factor := unit.Number(float64(plan.FactorOf(l.Taken)), 3)
		parts = append(parts, el("p", nil, txt("Taken over: "+factor+", from "+counted(l.Taken.Entries, "entry", "entries")+". Order and progress reckon with it.")))
	}
	var buttons []html
	if l.Count > 0 && !l.IsCurrent() {
		buttons = append(buttons, action("learn", path, "", "Reckon with it", "main"))
	}
	if l.Taken != nil {
		buttons = append(buttons, action("unlearn", path, "", "Forget it", "quiet"))
	}
	return el("div", a("class", "lesson"), append(parts, el("div", a("class", "itemtools"), buttons...))...)
}

// pending asks about a job that came in by a link or a file.
func pending(s page.State) html {
	var parts []html
	for _, text := range s.Pending.Asks {
		parts = append(parts, el("p", nil, txt(text)))
	}
	parts = append(parts, el("p", nil, txt("Taken, it replaces the job that is shown here; Undo brings that back.")),
		action("take-job", "", "", "Take it", "quiet"), action("drop-job", "", "", "Leave it", "quiet"))
	return el("div", a("class", "ask"), parts...)
}
