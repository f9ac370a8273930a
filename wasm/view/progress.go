package view

import (
	"strconv"
	"strings"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// progress is every step of every build-up that has surfaces: where it is done,
// and what of it is left.
func progress(s *page.State) html {
	var items []html
	for i := range s.Plan.Buildups() {
		b := &s.Plan.Buildups()[i]
		if len(b.Surfaces) == 0 {
			continue
		}
		items = append(items, el("h3", nil, txt(buildupName(s, b.Path))))
		for j := range b.Steps {
			items = append(items, progressStep(s, &b.Steps[j], j+1))
		}
	}
	if len(items) == 0 {
		return nothing
	}
	return join(items...)
}

func progressStep(s *page.State, step *plan.Step, place int) html {
	path := "progress." + strings.ReplaceAll(step.Path, ".", "-")
	p, open := &step.Progress, s.IsOpen(path)
	parts := []html{itemLine(path, open, strconv.Itoa(place)+". "+s.WorkOf(step.Path), progressWords(step))}
	if open {
		parts = append(parts, progressFigures(s, step), doneButtons(s, step))
		if p.IsDone() {
			parts = append(parts, hint(words.RemoveToOpenAgain))
		}
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func progressWords(step *plan.Step) string {
	p := &step.Progress
	switch {
	case p.IsDone():
		return "done"
	case len(p.Done) > 0:
		return words.DoneOf(len(p.Done), len(p.Done)+len(p.Open))
	case len(p.Cups) > 0:
		return words.Begun(len(p.Cups))
	}
	return words.ToDo
}

func progressFigures(s *page.State, step *plan.Step) html {
	id := "progress." + step.Path
	parts := []html{}
	if step.Leaves.Step != nil {
		parts = append(parts, figure(s, id+".leaves", words.ToPutOn, of(s, step.Leaves, unit.Weights), step.Leaves.Step))
	}
	if step.Progress.PutOn.Value > 0 {
		parts = append(parts, figure(s, id+".on", words.PutOnByCups, of(s, step.Progress.PutOn, unit.Weights), step.Progress.PutOn.Step))
	}
	if left := step.Progress.Rest; left.Step != nil {
		parts = append(parts, figure(s, id+".rest", words.LeftToDo, unit.Write(float64(left.Value), unit.InPercent, 2), left.Step))
	}
	return el("div", a("class", "figures"), parts...)
}

// doneButtons logs the step as done: on one surface, or on all that are open.
func doneButtons(s *page.State, step *plan.Step) html {
	open := step.Progress.Open
	var buttons []html
	for _, surface := range open[:min(len(open), 12)] {
		buttons = append(buttons, action("done", step.Path, surface, words.DoneOn(s.SurfaceNames([]string{surface})), "quiet"))
	}
	if len(open) > 1 {
		buttons = append(buttons, action("done", step.Path, strings.Join(open, " "), words.DoneOnAll, "main"))
	}
	return el("div", a("class", "itemtools"), buttons...)
}

// toBuyAgain is what the rest still takes beyond what is in stock.
func toBuyAgain(s *page.State) html {
	var lines []html
	for i := range s.Order().Lines {
		if l := &s.Order().Lines[i]; (l.Scale == unit.InKilogram || l.Scale == unit.InLitre) && l.ToBuy.IsPositive() {
			lines = append(lines, el("li", nil, el("span", nil, txt(l.Card.Name)), el("strong", nil, txt(lineAmount(s, l, l.ToBuy))), el("span", a("class", "hint"), txt(words.Buy(l, s.Plan.Job.Units)))))
		}
	}
	meant, more := words.AsPlanned, words.OrderSaysTheChance
	if s.Confidence.Done {
		meant, more = words.ForCardsChance, ""
	}
	if len(lines) == 0 {
		return hint(words.StockIsEnough(meant))
	}
	return join(hint(words.BeyondStock(meant)), el("ul", a("class", "tobuy"), lines...),
		hintIf(more), action("go", "order", "", words.GoToTheOrder, "quiet"))
}

// finishedWork is the log of what is done.
func finishedWork(s *page.State) html {
	ids := s.Doc().Items("done")
	if len(ids) == 0 {
		return nothing
	}
	items := []html{el("h2", nil, txt(words.FinishedWork))}
	for i := len(ids) - 1; i >= 0; i-- {
		items = append(items, finishedItem(s, "done."+ids[i]))
	}
	return join(items...)
}

func finishedItem(s *page.State, path string) html {
	d := s.Doc()
	open := s.IsOpen(path)
	step := d.Get(path + ".step")
	parts := []html{itemLine(path, open, s.SurfaceNames(strings.Fields(d.Get(path+".surface")))+": "+s.WorkOf(step), words.Date(d.Get(path+".day"), s.Now.Date))}
	if open {
		parts = append(parts, hint(s.StepName(step)), el("div", a("class", "form"),
			fieldWith(s, path+".used", fieldExtras{Default: words.ByItsCups}), field(s, path+".temp"), field(s, path+".note")),
			region("figures-"+path, "div", a("class", "figures"), entryFigures(s, path)),
			el("div", a("class", "itemtools"), action("remove", path, "", words.Remove, "quiet")))
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func entryFigures(s *page.State, path string) html {
	weights := unit.Weights
	if strings.HasPrefix(path, "cup.") {
		weights = unit.CupWeights
	}
	parts := []html{aheadOf(s, path+".at"), cupsThatWentOn(s, path)}
	for i := range s.Lessons().List {
		for _, e := range s.Lessons().List[i].Log {
			if e.Path != path {
				continue
			}
			if e.Used.Step != nil {
				parts = append(parts, figure(s, path+".on", words.Capital(words.PutOn), of(s, e.Used, weights), e.Used.Step))
			}
			if e.Planned.Step != nil {
				parts = append(parts, figure(s, path+".planned", "Planned", of(s, e.Planned, weights), e.Planned.Step))
			}
			if e.Ratio > 0 {
				parts = append(parts, hint(words.UsedOver(unit.Number(float64(e.Ratio), 3))))
			}
			if e.Err != nil {
				parts = append(parts, el("p", a("class", "ask"), txt(words.EntryDoesntTeach(e.Err, page.IsCup(path)))))
			}
		}
	}
	return join(parts...)
}
