package view

import (
	"shedreckoner/calc/bench"
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// shedCardSheet is the card for the wall.
func shedCardSheet(s *page.State) shown {
	return shown{Title: words.ShedCard, Body: region("shedcard", "section", nil, shedCardSection(s))}
}

// shedCardSection is the card for the wall: doses by temperature and cup size.
func shedCardSection(s *page.State) html {
	b := s.Bench()
	table, ok := benchTable(b)
	if !ok {
		return nothing
	}
	if len(b.Reasons) > 0 || len(page.OpenCups(s.Doc(), page.Running)) > 0 || s.NextWaits() || s.Slot().Elsewhere != "" { // no dose stands beside a reason against it, nor beside a running cup
		return el("p", a("class", "hint"), txt(words.ShedWaitsForCup))
	}
	rows := bench.ShedCard(&s.Plan, s.BenchNow(), table)
	if len(rows) == 0 {
		return el("p", a("class", "hint"), txt(words.ShedWaitsForTool))
	}
	head := []html{el("th", a("scope", "col"), txt(words.Capital(words.SurfaceName)))}
	for _, cup := range bench.ShedCups {
		head = append(head, el("th", a("scope", "col"), txt(unit.Write(float64(cup), unit.InGram, 4))))
	}
	var lines []html
	for _, r := range rows {
		cells := []html{el("th", a("scope", "row"), txt(unit.Write(float64(r.Surface), s.Plan.Job.Units.Scale(unit.Temperatures), 3)))}
		for _, d := range r.Doses {
			cells = append(cells, el("td", nil, txt(d)))
		}
		lines = append(lines, el("tr", nil, cells...))
	}
	var cautions []html
	for _, text := range words.ShedCautions {
		cautions = append(cautions, el("li", nil, txt(text)))
	}
	return el("div", a("class", "shedcard"), el("h2", nil, txt(words.ShedCardOf(b.Card.Name))),
		el("p", nil, txt(words.ShedTable(b.Dose.Drops > 0)+" "+s.Now.Date)),
		wideTable("shed-table", words.ShedCard, el("thead", nil, el("tr", nil, head...)), el("tbody", nil, lines...)),
		el("p", nil, txt(shedLimits(s, table))), el("p", nil, txt(shedFit(s))),
		el("ul", a("class", "cautions"), cautions...),
		el("div", a("class", "itemtools"), action("print", "", "shed", words.PrintShedCard, "quiet")))
}

func shedLimits(s *page.State, table cure.Table) string {
	c := s.Bench().Card
	return words.ShedLimits(unit.Write(float64(c.Floor.Value), unit.InPercent, 3), unit.Write(float64(c.Ceiling.Value), unit.InPercent, 3), len(table.Rows()))
}

// shedFit is when the card's material may be put on.
func shedFit(s *page.State) string {
	limits, units := chain.AirLimits(s.Bench().Card), s.Plan.Job.Units
	write := func(t unit.Temperature) string { return unit.Write(float64(t), units.Scale(unit.Temperatures), 3) }
	share := func(s unit.Share) string { return unit.Write(float64(s), unit.InPercent, 3) }
	return words.ShedFit(write(limits.Least), write(limits.Most), unit.Write(float64(limits.Margin), units.Scale(unit.Differences), 3), share(limits.Driest), share(limits.Dampest))
}
