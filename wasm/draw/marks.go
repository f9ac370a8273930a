package draw

import "shedreckoner/wasm/markup"

// flag is a mark with the place of its text: its row from the top, and the ends
// of the text, right or left of the line where there is room.
type flag struct {
	Mark
	x        float64
	row      int
	from, to float64
	anchor   string
}

const (
	flagGap   = 4. // between a mark's line and its text
	mostFlags = 4  // are tried in every order
)

// flags gives each mark a row and a side so that lines cross as few texts as
// possible.
func (f frame) flags(list []Mark) []flag {
	flags := make([]flag, len(list))
	for i, m := range list {
		x, _ := f.at(m.Point)
		m.Text = fitted(m.Text, plotWidth)
		flags[i] = flag{Mark: m, x: x, row: -1}
	}
	best, least := flags, -1
	var try func(row int)
	try = func(row int) {
		if row == len(flags) {
			if n := crossings(flags); least < 0 || n < least {
				best, least = append([]flag(nil), flags...), n
			}
			return
		}
		for i := range flags {
			if flags[i].row >= 0 {
				continue
			}
			for _, side := range sides(flags[i].x, textWidth(flags[i].Text)) {
				side.Mark, side.x, side.row = flags[i].Mark, flags[i].x, row
				flags[i] = side
				try(row + 1)
			}
			flags[i].row = -1
			if len(flags) > mostFlags {
				break
			}
		}
	}
	try(0)
	return best
}

// sides are where a text of a width may stand at a line: right, left, and across
// it where there is room on neither side.
func sides(x, width float64) (list []flag) {
	if from := x + flagGap; from+width <= plotWidth {
		list = append(list, flag{from: from, to: from + width, anchor: "start"})
	}
	if to := x - flagGap; to >= width {
		list = append(list, flag{from: to - width, to: to, anchor: "end"})
	}
	if list == nil {
		from := max(0, min(x-width/2, plotWidth-width))
		list = []flag{{from: from, to: from + width, anchor: "start"}}
	}
	return list
}

// crossings counts the texts that the line of a mark in a row above passes.
func crossings(flags []flag) (n int) {
	for _, above := range flags {
		for _, below := range flags {
			if above.row < below.row && below.from < above.x && above.x < below.to {
				n++
			}
		}
	}
	return n
}

// marks draws the lines first and the texts over them, a row each below the name
// of the upright axis.
func (f frame) marks(list []Mark) (parts []markup.HTML) {
	var texts []markup.HTML
	for _, m := range f.flags(list) {
		y, x := lineHeight*(float64(m.row)+1.5), m.from
		if m.anchor == "end" {
			x = m.to
		}
		parts = append(parts, line(m.Class, m.x, y-lineHeight/2+2, m.x, f.bottom), f.dot(m.Class, m.Point))
		texts = append(texts, words("strong haloed", m.anchor, m.Text, x, y))
	}
	return append(parts, texts...)
}

// entry is a line of the key below a plot: a sample and its name.
type entry struct{ class, name string }

// key draws the samples with their names, as many to a row as fit.
func (f frame) key(entries []entry) (parts []markup.HTML, rows int) {
	x, y := 0., f.height(0)+lineHeight/2-2
	for _, e := range entries {
		name := fitted(e.name, plotWidth-32)
		width := 32 + textWidth(name)
		if rows == 0 {
			rows = 1
		}
		if x > 0 && x+width > plotWidth {
			x, y, rows = 0, y+lineHeight, rows+1
		}
		parts = append(parts, sample(e.class, x, y), words("aside", "start", name, x+30, y))
		x += width + 10
	}
	return parts, rows
}

// sample is what stands in the key for what is drawn so.
func sample(class string, x, y float64) markup.HTML {
	switch first := class[:min(len(class), 3)]; first {
	case "dot":
		return circle(class[min(len(class), 4):], x+12, y)
	case "ban", "sha":
		return rect(class, x, y-5, 24, 10)
	case "cou":
		return rect(class, x, y-courseHeight/2, 24, courseHeight)
	}
	return line(class, x, y, x+24, y)
}
