package view

import (
	"shedreckoner/calc/chain"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// doseTable is the catalyst table: the one that ships, and the builder's own
// from the maker's sheet, which replaces all of it.
func doseTable(s *page.State, c *job.Card) html {
	if len(c.Families) == 0 {
		return nothing
	}
	list := c.Path + ".dose"
	scale := s.Plan.Job.Units.Scale(unit.Temperatures)
	var shipped []html
	for _, r := range c.DoseTable {
		shipped = append(shipped, el("li", nil, txt(words.DoseAt(r, scale))))
	}
	var rows []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		rows = append(rows, el("div", a("class", "row", "id", row, "tabindex", "-1"), el("p", a("class", "rowname"), txt(words.RowNumber(i+1))),
			field(s, row+".temp"), field(s, row+".share"), action("remove", row, "", words.Remove, "quiet")))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(words.DoseBySurface)),
		el("p", a("class", "hint"), txt(words.DoseShips)), el("ul", a("class", "hint"), shipped...),
		el("p", a("class", "hint"), txt(words.DoseOwn)),
		join(rows...), region("tablesays-"+list, "div", nil, tableSays(s, c)), action("add", list, "", words.AddARow, "quiet"))
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
		lines = append(lines, el("p", a("class", "ask"), txt(words.OddRow(ask.Row+1, ask.Why == cure.Unusual))))
	}
	return join(lines...)
}
