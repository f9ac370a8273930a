package view

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cupsInSight is how many of the latest cups stand on the log itself.
const cupsInSight = 3

// logScreen is what is next, the latest cups, what the hand takes and what must
// be bought. Everything else lies behind its line.
func logScreen(s *page.State) html {
	cups := page.OpenCups(s.Doc(), page.Ended)
	return join(
		region("next", "section", a("class", "next"), nextWork(s)),
		region("wanted", "div", nil, wanted(s)),
		region("list-cup", "section", a("class", "list", "tabindex", "-1"), loggedCups(s, cups)),
		region("hand", "section", a("class", "list"), handTakes(s)),
		look("calendar", words.WhenTheRest, page.CalendarSheet),
		look("rest", words.RestLine(len(s.Doc().Items("done"))), page.RestSheet),
		look("tests", words.TestsLine(len(s.Doc().Items("test"))), page.TestsSheet),
		el("div", a("class", "itemtools"), action("log-csv", "", "", words.SaveTheLogAsCSV, "quiet")))
}

// cupsSheet is the cups of the log that don't stand on it.
func cupsSheet(s *page.State) shown {
	cups := page.OpenCups(s.Doc(), page.Ended)
	return shown{Title: words.LoggedCups, Body: region("list-cups", "section", a("class", "list", "tabindex", "-1"), cupRows(s, cups[:max(0, len(cups)-cupsInSight)])...)}
}

// restSheet is what is done of what is planned.
func restSheet(s *page.State) shown {
	return shown{Title: words.WhatIsDone, Body: join(
		region("progress", "section", a("class", "list", "tabindex", "-1"), progress(s)),
		region("list-done", "section", a("class", "list", "tabindex", "-1"), finishedWork(s)),
		look("rebuy", words.BuyRestLine, page.BuyRestSheet))}
}

// buyRestSheet is what the rest takes beyond what is in stock.
func buyRestSheet(s *page.State) shown {
	return shown{Title: words.ToBuyForTheRest, Body: region("tobuy", "section", a("class", "list"), toBuyAgain(s))}
}

// testsSheet is the builder's own cup tests.
func testsSheet(s *page.State) shown { return shown{Title: words.CupTests, Body: cupTests(s)} }

// justEnded asks of a cup that has just ended what was left over: the second
// tap from the clock.
func justEnded(s *page.State) html {
	cup := s.Open["cup"]
	d := s.Doc()
	if cup == "" || page.CupPhase(d, cup) != page.Ended || d.Get(cup+".left") != "" || d.Get(cup+".end") == job.EndScrapped || d.Get(cup+".end") == job.EndInFile {
		return nothing
	}
	c := s.Plan.Job.CupByPath(cup)
	if c == nil || c.Mixed.Step == nil {
		return nothing
	}
	buttons := []html{action("open", cup, "", words.OnlyClings, "main")}
	for _, part := range []struct {
		name  string
		share unit.Mass
	}{{words.AQuarter, 0.25}, {words.Half, 0.5}, {words.AllOfIt, 1}} {
		buttons = append(buttons, action("set", cup+".left", unit.Typed(float64(c.Mixed.Value*part.share), unit.InGram)+" g", part.name, "quiet"))
	}
	return el("article", a("class", "logged ask"),
		el("h2", a("id", "left-"+cup, "tabindex", "-1"), txt(words.Logged(cupName(s, cup)))),
		el("p", nil, txt(words.WhatWasLeft)),
		el("div", a("class", "itemtools"), join(buttons...), action("go", "log", "", words.WeighLater, "quiet")))
}

func loggedCups(s *page.State, cups []string) html {
	if len(cups) == 0 {
		return el("div", a("class", "empty"), el("p", nil, txt(words.NothingLogged)),
			action("go", "cup", "", words.GoToTheCup, "main"))
	}
	rows := cupRows(s, cups[max(0, len(cups)-cupsInSight):])
	if len(cups) > cupsInSight {
		rows = append(rows, look("cups", words.CupsLogged(len(cups)-cupsInSight), page.CupsSheet))
	}
	return join(append([]html{el("h2", nil, txt(words.LoggedCups))}, rows...)...)
}

// cupRows is a line for each cup, the latest first.
func cupRows(s *page.State, cups []string) (rows []html) {
	d := s.Doc()
	for i := len(cups) - 1; i >= 0; i-- {
		cup := cups[i]
		hour := s.HourOf(cup + ".weighed")
		small := words.CupSmall(d.Get(cup+".end"), words.Date(d.Get(cup+".day"), s.Now.Date), surfaceOfCup(s, cup))
		far := ""
		if c := s.Plan.Job.CupByPath(cup); c != nil && c.Covered.Step != nil {
			far = of(s, c.Covered, unit.Areas)
		}
		rows = append(rows, region("item-"+cup, "div", a("class", "cupline"), listRow(cup, txt(hour), cupName(s, cup), small, far)))
	}
	return rows
}

// surfaceOfCup is how warm the surface was, "" where it wasn't taken down.
func surfaceOfCup(s *page.State, cup string) string {
	if c := s.Plan.Job.CupByPath(cup); c != nil {
		return written(c.SurfaceTemp, s.Plan.Job.Units.Scale(unit.Temperatures))
	}
	return ""
}

func cupName(s *page.State, cup string) string {
	name := strings.ReplaceAll(s.Doc().Get(cup+".mixed"), " ", "\u00a0")
	if c := s.Plan.Job.CardByKey(s.Doc().Get(cup + ".card")); c != nil {
		of := c.Name
		if putty := s.Doc().Get(s.Doc().Get(cup+".step") + ".putty"); putty != "" && s.Doc().Get(cup+".parts") != "" {
			of = puttyName(s, putty)
		}
		name = of + ", " + name
	}
	return name
}

// loggedCup is a cup of the log: what became of it, as the builder tells it, and
// what was taken down.
func loggedCup(s *page.State, cup string) shown {
	d := s.Doc()
	return shown{Title: cupName(s, cup), Body: join(noCure(d, cup), aheadOf(s, cup+".weighed"), el("p", nil, txt(d.Get(cup+".end")+", "+words.Date(d.Get(cup+".day"), s.Now.Date))),
		dial(s, cup+".left", dialLine{Name: words.LeftOverName, Default: words.TheUsual, Small: words.LeftSmall}),
		coveredField(s, cup), dial(s, cup+".gel", dialLine{Name: words.GelledName}), el("div", a("class", "form"),
			fieldWith(s, cup+".step", fieldExtras{Options: stepsOf(s, d.Get(cup+".card")), First: words.NoneOfThePlan, Label: words.WentOnFor}),
			fieldWith(s, cup+".fault", fieldExtras{First: words.NothingWrong})),
		region("fault-"+cup, "div", a("class", "fault"), faultAnswer(s, cup)),
		region("figures-"+cup, "div", a("class", "figures"), entryFigures(s, cup)),
		plainLine(s, cup+".note", words.NoteLine),
		look("taken", words.TakenLine(s.HourOf(cup+".weighed")), page.Part(cup, page.TakenPart)),
		region("tools-"+cup, "div", a("class", "itemtools"), testOf(d, cup), action("remove", cup, "", words.Remove, "quiet")))}
}

// takenSheet is what was taken down of a cup when it was weighed.
func takenSheet(s *page.State, cup string) shown {
	return shown{Title: words.TakenDown, Body: region("taken-"+cup, "div", a("class", "figures"), takenDown(s, cup))}
}

// coveredField asks how far a cup went: measured, it teaches by itself, until a
// finished surface counts for it.
func coveredField(s *page.State, cup string) html {
	planned := ""
	if c := s.Plan.Job.CupByPath(cup); c != nil && c.PerArea.Step != nil {
		planned = of(s, c.PerArea, unit.AreaWeights)
	}
	return join(dial(s, cup+".covered", dialLine{Name: words.CoveredName, Small: words.CoveredSmall(planned)}), hint(words.MeasuredCounts))
}

// stepsOf is every step that puts a material on.
func stepsOf(s *page.State, card string) []job.Option {
	options := []job.Option{}
	for _, b := range s.Plan.Buildups() {
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
		el("li", nil, txt(words.NoCureWarm)),
		el("li", nil, txt(words.NoCureAddNothing)),
		el("li", nil, txt(words.NoCureScrape)))
}

// takenDown is what the page noted of a cup by itself.
func takenDown(s *page.State, cup string) html {
	d := s.Doc()
	var lines []html
	add := func(name, text string) {
		if text != "" {
			lines = append(lines, el("li", nil, txt(name+": "+text)))
		}
	}
	add(words.WeighedAt, s.HourOf(cup+".weighed"))
	add(words.CatalystThatWentIn, d.Get(cup+".dose"))
	c := s.Plan.Job.CupByPath(cup)
	if c == nil {
		return el("ul", a("class", "taken"), lines...)
	}
	units := s.Plan.Job.Units
	add(words.CatalystByMass, written(c.Share, unit.InPercent))
	add("Product", written(c.ProductTemp, units.Scale(unit.Temperatures)))
	add("Surface", written(c.SurfaceTemp, units.Scale(unit.Temperatures)))
	add("Air", written(c.AirTemp, units.Scale(unit.Temperatures)))
	add("Humidity", written(c.Humidity, unit.InPercent))
	add(words.UsableAsReckoned, written(c.Usable, unit.InMinute))
	add(words.GelsSoonest, written(c.Early, unit.InMinute))
	add("Tin", c.Tin)
	if c.Gel.Step != nil && c.Early.Step != nil {
		verdict := words.GelledAsExpected
		if c.Gel.Value < c.Early.Value {
			verdict = words.GelledSooner
		}
		add(words.ItGelled, verdict)
	}
	return el("ul", a("class", "taken"), lines...)
}

// cupsThatWentOn names the cups of a finished piece of work, and when those
// gelled that were timed.
func cupsThatWentOn(s *page.State, path string) html {
	var lines []html
	for _, cup := range strings.Fields(s.Doc().Get(path + ".cups")) {
		c := s.Plan.Job.CupByPath(cup)
		if c == nil {
			continue
		}
		text := words.Date(c.Day, s.Now.Date) + ": " + of(s, c.Mixed, unit.CupWeights) + ", " + c.End
		if c.Gel.Step != nil && c.Early.Step != nil {
			if c.End != job.EndGelled {
				text += ", " + words.GelledShort
			}
			text += words.GelledAfter(written(c.Gel, unit.InMinute), written(c.Early, unit.InMinute))
		}
		lines = append(lines, el("li", nil, txt(text)))
	}
	if len(lines) == 0 {
		return nothing
	}
	return join(hint(words.ItsCups), el("ul", a("class", "taken"), lines...))
}

// written is a figure as it was taken down; "" where none was.
func written[Q unit.Quantity](f working.Figure[Q], scale unit.Scale) string {
	if f.Step == nil {
		return ""
	}
	return unit.Write(float64(f.Value), scale, 3)
}

// aheadOf asks about a moment that lies in the future.
func aheadOf(s *page.State, path string) html {
	if !s.IsAhead(path) {
		return nothing
	}
	return el("p", a("class", "bad"), txt(words.InFuture))
}

func testOf(d job.Document, cup string) html {
	if d.Get(cup+".gel") == "" {
		return nothing
	}
	return action("take", cup, "", words.TakeAsACupTest, "quiet")
}

// cupTests is the builder's own timed cups: they move the minutes of a card.
func cupTests(s *page.State) html {
	var items []html
	for i, id := range s.Doc().Items("test") {
		path := "test." + id
		open := s.IsOpen(path)
		parts := []html{itemLine(path, open, words.CupTestNumber(i+1), s.Doc().Get(path+".minutes"))}
		if open {
			parts = append(parts, el("div", a("class", "form"), fieldWith(s, path+".card", fieldExtras{Options: benchCards(s)}),
				field(s, path+".mass"), field(s, path+".temp"), field(s, path+".share"), field(s, path+".minutes"), field(s, path+".tin")),
				el("div", a("class", "itemtools"), action("remove", path, "", words.Remove, "quiet")))
		}
		items = append(items, region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...))
	}
	return region("list-test", "section", a("class", "list", "tabindex", "-1"), el("p", a("class", "hint"), txt(words.CupTestHint)),
		join(items...), action("add", "test", "", words.AddACupTest, "quiet"))
}

// pending asks about a job that came in by a link or a file.
func pending(s *page.State) html {
	var parts []html
	for _, text := range s.Pending.Asks {
		parts = append(parts, el("p", nil, txt(text)))
	}
	parts = append(parts, el("p", nil, txt(words.TakenJobLong)),
		el("div", a("class", "itemtools"), action("take-job", "", "", words.TakeIt, "quiet"), action("drop-job", "", "", words.LeaveIt, "quiet")))
	return el("div", a("class", "ask"), parts...)
}
