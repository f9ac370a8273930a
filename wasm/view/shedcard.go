package view

import (
	"strconv"

	"shedreckoner/calc/bench"
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
		return el("p", a("class", "hint"), txt("A shed card for the wall can be printed while a cup could be mixed, and none runs."))
	}
	rows := bench.ShedCard(&s.Plan, s.BenchNow(), table)
	if len(rows) == 0 {
		return el("p", a("class", "hint"), txt("A shed card for the wall can be printed once scale or syringe is typed."))
	}
	head := []html{el("th", a("scope", "col"), txt("Surface"))}
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
	return el("div", a("class", "shedcard"), el("h2", nil, txt("Shed card: "+b.Card.Name)),
		el("p", nil, txt("Catalyst by the temperature of the surface and the mass of all that cures. "+s.Now.Date)),
		wideTable("shed-table", words.ShedCard, el("thead", nil, el("tr", nil, head...)), el("tbody", nil, lines...)),
		el("p", nil, txt(shedLimits(s, table))),
		el("ul", a("class", "cautions"), el("li", nil, txt("Outside this table: no dose.")), el("li", nil, txt("Goggles and gloves on, eyewash in reach. Rinse at once and long.")),
			el("li", nil, txt("Never two kinds of peroxide, never peroxide on promoter.")), el("li", nil, txt("One dose a cup; nothing is added later.")),
			el("li", nil, txt("The maker's sheet stands above this card."))),
		el("div", a("class", "itemtools"), action("print", "", "shed", "Print the shed card", "quiet")))
}

func shedLimits(s *page.State, table cure.Table) string {
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	c := s.Bench().Card
	return "Surface and product " + unit.Write(float64(c.SurfaceLeast.Value), scale, 3) + " to " + unit.Write(float64(c.SurfaceMost.Value), scale, 3) +
		". At least " + unit.Write(float64(c.Floor.Value), unit.InPercent, 3) + " by mass of all that cures, at most " + unit.Write(float64(c.Ceiling.Value), unit.InPercent, 3) +
		" by mass of the product. " + strconv.Itoa(len(table.Rows())) + " rows, straight lines between them."
}
