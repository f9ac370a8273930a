package draw

import (
	"math"

	"shedreckoner/wasm/markup"
)

// Choice is an amount that can be bought: its packs, its price, and the chance
// that it doesn't run out, 0–1.
type Choice struct {
	Packs, Price string
	Chance       float64
	Text         string // the chance in words or per cent
	IsChosen     bool
}

const (
	barsWidth  = 300.
	barHeight  = 14.
	valueRoom  = 76. // at the right of a bar
	rowSpacing = 8.
	barTop     = lineHeight + 2
	rowHeight  = barTop + barHeight + rowSpacing
)

// Chance draws a row for each choice: what is bought and its price over a bar
// that is full when it is sure not to run out.
func Chance(title string, choices []Choice) markup.HTML {
	var parts []markup.HTML
	full := barsWidth - valueRoom
	for i, c := range choices {
		y := float64(i) * rowHeight
		class, bar := "", "bar-of"
		if c.IsChosen {
			class = "strong"
		} else {
			bar = "tone3"
		}
		price := fitted(c.Price, barsWidth/2)
		parts = append(parts,
			words(class, "start", fitted(c.Packs, barsWidth-textWidth(price)-8), 0, y+lineHeight/2),
			words(class, "end", price, barsWidth, y+lineHeight/2),
			rect("empty", 0, y+barTop, full, barHeight))
		if isFinite(c.Chance) {
			parts = append(parts, rect(bar, 0, y+barTop, full*max(0, min(c.Chance, 1)), barHeight))
		}
		parts = append(parts, words(class, "end", fitted(c.Text, valueRoom-4), barsWidth, y+barTop+barHeight/2))
	}
	return rowsPicture("chance", title, len(choices), parts)
}

// Bar is how much one input moves a total, at the low and at the high end of
// what it may be.
type Bar struct {
	Name, Text string
	Low, High  float64 // change of the total
}

// Bars draws a short bar for each input about a line that is the plan.
func Bars(title string, bars []Bar) markup.HTML {
	reach := 0.
	for _, b := range bars {
		if isFinite(b.Low, b.High) {
			reach = max(reach, math.Abs(b.Low), math.Abs(b.High))
		}
	}
	const middle = barsWidth / 2
	var parts []markup.HTML
	for i, b := range bars {
		y := float64(i) * rowHeight
		value := fitted(b.Text, barsWidth/2)
		parts = append(parts,
			words("", "start", fitted(b.Name, barsWidth-textWidth(value)-8), 0, y+lineHeight/2),
			words("strong", "end", value, barsWidth, y+lineHeight/2))
		if reach > 0 && isFinite(b.Low, b.High) {
			from := middle * (1 + min(b.Low, b.High, 0)/reach)
			to := middle * (1 + max(b.Low, b.High, 0)/reach)
			parts = append(parts, rect("bar-of", from, y+barTop, to-from, barHeight))
		}
		parts = append(parts, line("axis", middle, y+barTop-2, middle, y+barTop+barHeight+2))
	}
	return rowsPicture("bars", title, len(bars), parts)
}

func rowsPicture(class, title string, rows int, parts []markup.HTML) markup.HTML {
	if rows == 0 {
		return markup.HTML{}
	}
	return picture(class, barsWidth, float64(rows)*rowHeight, title, parts...)
}
