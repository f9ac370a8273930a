package view

import (
	"shedreckoner/calc/air"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// airSheet is today's air, its curve, and whether it is fit to coat.
func airSheet(s *page.State) shown {
	return shown{Title: words.TodaysAir, Body: join(
		dial(s, today("read-temp"), dialLine{Name: words.Air}), dial(s, today("read-humidity"), dialLine{Name: words.HumidityDial}),
		dial(s, today("low"), dialLine{Name: words.LowDial}), dial(s, today("high"), dialLine{Name: words.HighDial}),
		setup("airmore", airText(s), page.AirMoreSheet),
		region("fit", "section", a("class", "fit"), fitSection(s)))}
}

// airText is what is assumed of the day.
func airText(s *page.State) string {
	chosen := func(key string) string { return chosenName(s, today(key), job.FieldAt(today(key)).Options) }
	sunrise := s.Doc().Get(today("sunrise"))
	if sunrise == "" {
		sunrise = words.UsualSunrise
	}
	return words.OfTheDay(s.Doc().Get(today("read-at")), chosen("sun"), chosen("colour"), sunrise)
}

// airMoreSheet is what is assumed of the day until it is typed.
func airMoreSheet(s *page.State) shown {
	return shown{Title: words.DayMore, Body: join(
		fieldWith(s, today("read-at"), fieldExtras{Default: words.ReadNow}),
		chips(s, today("sun"), words.PartStands, ""), chips(s, today("colour"), words.PartColour, ""),
		fieldWith(s, today("sunrise"), fieldExtras{Default: words.UsualSunrise}),
		region("aheadfield", "div", nil, aheadField(s)))}
}

// todaySheet is the hours in which each material could be put on today.
func todaySheet(s *page.State) shown {
	var lines []html
	for _, c := range s.Bench().CardsToday() {
		text := words.Hours(c.Windows)
		if c.Err != nil {
			text = words.Dose(c.Err, s.Plan.Job.Units)
		}
		lines = append(lines, el("li", nil, el("span", a("class", "label"), txt(c.Card.Name)), txt(" "), el("span", a("class", "value"), txt(text))))
	}
	return shown{Title: words.WouldTake, Body: region("today", "ul", a("class", "today"), lines...)}
}

// aheadField is the coldest hour ahead, where it isn't asked for beside the surface.
func aheadField(s *page.State) html {
	if s.AsksAhead() {
		return nothing
	}
	return field(s, at("ahead"))
}

// fitSection says whether it is fit to coat: now, through the cure, and in which
// hours of today.
func fitSection(s *page.State) html {
	out := &s.Bench().Air
	head := el("h2", nil, txt(words.FitToCoat))
	if !out.Known {
		return join(head, el("p", a("class", "hint"), txt(words.FitWaits)))
	}
	units := s.Plan.Job.Units
	over := "–"
	if out.OverDew.Step != nil {
		over = words.OverDew(out.OverDew.Value, units.Scale(unit.Differences))
	}
	dew := unit.Write(float64(air.RoundUp(out.DewPoint.Value, units.Scale(unit.Temperatures))), units.Scale(unit.Temperatures), 3)
	return join(head, fitVerdict(s),
		el("div", a("class", "figures"),
			figure(s, "dew", words.Capital(words.DewPoint), dew, out.DewPoint.Step),
			figure(s, "overdew", words.OverDewPoint, over, out.OverDew.Step)),
		readingOff(s), dayCurve(s), hoursOfToday(s), look("today", words.WouldTake, page.TodaySheet))
}

// readingOff asks about a reading that the day's curve doesn't bear out.
func readingOff(s *page.State) html {
	off := s.Bench().Air.Day.ReadingOff()
	if off >= -air.MostOff && off <= air.MostOff {
		return nothing
	}
	return el("p", a("class", "ask"), txt(words.ReadingOff(off, s.Plan.Job.Units.Scale(unit.Differences))))
}

func fitVerdict(s *page.State) html {
	out := &s.Bench().Air
	units := s.Plan.Job.Units
	switch holds := len(out.Now)+len(out.Hours().Through) == 0; {
	case holds && out.OverDew.Step == nil: // only what is assumed of a surface that isn't read
		return el("p", a("class", "ask"), txt(words.FitUnchecked+" "+words.ReadTheSurface))
	case holds:
		return el("p", a("class", "good"), txt(words.FitAllDay))
	}
	var lines []html
	for _, f := range out.Now {
		lines = append(lines, el("li", nil, txt(words.UnfitNow(words.FindingSentence(f, units)))))
	}
	for _, f := range out.Hours().Through {
		lines = append(lines, el("li", nil, txt(words.UnfitLater(f.At, words.FindingSentence(f, units)))))
	}
	return join(el("p", a("class", "bad"), txt(words.NotFitNow)), el("ul", a("class", "reasons"), lines...))
}

func hoursOfToday(s *page.State) html {
	out := &s.Bench().Air
	lines := []html{el("p", nil, txt(words.HoursFor(s.Bench().Card.Name, out.Hours().Windows)))}
	for _, w := range out.Hours().Windows {
		latest, ok := w.LatestStart(s.Bench().Usable.Value)
		if ok && latest > w.From && s.Bench().HasHand {
			lines = append(lines, el("p", a("class", "hint"), txt(words.StartAndStop(latest, w.To))))
		}
	}
	if !s.Bench().IsRatio {
		lines = append(lines, el("p", a("class", "hint"), txt(words.DoseHours(out.Hours().Dose))))
	}
	return join(lines...)
}
