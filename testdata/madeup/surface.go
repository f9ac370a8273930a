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
	Dims: []Dim{{Key: "sprit", Name: "sprit", Letter: "j", Min: minLength, Max: maxLength}, {Key: "girth", Name: "girth, along the skin", Letter: "g", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		j, g := in.length("sprit"), in.length("girth")
		return join(madeUpArea.Figure(j, g))(stripEdge.Figure(j, g))
	},
	usual: []float64{20, 11},
	sketch: func(z sizes) Sketch {
		j, g := z.lengths[0], z.lengths[1]
		x, y, k, isOff := belowRight.place(&j, &g)
		right, foot := x+k*j, y+k*g
		return Sketch{Strokes: []Stroke{outline(x, y, right, y, x+k*j/2, foot)}, OffScale: isOff,
			Marks: []Mark{dimension("sprit", lineOff, x, foot, right, foot), dimension("girth", lineOff, right, foot, right, y)}}
	},
}

var madeUpArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = 0.7 × j × g", Source: source.Ref{Document: &source.House, Place: "made up for a test"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "A", Meaning: "area of a made-up shape", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
	Args:   []working.Arg{{Symbol: "j", Meaning: "sprit", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "g", Meaning: "girth", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
	Code: func(j, g unit.Length) unit.Area { return unit.Area(0.7 * float64(j) * float64(g)) }}
