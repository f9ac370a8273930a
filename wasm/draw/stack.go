package draw

import (
	"slices"
	"sort"
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
	stackWidth   = 280.
	stackBar     = 76. // width of the column of films
	takenBar     = 22. // width of what was taken, beside the column
	stackHeight  = 170.
	fillHeight   = 22.
	groundHeight = 20.
	leastHeight  = 3.
	labelLeft    = stackBar + takenBar + 22
)

// Stack draws a build-up to scale, the ground at the bottom: in the column what
// is left of every layer, beside it, hatched, what each sanding took, at the
// height where it was. Filler keeps one height, since it is many times thicker
// than any film.
func Stack(layers []Layer) markup.HTML {
	layers = slices.DeleteFunc(slices.Clone(layers), func(l Layer) bool { return !isFinite(l.Film) })
	s := &stacker{scale: stackScale(layers), tones: map[string]int{}}
	for _, l := range layers {
		s.put(l)
	}
	labels := s.labels()
	height := max(s.highest, float64(len(labels))*lineHeight) + groundHeight + 4
	parts := s.draw(height - groundHeight)
	parts = append(parts, ground(height)...)
	return picture("filmstack", stackWidth, height, stackTitle(layers), append(parts, s.place(labels, height)...)...)
}

func stackScale(layers []Layer) float64 {
	top, tallest := 0., 0.
	for _, l := range layers {
		if !l.IsFill {
			top = max(top+l.Film, 0)
			tallest = max(tallest, top)
		}
	}
	if tallest == 0 {
		return 0
	}
	return stackHeight / tallest
}

// slab is a layer in the picture, in units above the ground.
type slab struct {
	layer    Layer
	from, to float64
	isTaken  bool
}

func (b slab) mid() float64 { return (b.from + b.to) / 2 }

// stacker puts layers on from the ground up.
type stacker struct {
	scale   float64
	top     float64
	highest float64
	slabs   []slab
	tones   map[string]int // by material, in the order of their coming
}

func (s *stacker) put(l Layer) {
	switch {
	case l.IsFill:
		s.add(slab{layer: l, from: s.top, to: s.top + fillHeight})
	case l.Film < 0:
		s.take(l)
	default:
		if _, ok := s.tones[l.Name]; !ok {
			s.tones[l.Name] = len(s.tones) % 3
		}
		s.add(slab{layer: l, from: s.top, to: s.top + max(l.Film*s.scale, leastHeight)})
	}
}

func (s *stacker) add(b slab) {
	s.slabs = append(s.slabs, b)
	s.top = b.to
	s.highest = max(s.highest, b.to)
}

// take lowers the top; filler keeps its height, which says nothing of its
// thickness.
func (s *stacker) take(l Layer) {
	top := s.top
	s.top = max(top+l.Film*s.scale, 0)
	for i, b := range s.slabs {
		if !b.isTaken && b.to > s.top {
			if b.layer.IsFill {
				s.top = b.to
				continue
			}
			s.slabs[i].from, s.slabs[i].to = min(b.from, s.top), s.top
		}
	}
	from := min(s.top, top-leastHeight)
	s.slabs = append(s.slabs, slab{layer: l, from: max(from, 0), to: max(top, leastHeight), isTaken: true})
}

// draw draws the slabs above the line of the ground.
func (s *stacker) draw(base float64) []markup.HTML {
	var parts []markup.HTML
	for _, b := range s.slabs {
		y, high := base-b.to, b.to-b.from
		switch {
		case high <= 0: // all of it was sanded away again
		case b.isTaken:
			parts = append(parts, rect("taken", stackBar, y, takenBar, high), hatch(stackBar, y, takenBar, high, 5))
		case b.layer.IsFill:
			parts = append(parts, rect("filler", 0, y, stackBar, high), dots(0, y, stackBar, high, 8))
		default:
			parts = append(parts, coat(s.tones[b.layer.Name], y, high))
		}
	}
	return parts
}

// coat has a pattern of its own for each of three materials, then they repeat.
func coat(tone int, y, high float64) markup.HTML {
	switch tone {
	case 0:
		return markup.Join(rect("tone0", 0, y, stackBar, high), stripes(0, y, stackBar, high, 12))
	case 1:
		return rect("tone3", 0, y, stackBar, high)
	}
	return rect("tone4", 0, y, stackBar, high)
}

func ground(height float64) []markup.HTML {
	y := height - groundHeight
	return []markup.HTML{rect("ground", 0, y, stackBar, groundHeight), hatch(0, y, stackBar, groundHeight, 12)}
}

// label is some lines of text for a slab, its middle wanted at a height above
// the ground.
type label struct {
	class, text string
	want        float64
	edge        float64 // where the slab ends; 0 on a line that isn't the label's first
}

// labels is the lines of all labels, the lowest slab's last line first.
func (s *stacker) labels() []label {
	list := []label{{class: "aside", text: "ground", want: -groundHeight / 2, edge: stackBar}}
	slabs := slices.Clone(s.slabs)
	sort.SliceStable(slabs, func(i, j int) bool { return 2*(slabs[j].mid()-slabs[i].mid()) >= 1 })
	for _, b := range slabs {
		film, edge := b.layer.Text, stackBar
		if b.isTaken {
			film, edge = "− "+film, stackBar+takenBar
		}
		lines := wrapped(b.layer.Name, stackWidth-labelLeft, 2)
		slices.Reverse(lines)
		for _, text := range lines {
			list = append(list, label{class: "aside", text: text, want: b.mid()})
		}
		list = append(list, label{class: "strong", text: fitted(film, stackWidth-labelLeft), want: b.mid(), edge: edge})
	}
	return list
}

// place puts the lines of the labels at the side, none over another, each as
// near to its slab as the others let it, and a line from each label to its slab.
func (s *stacker) place(labels []label, height float64) []markup.HTML {
	base := height - groundHeight
	low := make([]float64, len(labels)) // the highest place that those above leave
	y := lineHeight / 2
	for i := len(labels) - 1; i >= 0; i-- {
		low[i] = y
		y += lineHeight
	}
	var parts []markup.HTML
	y = height + lineHeight/2
	for i, l := range labels {
		y = max(min(base-l.want, y-lineHeight, height-lineHeight/2), low[i])
		parts = append(parts, words(l.class, "start", l.text, labelLeft, y))
		if l.edge > 0 {
			parts = append(parts, line("leader", l.edge, base-l.want, labelLeft-4, y))
		}
	}
	return parts
}

func stackTitle(layers []Layer) string {
	var list []string
	for _, l := range layers {
		sign := ""
		if l.Film < 0 {
			sign = "takes "
		}
		list = append(list, l.Name+" "+sign+l.Text)
	}
	return "Build-up from the ground: " + strings.Join(list, ", ")
}
