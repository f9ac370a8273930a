package view

import (
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/draw"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// leftPicture is the film that is left: its mean, its thin side, and what the edge
// strips keep, against the least.
func leftPicture(s *page.State, w *plan.Budget) html {
	last, _ := w.Last()
	row := func(name string, film working.Figure[unit.DryFilm]) draw.LeftRow {
		return draw.LeftRow{Name: name, Text: of(s, film, unit.Films), Film: float64(film.Value)}
	}
	p := draw.LeftPlot{Title: words.LeftInTheEnd, Rows: []draw.LeftRow{row(words.LeftMean, last.Mean), row(words.LeftThin, last.Thin)}}
	if edge, isSanded := edgeLeft(w); isSanded {
		p.Rows = append(p.Rows, row(words.LeftEdge, edge))
	}
	if least := last.Least.Thinnest; least.Step != nil {
		p.Least, p.Text = float64(least.Value), words.LeastFilm(of(s, least, unit.Films))
	}
	return draw.Left(p)
}

// edgeLeft is the film that the edge strips keep; false: nothing is sanded there.
func edgeLeft(w *plan.Budget) (film working.Figure[unit.DryFilm], isSanded bool) {
	if w.EdgeOff.Step != nil {
		return w.Edge[len(w.Edge)-1].Mean, true
	}
	return film, false
}

// leftRow is what is left once all is done, as the top of the list: the mean, the
// thin side and the edges to the scale of the layers, with the least across.
func leftRow(s *page.State, path string, b *plan.Buildup) html {
	id := "left-" + path
	w := thinnest(b)
	if w == nil {
		return region(id, "div", a("hidden", ""))
	}
	last, _ := w.Last()
	tall := func(f unit.DryFilm) float64 { return unit.InMicrometre.From(float64(f)) * perMicron }
	ends := draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{tall(last.Mean.Value), tall(last.Thin.Value)}}
	for i := len(b.Steps) - 1; i >= 0; i-- {
		if step := &b.Steps[i]; step.Coat != nil && step.Card != nil {
			ends.Stuff = stuffOfCard(step.Card.Kind)
			break
		}
	}
	edge, least := "", ""
	if film, isSanded := edgeLeft(w); isSanded {
		ends.Films = append(ends.Films, tall(film.Value))
		edge = of(s, film, unit.Films)
	}
	if l := last.Least.Thinnest; l.Step != nil {
		ends.Least = tall(l.Value)
		least = of(s, l, unit.Films)
	}
	return region(id, "div", a("class", "layer ground"), el("span", a("class", "seen"), ends.Layer()),
		el("span", a("class", "name"), txt(words.LeftAtTheEnd), el("small", nil, txt(words.EndsFromTheLeft(of(s, last.Mean, unit.Films), of(s, last.Thin, unit.Films), edge, least)))))
}

// thinnest is the budget that leaves least; nil: there is no film.
func thinnest(b *plan.Buildup) *plan.Budget {
	for i := range b.Budgets() {
		if w := &b.Budgets()[i]; len(w.Flat) > 0 {
			return w // the thinnest comes first
		}
	}
	return nil
}
