package surface

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var box = &Shape{
	Key: "box", Name: "box",
	Dims: []Dim{
		{Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength},
		{Key: "width", Name: "width", Letter: "w", Min: minLength, Max: maxLength},
		{Key: "height", Name: "height", Letter: "h", Min: minLength, Max: maxLength},
		boxSide,
	},
	Faces:   boxFaces,
	measure: measureBox,
	usual:   []float64{14, 14, 9},
	sketch:  sketchBox,
}

// sketchBox draws a box from above its right front corner: what goes away from
// the eye is drawn half as long. A face too small for its name has none.
func sketchBox(z sizes) Sketch {
	l, w, h := z.lengths[0], z.lengths[1], z.lengths[2]
	isOff := thicken(&l, &w, &h)
	const awayX, awayY = 0.5 * 0.8, 0.5 * 0.6
	spanX, spanY := l+awayX*w, h+awayY*w
	x, y, k, _ := room{4.2, 1, 23.8, 13.8}.place(&spanX, &spanY)
	l, h = k*l, k*h
	dx, dy := k*awayX*w, k*awayY*w
	right, top, foot := x+l, y+dy, y+dy+h
	sketch := Sketch{
		Strokes: []Stroke{
			outline(x, top, right, top, right, foot, x, foot), path(x, top, x+dx, y, right+dx, y, right, top), path(right+dx, y, right+dx, foot-dy, right, foot),
			hidden(path(x+dx, y, x+dx, foot-dy, x, foot)), hidden(path(x+dx, foot-dy, right+dx, foot-dy)),
		},
		Marks:    []Mark{dimension("length", lineOff, x, foot, right, foot), dimension("width", lineOff, right, foot, right+dx, foot-dy), dimension("height", lineOff, x, top, x, foot)},
		OffScale: isOff,
	}
	name := func(face string, x, y, wide, high float64) {
		const letter, line = 1., 1.9
		if wide > letter*float64(len(face)) && high > line {
			sketch.Marks = append(sketch.Marks, label(face, x, y))
		}
	}
	clear := (top + foot - dy) / 2                                     // between the upper edge and the hidden one
	name("top", x+(l+dx)/2, y+dy/2, min(l-dx, l-2.4), min(dy, 2*h-dy)) // its ends lean, and the edge behind goes through it
	name("front", x+(l+dx)/2, clear, l-dx, h-dy)
	if dx < l {
		name("right", right+dx/2, clear, dx, h-dy)
	}
	return sketch
}

var boxFaces = []Option{{"top", "top"}, {"bottom", "bottom"}, {"front", "front"}, {"back", "back"}, {"left", "left"}, {"right", "right"}}

var boxSide = Dim{Key: SideKey, Name: "coated", Kind: Choice, Options: []Option{{"outside", "outside"}, {"inside", "inside"}}}

var (
	lengthTimesHeight = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = l × h", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a face", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: product}
	widthTimesHeight = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = w × h", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a face", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: product}

	boxArea = working.SumRule("area of the chosen faces", unit.InSquareMetre)
	boxEdge = &working.Rule{Formula: "the edges at which a chosen face ends, added up; outside, the corners between two chosen faces too",
		Source: source.Ref{Document: &source.House}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a box", Scale: unit.InMetre, Min: 0, Max: maxEdge}, IsProse: true}
)

// boxEdges are the twelve edges: the dim that is the edge's length, and the two
// faces that meet in it.
var boxEdges = []struct{ dim, one, other string }{
	{"length", "top", "front"}, {"length", "top", "back"}, {"length", "bottom", "front"}, {"length", "bottom", "back"},
	{"width", "top", "left"}, {"width", "top", "right"}, {"width", "bottom", "left"}, {"width", "bottom", "right"},
	{"height", "front", "left"}, {"height", "front", "right"}, {"height", "back", "left"}, {"height", "back", "right"},
}

// measureBox takes the measures as those of the side that is coated. Outside,
// a corner between two chosen faces is an edge that sanding goes through;
// inside it is a hollow, and only open rims count.
func measureBox(in Input) (Measured, error) {
	l, w, h := in.length("length"), in.length("width"), in.length("height")
	var faces []working.Figure[unit.Area]
	for _, f := range boxFaces {
		if !slices.Contains(in.Faces, f.Key) {
			continue
		}
		area, err := faceArea(f.Key, l, w, h)
		if err != nil {
			return Measured{}, err
		}
		faces = append(faces, area)
	}
	inside := in.chosen(boxSide) == "inside"
	var edge unit.Length
	for _, e := range boxEdges {
		one, other := slices.Contains(in.Faces, e.one), slices.Contains(in.Faces, e.other)
		if one != other || one && !inside {
			edge += in.length(e.dim).Value
		}
	}
	m := Measured{Area: sum(boxArea, faces), Edge: working.By(boxEdge, edge, l.Step, w.Step, h.Step)}
	if inside {
		m.Notes = []Note{CornersNotEdges}
	}
	return m, nil
}

func faceArea(face string, l, w, h working.Figure[unit.Length]) (working.Figure[unit.Area], error) {
	switch face {
	case "top", "bottom":
		return rectangleArea.Figure(l, w)
	case "front", "back":
		return lengthTimesHeight.Figure(l, h)
	}
	return widthTimesHeight.Figure(w, h)
}

// SideKey is the choice of which side of a box is coated.
const SideKey = "side"

// UsualFaces gives the faces of a box that are coated as a rule, by the answer
// to SideKey: outside all but the one it stands on, inside all but the open top.
func UsualFaces(side string) string {
	if side == "inside" {
		return "bottom front back left right"
	}
	return "top front back left right"
}
