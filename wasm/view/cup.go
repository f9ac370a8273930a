package view

import (
	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cup is the screen at the bench. A cup goes through four steps, one a screen:
// it is planned here, weighed and given its catalyst on sheets over it, and then
// its clock stands here.
func cup(s *page.State) shown {
	if s.Slot().Elsewhere != "" {
		return shown{Title: words.NextCup, Body: region("answer", "section", a("class", "answer", "data-is", "stops"),
			el("h2", a("class", "bad"), txt(words.OtherTabTitle)), el("p", nil, txt(words.OtherTab)))}
	}
	if len(page.OpenCups(s.Doc(), page.Running)) > 0 {
		return clock(s)
	}
	if s.NextWaits() {
		return shown{Title: words.NextCup, Body: region("answer", "section", a("class", "answer", "data-is", "stops"),
			el("p", a("class", "bad"), txt(words.MayBeIn))), Act: act("sheet", page.NextCup, "", words.PlanAnother)}
	}
	return now(s, !hasDoseBeside(s))
}

// now plans the next cup: what it needs to be told, its dose, what bears on it.
func now(s *page.State, hasAnswer bool) shown {
	b := s.Bench()
	at := func(key string) string { return job.BenchPath + "." + key }
	isRefused := len(b.Reasons) > 0 // which no tool helps: then the question comes after the answer
	body := join(
		region("justended", "div", nil, justEnded(s)),
		region("for", "div", a("class", "chips"), forChips(s)),
		dial(s, at("surface-temp"), dialLine{Name: words.SurfaceName, Small: productSmall(s)}),
		region("ahead", "div", nil, aheadDial(s)),
		region("cupdial", "div", nil, cupDial(s)),
		region("tool", "section", nil, unless(isRefused, func() html { return toolQuestion(s) })),
		unless(!hasAnswer, func() html { return answer(s) }),
		region("tool-after", "section", nil, unless(!isRefused, func() html { return toolQuestion(s) })),
		region("verdicts", "section", a("class", "verdicts"), verdicts(s)),
		region("setups", "section", a("class", "setups"), setups(s)),
		lastCups(s),
	)
	return shown{Title: nowTitle(s), Body: body, Act: nowAct(s, b)}
}

// hasDoseBeside reports whether a sheet beside the plan shows the dose: it is seen once.
func hasDoseBeside(s *page.State) bool {
	cup, may := s.DoseFor()
	return s.Sheet() == page.NextCup || may && cup != "" && s.Sheet() == page.CatalystSheet
}

// nowTitle is what the cup is for.
func nowTitle(s *page.State) string {
	step, _ := s.Plan.StepAt(s.Bench().Coat)
	if step == nil {
		return words.NextCup
	}
	return s.SurfaceNames(step.Progress.Open)
}

// nowAct is the one thing to do next.
func nowAct(s *page.State, b *bench.Bench) html {
	cup, may := s.DoseFor()
	switch {
	case cup != "":
		return act("sheet", page.CatalystSheet, "", words.ToWeighed)
	case may:
		return act("sheet", page.WeighSheet, "", words.WeighCup)
	}
	return testAct(s)
}

// forChips is what is mixed and how it is put on, each leading to its choice.
func forChips(s *page.State) html {
	b := s.Bench()
	if b.Card == nil {
		return leads("what", words.ChooseMaterial)
	}
	chips := []html{leads("what", mixName(s))}
	if m := b.Method; m != nil {
		chips = append(chips, leads("how", words.Capital(words.ShortMethod(m.Name))))
	}
	return join(chips...)
}

// testAct begins a timed test, where one can be made.
func testAct(s *page.State) html {
	if !s.MayTest() {
		return nothing
	}
	return act("time-test", "", "", words.TimeATest)
}

// leads is a chip that opens a sheet.
func leads(sheet, name string) html {
	return el("button", a("class", "chip leads", "type", "button", "id", page.OpenerID(sheet), "data-do", "sheet", "data-path", sheet), txt(name))
}

func productSmall(s *page.State) string {
	b := s.Bench()
	if b.IsSame || b.Product.Step == nil {
		return words.SameProduct
	}
	return words.ProductAt(of(s, b.Product, unit.Temperatures))
}

// aheadDial asks for the coldest hour where the surface is near the card's least temperature.
func aheadDial(s *page.State) html {
	if !s.AsksAhead() {
		return nothing
	}
	return dial(s, job.BenchPath+".ahead", dialLine{Name: words.AheadDial})
}

// cupDial is how large the cup is: proposed, until it is typed or stepped.
func cupDial(s *page.State) html {
	b := s.Bench()
	if b.AsksTool && s.Doc().Get(at("amount")) == "" || s.Sheet() == page.WeighSheet {
		return nothing // one question at a time; and the scale has the dial
	}
	small := ""
	if b.Size.Largest.Step != nil {
		small = words.LargestNow(of(s, b.Size.Largest, unit.CupWeights), unit.InGram.From(float64(b.Size.Largest.Value)) < 1)
	}
	return dial(s, at("amount"), dialLine{Name: words.CupDial, Small: small, Holds: s.ProposedAmount()})
}

// toolQuestion is asked once.
func toolQuestion(s *page.State) html {
	b := s.Bench()
	if !b.AsksTool {
		return nothing
	}
	return join(el("h2", nil, txt(whichTool(b.IsRatio))), toolChoices(s), el("p", a("class", "hint"), txt(words.AskedOnce)))
}

// whichTool asks what the catalyst is measured with, or the parts of a fixed ratio.
func whichTool(isRatio bool) string {
	if isRatio {
		return words.WhichParts
	}
	return words.WhichTool
}

// toolChoices is the four tools, as large as the hand wants them.
func toolChoices(s *page.State) html {
	var list []html
	for _, t := range words.Tools {
		list = append(list, el("button", a("class", "bigchoice", "type", "button", "id", "tool-"+classOf(t.Key), "data-do", "tool", "data-path", "", "data-text", t.Key,
			"aria-pressed", yesNo(s.HasTool(t.Key))), el("b", nil, txt(t.Name)), el("small", nil, txt(t.Small))))
	}
	return el("div", a("class", "bigchoices"), list...)
}
