package draw

import (
	"shedreckoner/wasm/markup"
)

// Stuff is what a layer of a build-up is made of: each has its own pattern.
type Stuff int

// The stuffs.
const (
	Ground Stuff = iota
	Filling
	GelCoatFilm
	FlowCoatFilm
	PrimerFilm
	TopcoatFilm
	Sanded   // film taken
	Polished // a thin film taken, gloss on top
	Washed
)

// Swatch is one layer of a build-up as it lies in its list: the list is its
// drawing.
type Swatch struct {
	Stuff  Stuff
	Height float64 // of the layer, in units of about a CSS pixel
	Broken bool    // drawn shorter than its scale: the break is shown
	Least  float64 // of a film: the share of its height that must be left; 0: none
}

const swatchWidth = 88

// Layer draws the swatch. What it stands for is said beside it.
func (s Swatch) Layer() markup.HTML {
	w, h := float64(swatchWidth), s.Height
	if !isFinite(h) || h <= 0 {
		h = 1
	}
	parts := s.fill(w, h)
	if s.Broken {
		parts = append(parts, zigzag(w, h/2))
	}
	if s.Least > 0 && s.Least < 1 {
		y := h * (1 - s.Least)
		parts = append(parts, line("least", 0, y, w, y))
	}
	return el("svg", at("class", "picture swatch", "aria-hidden", "true", "preserveAspectRatio", "none",
		"viewBox", "0 0 "+num(w)+" "+num(h), "height", num(h)), parts...)
}

func (s Swatch) fill(w, h float64) []markup.HTML {
	whole := func(class string) markup.HTML { return rect(class, 0, 0, w, h) }
	switch s.Stuff {
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
		return []markup.HTML{whole("tone4")}
	case Sanded:
		return []markup.HTML{whole("tone0"), path("off", slants(0, 0, w, h, 10))}
	case Polished:
		return []markup.HTML{whole("tone0"), rect("tone4", 0, h-6, w, 6)}
	}
	return []markup.HTML{whole("tone0"), line("dashed", 0, h/2, w, h/2)}
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
