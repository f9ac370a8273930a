package view

import (
	"strconv"

	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// cards is every material that is known, a maker's sheet in figures each.
func cards(s *page.State) html {
	var items []html
	for i := range s.Plan.Job.Cards {
		items = append(items, cardItem(s, &s.Plan.Job.Cards[i]))
	}
	return join(
		el("p", a("class", "lead"), txt("What ships here is general: none of it was tried in a cup. Check your tin, and type what its sheet says: your figure takes over.")),
		region("list-card", "div", a("class", "list", "tabindex", "-1"), items...))
}

func cardItem(s *page.State, c *job.Card) html {
	open := s.IsOpen(c.Path)
	sum := ""
	if c.Own {
		sum = "your copy"
	}
	parts := []html{itemLine(c.Path, open, c.Name, sum)}
	if open {
		parts = append(parts, cardForm(s, c), cardTools(c))
	}
	return region("item-"+c.Path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

func cardTools(c *job.Card) html {
	tools := []html{action("add", "card", c.Key, "Make a copy of my own", "quiet")}
	if c.Own {
		tools = append(tools, action("remove", c.Path, "", "Remove", "quiet"))
	}
	return el("div", a("class", "itemtools"), tools...)
}

func cardForm(s *page.State, c *job.Card) html {
	base := c.Base
	if !c.Own {
		base = c.Key
	}
	shipped, _ := material.Find(base)
	parts := []html{fieldWith(s, c.Path+".name", fieldExtras{Default: shipped.Name})}
	for _, f := range material.Fields {
		if f.Shown(&shipped) {
			parts = append(parts, cardField(s, c, f, &shipped))
		}
	}
	if shipped.Kind == material.FlowCoat {
		parts = append(parts, field(s, c.Path+".patch"))
	}
	if shipped.IsAbrasive() {
		parts = append(parts, typedGrades(s, c)...)
	}
	parts = append(parts, doseTable(s, c), packForm(s, c, &shipped), stockField(s, c), field(s, c.Path+".buy"), field(s, c.Path+".note"))
	return el("div", a("class", "form"), parts...)
}

// cardField shows what ships as a hint in the empty field, with its usual
// range and mark below.
func cardField(s *page.State, c *job.Card, f *material.Field, shipped *material.Card) html {
	v, scale := f.Of(shipped), s.Plan.Job.Units.Scale(f.Measure)
	extra := fieldExtras{}
	if v.Known {
		extra.Default = unit.Number(scale.From(v.Value), 4)
		extra.Hint = markWords(v.Mark)
	} else {
		extra.Default, extra.Hint = "from the tin", "Nothing ships here. Type what the tin says."
	}
	if v.Low != v.High {
		extra.Hint += " Usual: " + unit.Number(scale.From(v.Low), 4) + " to " + unit.WithUnit(unit.Number(scale.From(v.High), 4), scale) + "."
	}
	return fieldWith(s, c.Path+"."+f.Key, extra)
}

func markWords(m source.Mark) string {
	switch m {
	case source.CommonPractice:
		return "Common practice: check your tin."
	case source.Assumption:
		return "An assumption: log your own."
	case source.Published:
		return "Published."
	case source.FromMemory:
		return "Published, from memory: check your tin."
	}
	return words.Capital(m.String()) + "."
}

// packForm is the sizes that are sold, with their prices: those that ship, those that were typed, and one to type.
func packForm(s *page.State, c *job.Card, shipped *material.Card) html {
	isTyped := func(i int) bool { return len(s.Doc().Under(packPath(c, i))) > 0 }
	var rows []html
	for i := range material.MaxPacks {
		size := ""
		switch {
		case i < len(shipped.Packs):
			size = shipped.Packs[i].Size
		case i > len(shipped.Packs) && !isTyped(i) && !isTyped(i-1):
			rows = append(rows, region("row-"+packPath(c, i), "div", a("hidden", "")))
			continue
		}
		rows = append(rows, region("row-"+packPath(c, i), "div", a("class", "row pack"),
			fieldWith(s, packPath(c, i)+".size", fieldExtras{Default: size, Label: "Pack " + strconv.Itoa(i+1) + ", " + basisWords[c.SoldBy]}),
			fieldWith(s, packPath(c, i)+".price", fieldExtras{Default: "no price", Label: "price"}),
			fieldWith(s, packPath(c, i)+".sold", fieldExtras{Label: "in the shop"})))
	}
	return el("div", a("class", "rows"), el("p", a("class", "rowsname"), txt("Packs sold")),
		el("p", a("class", "hint"), txt("Once a price is typed, only the priced sizes are bought.")), join(rows...))
}

func packPath(c *job.Card, i int) string { return c.Path + ".pack." + strconv.Itoa(i+1) }

// stockField is what is in stock.
func stockField(s *page.State, c *job.Card) html {
	return fieldWith(s, c.Path+".stock", fieldExtras{Default: "none", Label: "In stock, " + basisWords[c.SoldBy]})
}

// basisWords is what a bare pack size is read in.
var basisWords = map[material.Basis]string{
	material.ByMass: "kg", material.ByVolume: "L", material.BySet: "L of mixed parts",
	material.ByLength: "m", material.ByPiece: "pieces",
}

// doseTable is the catalyst table: the one that ships, and the builder's own
// from the maker's sheet, which takes over whole.
func doseTable(s *page.State, c *job.Card) html {
	if len(c.Families) == 0 {
		return nothing
	}
	list := c.Path + ".dose"
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	var shipped []html
	for _, r := range c.DoseTable {
		shipped = append(shipped, el("li", nil, txt(unit.Write(float64(r.Surface), scale, 3)+": "+unit.Write(float64(r.Catalyst), unit.InPercent, 3)+" by mass")))
	}
	var rows []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		rows = append(rows, el("div", a("class", "row", "id", row, "tabindex", "-1"), el("p", a("class", "rowname"), txt("Row "+strconv.Itoa(i+1))),
			field(s, row+".temp"), field(s, row+".share"), action("remove", row, "", "Remove", "quiet")))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt("Catalyst by the temperature of the surface")),
		el("p", a("class", "hint"), txt("Ships with (common practice, no maker's sheet):")), el("ul", a("class", "hint"), shipped...),
		el("p", a("class", "hint"), txt("The maker's own table, from cold to warm, takes over whole:")),
		join(rows...), region("tablesays-"+list, "div", nil, tableSays(s, c)), action("add", list, "", "Add a row", "quiet"))
}

// tableSays tells what is wrong or odd about the builder's own table.
func tableSays(s *page.State, c *job.Card) html {
	fresh := s.Plan.Job.CardByKey(c.Key)
	if fresh == nil || fresh.DoseRows == 0 {
		return nothing
	}
	table, err := chain.DoseTable(fresh)
	if err != nil {
		return el("p", a("class", "bad"), txt(words.Dose(err, s.Plan.Job.Units)))
	}
	var lines []html
	for _, ask := range table.Asks() {
		text := "asks for more catalyst than the colder row before it. A slip?"
		if ask.Why == cure.Unusual {
			text = "lies outside the 0.5 to 4 % of the trade. A slip?"
		}
		lines = append(lines, el("p", a("class", "ask"), txt("Row "+strconv.Itoa(ask.Row+1)+" "+text)))
	}
	return join(lines...)
}
