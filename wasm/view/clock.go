package view

import (
	"strconv"

	"shedreckoner/wasm/page"
)

// runningCups is a clock for each cup with catalyst in it: from there to the
// end of its usable time. Its dose is not here.
func runningCups(s *page.State) html {
	var list []html
	for _, cup := range page.OpenCups(s.Doc(), page.Running) {
		list = append(list, runningCup(s, cup))
	}
	return join(list...)
}

func runningCup(s *page.State, cup string) html {
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
	silence := nothing
	if !s.Audible {
		silence = el("p", a("class", "silence"), txt("No alarm sounds yet: tap anywhere once."))
	}
	return el("article", a("class", class),
		el("h2", nil, txt(name)),
		region("time-"+cup, "p", a("class", "time", "role", "timer"), txt(countdown(left))),
		el("p", a("class", "phase"), txt(words)),
		el("p", a("class", "until"), txt("Use until "+untilClock(s, left)+" by the clock. Where the screen doesn't stay awake, set the phone's own timer.")),
		silence,
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

func untilClock(s *page.State, left float64) string {
	at := (s.Now.Day + int(left) + 2*86400) % 86400
	return page.ClockText(at)
}
