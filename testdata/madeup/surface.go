package surface

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// madeUp is a shape that there isn't: it shows that one entry is all that a
// shape takes.
var madeUp = &Shape{
	Key: "made-up", Name: "made-up shape",
	Dims:    []Dim{length("sprit", "sprit", "j"), length("girth", "girth, along the skin", "g")},
	measure: of2(madeUpArea, stripEdge, "sprit", "girth"),
	sketch: func() Sketch {
		return Sketch{Strokes: []Stroke{outline(4, 2, 24, 2, 14, 13)}, Marks: []Mark{beside("sprit", 4, 13, 24, 13), beside("girth", 24, 13, 24, 2)}}
	},
}

var madeUpArea = working.Of2("A = 0.7 × j × g", source.House.At("made up for a test"), source.Assumption, areaResult("area of a made-up shape"),
	[]working.Arg{arg("j", "sprit"), arg("g", "girth")},
	func(j, g unit.Length) unit.Area { return unit.Area(0.7 * float64(j) * float64(g)) })
