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
	if n := len(w.Edge); n > 0 && w.EdgeOff.Step != nil {
		p.Rows = append(p.Rows, row(words.LeftEdge, w.Edge[n-1].Mean))
	}
	if least := last.Least.Thinnest; least.Step != nil {
		p.Least, p.Text = float64(least.Value), words.LeastFilm(of(s, least, unit.Films))
	}
	return draw.Left(p)
}
