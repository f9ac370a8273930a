package draw

import "shedreckoner/wasm/markup"

// LeftPlot is what is left of a film in places, against the least that must be.
type LeftPlot struct {
	Title string // for those who don't see it
	Rows  []LeftRow
	Least float64 // 0: none is known
	Text  string  // of the least
}

// LeftRow is one place: the mean, the thin side, an edge strip.
type LeftRow struct {
	Name, Text string
	Film       float64
}

const (
	leftName   = 90.
	leftValue  = 72.
	leftHeight = 22.
)

// Left draws a bar for each place, all to one scale from zero up, and a line
// for the least. A negative film has no bar. Without a film it draws nothing.
func Left(p LeftPlot) markup.HTML {
	most := p.Least
	for _, r := range p.Rows {
		if isFinite(r.Film) {
			most = max(most, r.Film)
		}
	}
	if !isFinite(most) || most <= 0 || len(p.Rows) == 0 {
		return markup.HTML{}
	}
	const room = plotWidth - leftName - leftValue
	top := 0.
	if p.Least > 0 {
		top = lineHeight
	}
	bottom := top + leftHeight*float64(len(p.Rows))
	var parts []markup.HTML
	for i, r := range p.Rows {
		y := top + leftHeight*float64(i)
		class := "bar-of"
		if r.Film < p.Least {
			class = "short"
		}
		if isFinite(r.Film) {
			parts = append(parts, rect(class, leftName, y+4, room*(max(0, r.Film)/most), leftHeight-8))
		}
		parts = append(parts, words("", "start", fitted(r.Name, leftName-4), 0, y+leftHeight/2),
			words("strong", "end", fitted(r.Text, leftValue-4), plotWidth, y+leftHeight/2))
	}
	if p.Least > 0 {
		x := leftName + room*(p.Least/most)
		text := fitted(p.Text, plotWidth)
		half := textWidth(text) / 2
		parts = append(parts, line("least", x, top-2, x, bottom), words("aside", "middle", text, max(half, min(x, plotWidth-half)), lineHeight/2))
	}
	return picture("left", plotWidth, bottom, p.Title, parts...)
}
