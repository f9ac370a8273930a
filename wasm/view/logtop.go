package view

import (
	"strconv"

	"shedreckoner/calc/plan"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// nextWork heads the log: what comes next and from when, and how far the job is.
func nextWork(s *page.State) html {
	done, all, first := s.StepsDone()
	if all == 0 {
		return nothing
	}
	name, when, left := words.NothingNext, "", ""
	if first != "" {
		name = words.NextWork(s.WorkOf(first))
	}
	calendar := s.Schedule()
	for i := range calendar.Works {
		w := &calendar.Works[i]
		if w.Kind == plan.Launch {
			continue
		}
		name, when = words.NextWork(words.Work(w)), words.FromHour(words.Moment(w.From, s.Now.Date))
		left = words.DaysLeft(len(calendar.Days()), strconv.Itoa(len(calendar.Days())))
		break
	}
	if len(calendar.Waiting) > 0 && first != "" {
		left = words.NextTold
	}
	parts := []html{el("p", a("class", "grand"), el("span", nil, txt(name)), el("span", a("class", "when"), txt(when))),
		el("progress", a("max", strconv.Itoa(all), "value", strconv.Itoa(done), "aria-label", words.StepsDone(strconv.Itoa(done), strconv.Itoa(all)))),
		el("p", a("class", "ends"), el("span", nil, txt(words.StepsDone(strconv.Itoa(done), strconv.Itoa(all)))), el("span", nil, txt(left)))}
	return join(append(parts, maskingOff(s)...)...)
}

// maskingOff says of cups that went on by when their masking must be off.
func maskingOff(s *page.State) []html {
	var lines []html
	for _, by := range s.MaskingDue() {
		lines = append(lines, verdict(asks, by.Name+":", words.MaskingOff(by.When, false), ""))
	}
	return lines
}

// wanted is what the rest likely takes beyond what is there, of the coloured
// goods: the way to the order.
func wanted(s *page.State) html {
	if len(s.Lessons().List) == 0 {
		return nothing
	}
	lines := s.Order().Lines
	for i := range lines {
		if l := &lines[i]; l.Card.Reserve.Value > 0 && l.ToBuy.IsPositive() && l.Err == nil {
			return el("div", a("class", "wanted"), verdict(asks, words.ShortName(l.Card)+":", words.MoreWanted(page.Said(l.ToBuy.InexactFloat64(), l.Scale, s.Plan.Job.Units)), ""),
				action("go", "order", "next", words.ToTheOrder, "quiet"))
		}
	}
	return nothing
}
