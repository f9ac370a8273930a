package draw

import (
	"shedreckoner/wasm/markup"
)

// Stuff is what a layer of a build-up is made of: each has its own pattern.
type Stuff int

// The kinds of stuff.
const (
	Ground Stuff = iota
	Filling
	GelCoatFilm
	FlowCoatFilm
	PrimerFilm
	TopcoatFilm
	Sanded   // film taken
	Polished // a thin film taken
	Washed
)

// Swatch is one layer of a build-up as it appears in its list: the list is its
// drawing.
type Swatch struct {
	Stuff  Stuff
	Height float64 // of its place in the list, in units of about a CSS pixel
	Film   float64 // to the list's scale, at the foot of its place; 0: it fills it
	Broken bool    // drawn shorter than its scale: the break is shown
	Least  float64 // of a film: the share of its height that must be left; 0: none
}

const (
	swatchWidth = 88.
	hairline    = 2. // anything thinner is drawn this thick
)

// Layer draws the swatch. What it stands for is said beside it.
func (s Swatch) Layer() markup.HTML {
	w, h := swatchWidth, s.Height
	if !isFinite(h) || h <= 0 {
		h = 1
	}
	film := h
	if isFinite(s.Film) && s.Film > 0 {
		film = max(hairline, min(s.Film, h))
	}
	parts := []markup.HTML{part(0, h-film, w, film, s.Stuff.fill(w, film)...)}
	if s.Broken {
		parts = append(parts, zigzag(w, h-film/2))
	}
	if s.Least > 0 && s.Least < 1 {
		y := h - film*s.Least
		parts = append(parts, line("least", 0, y, w, y))
	}
	return swatch(h, parts)
}

// Ends is what is left of a film at the end, side by side to the scale of the
// layers below: its mean, its thin side, its edges.
type Ends struct {
	Stuff Stuff
	Films []float64 // from left to right
	Least float64   // across them; 0: none is known
}

// Layer draws the films with the least line over them. What lies under the least
// has an outline.
func (e Ends) Layer() markup.HTML {
	const gap, room = 4., 8.
	if !isFinite(e.Least) {
		e.Least = 0
	}
	h := max(e.Least, 0)
	for _, f := range e.Films {
		if isFinite(f) {
			h = max(h, f)
		}
	}
	h = max(min(h, 4*swatchWidth), hairline) + room
	wide := (swatchWidth - gap*float64(len(e.Films)+1)) / float64(max(len(e.Films), 1))
	var parts []markup.HTML
	for i, f := range e.Films {
		if !isFinite(f) || f <= 0 {
			continue
		}
		x, film := gap+(wide+gap)*float64(i), max(min(f, h), hairline)
		parts = append(parts, part(x, h-film, wide, film, e.Stuff.fill(wide, film)...))
		outline := "edge-of"
		if f < e.Least {
			outline = "short"
		}
		parts = append(parts, rect(outline, x, h-film, wide, film))
	}
	if e.Least > 0 && e.Least < h {
		parts = append(parts, line("least", 0, h-e.Least, swatchWidth, h-e.Least))
	}
	return swatch(h, parts)
}

func swatch(h float64, parts []markup.HTML) markup.HTML {
	return el("svg", at("class", "picture swatch", "aria-hidden", "true", "viewBox", "0 0 "+num(swatchWidth)+" "+num(h)), parts...)
}

// part is a piece of a picture with its own origin, cut off at its edges.
func part(x, y, w, h float64, parts ...markup.HTML) markup.HTML {
	return el("svg", at("x", num(x), "y", num(y), "width", num(w), "height", num(h)), parts...)
}

func (s Stuff) fill(w, h float64) []markup.HTML {
	whole := func(class string) markup.HTML { return rect(class, 0, 0, w, h) }
	switch s {
	case Ground:
		return []markup.HTML{whole("tone1"), hatch(0, 0, w, h, 12)}
	case Filling:
		return []markup.HTML{whole("filler"), dots(0, 0, w, h, 12)}
	case GelCoatFilm:
		return []markup.HTML{whole("wetfilm")}
	case FlowCoatFilm:
		return []markup.HTML{whole("wetfilm"), stripes(0, 0, w, h, 14)}
	case PrimerFilm:
		return []markup.HTML{whole("tone3"), courses(w, h, 10)}
	case TopcoatFilm:
		return []markup.HTML{whole("tone2"), stripes(0, 0, w, h, 10), courses(w, h, 10)}
	case Sanded:
		return []markup.HTML{whole("tone0"), path("off", slants(0, 0, w, h, 10))}
	case Polished:
		return []markup.HTML{whole("tone0"), path("off", slants(0, 0, w, h, 4))}
	}
	return []markup.HTML{whole("tone0"), line("dashed", 0, h-1, w, h-1)}
}

// zigzag is the break of a drawing that is shorter than its scale.
func zigzag(w, y float64) markup.HTML {
	d := "M0 " + num(y)
	for i := 1; i <= 8; i++ {
		dy := 5.
		if i%2 == 0 {
			dy = -5
		}
		d += "L" + num(w*float64(i)/8) + " " + num(y+dy)
	}
	return path("break", d)
}
