package view

import (
	"errors"
	"slices"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// answer is the dose of the next cup, or why there is none and what brings it
// back. Its figures stand beside no control.
func answer(s *page.State) html {
	b := s.Bench()
	cup, may := s.DoseFor()
	switch {
	case may && b.Pour != nil:
		return doseAnswer(s, b)
	case may: // the weighed cup is for timing its gel
		return region("answer", "section", a("class", "answer", "aria-label", words.AnswerLabel), el("h2", nil, txt(words.TestWeighed)), el("p", nil, txt(words.NotForWork)))
	case cup != "":
		return noDose(s, el("p", nil, txt(words.FiguresMoved)), reasons(s))
	case len(b.Reasons) > 0:
		return noDose(s, reasons(s), ways(s, b))
	}
	return stillWaiting(s, b)
}

// noDose is where the dose would stand, and why it doesn't.
func noDose(s *page.State, why ...html) html {
	return region("answer", "section", a("class", "answer", "data-is", "stops", "aria-label", words.AnswerLabel), el("h2", nil, txt(words.NoDoseAt(surfaceText(s)))), join(why...))
}

// surfaceText is the surface's temperature; empty where none was typed.
func surfaceText(s *page.State) string {
	if t := s.Bench().Surface; t.Step != nil {
		return of(s, t, unit.Temperatures)
	}
	return ""
}

// reasons is every reason against a dose, each once.
func reasons(s *page.State) html {
	var lines []html
	seen := map[string]bool{}
	for _, err := range told(s.Bench().Reasons) {
		if text := words.Dose(err, s.Plan.Job.Units); !seen[text] {
			seen[text] = true
			lines = append(lines, el("li", nil, txt(text)))
		}
	}
	return el("ul", a("class", "reasons"), lines...)
}

// told leaves out what another reason says better: past the table's end the card's
// own limits are passed too, and the air is no fitter.
func told(reasons []error) []error {
	var beyond *cure.BeyondTableError
	if !slices.ContainsFunc(reasons, func(err error) bool { return errors.As(err, &beyond) }) {
		return reasons
	}
	return slices.DeleteFunc(slices.Clone(reasons), func(err error) bool {
		var limits *cure.TemperatureError
		var unfit *bench.UnfitError
		return errors.As(err, &limits) || errors.As(err, &unfit) && len(unfit.Findings) == 1
	})
}

// ways is what brings a dose back, each worked out.
func ways(s *page.State, b *bench.Bench) html {
	if len(b.Ways()) == 0 {
		return nothing
	}
	units := s.Plan.Job.Units
	var rows []html
	for _, w := range b.Ways() {
		name, small := words.Way(w, b.Product.Value, b.Surface.Value, units)
		if w.Err != nil {
			small = words.Dose(w.Err, units)
		}
		rows = append(rows, el("li", nil, txt(name), el("small", nil, txt(small))))
	}
	return join(el("h3", nil, txt(words.BringsItBack)), el("ul", a("class", "ways"), rows...), more("remedies", words.MoreRemedies))
}

// stillWaiting says what is yet to be typed.
func stillWaiting(s *page.State, b *bench.Bench) html {
	var lines []html
	for _, path := range b.Waiting {
		if f := job.FieldAt(path); f != nil && !isAskedOnNow(b, path) {
			lines = append(lines, el("li", nil, action("find", path, "", words.Capital(f.Name), "quiet")))
		}
	}
	parts := []html{el("h2", nil, txt(words.NoDoseYet))}
	if slices.Contains(b.Waiting, job.BenchPath+".surface-temp") {
		parts = append(parts, el("p", nil, txt(words.TypeSurface)))
	} else if slices.Contains(b.Waiting, at("ahead")) {
		parts = append(parts, el("p", nil, txt(words.TypeAhead)))
	} else if b.AsksTool {
		parts = append(parts, el("p", nil, txt(words.TapTool)))
	}
	if len(lines) > 0 {
		parts = append(parts, el("p", nil, txt(words.StillToType)), el("ul", a("class", "reasons"), lines...))
	}
	return region("answer", "section", a("class", "answer", "aria-label", words.AnswerLabel), parts...)
}

// isAskedOnNow reports whether a path has its place on the screen anyway.
func isAskedOnNow(b *bench.Bench, path string) bool {
	return path == at("surface-temp") || path == at("amount") || b.AsksTool && path == at("scale-step") || path == at("ahead")
}

// doseAnswer is the dose in the unit of the tool in the hand, the cup's minutes as
// one bar, and three facts.
func doseAnswer(s *page.State, b *bench.Bench) html {
	box := answerBox{Label: words.AnswerLabel, Picture: timeBar(b), Facts: facts(s, b)}
	p := pourOf(b, b.Pour)
	box.Hero = hero(s, p)
	box.Twin = join(txt(p.name+" "), el("span", a("id", "twin"), txt(p.twin)))
	if s.Why == p.id {
		box.More = workings(s, p.step)
	}
	return answerOf("answer", box)
}

// poured is what starts the clock: the catalyst, or a fixed ratio's hardener.
type poured struct {
	id, name, once string
	value, twin    string // the twin with its share
	alone, then    string // the twin alone; what the scale then shows
	step           *working.Step
}

func pourOf(b *bench.Bench, pour *bench.Pour) poured {
	if b.IsRatio {
		return hardenerOf(b)
	}
	p := poured{id: "dose.grams", name: words.Catalyst, once: words.CatalystOnce, value: pour.Amount.String(), step: b.Dose.Mass.Step}
	isVolume := pour.Amount.Scale == unit.InMillilitre
	if isVolume {
		p.id, p.step = "dose.millilitres", b.Dose.Volume.Step
	}
	share := unit.Write(float64(pour.Share.Value), unit.InPercent, 3)
	if pour.Other.Scale == unit.NoScale { // of a timed test past the table's end
		p.alone, p.step = words.ByMass(share), pour.Share.Step
	} else {
		p.twin = words.Twin(pour.Other.String(), share)
		p.alone = words.TwinAlone(pour.Other.String(), !isVolume)
	}
	if pour.Drops > 0 {
		p.alone = words.Drops(unit.Number(float64(pour.Drops), 5))
		p.twin = p.alone + ", " + p.twin
	}
	if pour.HasThen() {
		p.then = words.ScaleThenShows(pour.Then.Bare())
	}
	return p
}

// hardenerOf is part B of a fixed ratio.
func hardenerOf(b *bench.Bench) poured {
	p := poured{id: "part.B", name: words.Hardener, once: words.HardenerOnce, value: b.Pour.Amount.String(), twin: words.HardenerTwin(b.Weigh[0].Own.String())}
	if b.Putty != nil {
		p.twin = words.OnTheResin(unit.Write(float64(b.Parts.A.Mass.Value), unit.InGram, 4))
	}
	p.then = words.ScaleThenShows(b.Pour.Then.Bare())
	if b.Pour.Then.Scale == unit.InMillilitre {
		p.then = words.MarkThen(b.Pour.Then.String())
	}
	if p.step = b.Parts.B.Mass.Step; p.step == nil {
		p.step = b.Parts.B.Volume.Step
	}
	return p
}

// hero is one large figure that opens to its working, which stands elsewhere.
func hero(s *page.State, p poured) html {
	return el("button", a("class", "figure", "type", "button", "id", "why-"+p.id, "data-do", "why", "data-path", p.id, "aria-expanded", yesNo(s.Why == p.id), "aria-label", p.name+" "+p.value),
		el("span", a("class", "value"), txt(p.value)))
}

// timeBar is the cup's minutes.
func timeBar(b *bench.Bench) html {
	m := b.Minutes
	if m == nil {
		return nothing
	}
	at := func(f working.Figure[unit.Time]) float64 { return unit.InMinute.From(float64(f.Value)) }
	spread := minutes(m.Spread.Value - m.Mix.Value)
	return draw.TimeBar(draw.TimeBarPlot{
		Title: words.TimeBar(minutes(m.Mix.Value), minutes(m.Spread.Value), minutes(m.GelsFrom.Value), minutes(m.GelsUntil.Value)),
		Mixed: at(m.Mix), Spread: at(m.Spread), From: at(m.GelsFrom), Until: at(m.GelsUntil),
		SpreadNames: []string{words.SpreadName + " " + spread, words.SpreadName + "\n" + spread, spread}, GelNames: []string{words.Gels, words.GelsInTwo, words.GelsShort},
		End: minutes(m.GelsUntil.Value), Text: func(n float64) string { return unit.Number(n, 2) },
	})
}

func minutes(t unit.Time) string { return unit.Write(float64(t), unit.InMinute, 2) }

// facts is how far the cup goes, how many there are, and the comb.
func facts(s *page.State, b *bench.Bench) []fact {
	var list []fact
	f := &b.Facts
	if f.Covers.Step != nil {
		list = append(list, fact{of(s, f.Covers, unit.Areas), words.Covers})
	}
	if f.Cups.Step != nil {
		list = append(list, fact{words.Cups(unit.Number(float64(f.Cups.Value), 3)), words.CupsAll})
	}
	if f.Comb.Step != nil {
		list = append(list, fact{of(s, f.Comb, unit.Films), words.Comb})
	}
	return list
}
