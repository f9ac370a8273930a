package draw

import (
	"math"
	"strings"

	"shedreckoner/wasm/markup"
)

// hatch is slanted lines that fill a box, drawn out rather than as an SVG
// pattern: a pattern needs an id, and ids may not repeat on a page.
func hatch(x, y, width, height, gap float64) markup.HTML {
	return path("hatch", slants(x, y, width, height, gap))
}

func slants(x, y, width, height, gap float64) string {
	var b strings.Builder
	for offset := gap / 2; offset < width+height; offset += gap {
		x1, y1 := min(offset, width), max(offset-width, 0)
		x2, y2 := max(offset-height, 0), min(offset, height)
		b.WriteString("M" + num(x+x1) + " " + num(y+y1) + "L" + num(x+x2) + " " + num(y+y2))
	}
	return b.String()
}

// stripes is upright lines that fill a box.
func stripes(x, y, width, height, gap float64) markup.HTML {
	var b strings.Builder
	for offset := gap / 2; offset < width; offset += gap {
		b.WriteString("M" + num(x+offset) + " " + num(y) + "V" + num(y+height))
	}
	return path("hatch", b.String())
}

// dots is rows of dots, like balloons in a putty: lines without length, whose
// round ends show.
func dots(x, y, width, height, gap float64) markup.HTML {
	var b strings.Builder
	row := 0.
	for dy := gap / 2; dy < height; dy += gap {
		for dx := gap/2 + math.Mod(row, 2)*gap/2; dx < width; dx += gap {
			b.WriteString("M" + num(x+dx) + " " + num(y+dy) + "h0")
		}
		row++
	}
	return path("dots", b.String())
}

// courses is level lines over a box.
func courses(width, height, gap float64) markup.HTML {
	var b strings.Builder
	for y := gap / 2; y < height; y += gap {
		b.WriteString("M0 " + num(y) + "H" + num(width))
	}
	return path("hatch", b.String())
}
