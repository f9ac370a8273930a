package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var rectangle = &Shape{
	Key: "rectangle", Name: "rectangle",
	Dims:    []Dim{length("length", "length", "l"), length("width", "width", "w")},
	measure: of2(rectangleArea, rectangleEdge, "length", "width"),
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{outline(4, 2, 24, 2, 24, 13, 4, 13)},
			Marks:   []Mark{beside("length", 4, 13, 24, 13), beside("width", 24, 13, 24, 2)},
		}
	},
}

var triangle = &Shape{
	Key: "triangle", Name: "triangle, base × height",
	Dims:    []Dim{length("base", "base", "b"), length("height", "height", "h")},
	measure: noting(EdgeAtLeast, of2(triangleArea, triangleEdge, "base", "height")),
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{outline(4, 14, 24, 14, 16, 2)},
			Marks:   []Mark{beside("base", 4, 14, 24, 14), across("height", 16, 14, 16, 2)},
		}
	},
}

var trapezium = &Shape{
	Key: "trapezium", Name: "trapezium",
	Dims: []Dim{length("long-side", "long side", "a"), length("short-side", "side across from it", "b"),
		length("height", "height between them", "h")},
	measure: noting(EdgeAtLeast, of3(trapeziumArea, trapeziumEdge, "long-side", "short-side", "height")),
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{outline(3, 14, 25, 14, 20, 4, 9, 4)},
			Marks: []Mark{beside("long-side", 3, 14, 25, 14), beside("short-side", 20, 4, 9, 4),
				across("height", 13, 14, 13, 4)},
		}
	},
}

var circle = &Shape{
	Key: "circle", Name: "circle",
	Dims:    []Dim{length("diameter", "diameter", "d")},
	measure: of1(circleArea, circleEdge, "diameter"),
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{oval(14, 9, 7.5, 7.5)},
			Marks:   []Mark{across("diameter", 6.5, 9, 21.5, 9)},
		}
	},
}

var ellipse = &Shape{
	Key: "ellipse", Name: "ellipse",
	Dims: []Dim{length("length", "length", "l"), length("width", "width", "w")},
	measure: func(in Input) (Measured, error) {
		l, w := in.length("length"), in.length("width")
		flat, err := ellipseFlatness.Figure(l, w)
		if err != nil {
			return Measured{}, err
		}
		return join(ellipseArea.Figure(l, w))(ellipseEdge.Figure(l, w, flat))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{oval(13, 8, 10, 6)},
			Marks:   []Mark{beside("length", 3, 14, 23, 14), beside("width", 23, 14, 23, 2)},
		}
	},
}

var ring = &Shape{
	Key: "ring", Name: "ring",
	Dims: []Dim{length("outer", "outer diameter", "D"), length("inner", "inner diameter", "d")},
	measure: func(in Input) (Measured, error) {
		outer, inner := in.length("outer"), in.length("inner")
		if inner.Value >= outer.Value {
			return Measured{}, limit("inner", TooLarge, float64(outer.Value))
		}
		return join(ringArea.Figure(outer, inner))(ringEdge.Figure(outer, inner))
	},
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{oval(14, 8, 6.5, 6.5), oval(14, 8, 3.5, 3.5)},
			Marks:   []Mark{beside("outer", 7.5, 14.5, 20.5, 14.5), across("inner", 10.5, 8, 17.5, 8)},
		}
	},
}

var (
	rectangleArea = working.Of2("A = l × w", source.Geometry.At(""), source.Exact, areaResult("area of a rectangle"),
		[]working.Arg{arg("l", "length"), arg("w", "width")}, product)
	rectangleEdge = working.Of2("E = 2 × (l + w)", source.Geometry.At(""), source.Exact, edgeResult("edge of a rectangle"),
		[]working.Arg{arg("l", "length"), arg("w", "width")}, aroundRectangle)

	triangleArea = working.Of2("A = b × h ÷ 2", source.Geometry.At(""), source.Exact, areaResult("area of a triangle"),
		[]working.Arg{arg("b", "base"), arg("h", "height")},
		func(b, h unit.Length) unit.Area { return product(b, h) / 2 })
	triangleEdge = working.Of2("E = b + 2 × √(h² + b² ÷ 4)", source.Geometry.At("equal sides are the shortest"), source.Exact,
		edgeResult("edge of a triangle, at least"), []working.Arg{arg("b", "base"), arg("h", "height")},
		func(b, h unit.Length) unit.Length { return b + 2*hypot(h, b/2) })

	trapeziumArea = working.Of3("A = (a + b) ÷ 2 × h", source.Geometry.At(""), source.Exact, areaResult("area of a trapezium"),
		[]working.Arg{arg("a", "long side"), arg("b", "side across from it"), arg("h", "height")},
		func(a, b, h unit.Length) unit.Area { return product((a+b)/2, h) })
	trapeziumEdge = working.Of3("E = a + b + 2 × √(h² + (a − b)² ÷ 4)", source.Geometry.At("equal slants are the shortest"), source.Exact,
		edgeResult("edge of a trapezium, at least"),
		[]working.Arg{arg("a", "long side"), arg("b", "side across from it"), arg("h", "height")},
		func(a, b, h unit.Length) unit.Length { return a + b + 2*hypot(h, (a-b)/2) })

	circleArea = working.Of1("A = π × d² ÷ 4", source.Geometry.At(""), source.Exact, areaResult("area of a circle"),
		[]working.Arg{arg("d", "diameter")},
		func(d unit.Length) unit.Area { return math.Pi * product(d, d) / 4 })
	circleEdge = working.Of1("E = π × d", source.Geometry.At(""), source.Exact, edgeResult("way round a circle"),
		[]working.Arg{arg("d", "diameter")},
		func(d unit.Length) unit.Length { return math.Pi * d })

	ellipseArea = working.Of2("A = π × l × w ÷ 4", source.Geometry.At(""), source.Exact, areaResult("area of an ellipse"),
		[]working.Arg{arg("l", "length"), arg("w", "width")},
		func(l, w unit.Length) unit.Area { return math.Pi * product(l, w) / 4 })
	ellipseFlatness = working.Of2("q = ((l − w) ÷ (l + w))²", source.Geometry.At(""), source.Exact,
		working.In("q", "flatness of an ellipse", unit.InPure, 0, 1),
		[]working.Arg{arg("l", "length"), arg("w", "width")},
		func(l, w unit.Length) unit.Factor { r := unit.Factor((l - w) / (l + w)); return r * r })

	// ellipseEdge is Ramanujan's second approximation. It is never long, and
	// short by at most 0.04 %, which it reaches for a sliver.
	ellipseEdge = working.Of3("E = π × (l + w) ÷ 2 × (1 + 3 × q ÷ (10 + √(4 − 3 × q)))",
		source.Ramanujan.At("the approximation for the ellipse's perimeter"), source.FromMemory, edgeResult("way round an ellipse"),
		[]working.Arg{arg("l", "length"), arg("w", "width"), working.In("q", "flatness", unit.InPure, 0, 1)},
		func(l, w unit.Length, q unit.Factor) unit.Length {
			return math.Pi * (l + w) / 2 * unit.Length(1+3*q/(10+unit.Factor(math.Sqrt(float64(4-3*q)))))
		})

	ringArea = working.Of2("A = π × (D² − d²) ÷ 4", source.Geometry.At(""), source.Exact, areaResult("area of a ring"),
		[]working.Arg{arg("D", "outer diameter"), arg("d", "inner diameter")},
		func(outer, inner unit.Length) unit.Area { return math.Pi * product(outer-inner, outer+inner) / 4 })
	ringEdge = working.Of2("E = π × (D + d)", source.Geometry.At(""), source.Exact, edgeResult("both edges of a ring"),
		[]working.Arg{arg("D", "outer diameter"), arg("d", "inner diameter")},
		func(outer, inner unit.Length) unit.Length { return math.Pi * (outer + inner) })
)

func product(a, b unit.Length) unit.Area { return unit.Area(a) * unit.Area(b) }

func aroundRectangle(l, w unit.Length) unit.Length { return 2 * (l + w) }

func hypot(a, b unit.Length) unit.Length { return unit.Length(math.Hypot(float64(a), float64(b))) }
