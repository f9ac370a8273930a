package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var rectangle = &Shape{
	Key: "rectangle", Name: "rectangle",
	Dims: []Dim{{Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength}, {Key: "width", Name: "width", Letter: "w", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		l, w := in.length("length"), in.length("width")
		return join(rectangleArea.Figure(l, w))(rectangleEdge.Figure(l, w))
	},
	usual: []float64{20, 11},
	sketch: func(z sizes) Sketch {
		l, w := z.lengths[0], z.lengths[1]
		x, y, k, isOff := belowRight.place(&l, &w)
		l, w = x+k*l, y+k*w
		return Sketch{
			Strokes:  []Stroke{outline(x, y, l, y, l, w, x, w)},
			Marks:    []Mark{dimension("length", lineOff, x, w, l, w), dimension("width", lineOff, l, w, l, y)},
			OffScale: isOff,
		}
	},
}

var triangle = &Shape{
	Key: "triangle", Name: "triangle, base × height",
	Dims: []Dim{{Key: "base", Name: "base", Letter: "b", Min: minLength, Max: maxLength}, {Key: "height", Name: "height", Letter: "h", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		b, h := in.length("base"), in.length("height")
		return withNote(EdgeAtLeast)(join(triangleArea.Figure(b, h))(triangleEdge.Figure(b, h)))
	},
	usual: []float64{20, 12},
	sketch: func(z sizes) Sketch {
		b, h := z.lengths[0], z.lengths[1]
		x, y, k, isOff := belowRight.place(&b, &h)
		b, h = k*b, k*h
		top, foot := x+0.6*b, y+h
		mark, guides := within("height", top, foot, y, 0.4*b, 0, x+b)
		return Sketch{
			Strokes:  append([]Stroke{outline(x, foot, x+b, foot, top, y)}, guides...),
			Marks:    []Mark{dimension("base", lineOff, x, foot, x+b, foot), mark},
			OffScale: isOff,
		}
	},
}

var trapezium = &Shape{
	Key: "trapezium", Name: "trapezium",
	Dims: []Dim{{Key: "long-side", Name: "long side", Letter: "a", Min: minLength, Max: maxLength}, {Key: "short-side", Name: "side across from it", Letter: "b", Min: minLength, Max: maxLength},
		{Key: "height", Name: "height between them", Letter: "h", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		a, b, h := in.length("long-side"), in.length("short-side"), in.length("height")
		return withNote(EdgeAtLeast)(join(trapeziumArea.Figure(a, b, h))(trapeziumEdge.Figure(a, b, h)))
	},
	usual: []float64{20, 9, 9.5},
	sketch: func(z sizes) Sketch {
		a, b, h := z.lengths[0], z.lengths[1], z.lengths[2]
		wide := max(a, b)
		x, y, k, isOff := aboveBelowRight.place(&wide, &h)
		middle, foot := x+k*wide/2, y+k*h
		a, b = k*a/2, k*b/2
		mark, guides := within("height", middle, foot, y, a, b, middle+k*wide/2)
		return Sketch{
			Strokes: append([]Stroke{outline(middle-a, foot, middle+a, foot, middle+b, y, middle-b, y)}, guides...),
			Marks: []Mark{dimension("long-side", lineOff, middle-max(a, least), foot, middle+max(a, least), foot),
				dimension("short-side", lineOff, middle+max(b, least), y, middle-max(b, least), y), mark},
			OffScale: isOff,
		}
	},
}

var circle = &Shape{
	Key: "circle", Name: "circle",
	Dims: []Dim{{Key: "diameter", Name: "diameter", Letter: "d", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		d := in.length("diameter")
		return join(circleArea.Figure(d))(circleEdge.Figure(d))
	},
	usual: []float64{1},
	sketch: func(sizes) Sketch {
		return Sketch{
			Strokes: []Stroke{oval(14, 9, 8, 8)},
			Marks:   []Mark{dimension("diameter", 0, 6, 9, 22, 9)},
		}
	},
}

var ellipse = &Shape{
	Key: "ellipse", Name: "ellipse",
	Dims: []Dim{{Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength}, {Key: "width", Name: "width", Letter: "w", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		l, w := in.length("length"), in.length("width")
		flat, err := ellipseFlatness.Figure(l, w)
		if err != nil {
			return Measured{}, err
		}
		return join(ellipseArea.Figure(l, w))(ellipseEdge.Figure(l, w, flat))
	},
	usual: []float64{20, 12},
	sketch: func(z sizes) Sketch {
		l, w := z.lengths[0], z.lengths[1]
		x, y, k, isOff := belowRight.place(&l, &w)
		l, w = k*l, k*w
		return Sketch{
			Strokes:  []Stroke{oval(x+l/2, y+w/2, l/2, w/2)},
			Marks:    []Mark{dimension("length", lineOff, x, y+w, x+l, y+w), dimension("width", lineOff, x+l, y+w, x+l, y)},
			OffScale: isOff,
		}
	},
}

var ring = &Shape{
	Key: "ring", Name: "ring",
	Dims: []Dim{{Key: "outer", Name: "outer diameter", Letter: "D", Min: minLength, Max: maxLength}, {Key: "inner", Name: "inner diameter", Letter: "d", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		outer, inner := in.length("outer"), in.length("inner")
		if inner.Value >= outer.Value {
			return Measured{}, limit("inner", TooLarge, float64(outer.Value))
		}
		return join(ringArea.Figure(outer, inner))(ringEdge.Figure(outer, inner))
	},
	usual: []float64{13, 7},
	sketch: func(z sizes) Sketch {
		const x, y, r = 14, 7.4, 6.4
		share := z.lengths[1] / z.lengths[0]
		drawn := max(0.08, min(share, 0.92))
		inner := r * drawn
		mark := dimension("inner", 0, x-inner, y, x+inner, y)
		if inner < 2.6 { // the letter stands in the ring, not in the hole
			mark.At = Point{x, y + inner + letterOff}
		}
		return Sketch{
			Strokes:  []Stroke{oval(x, y, r, r), oval(x, y, inner, inner)},
			Marks:    []Mark{dimension("outer", lineOff, x-r, y+r, x+r, y+r), mark},
			OffScale: drawn != share,
		}
	},
}

var (
	rectangleArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = l × w", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a rectangle", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: product}
	rectangleEdge = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = 2 × (l + w)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a rectangle", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: aroundRectangle}

	triangleArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = b × h ÷ 2", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a triangle", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "b", Meaning: "base", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(b, h unit.Length) unit.Area { return product(b, h) / 2 }}
	triangleEdge = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = b + 2 × √(h² + b² ÷ 4)", Source: source.Ref{Document: &source.Geometry, Place: "equal sides are the shortest"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a triangle, at least", Scale: unit.InMetre, Min: 0, Max: maxEdge}, Args: []working.Arg{{Symbol: "b", Meaning: "base", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(b, h unit.Length) unit.Length { return b + 2*hypot(h, b/2) }}

	trapeziumArea = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = (a + b) ÷ 2 × h", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a trapezium", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "a", Meaning: "long side", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "b", Meaning: "side across from it", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(a, b, h unit.Length) unit.Area { return product((a+b)/2, h) }}
	trapeziumEdge = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = a + b + 2 × √(h² + (a − b)² ÷ 4)", Source: source.Ref{Document: &source.Geometry, Place: "equal slants are the shortest"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a trapezium, at least", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "a", Meaning: "long side", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "b", Meaning: "side across from it", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(a, b, h unit.Length) unit.Length { return a + b + 2*hypot(h, (a-b)/2) }}

	circleArea = working.Rule1[unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × d² ÷ 4", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a circle", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "d", Meaning: "diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(d unit.Length) unit.Area { return math.Pi * product(d, d) / 4 }}
	circleEdge = working.Rule1[unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = π × d", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "way round a circle", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "d", Meaning: "diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(d unit.Length) unit.Length { return math.Pi * d }}

	ellipseArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × l × w ÷ 4", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of an ellipse", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(l, w unit.Length) unit.Area { return math.Pi * product(l, w) / 4 }}
	ellipseFlatness = working.Rule2[unit.Length, unit.Length, unit.Factor]{Rule: &working.Rule{Formula: "q = ((l − w) ÷ (l + w))²", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "q", Meaning: "flatness of an ellipse", Scale: unit.InPure, Min: 0, Max: 1},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(l, w unit.Length) unit.Factor { r := unit.Factor((l - w) / (l + w)); return r * r }}

	// ellipseEdge is Ramanujan's second approximation. It is never long, and
	// short by at most 0.04 %, which it reaches for a sliver.
	ellipseEdge = working.Rule3[unit.Length, unit.Length, unit.Factor, unit.Length]{Rule: &working.Rule{Formula: "E = π × (l + w) ÷ 2 × (1 + 3 × q ÷ (10 + √(4 − 3 × q)))",
		Source: source.Ref{Document: &source.Ramanujan, Place: "the approximation for the ellipse's perimeter"}, Mark: source.FromMemory,
		Result: working.Arg{Symbol: "E", Meaning: "way round an ellipse", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "q", Meaning: "flatness", Scale: unit.InPure, Min: 0, Max: 1}}},
		Code: func(l, w unit.Length, q unit.Factor) unit.Length {
			return math.Pi * (l + w) / 2 * unit.Length(1+3*q/(10+unit.Factor(math.Sqrt(float64(4-3*q)))))
		}}

	ringArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × (D² − d²) ÷ 4", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a ring", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "D", Meaning: "outer diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "d", Meaning: "inner diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(outer, inner unit.Length) unit.Area { return math.Pi * product(outer-inner, outer+inner) / 4 }}
	ringEdge = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = π × (D + d)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "both edges of a ring", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "D", Meaning: "outer diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "d", Meaning: "inner diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(outer, inner unit.Length) unit.Length { return math.Pi * (outer + inner) }}
)

func product(a, b unit.Length) unit.Area { return unit.Area(a) * unit.Area(b) }

func aroundRectangle(l, w unit.Length) unit.Length { return 2 * (l + w) }

func hypot(a, b unit.Length) unit.Length { return unit.Length(math.Hypot(float64(a), float64(b))) }
