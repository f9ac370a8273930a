package view

import (
	"errors"
	"slices"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
)

// cup is the screen at the bench: what goes into this cup, how long it lasts,
// how far it goes; or that nothing is mixed now.
func cup(s *page.State) html {
	return join(
		region("running", "div", a("class", "running"), runningCups(s)),
		region("justended", "div", a("class", "running"), justEnded(s)),
		region("answer", "section", a("class", "answer", "aria-label", "This cup"), answer(s)),
		bench(s),
		region("fit", "section", a("class", "fit"), fitSection(s)),
		region("gelcurve", "section", nil, gelSection(s)),
		region("remedies", "section", nil, remedies(s)),
		vapourSection(s), flowSection(s),
		region("shedcard", "section", nil, shedCardSection(s)),
	)
}

// answer is the weighed cup with its dose, or the next cup.
func answer(s *page.State) html {
	if s.Slot().Elsewhere != "" {
		return join(el("h2", a("class", "bad"), txt("No dose in this tab")),
			el("p", nil, txt("This job was changed in another tab, and a cup may have its catalyst there. Choose above which of the two goes on.")))
	}
	cup, may := s.DoseFor()
	if cup != "" {
		return weighedCup(s, cup, may)
	}
	if !may {
		return noDose(s)
	}
	if s.NextWaits() {
		return join(mayBeIn(s), el("p", nil, action("open", page.NextCup, "", "Plan another cup", "quiet")))
	}
	b := s.Bench()
	parts := []html{el("h2", nil, txt("Next cup: "+b.Card.Name)), doseFigures(s), toWeigh(s), cautions(s)}
	parts = append(parts, action("weighed", "", "", "Resin weighed", "main"))
	return join(parts...)
}

// mayBeIn is said of a weighed cup of which nobody knows how far it came.
func mayBeIn(s *page.State) html {
	if !s.LastMayHaveCatalyst() {
		return nothing
	}
	return el("p", a("class", "bad"), txt("The cup that was weighed last may have its catalyst: add none. Its clock isn't known here. Go by your own, or scrap it."))
}

// doseFigures is the catalyst, or the parts of a fixed ratio, in large figures,
// and what the cup is good for.
func doseFigures(s *page.State) html {
	b := s.Bench()
	parts := []html{}
	if b.HasDose {
		parts = append(parts,
			bigFigure(s, "dose.grams", "Catalyst by weight", b.Dose.Grams.String(), b.Dose.Mass.Step),
			bigFigure(s, "dose.millilitres", "The same by volume", b.Dose.Millilitres.String(), b.Dose.Volume.Step))
		if b.Dose.Drops > 0 {
			parts = append(parts, el("p", a("class", "total"), el("span", a("class", "label"), txt("Drops, by your own count")), el("span", a("class", "value"), txt(unit.Number(float64(b.Dose.Drops), 5)))))
		}
		parts = append(parts, figure(s, "dose.share", "Of all that cures", unit.Write(float64(b.Dose.OfWhole.Value), unit.InPercent, 3)+" by mass", b.Dose.OfWhole.Step))
	}
	if b.HasParts {
		parts = append(parts, ratioPart(s, "A", b.Parts.A), ratioPart(s, "B", b.Parts.B))
	}
	return el("div", a("class", "figures"), append(parts, goodFor(s))...)
}

func ratioPart(s *page.State, name string, p cure.Amount) html {
	if p.Mass.Step != nil {
		return bigFigure(s, "part."+name, "Part "+name+" by weight", unit.Write(float64(p.Mass.Value), unit.InGram, 4), p.Mass.Step)
	}
	return bigFigure(s, "part."+name, "Part "+name+" by volume", unit.Write(float64(p.Volume.Value), unit.InMillilitre, 4), p.Volume.Step)
}

// goodFor is the minutes and the area of the cup.
func goodFor(s *page.State) html {
	b := s.Bench()
	if !b.HasHand {
		return nothing
	}
	band := minutes(b.Hand.Cup.Early.Value) + " to " + minutes(b.Hand.Cup.Late.Value)
	return join(
		bigFigure(s, "usable", "Usable from catalyst in", minutes(b.Usable.Value), b.Usable.Step),
		figure(s, "spreading", "Of these to spread", minutes(max(0, b.Hand.Spreading.Value)), b.Hand.Spreading.Step),
		figure(s, "gelband", "Gels in the cup after", band, b.Hand.Cup.Early.Step),
		figure(s, "covers", "Covers", of(s, b.Covers, unit.Areas), b.Covers.Step),
		figure(s, "largest", boundWords[b.Hand.Bound()], of(s, b.Hand.Largest, unit.CupWeights), b.Hand.Largest.Step),
		testCupSteps(s),
		cupsOfDay(s))
}

var boundWords = map[cure.Bound]string{
	cure.ByTime: "Largest cup, by what can be spread in time", cure.ByHeat: "Largest cup over the table's end",
	cure.ByUntimed: "Largest cup, until this tin is timed", cure.ByBatch: "Largest cup, by the card's batch at this gel time",
	cure.ByTestedMass: "Largest cup, by the mass that was timed",
}

func minutes(t unit.Time) string { return unit.Write(float64(t), unit.InMinute, 2) }

// testCupSteps tells how a cup test is made, where one is needed.
func testCupSteps(s *page.State) html {
	if b := s.Bench().Hand.Bound(); b != cure.ByUntimed {
		return nothing
	}
	var steps []html
	for _, t := range []string{
		"Weigh 100 g at the day's temperature.", "Catalyst in: start the clock.", "Stir 60 s, then leave the cup.",
		"Lift a string out now and then: when it snaps, it has gelled.", "Tap 'It gelled', then take it as a cup test.",
	} {
		steps = append(steps, el("li", nil, txt(t)))
	}
	return el("div", a("class", "hint"), el("p", nil, txt("A cup test, always the same way:")), el("ol", nil, steps...))
}

func cupsOfDay(s *page.State) html {
	b := s.Bench()
	if !b.HasCups {
		return nothing
	}
	return join(
		figure(s, "cups", "Cups for one coat", unit.Number(float64(b.Cups.Count.Value), 3), b.Cups.Count.Step),
		figure(s, "cupeach", "Each", of(s, b.Cups.Each, unit.CupWeights), b.Cups.Each.Step),
		figure(s, "cuploss", "Stays behind in all of them", of(s, b.Cups.Loss, unit.CupWeights), b.Cups.Loss.Step))
}

// toWeigh is what goes into the cup before the catalyst.
func toWeigh(s *page.State) html {
	m := s.Bench().Mix
	line := func(id, name string, f working.Figure[unit.Mass]) html {
		if f.Step == nil {
			return nothing
		}
		return figure(s, "weigh."+id, name, of(s, f, unit.CupWeights), f.Step)
	}
	name := "Product"
	if s.Bench().Card != nil {
		name = s.Bench().Card.Name
	}
	return el("div", a("class", "figures weigh"), el("h3", nil, txt("Weigh out first")),
		line("product", name, m.Product), line("thinner", "Styrene", m.Thinner), line("wax", "Wax solution", m.Wax),
		line("pigment", "Pigment paste", m.Pigment), line("whole", "All in the cup", s.Bench().Whole))
}

// weighedCup is the one place and time at which a cup's dose is given.
func weighedCup(s *page.State, cup string, may bool) html {
	name := s.Doc().Get(cup + ".mixed")
	parts := []html{el("h2", nil, txt("Resin weighed: "+name))}
	if may {
		parts = append(parts, doseFigures(s), cautions(s),
			el("button", a("class", "main", "type", "button", "id", "catalyst-in", "data-do", "in", "data-path", cup), txt("Catalyst in: start the clock")))
	} else {
		parts = append(parts, el("p", a("class", "bad"), txt("The figures changed since this cup was weighed, so its dose is gone. Put them back, or scrap the cup.")), reasons(s))
	}
	return join(append(parts, action("end", cup, "scrap", "Scrap this cup", "quiet"))...)
}

// noDose is where the dose would stand, and why it doesn't.
func noDose(s *page.State) html {
	b := s.Bench()
	if len(b.Reasons) == 0 {
		return join(el("h2", nil, txt("No dose yet")), stillWaiting(s), goodForOnly(s))
	}
	return join(el("h2", a("class", "bad"), txt("No dose")), reasons(s), goodForOnly(s))
}

// goodForOnly is the minutes of a test cup, where a smaller cup is all that it takes: whatever else speaks against
// a dose speaks against a test cup too.
func goodForOnly(s *page.State) html {
	if !s.Bench().HasHand || s.Bench().Whole.Value > cure.TestCup || slices.ContainsFunc(s.Bench().Reasons, isMoreThanSize) {
		return nothing
	}
	return el("div", a("class", "figures"), goodFor(s))
}

func isMoreThanSize(err error) bool {
	var large *cure.CupTooLargeError
	return !errors.As(err, &large)
}

func reasons(s *page.State) html {
	var lines []html
	seen := map[string]bool{}
	for _, err := range s.Bench().Reasons {
		text := page.DoseSentence(err, s.Plan.Job.Units)
		if !seen[text] {
			seen[text] = true
			lines = append(lines, el("li", nil, txt(text)))
		}
	}
	return el("ul", a("class", "reasons"), lines...)
}

func stillWaiting(s *page.State) html {
	var lines []html
	for _, path := range s.Bench().Waiting {
		if f := job.FieldAt(path); f != nil {
			lines = append(lines, el("li", nil, txt(capital(f.Name))))
		}
	}
	return join(el("p", nil, txt("Still to be typed:")), el("ul", a("class", "reasons"), lines...))
}

// cautions stand where the hand is about to act.
func cautions(s *page.State) html {
	lines := []string{"Goggles and gloves on, eyewash in reach.", "Warm to the hand: spread it now or put it outside, on something that can't burn."}
	if s.Bench().IsRatio {
		lines[0] = "Gloves and goggles on. Two-pack isocyanate is never sprayed without an air-fed mask; with asthma, don't."
	}
	if t := s.Bench().Hand; s.Bench().HasHand && t.Largest.Value > 0 && s.Plan.Job.Bench.Surface.Value >= unit.Of[unit.Temperature](30, unit.InCelsius) {
		lines = append(lines, "From 30 °C styrene gives a vapour that burns: no flame, no spark, no unvented heater.")
	}
	if s.Bench().HasDose && s.Bench().Dose.Share.Value > 0.02 {
		lines = append(lines, "Over 2 % by mass: near the top of what is advised.")
	}
	if s.Bench().Tin == cure.Untimed {
		lines = append(lines, "An estimate: a test cup first. The maker's sheet stands above it.")
	}
	var items []html
	for _, l := range lines {
		items = append(items, el("li", nil, txt(l)))
	}
	return el("ul", a("class", "cautions"), items...)
}

// bigFigure is a figure to be read at arm's length.
func bigFigure(s *page.State, id, label, value string, step *working.Step) html {
	return el("div", a("class", "big"), figure(s, id, label, value, step))
}
