package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var tube = &Shape{
	Key: "tube", Name: "tube, round the side",
	Dims: []Dim{{Key: "diameter", Name: "diameter", Letter: "d", Min: minLength, Max: maxLength}, {Key: "length", Name: "length", Letter: "l", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		d := in.length("diameter")
		return join(tubeArea.Figure(d, in.length("length")))(tubeEdge.Figure(d))
	},
	usual: []float64{10, 16},
	sketch: func(z sizes) Sketch {
		d, l := z.lengths[0], z.lengths[1]
		isOff := thicken(&d, &l)
		const turned = 0.2 // of the diameter is half of what is seen of an end
		spanX, spanY := l+2*turned*d, d
		x, y, k, _ := belowRight.place(&spanX, &spanY)
		r, rx := k*d/2, turned*k*d
		near, far, middle := x+rx, x+rx+k*l, y+r
		return Sketch{
			Strokes: []Stroke{
				oval(near, middle, rx, r), path(near, y, far, y), path(near, y+2*r, far, y+2*r),
				arc(far, middle, rx, r, -90, 90), hidden(arc(far, middle, rx, r, 90, 270)),
			},
			Marks:    []Mark{dimension("length", lineOff, near, y+2*r, far, y+2*r), dimension("diameter", lineOff, far+rx, y+2*r, far+rx, y)},
			OffScale: isOff,
		}
	},
}

var frustum = &Shape{
	Key: "frustum", Name: "cone, whole or cut off",
	Dims: []Dim{{Key: "large", Name: "diameter at the large end", Letter: "D", Min: minLength, Max: maxLength},
		{Key: "small", Name: "diameter at the small end, 0 for a point", Letter: "d", Max: maxLength}, {Key: "height", Name: "height", Letter: "h", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		large, small := in.length("large"), in.length("small")
		s, err := slant.Figure(large, small, in.length("height"))
		if err != nil {
			return Measured{}, err
		}
		return join(frustumArea.Figure(large, small, s))(frustumEdge.Figure(large, small))
	},
	usual: []float64{16, 8, 8.4},
	sketch: func(z sizes) Sketch {
		large, small, h := z.lengths[0], z.lengths[1], z.lengths[2]
		wide := max(large, small)
		isOff := thicken(&wide, &h)
		const turned = 0.2 // of a diameter is what is seen of its end
		spanX, spanY := wide, h+turned/2*(large+small)
		x, y, k, _ := aboveBelowRight.place(&spanX, &spanY)
		middle, wide, large, small := x+k*wide/2, k*wide/2, k*large/2, k*small/2
		top := y + turned*small
		foot := top + k*h
		mark, guides := upright("height", middle+wide, middle+large, foot, middle+small, top)
		wayUp, wayDown := max(small, least), max(large, least)
		return Sketch{
			Strokes: append([]Stroke{
				oval(middle, top, small, turned*small), path(middle-large, foot, middle-small, top), path(middle+large, foot, middle+small, top),
				arc(middle, foot, large, turned*large, 0, 180), hidden(arc(middle, foot, large, turned*large, 180, 360)),
			}, guides...),
			Marks: []Mark{dimension("large", lineOff, middle-wayDown, foot+turned*large, middle+wayDown, foot+turned*large),
				dimension("small", lineOff, middle+wayUp, y, middle-wayUp, y), mark},
			OffScale: isOff,
		}
	},
}

var sphericalCap = &Shape{
	Key: "cap", Name: "dome, part of a ball",
	Dims: []Dim{{Key: "diameter", Name: "diameter of its rim", Letter: "d", Min: minLength, Max: maxLength}, {Key: "height", Name: "height", Letter: "h", Min: minLength, Max: maxLength}},
	measure: func(in Input) (Measured, error) {
		d := in.length("diameter")
		return join(capArea.Figure(d, in.length("height")))(circleEdge.Figure(d))
	},
	usual:  []float64{18, 9},
	sketch: sketchCap,
}

// sketchCap draws a dome from the side: a part of the ball that its rim and its
// height make, wider than its rim where it is more than half of that ball.
func sketchCap(z sizes) Sketch {
	d, h := z.lengths[0], z.lengths[1]
	isOff := thicken(&d, &h)
	ball := (d*d/4 + h*h) / (2 * h) // its radius
	wide := d
	if h > ball {
		wide = 2 * ball
	}
	const turned = 0.2 // of the rim's diameter is what is seen of it
	spanX, spanY := wide, h+turned/2*d
	x, y, k, _ := belowRight.place(&spanX, &spanY)
	middle, half, high, r := x+k*wide/2, k*d/2, k*h, k*ball
	rim := y + high
	from := math.Atan2(high-r, half) * 180 / math.Pi // of the rim's right end, seen from the ball's middle
	mark, guides := Mark{}, []Stroke(nil)
	if high > 2*turned*half+2.4 { // the letter stands clear of the rim
		mark = dimension("height", 0, middle, rim, middle, y)
	} else {
		mark, guides = upright("height", middle+k*wide/2, middle+half, rim, middle, y)
	}
	return Sketch{
		Strokes: append([]Stroke{
			arc(middle, y+r, r, r, 180-from, 360+from), arc(middle, rim, half, turned*half, 0, 180), hidden(arc(middle, rim, half, turned*half, 180, 360)),
		}, guides...),
		Marks:    []Mark{dimension("diameter", lineOff, middle-half, rim+turned*half, middle+half, rim+turned*half), mark},
		OffScale: isOff,
	}
}

var (
	tubeArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × d × l", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a tube", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "d", Meaning: "diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "l", Meaning: "length", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(d, l unit.Length) unit.Area { return math.Pi * product(d, l) }}
	tubeEdge = working.Rule1[unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = 2 × π × d", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "both ends of a tube", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "d", Meaning: "diameter", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(d unit.Length) unit.Length { return 2 * math.Pi * d }}

	slant = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "s = √(h² + (D − d)² ÷ 4)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "s", Meaning: "slant of a cone", Scale: unit.InMetre, Min: minLength, Max: 2 * maxLength},
		Args:   []working.Arg{{Symbol: "D", Meaning: "diameter at the large end", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "d", Meaning: "diameter at the small end", Scale: unit.InMetre, Min: 0, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(large, small, h unit.Length) unit.Length { return hypot(h, (large-small)/2) }}
	frustumArea = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × (D + d) ÷ 2 × s", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a cone's side", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args: []working.Arg{{Symbol: "D", Meaning: "diameter at the large end", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "d", Meaning: "diameter at the small end", Scale: unit.InMetre, Min: 0, Max: maxLength},
			{Symbol: "s", Meaning: "slant", Scale: unit.InMetre, Min: minLength, Max: 2 * maxLength}}},
		Code: func(large, small, s unit.Length) unit.Area { return math.Pi * product((large+small)/2, s) }}
	frustumEdge = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = π × (D + d)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "both ends of a cone", Scale: unit.InMetre, Min: 0, Max: maxEdge},
		Args:   []working.Arg{{Symbol: "D", Meaning: "diameter at the large end", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "d", Meaning: "diameter at the small end", Scale: unit.InMetre, Min: 0, Max: maxLength}}},
		Code: func(large, small unit.Length) unit.Length { return math.Pi * (large + small) }}

	capArea = working.Rule2[unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = π × (d² ÷ 4 + h²)", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a dome", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args:   []working.Arg{{Symbol: "d", Meaning: "diameter of the rim", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "h", Meaning: "height", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(d, h unit.Length) unit.Area { return math.Pi * (product(d, d)/4 + product(h, h)) }}
)
