package view

import (
	"errors"
	"strconv"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// clock is the cup that runs out first, or the one that was chosen: from its
// catalyst to the end of its usable time. Its dose isn't here.
func clock(s *page.State) shown {
	front := s.FrontCup()
	t := s.TimesOf(front)
	body := join(
		region("others", "div", a("class", "chips", "role", "group", "aria-label", words.CupsRunning), otherCups(s, front)),
		region("clock", "article", a("class", "clock", "data-is", stageOf(t)), clockFace(s, front, t)),
		tape("clock-note", clockNotes(s, t)...),
		region("clockmore", "div", a("class", "itemtools"), clockMore(s, front, t)),
	)
	return shown{Title: cupName(s, front), Body: body, Act: clockAct(front, t)}
}

func stageOf(t page.Times) string {
	switch {
	case t.IsTest:
		return "test"
	case t.Left <= 0:
		return "over"
	case t.Left <= page.LastMinute:
		return "last"
	}
	return "on"
}

// clockFace is the ring and the hours.
func clockFace(s *page.State, cup string, t page.Times) html {
	time, meaning := countdown(t.Left), words.LeftToSpread
	share := 0.
	if t.Usable > 0 {
		share = t.Left / t.Usable
	}
	marks := []float64{}
	switch {
	case t.IsTest:
		time, meaning = countdown(t.Since), words.SinceCatalyst
		if t.Late > 0 {
			share, marks = 1-t.Since/t.Late, []float64{1 - t.Early/t.Late}
		}
	case t.Left <= 0:
		meaning = words.TimeIsUp
	case t.Left <= page.LastMinute:
		meaning = words.LastMinute
	}
	if t.IsUnknown {
		time, meaning = "–", words.ClockUnknown
	}
	ring := draw.Ring(draw.RingPlot{Title: time + " " + meaning, Left: share, Marks: marks, Class: stageOf(t)})
	return join(
		region("time-"+cup, "div", a("class", "ring"), ring,
			el("div", a("class", "ringtext"), el("p", a("class", timeClass(time), "role", "timer"), txt(time)), el("p", a("class", "phase"), txt(meaning)))),
		hoursOfCup(s, cup, t))
}

// timeClass is that of a time that the ring has room for, or not.
func timeClass(time string) string {
	if len(time) > len("9:59") {
		return "time long"
	}
	return "time"
}

// hoursOfCup is when to stop, and when it gels, by the time of day.
func hoursOfCup(s *page.State, cup string, t page.Times) html {
	if t.IsUnknown || t.IsOld() { // an hour of another day would be taken for one of today
		return nothing
	}
	fact := func(hour, name string) html { return el("span", nil, el("b", nil, txt(hour)), txt(name)) }
	at := func(after float64) string { return s.HourAfter(cup, after) }
	var list []html
	if !t.IsTest && t.Usable > 0 {
		list = append(list, fact(at(t.Usable), words.StopSpreading))
	}
	if t.Early > 0 {
		list = append(list, fact(at(t.Early), words.GelsFrom))
	}
	if t.Late > 0 {
		list = append(list, fact(at(t.Late), words.GelsUntil))
	}
	return el("div", a("class", "facts until"), list...)
}

// clockNotes is what the hand must know now: the cup's heat, and a clock that can't
// be trusted, or an alarm that can't.
func clockNotes(s *page.State, t page.Times) []string {
	var lines []string
	switch {
	case t.IsUnknown:
		lines = append(lines, words.Ahead(s.HourOf(s.FrontCup()+".in")))
	case t.SetBack > 0:
		lines = append(lines, words.SetBack(wholeMinutes(t.SetBack)))
	case t.SetOn > 0:
		lines = append(lines, words.SetOn(wholeMinutes(t.SetOn)))
	case t.Zone != 0:
		lines = append(lines, words.Zone)
	case t.IsOld():
		lines = append(lines, words.DaysOld(words.Counted(int(t.Since/86400), "day", "days")))
	}
	if s.Unsettled {
		lines = append(lines, words.Unsettled)
	}
	if t.IsTest {
		return append(lines, words.TestHow)
	}
	lines = append(lines, words.Warm)
	switch {
	case len(lines) >= 2:
	case s.MaySleep: // the phone's own timer sounds, too
		lines = append(lines, words.OwnTimer)
	case !s.Audible:
		lines = append(lines, words.SilentYet)
	}
	return lines
}

// clockAct ends the cup with one tap.
func clockAct(cup string, t page.Times) html {
	if t.IsTest {
		return join(act("end", cup, "gelled", words.StringSnapped))
	}
	return join(act("end", cup, "spread", words.AllSpread), second("end", cup, "left", words.SomeLeft))
}

// clockMore is how else it ends, and the next cup.
func clockMore(s *page.State, cup string, t page.Times) html {
	wont := el("button", a("class", "quiet", "type", "button", "id", page.OpenerID(page.WontSheet), "data-do", "sheet", "data-path", page.WontSheet), txt(words.WontGoOff))
	another := el("button", a("class", "quiet", "type", "button", "id", page.OpenerID(page.NextCup), "data-do", "sheet", "data-path", page.NextCup), txt(words.PlanAnother))
	if t.IsTest {
		return join(wont, action("end", cup, "scrap", words.ScrapCup, "quiet"))
	}
	return join(action("end", cup, "gelled", words.ItGelled, "quiet"), wont, another)
}

// otherCups is the other cups that run, each with what it has left.
func otherCups(s *page.State, front string) html {
	var list []html
	for _, cup := range page.OpenCups(s.Doc(), page.Running) {
		if cup == front {
			continue
		}
		t := s.TimesOf(cup)
		time := countdown(t.Left)
		if t.IsTest {
			time = countdown(t.Since)
		}
		_, id := job.Split(cup)
		list = append(list, el("button", a("class", "chip", "type", "button", "id", "front-"+id, "data-do", "front", "data-path", cup, "data-is", stageOf(t)),
			txt(cupName(s, cup)+" "), el("b", a("class", "othertime"), txt(time))))
	}
	return join(list...)
}

// wont is what to do about a cup that doesn't go off: nothing is ever added.
func wont(s *page.State) shown {
	cup := s.FrontCup()
	if cup == "" {
		return shown{Title: words.WontGoOff}
	}
	steps := []html{el("li", nil, el("b", nil, txt(words.AddNothing)), txt(" "+words.SecondDose)), el("li", nil, txt(words.WarmThePart))}
	say := func(text string) { steps = append(steps, el("li", nil, txt(text))) }
	hour := func(f working.Figure[unit.Time]) string { return s.HourAfter(cup, float64(f.Value)) }
	stuck, err := s.WontGoOff(cup)
	var far *cure.FarError
	if errors.As(err, &far) {
		say(words.TooColdToSay)
	}
	if stuck.Wait.Step != nil {
		say(words.StillInTime(hour(stuck.Wait), minutes(stuck.Wait.Value)))
	}
	if stuck.Warmed.Step != nil {
		say(words.OnceWarm(of(s, stuck.Warm, unit.Temperatures), hour(stuck.Warmed)))
	}
	if stuck.Scrape.Step != nil {
		say(words.ThenScrape(hour(stuck.Scrape)))
	}
	return shown{Title: words.WontGoOff, Body: join(el("ol", a("class", "wont"), steps...)),
		Act: join(act("end", cup, "gelled", words.ItWentOff), second("end", cup, "no-cure", words.ScrapedOff))}
}

// countdown writes seconds as minutes and seconds, long ones as hours; what is
// over has no sign: the words beside it say so.
func countdown(left float64) string {
	n := int(left)
	if n < 0 {
		n = -n
	}
	if n >= 6000 {
		return strconv.Itoa(n/3600) + "\u00a0h " + strconv.Itoa(n/60%60) + "\u00a0min"
	}
	seconds := strconv.Itoa(n % 60)
	if len(seconds) < 2 {
		seconds = "0" + seconds
	}
	return strconv.Itoa(n/60) + ":" + seconds
}

// wholeMinutes writes by how much a clock was set, to the nearest minute: the two clocks tick at different moments.
func wholeMinutes(seconds float64) string {
	return strconv.Itoa(max(1, int(seconds+30)/60)) + "\u00a0min"
}
