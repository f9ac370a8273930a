package view

import (
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// runningCups is a clock for each cup with catalyst in it: from there to the
// end of its usable time. Its dose is not here.
func runningCups(s page.State) html {
	var list []html
	for _, cup := range page.OpenCups(s.Doc(), page.Running) {
		list = append(list, runningCup(s, cup))
	}
	return join(list...)
}

func runningCup(s page.State, cup string) html {
	left := page.Left(s.Doc(), cup, s.Now)
	class, words := "clock", "Spread now"
	switch {
	case left <= 0:
		class, words = "clock over", "Over: stop, put the rest outside"
	case left <= 60:
		class, words = "clock last", "Last minute: finish the stretch"
	}
	name := s.Doc().Get(cup + ".mixed")
	if c := s.Plan.Job.CardByKey(s.Doc().Get(cup + ".card")); c != nil {
		name = c.Name + ", " + name
	}
	return el("article", a("class", class),
		el("h2", nil, txt(name)),
		region("time-"+cup, "p", a("class", "time", "role", "timer"), txt(countdown(left))),
		el("p", a("class", "phase"), txt(words)),
		el("p", a("class", "until"), txt("Use until "+untilClock(s, left)+" by the clock. Where the screen doesn't stay awake, set the phone's own timer.")),
		el("div", a("class", "itemtools"),
			action("end", cup, "spread", "All spread", "main"), action("end", cup, "gelled", "It gelled", "quiet"),
			action("end", cup, "scrap", "Scrapped", "quiet"), action("end", cup, "no-cure", "It won't go off", "quiet")))
}

// countdown writes seconds as minutes and seconds.
func countdown(left float64) string {
	sign, n := "", int(left)
	if n < 0 {
		sign, n = "−", -n
	}
	seconds := strconv.Itoa(n % 60)
	if len(seconds) < 2 {
		seconds = "0" + seconds
	}
	return sign + strconv.Itoa(n/60) + ":" + seconds
}

func untilClock(s page.State, left float64) string {
	at := (s.Now.Day + int(left) + 2*86400) % 86400
	return page.ClockText(at)
}

// logScreen is what became of each cup, and the builder's own cup tests.
func logScreen(s page.State) html {
	return join(region("list-cup", "section", a("class", "list", "tabindex", "-1"), loggedCups(s)), cupTests(s))
}

func loggedCups(s page.State) html {
	cups := page.OpenCups(s.Doc(), page.Ended)
	if len(cups) == 0 {
		return el("div", a("class", "empty"), el("p", nil, txt("Nothing logged yet. A cup lands here when it ends, with what was left over.")),
			action("go", "cup", "", "Go to the cup", "main"))
	}
	var items []html
	for i := len(cups) - 1; i >= 0; i-- {
		items = append(items, loggedCup(s, cups[i]))
	}
	return join(items...)
}

func loggedCup(s page.State, cup string) html {
	d := s.Doc()
	open := s.IsOpen(cup)
	name := d.Get(cup + ".mixed")
	if c := s.Plan.Job.CardByKey(d.Get(cup + ".card")); c != nil {
		name = c.Name + ", " + name
	}
	parts := []html{itemLine(s, cup, open, name, d.Get(cup+".day")+" "+d.Get(cup+".end"))}
	if open {
		parts = append(parts, noCure(d, cup), el("div", a("class", "form"), field(s, cup+".left"), field(s, cup+".gel"), field(s, cup+".note")),
			region("taken-"+cup, "div", a("class", "figures"), takenDown(d, cup)), el("div", a("class", "itemtools"), testOf(d, cup), action("remove", cup, "", "Remove", "quiet")))
	}
	return region("item-"+cup, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

// noCure answers a cup that won't go off, without ever adding.
func noCure(d job.Document, cup string) html {
	if d.Get(cup+".end") != "didn't go off" {
		return nothing
	}
	return el("ul", a("class", "reasons"),
		el("li", nil, txt("Warm the part, and wait: on a cold part it may take hours.")),
		el("li", nil, txt("Add nothing: a second dose can run away, and doesn't mix in.")),
		el("li", nil, txt("Still wet the next day: scrape it off, wash, and coat again.")))
}

func takenDown(d job.Document, cup string) html {
	var lines []html
	for _, key := range []string{"dose", "share", "product-temp", "surface-temp", "humidity", "usable", "early", "tin"} {
		if text := d.Get(cup + "." + key); text != "" {
			name := job.FieldAt(cup + "." + key).Name
			if key == "dose" {
				name = "catalyst that went in"
			}
			lines = append(lines, el("li", nil, txt(capital(name)+": "+text)))
		}
	}
	return el("ul", nil, lines...)
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
