package surface

import (
	"slices"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var box = &Shape{
	Key: "box", Name: "box",
	Dims:    []Dim{length("length", "length", "l"), length("width", "width", "w"), length("height", "height", "h"), boxSide},
	Faces:   boxFaces,
	measure: measureBox,
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				outline(4, 6, 18, 6, 18, 15, 4, 15), path(4, 6, 9, 2, 23, 2, 18, 6), path(23, 2, 23, 11, 18, 15),
				hidden(path(9, 2, 9, 11, 4, 15)), hidden(path(9, 11, 23, 11)),
			},
			Marks: []Mark{
				beside("length", 4, 15, 18, 15), beside("width", 18, 15, 23, 11), beside("height", 4, 6, 4, 15),
				label("top", 13.5, 4), label("front", 13.5, 8.5), label("right", 20.5, 7.8),
			},
		}
	},
}

var boxFaces = []Option{{"top", "top"}, {"bottom", "bottom"}, {"front", "front"}, {"back", "back"}, {"left", "left"}, {"right", "right"}}

var boxSide = choice(SideKey, "coated", Option{"outside", "outside"}, Option{"inside", "inside"})

var (
	lengthTimesHeight = working.Of2("A = l × h", source.Geometry.At(""), source.Exact, areaResult("area of a face"),
		[]working.Arg{arg("l", "length"), arg("h", "height")}, product)
	widthTimesHeight = working.Of2("A = w × h", source.Geometry.At(""), source.Exact, areaResult("area of a face"),
		[]working.Arg{arg("w", "width"), arg("h", "height")}, product)

	boxArea = working.SumRule("area of the chosen faces", unit.InSquareMetre)
	boxEdge = working.Method("the edges at which a chosen face ends, added up; outside, the corners between two chosen faces too",
		source.House.At(""), source.Exact, edgeResult("edge of a box"))
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
