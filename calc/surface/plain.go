package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var strip = &Shape{
	Key: "strip", Name: "strip, length × girth",
	Dims: []Dim{{Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength}, {Key: "girth", Name: "girth, along the skin", Letter: "g", Min: minLength, Max: maxLength}, girthIs},
	measure: func(in Input) (Measured, error) {
		l, g := in.length("length"), in.length("girth")
		return join(stripArea.Figure(l, g))(stripEdge.Figure(l, g))
	},
	usual: []float64{14, 11},
	sketch: func(z sizes) Sketch {
		l, g := z.lengths[0], z.lengths[1]
		isOff := thicken(&l, &g)
		bent := g / quarter(1, 1.7) // how far the girth goes in, as a quarter of an ellipse
		spanX, spanY := l+bent, 1.7*bent
		x, y, k, _ := room{4, 4, 25.5, 14.5}.place(&spanX, &spanY)
		l, rx, ry := k*l, k*bent, 1.7*k*bent
		off := math.Sqrt(0.5) * (lineOff + letterOff)
		return Sketch{
			Strokes: []Stroke{
				arc(x+rx, y, rx, ry, 90, 180), arc(x+rx+l, y, rx, ry, 90, 180), path(x, y, x+l, y), path(x+rx, y+ry, x+rx+l, y+ry),
			},
			Marks: []Mark{dimension("length", lineOff, x+l, y, x, y),
				along("girth", arc(x+rx, y, rx+lineOff, ry+lineOff, 90, 180), x+rx-rx*math.Sqrt(0.5)-off, y+ry*math.Sqrt(0.5)+off)},
			OffScale: isOff,
		}
	},
	round: func(z sizes) Sketch {
		l, g := z.lengths[0], z.lengths[1]
		isOff := thicken(&l, &g)
		deep := g / (2 * quarter(0.55, 1))   // the girth as half an ellipse
		const alongX, alongY = 0.9837, -0.18 // of the length, as it goes away from the eye
		spanX, spanY := alongX*l+1.1*deep, deep-alongY*l
		x, y, k, _ := room{4, 3.5, 25.5, 14}.place(&spanX, &spanY)
		rx, ry, dx, dy := 0.55*k*deep, k*deep, alongX*k*l, alongY*k*l
		y -= dy
		return Sketch{
			Strokes: []Stroke{
				arc(x+rx, y, rx, ry, 0, 180), arc(x+rx+dx, y+dy, rx, ry, 0, 180), path(x, y, x+dx, y+dy), path(x+2*rx, y, x+2*rx+dx, y+dy),
				path(x+rx, y+ry, x+rx+dx, y+ry+dy),
			},
			Marks: []Mark{dimension("length", lineOff, x+dx, y+dy, x, y),
				along("girth", arc(x+rx, y, rx+lineOff, ry+lineOff, 0, 180), x+rx, y+ry+lineOff+letterOff)},
			OffScale: isOff,
		}
	},
}

var pieces = &Shape{
	Key: "pieces", Name: "many small pieces",
	Dims: []Dim{{Key: "pieces", Name: "pieces", Letter: "N", Kind: Count, Min: 1, Max: maxCount}, {Key: "length", Name: "length of one", Letter: "l", Min: minLength, Max: maxLength},
		{Key: "width", Name: "width of one", Letter: "w", Min: minLength, Max: maxLength}, {Key: "faces-each", Name: "faces of each", Letter: "n", Kind: Count, Min: 1, Max: 6}},
	measure: func(in Input) (Measured, error) {
		many, l, w := in.Counts["pieces"], in.length("length"), in.length("width")
		return join(piecesArea.Figure(many, in.Counts["faces-each"], l, w))(piecesEdge.Figure(many, l, w))
	},
	usual: []float64{10, 8},
	sketch: func(z sizes) Sketch {
		l, w := z.lengths[0], z.lengths[1]
		x, y, k, isOff := room{2, 1.5, 12.5, 13.5}.place(&l, &w)
		l, w = k*l, k*w
		mark := label("faces-each", x+l/2, y+w/2)
		switch { // where it has no room inside
		case l < 2:
			mark.At.X = x - letterOff
		case w < 2.5:
			mark.At.Y = y - letterOff
		}
		sketch := Sketch{
			Strokes:  []Stroke{outline(x, y, x+l, y, x+l, y+w, x, y+w)},
			Marks:    []Mark{dimension("length", lineOff, x, y+w, x+l, y+w), dimension("width", lineOff, x+l, y+w, x+l, y), mark, label("pieces", 22, 13)},
			OffScale: isOff,
		}
		for _, left := range []float64{18, 22.5} {
			for _, top := range []float64{2, 6.8} {
				at := room{left, top, left + 3.5, top + 4}
				x, y, k, _ := at.place(&l, &w)
				sketch.Strokes = append(sketch.Strokes, outline(x, y, x+k*l, y, x+k*l, y+k*w, x, y+k*w))
			}
		}
		return sketch
	},
}

var direct = &Shape{
	Key: "direct", Name: "measured directly",
	Dims: []Dim{
		{Key: AreaKey, Name: "area", Letter: "A", Kind: Area, Min: minArea, Max: maxArea},
		{Key: EdgeKey, Name: "edge, all round", Letter: "E", Optional: true, Max: 10 * maxLength},
	},
	measure: func(in Input) (Measured, error) {
		m := Measured{Area: in.Areas[AreaKey], Edge: in.length(EdgeKey)}
		if !in.has(EdgeKey) {
			m.Notes = []Note{NoEdge}
		}
		return m, nil
	},
	sketch: func(sizes) Sketch {
		return Sketch{
			Strokes: []Stroke{outline(4, 9, 8, 4, 15, 4, 21, 2.5, 24, 7, 22, 13, 13, 14, 7, 15)},
			Marks:   []Mark{label(AreaKey, 14, 9), along(EdgeKey, path(3.5, 7.9, 7.4, 3, 15, 3, 21.3, 1.4, 25.1, 6.9, 22.9, 13.9, 13.2, 15.1), 26, 11.2)},
		}
	},
}

var (
	stripArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = l × g", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a strip", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "g", Meaning: "girth", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: product}
	stripEdge = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = 2 × (l + g)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a strip", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "g", Meaning: "girth", Scale: unit.InMetre, Min: minLength, Max: maxLength}}}, Code: aroundRectangle}

	piecesArea = working.Rule4[unit.Factor, unit.Factor, unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = N × n × l × w", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of the pieces", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{countArg, {Symbol: "n", Meaning: "faces of each", Scale: unit.InPure, Min: 1, Max: 6}, {Symbol: "l", Meaning: "length of one", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width of one", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(many, faces unit.Factor, l, w unit.Length) unit.Area {
			return unit.Area(many*faces) * product(l, w)
		}}

	// piecesEdge counts a piece's edge once, however many of its faces are
	// coated, as Total does for both sides of a panel.
	piecesEdge = working.Rule3[unit.Factor, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = N × 2 × (l + w)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edges of the pieces", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{countArg, {Symbol: "l", Meaning: "length of one", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "w", Meaning: "width of one", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(many unit.Factor, l, w unit.Length) unit.Length { return unit.Length(many) * aroundRectangle(l, w) }}
)
