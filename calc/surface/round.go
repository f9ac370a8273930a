package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var tube = &Shape{
	Key: "tube", Name: "tube, round the side",
	Dims: []Dim{length("diameter", "diameter", "d"), length("length", "length", "l")},
	measure: func(in Input) (Measured, error) {
		d := in.length("diameter")
		return join(tubeArea.Figure(d, in.length("length")))(tubeEdge.Figure(d))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				oval(5, 8, 2, 5), path(5, 3, 21, 3), path(5, 13, 21, 13),
				arc(21, 8, 2, 5, -90, 90), hidden(arc(21, 8, 2, 5, 90, 270)),
			},
			Marks: []Mark{beside("length", 5, 13, 21, 13), beside("diameter", 23, 13, 23, 3)},
		}
	},
}

var frustum = &Shape{
	Key: "frustum", Name: "cone, whole or cut off",
	Dims: []Dim{length("large", "diameter at the large end", "D"),
		lengthOrZero("small", "diameter at the small end, 0 for a point", "d"), length("height", "height", "h")},
	measure: func(in Input) (Measured, error) {
		large, small := in.length("large"), in.length("small")
		s, err := slant.Figure(large, small, in.length("height"))
		if err != nil {
			return Measured{}, err
		}
		return join(frustumArea.Figure(large, small, s))(frustumEdge.Figure(large, small))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				oval(13, 4.6, 4, 1), path(5, 13, 9, 4.6), path(21, 13, 17, 4.6),
				arc(13, 13, 8, 1.6, 0, 180), hidden(arc(13, 13, 8, 1.6, 180, 360)),
				hidden(path(17, 4.6, 23, 4.6)), hidden(path(21, 13, 23, 13)),
			},
			Marks: []Mark{beside("large", 5, 14.6, 21, 14.6), beside("small", 17, 3.6, 9, 3.6), beside("height", 22, 13, 22, 4.6)},
		}
	},
}

var sphericalCap = &Shape{
	Key: "cap", Name: "dome, part of a ball",
	Dims: []Dim{length("diameter", "diameter of its rim", "d"), length("height", "height", "h")},
	measure: func(in Input) (Measured, error) {
		d := in.length("diameter")
		return join(capArea.Figure(d, in.length("height")))(circleEdge.Figure(d))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{
				arc(14, 12, 9, 9, 180, 360), arc(14, 12, 9, 2, 0, 180), hidden(arc(14, 12, 9, 2, 180, 360)),
			},
			Marks: []Mark{beside("diameter", 5, 14, 23, 14), across("height", 14, 12, 14, 3)},
		}
	},
}

var (
	tubeArea = working.Of2("A = π × d × l", source.Geometry.At(""), source.Exact, areaResult("area of a tube"),
		[]working.Arg{arg("d", "diameter"), arg("l", "length")},
		func(d, l unit.Length) unit.Area { return math.Pi * product(d, l) })
	tubeEdge = working.Of1("E = 2 × π × d", source.Geometry.At(""), source.Exact, edgeResult("both ends of a tube"),
		[]working.Arg{arg("d", "diameter")},
		func(d unit.Length) unit.Length { return 2 * math.Pi * d })

	slant = working.Of3("s = √(h² + (D − d)² ÷ 4)", source.Geometry.At(""), source.Exact,
		working.In("s", "slant of a cone", unit.InMetre, minLength, 2*maxLength),
		[]working.Arg{arg("D", "diameter at the large end"), argOrZero("d", "diameter at the small end"), arg("h", "height")},
		func(large, small, h unit.Length) unit.Length { return hypot(h, (large-small)/2) })
	frustumArea = working.Of3("A = π × (D + d) ÷ 2 × s", source.Geometry.At(""), source.Exact, areaResult("area of a cone's side"),
		[]working.Arg{arg("D", "diameter at the large end"), argOrZero("d", "diameter at the small end"),
			working.In("s", "slant", unit.InMetre, minLength, 2*maxLength)},
		func(large, small, s unit.Length) unit.Area { return math.Pi * product((large+small)/2, s) })
	frustumEdge = working.Of2("E = π × (D + d)", source.Geometry.At(""), source.Exact, edgeResult("both ends of a cone"),
		[]working.Arg{arg("D", "diameter at the large end"), argOrZero("d", "diameter at the small end")},
		func(large, small unit.Length) unit.Length { return math.Pi * (large + small) })

	capArea = working.Of2("A = π × (d² ÷ 4 + h²)", source.Geometry.At(""), source.Exact, areaResult("area of a dome"),
		[]working.Arg{arg("d", "diameter of the rim"), arg("h", "height")},
		func(d, h unit.Length) unit.Area { return math.Pi * (product(d, d)/4 + product(h, h)) })
)
