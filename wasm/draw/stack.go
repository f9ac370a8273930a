package draw

import (
	"strings"

	"shedreckoner/wasm/markup"
)

// Layer is one step of a build-up: film put on, or below zero film taken.
type Layer struct {
	Name   string
	Film   float64 // m
	Text   string
	IsFill bool // filler is not to the films' scale: it would hide them
}

const (
	stackWidth  = 320.
	stackBar    = 96.  // width of the films
	stackHeight = 170. // of all films together
	fillHeight  = 18.
	least       = 1.5
)

// Stack draws a build-up to scale, the ground at the bottom, with what each
// sanding takes as a hatched part at the top of what there was. Filler keeps
// one height, since it is many times thicker than any film.
func Stack(layers []Layer) markup.HTML {
	top, tallest := 0., 0.
	for _, l := range layers {
		if !l.IsFill {
			top += l.Film
			tallest = max(tallest, top)
		}
	}
	scale := 0.
	if tallest > 0 {
		scale = stackHeight / tallest
	}
	height := stackHeight + 50
	for _, l := range layers {
		if l.IsFill {
			height += fillHeight
		}
	}
	s := &stacker{y: height - 24, scale: scale, nextLabel: height}
	s.ground(height)
	for i, l := range layers {
		s.layer(i, l)
	}
	return picture("filmstack", stackWidth, height, stackTitle(layers), s.parts...)
}

// stacker draws from the ground up.
type stacker struct {
	y         float64 // top of what is drawn so far
	scale     float64
	nextLabel float64 // labels keep clear of the one below
	parts     []markup.HTML
}

func (s *stacker) ground(height float64) {
	s.parts = append(s.parts, el("rect", at("class", "ground", "x", "0", "y", num(height-24), "width", num(stackWidth), "height", "24")),
		el("text", at("class", "onground", "x", "8", "y", num(height-8)), markup.Text("ground")))
}

func (s *stacker) layer(i int, l Layer) {
	high := l.Film * s.scale
	class := "coat coat" + num(float64(i%3))
	switch {
	case l.IsFill:
		high, class = fillHeight, "filler"
	case l.Film < 0:
		high = max(-high, least)
		s.rect("taken", s.y, high)
		s.label("− "+l.Text+" "+strings.ToLower(l.Name), s.y+high/2)
		s.y += high
		return
	}
	high = max(high, least)
	s.y -= high
	s.rect(class, s.y, high)
	s.label(l.Text+" "+l.Name, s.y+high/2)
}

func (s *stacker) rect(class string, y, high float64) {
	s.parts = append(s.parts, el("rect", at("class", class, "x", "8", "y", num(y), "width", num(stackBar), "height", num(high))))
}

// labelHeight is the room that a label takes.
const labelHeight = 15.

func (s *stacker) label(text string, y float64) {
	y = min(y, s.nextLabel-labelHeight)
	s.nextLabel = y
	s.parts = append(s.parts, el("text", at("x", num(stackBar+20), "y", num(y), "dy", "0.35em"), markup.Text(text)))
}

func stackTitle(layers []Layer) string {
	var words []string
	for _, l := range layers {
		sign := ""
		if l.Film < 0 {
			sign = "takes "
		}
		words = append(words, l.Name+" "+sign+l.Text)
	}
	return "Build-up from the ground: " + strings.Join(words, ", ")
}
