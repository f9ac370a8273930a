package surface

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var strip = &Shape{
	Key: "strip", Name: "strip, length × girth",
	Dims:    []Dim{length("length", "length", "l"), length("girth", "girth, along the skin", "g"), girthIs},
	measure: of2(stripArea, stripEdge, "length", "girth"),
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				arc(10, 4.5, 5, 8.5, 90, 180), arc(24, 4.5, 5, 8.5, 90, 180), path(5, 4.5, 19, 4.5), path(10, 13, 24, 13),
			},
			Marks: []Mark{beside("length", 19, 4.5, 5, 4.5), along("girth", arc(10, 4.5, 6.2, 9.7, 90, 180), 3.9, 12.8)},
		}
	},
	round: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				arc(8, 6, 4, 7.5, 0, 180), arc(20, 4, 4, 7.5, 0, 180), path(4, 6, 16, 4), path(12, 6, 24, 4), path(8, 13.5, 20, 11.5),
			},
			Marks: []Mark{beside("length", 16, 4, 4, 6), along("girth", arc(8, 6, 5.2, 8.7, 0, 180), 8, 16.3)},
		}
	},
}

var pieces = &Shape{
	Key: "pieces", Name: "many small pieces",
	Dims: []Dim{count("pieces", "pieces", "N", maxCount), length("length", "length of one", "l"),
		length("width", "width of one", "w"), count("faces-each", "faces of each", "n", 6)},
	measure: func(in Input) (Measured, error) {
		many, l, w := in.Counts["pieces"], in.length("length"), in.length("width")
		return join(piecesArea.Figure(many, in.Counts["faces-each"], l, w))(piecesEdge.Figure(many, l, w))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				outline(3, 4, 13, 4, 13, 12, 3, 12),
				outline(17, 4, 20, 4, 20, 6.4, 17, 6.4), outline(21.5, 4, 24.5, 4, 24.5, 6.4, 21.5, 6.4),
				outline(17, 8, 20, 8, 20, 10.4, 17, 10.4), outline(21.5, 8, 24.5, 8, 24.5, 10.4, 21.5, 10.4),
			},
			Marks: []Mark{beside("length", 3, 12, 13, 12), beside("width", 13, 12, 13, 4), label("faces-each", 8, 8), label("pieces", 20.75, 12.5)},
		}
	},
}

var direct = &Shape{
	Key: "direct", Name: "measured directly",
	Dims: []Dim{
		{Key: AreaKey, Name: "area", Letter: "A", Kind: Area, Min: minArea, Max: maxArea},
		optional(Dim{Key: EdgeKey, Name: "edge, all round", Letter: "E", Kind: Length, Max: 10 * maxLength}),
	},
	measure: func(in Input) (Measured, error) {
		m := Measured{Area: in.Areas[AreaKey], Edge: in.length(EdgeKey)}
		if !in.has(EdgeKey) {
			m.Notes = []Note{NoEdge}
		}
		return m, nil
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{outline(4, 9, 8, 4, 15, 4, 21, 2.5, 24, 7, 22, 13, 13, 14, 7, 15)},
			Marks:   []Mark{label(AreaKey, 14, 9), along(EdgeKey, path(3.5, 7.9, 7.4, 3, 15, 3, 21.3, 1.4, 25.1, 6.9, 22.9, 13.9, 13.2, 15.1), 25.7, 11.2)},
		}
	},
}

var (
	stripArea = working.Of2("A = l × g", source.Geometry.At(""), source.Exact, areaResult("area of a strip"),
		[]working.Arg{arg("l", "length"), arg("g", "girth")}, product)
	stripEdge = working.Of2("E = 2 × (l + g)", source.Geometry.At(""), source.Exact, edgeResult("edge of a strip"),
		[]working.Arg{arg("l", "length"), arg("g", "girth")}, aroundRectangle)

	piecesArea = working.Of4("A = N × n × l × w", source.Geometry.At(""), source.Exact, areaResult("area of the pieces"),
		[]working.Arg{countArg, working.In("n", "faces of each", unit.InPure, 1, 6), arg("l", "length of one"), arg("w", "width of one")},
		func(many, faces unit.Factor, l, w unit.Length) unit.Area {
			return unit.Area(many*faces) * product(l, w)
		})

	// piecesEdge counts a piece's edge once, however many of its faces are
	// coated, as Total does for both sides of a panel.
	piecesEdge = working.Of3("E = N × 2 × (l + w)", source.Geometry.At(""), source.Exact, edgeResult("edges of the pieces"),
		[]working.Arg{countArg, arg("l", "length of one"), arg("w", "width of one")},
		func(many unit.Factor, l, w unit.Length) unit.Length { return unit.Length(many) * aroundRectangle(l, w) })
)
