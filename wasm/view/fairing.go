package view

import (
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// hollows is the readings or places of a fill step that isn't measured by a
// mean thickness.
func hollows(s *page.State, path string) html {
	switch s.Doc().Get(path + ".fill-by") {
	case job.FillGrid:
		return gridForm(s, path)
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
				"aria-label", "Row "+strconv.Itoa(at+1)+", reading "+strconv.Itoa(c+1), "aria-describedby", "say-"+row,
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

func gridFigures(s *page.State, path string, g *plan.Grid) html {
	parts := []html{hollowMap(s, g),
		el("p", a("class", "hint"), txt(words.Extremes(g, s.Plan.Job.Units.Scale(unit.Fills)))),
		figure(s, path+".cut", words.CutOffProudSpots, of(s, g.Cut, unit.Volumes), g.Cut.Step)}
	if len(g.Curve) > 0 {
		parts = append(parts, tradePlot(s, g),
			figure(s, path+".best", words.RaiseDatumBy, of(s, g.Best, unit.Fills), g.Best.Step),
			figure(s, path+".bestfill", words.BestFills, of(s, g.BestFill, unit.Volumes), g.BestFill.Step),
			figure(s, path+".bestcut", words.BestCuts, of(s, g.BestCut, unit.Volumes), g.BestCut.Step),
			action("set", path+".raise", unit.Typed(float64(g.Best.Value), s.Plan.Job.Units.Scale(unit.Fills))+" "+s.Plan.Job.Units.Scale(unit.Fills).Symbol(), words.UseThisHeight, "quiet"))
	}
	return join(parts...)
}

func hollowMap(s *page.State, g *plan.Grid) html {
	scale := s.Plan.Job.Units.Scale(unit.Fills)
	depths := make([][]float64, len(g.Depths))
	for r, row := range g.Depths {
		for _, d := range row {
			depths[r] = append(depths[r], float64(d))
		}
	}
	return draw.Map(draw.HollowMap{
		Title:  words.MapOfDepths(g, scale),
		Depths: depths,
		Text:   func(d float64) string { return unit.Number(scale.From(d), 2) },
		Coarse: words.CoarseMap,
	})
}

// tradePlot is filler and cutting over the height of the datum, as it lies now and
// where it takes least of both.
func tradePlot(s *page.State, g *plan.Grid) html {
	height, litres := s.Plan.Job.Units.Scale(unit.Fills), s.Plan.Job.Units.Scale(unit.Volumes)
	var fill, cut []draw.Point
	most := 0.
	for _, d := range g.Curve {
		x := height.From(float64(d.Raise))
		f, c := draw.Point{X: x, Y: litres.From(float64(d.Fill))}, draw.Point{X: x, Y: litres.From(float64(d.Cut))}
		fill, cut, most = append(fill, f), append(cut, c), max(most, f.Y, c.Y)
	}
	best := draw.Point{X: height.From(float64(g.Best.Value)), Y: litres.From(float64(g.BestFill.Value))}
	return draw.Plot{
		Title: words.TradePicture(of(s, g.Best, unit.Fills), of(s, g.BestFill, unit.Volumes), of(s, g.BestCut, unit.Volumes)),
		X:     draw.Axis{Label: words.RaisedAxis(height.Symbol()), Ticks: draw.NiceTicks(fill[0].X, fill[len(fill)-1].X, 4, shortTick)},
		Y:     draw.Axis{Label: litres.Symbol(), Ticks: draw.NiceTicks(0, max(most, best.Y), 4, shortTick)},
		Lines: []draw.Line{{Name: words.FillerLine, Class: "curve", Points: fill}, {Name: words.CutLine, Class: "curve dashed", Points: cut}},
		Marks: []draw.Mark{{Point: best, Class: "today", Text: words.BestHeight}},
	}.Draw()
}

func shortTick(n float64) string { return unit.Number(n, 2) }

// sayRegion is the place below something for what is wrong with it; it takes no
// room while there is nothing.
func sayRegion(path string, what html) html {
	attrs := a("class", "say")
	if what.IsEmpty() {
		attrs = a("class", "say", "hidden", "")
	}
	return region("say-"+path, "div", attrs, what)
}
