package view

import (
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// hollows is the readings or places of a fill step that isn't measured by a
// mean thickness.
func hollows(s *page.State, path string) html {
	switch s.Doc().Get(path + ".fill-by") {
	case job.FillGrid:
		return join(gridForm(s, path), datum(s, path))
	case job.FillSpot:
		return spotList(s, path)
	}
	return nothing
}

// gridForm is the readings row by row, the open one to type in.
func gridForm(s *page.State, path string) html {
	list := path + ".grid"
	columns := page.Columns(s.Doc(), path)
	var rows []html
	for i, id := range s.Doc().Items(list) {
		rows = append(rows, gridRow(s, list+"."+id, i, columns))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(words.ReadingsTitle)),
		el("p", a("class", "hint"), txt(words.ReadingsHint)),
		el("div", a("class", "list"), rows...),
		action("add", list, "", words.AddARow, "quiet"),
		action("fill", path, "", words.FillGrid, "quiet"))
}

func gridRow(s *page.State, item string, at, columns int) html {
	open := s.IsOpen(item)
	row := item + ".z"
	parts := []html{itemLine(item, open, words.ReadingRow(at+1, strings.ReplaceAll(s.Doc().Get(row), ";", " ")), "")}
	if open {
		if columns == 0 {
			parts = append(parts, el("p", a("class", "hint"), txt(words.RowLengthFirst)))
		}
		parts = append(parts, el("div", a("class", "row cells"), gridCells(s, row, at, columns)...))
	}
	parts = append(parts, sayRegion(row, saidOfRow(s, row)))
	if open {
		parts = append(parts, el("div", a("class", "itemtools"),
			action("sign", item, "", words.ProudButton, "quiet"), action("remove", item, "", words.RemoveTheRow, "quiet")))
	}
	return region("item-"+item, "div", a("class", "item inner", "data-open", yesNo(open)), parts...)
}

func gridCells(s *page.State, row string, at, columns int) []html {
	cells := job.Cells(s.Doc().Get(row))
	bad := badCells(s.Plan.RefusedAt(row))
	var list []html
	for c := range max(columns, len(cells)) {
		text := ""
		if c < len(cells) {
			text = cells[c]
		}
		path := page.CellPath(row, c)
		list = append(list, markup.ControlFor("input", path, markup.Control{Value: text, Invalid: bad[c]},
			a("id", "f-"+path, "class", "cell", "type", "text", "inputmode", "decimal", "enterkeyhint", "next", "autocomplete", "off",
				"aria-label", words.CellName(at, c), "aria-describedby", "say-"+row,
				"data-enter", "next", "data-paste", "paste", "placeholder", strconv.Itoa(c+1))))
	}
	return list
}

func badCells(err error) map[int]bool {
	var cell *fairing.CellError
	if errors.As(err, &cell) {
		return map[int]bool{cell.Column: true}
	}
	return nil
}

// saidOfRow is what is wrong with a row, or what it still waits for.
func saidOfRow(s *page.State, row string) html {
	units := s.Plan.Job.Units
	if err := s.Plan.RefusedAt(row); err != nil {
		return el("p", a("class", "bad"), txt(words.Sentence(err, nil, units)))
	}
	if err := s.Plan.WaitingAt(row); err != nil {
		return el("p", a("class", "ask"), txt(words.Sentence(err, nil, units)))
	}
	return nothing
}

// spotList is the hollows, troughs and fillets of a step.
func spotList(s *page.State, path string) html {
	list := path + ".spot"
	ids := s.Doc().Items(list)
	var items []html
	for i, id := range ids {
		items = append(items, spotItem(s, list+"."+id, i, len(ids)))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(words.PlacesToFill)), el("div", a("class", "list"), items...), action("add", list, "", words.AddAPlace, "quiet"))
}

var spotHints = map[string]string{
	job.BattenHollow: words.BattenHollowHint,
	job.Trough:       words.TroughHint,
	job.Fillet:       words.FilletHint,
}

func spotItem(s *page.State, path string, at, count int) html {
	open := s.IsOpen(path)
	kind := s.Doc().Get(path + ".is")
	if kind == "" {
		kind = job.BattenHollow
	}
	name := strconv.Itoa(at + 1)
	for _, o := range job.FieldAt(path + ".is").Options {
		if o.Key == kind {
			name += " " + words.Capital(o.Name)
		}
	}
	parts := []html{itemLine(path, open, name, "")}
	if open {
		parts = append(parts, field(s, path+".is"), el("p", a("class", "hint"), txt(spotHints[kind])))
		for _, key := range job.SpotFields(kind) {
			parts = append(parts, fieldWith(s, path+"."+key, stepExtras(key)))
		}
		parts = append(parts, itemTools(path, at, count))
	}
	return region("item-"+path, "div", a("class", "item inner", "data-open", yesNo(open)), parts...)
}

// fillFigures is what a fill step comes to.
func fillFigures(s *page.State, path string, step plan.Step) html {
	f := step.Fill
	var parts []html
	if f.Grid != nil {
		parts = append(parts, gridFigures(s, path, f.Grid))
	}
	parts = append(parts,
		figure(s, path+".passes", "Passes", unit.Number(float64(f.Passes.Value), 3), f.Passes.Step),
		figure(s, path+".depth", words.DeepestPutOn, of(s, f.Depth, unit.Fills), f.Depth.Step),
		figure(s, path+".left", words.FillerThatStaysOn, of(s, f.Left, unit.Volumes), f.Left.Step),
		figure(s, path+".applied", words.PutOnInAll, of(s, f.Applied, unit.Volumes), f.Applied.Step),
		figure(s, path+".dust", "Dust", of(s, f.Dust, unit.Weights), f.Dust.Step),
		figure(s, path+".kept", words.MassThatStays, of(s, step.Kept, unit.Weights), step.Kept.Step))
	return join(parts...)
}

// sayRegion is the place below something for what is wrong with it; it takes no
// room while there is nothing.
func sayRegion(path string, what html) html {
	attrs := a("class", "say")
	if what.IsEmpty() {
		attrs = a("class", "say", "hidden", "")
	}
	return region("say-"+path, "div", attrs, what)
}
