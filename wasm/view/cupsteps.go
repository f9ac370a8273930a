package view

import (
	"shedreckoner/calc/bench"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// weigh is what goes into the cup, line by line as the scale shows it. The
// catalyst isn't on it: it comes on a screen of its own.
func weigh(s *page.State) shown {
	b := s.Bench()
	if s.Sheet() == page.WeighTestSheet {
		return weighTest(s)
	}
	cup, may := s.DoseFor()
	out := shown{Title: stepTitle(s, words.WeighStep)}
	canWeigh := b.HasDose || b.HasParts
	if !canWeigh || cup == "" && !may {
		out.Body = stepStops(s)
		return out
	}
	how, next, last := words.ScaleZero, words.ThenStir, words.ToCatalyst
	if b.IsRatio {
		next, last = words.ThenHardener, words.ToHardener
		if b.Putty != nil {
			last = words.FillersIn
		}
		if b.Weigh[0].Shows.Scale == unit.InMillilitre {
			how = words.OneGraduated
		}
	}
	out.Body = join(tape("weigh-how", how), region("lines", "ol", a("class", "do", "aria-label", words.WeighLabel), weighLines(b)...),
		dial(s, at("amount"), dialLine{Name: words.InTheCup, Small: words.AsWeighed, Holds: s.ProposedAmount()}), tape("weigh-next", next))
	out.Act = act("weighed", "", "", last)
	return out
}

// stepStops is a step that can't be taken now, and why.
func stepStops(s *page.State) html {
	return region("stops", "section", a("class", "answer", "data-is", "stops"), el("h2", nil, txt(words.NoDoseAt(surfaceText(s)))), reasons(s))
}

// weighTest is what goes into a timed test.
func weighTest(s *page.State) shown {
	b := s.Bench()
	out := shown{Title: words.TestStep}
	if b.Card == nil || s.TestWay() == nil && !b.HasDose {
		out.Body = stepStops(s)
		return out
	}
	out.Title = words.Heading(words.TestStep, b.Card.Name, words.TestGrams)
	lines := []html{weighLine(b.Card.Name, words.TestGrams, words.TestBare, unit.InGram.Symbol())}
	if s.TestWay() == nil {
		lines = weighLines(b)
	}
	out.Body = join(tape("weigh-how", words.ScaleZero), region("lines", "ol", a("class", "do", "aria-label", words.WeighLabel), lines...), tape("weigh-next", words.NotForWork, words.ThenStir))
	out.Act = act("weighed", "", "", words.ToCatalyst)
	return out
}

func weighLine(name, small, shows, symbol string) html {
	return el("li", nil, el("span", nil, txt(name), el("small", nil, txt(small))), el("b", nil, txt(shows), el("small", nil, txt(symbol))))
}

// weighLines is a line for each thing that goes in, but for what starts the clock.
func weighLines(b *bench.Bench) []html {
	var lines []html
	for _, l := range b.Weigh {
		if l.Part == bench.PartB {
			continue
		}
		card, share := "", ""
		if card = l.Name; card == "" && l.Card != nil {
			card = l.Card.Name
		}
		if l.Share.Step != nil {
			share = words.ByMass(unit.Write(float64(l.Share.Value), unit.InPercent, 2))
		}
		lines = append(lines, weighLine(words.PartName(l.Part, card), words.LineSmall(l.Own.String(), share), l.Shows.Bare(), l.Shows.Scale.Symbol()))
	}
	return lines
}

// mixName is what is mixed: the putty mixed by hand, or the material.
func mixName(s *page.State) string {
	if p := s.Bench().Putty; p != nil {
		return puttyName(s, p.Path)
	}
	return s.Bench().Card.Name
}

// stepTitle is the heading of a step: what is done, with what, how much of it.
func stepTitle(s *page.State, step string) string {
	b := s.Bench()
	if b.Card == nil {
		return step
	}
	amount := ""
	if b.Size.Mass.Step != nil {
		amount = of(s, b.Size.Mass, unit.CupWeights)
	}
	return words.Heading(step, mixName(s), amount)
}

// catalystStep is the one place and time at which a weighed cup's dose is given.
func catalystStep(s *page.State) shown {
	b := s.Bench()
	cup, may := s.DoseFor()
	step := words.Capital(words.Catalyst)
	if b.IsRatio {
		step = words.Capital(words.Hardener)
	}
	out := shown{Title: stepTitle(s, step)}
	isTest := cup != "" && page.IsTestCup(s.Doc(), cup)
	if isTest {
		out.Title = words.Heading(words.TestStep, b.Card.Name, words.TestGrams)
	}
	if cup == "" {
		return out
	}
	if !may {
		out.Body = join(stepStops(s), el("p", nil, txt(words.FiguresMoved)), action("end", cup, "scrap", words.ScrapCup, "quiet"))
		out.Act = act("back", "", "", words.BackToScale)
		return out
	}
	p := pourOf(b, s.PourFor(cup))
	parts := []html{el("p", nil, txt(p.once)), el("strong", nil, hero(s, p))}
	for _, line := range []string{p.then, p.alone} {
		if line != "" {
			parts = append(parts, el("p", nil, txt(line)))
		}
	}
	if s.Why == p.id {
		parts = append(parts, workings(s, p.step))
	}
	out.Body = join(region("dose", "section", a("class", "answer alone", "aria-label", p.once), parts...), tape("dose-cautions", doseCautions(b)...), fromHere(s, b, isTest),
		action("end", cup, "scrap", words.ScrapCup, "quiet"))
	name := words.CatalystIn
	if b.IsRatio {
		name = words.HardenerIn
	}
	out.Act = el("button", a("class", "main", "type", "button", "id", "catalyst-in", "data-do", "in", "data-path", cup), txt(name))
	return out
}

// doseCautions stand where the hand acts: two at most.
func doseCautions(b *bench.Bench) []string {
	switch {
	case b.IsRatio && b.Card.Chemistry == material.TwoPack:
		return []string{words.AtIsocyanate, words.AtHardener}
	case b.IsRatio:
		return []string{words.AtHardener}
	case b.Dose.Share.Value > 0.02:
		return []string{words.AtCatalyst, words.OverTwo}
	}
	return []string{words.AtCatalyst}
}

// fromHere is the minutes that run once it is in.
func fromHere(s *page.State, b *bench.Bench, isTest bool) html {
	if b.Minutes == nil || isTest {
		return nothing
	}
	area := ""
	if b.Facts.Covers.Step != nil {
		area = of(s, b.Facts.Covers, unit.Areas)
	}
	first, rest := words.MinutesFromHere(minutes(b.Minutes.Spread.Value-b.Minutes.Mix.Value), area)
	return region("from-here", "div", nil, verdict(holds, first, rest, ""))
}
