// Package draw makes the page's pictures as SVG: sketches of shapes, films to
// scale, curves, a map of hollows. Pictures carry no style of their own:
// classes are dressed by the page's style sheet. What differs by tone differs
// by pattern or text too, and a number that isn't finite isn't drawn.
package draw

import (
	"math"
	"strconv"
	"strings"

	"shedreckoner/wasm/markup"
)

// Functions rather than variables: the compiler then knows that they keep no arguments.

func el(tag string, attrs []markup.Attr, kids ...markup.HTML) markup.HTML {
	return markup.El(tag, attrs, kids...)
}
func at(pairs ...string) []markup.Attr { return markup.A(pairs...) }

// The text of pictures, in units of the picture: about CSS pixels on a phone.
const (
	textSize   = 13.
	lineHeight = 16.
	// wideRune is the width of a character, in text sizes, in the widest of the
	// usual system fonts: room is left for that.
	wideRune = 0.62
)

// picture is an SVG with a title for those who don't see it.
func picture(class string, width, height float64, title string, parts ...markup.HTML) markup.HTML {
	return el("svg", at("class", "picture "+class, "role", "img", "viewBox", "0 0 "+num(width)+" "+num(height),
		"font-size", num(textSize), "aria-label", title), parts...)
}

// words puts text at a point, its middle at the height y. The anchor is start,
// middle or end.
func words(class, anchor, text string, x, y float64) markup.HTML {
	return el("text", at("class", class, "text-anchor", anchor, "x", num(x), "y", num(y), "dy", "0.35em"), markup.Text(text))
}

func rect(class string, x, y, width, height float64) markup.HTML {
	return el("rect", at("class", class, "x", num(x), "y", num(y), "width", num(max(width, 0)), "height", num(max(height, 0))))
}

func line(class string, x1, y1, x2, y2 float64) markup.HTML {
	return path(class, "M"+num(x1)+" "+num(y1)+"L"+num(x2)+" "+num(y2))
}

func path(class, d string) markup.HTML { return el("path", at("class", class, "d", d)) }

// num writes a coordinate, to a tenth.
func num(n float64) string { return strconv.FormatFloat(math.Round(n*10)/10, 'f', -1, 64) }

func isFinite(numbers ...float64) bool {
	for _, n := range numbers {
		if math.IsNaN(n) || math.IsInf(n, 0) {
			return false
		}
	}
	return true
}

// textWidth is the most that a text takes.
func textWidth(text string) float64 { return float64(len([]rune(text))) * wideRune * textSize }

// fitted cuts a text that is wider than the room for it.
func fitted(text string, width float64) string {
	runes, most := []rune(text), int(width/(wideRune*textSize))
	if len(runes) <= most {
		return text
	}
	return strings.TrimRight(string(runes[:max(most-1, 0)]), " ,;:-") + "…"
}

// wrapped breaks a text into lines that fit, and cuts what is left after the last.
func wrapped(text string, width float64, most int) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		last := len(lines) - 1
		switch {
		case last >= 0 && textWidth(lines[last]+" "+word) <= width, last == most-1:
			lines[last] += " " + word
		default:
			lines = append(lines, word)
		}
	}
	for i := range lines {
		lines[i] = fitted(lines[i], width)
	}
	return lines
}
