package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var threeSides = &Shape{
	Key: "three-sides", Name: "triangle, three sides",
	Dims: []Dim{
		{Key: "a", Name: "first side", Letter: "a", Min: minLength, Max: maxLength},
		{Key: "b", Name: "second side", Letter: "b", Min: minLength, Max: maxLength},
		{Key: "c", Name: "third side", Letter: "c", Min: minLength, Max: maxLength},
	},
	measure: measureThreeSides,
	usual:   []float64{20, 14.4, 17},
	sketch:  sketchThreeSides,
}

// sketchThreeSides draws the longest side as the base, the others in the order
// in which they were measured.
func sketchThreeSides(z sizes) Sketch {
	keys := [3]string{"a", "b", "c"}
	sides := [3]float64{z.lengths[0], z.lengths[1], z.lengths[2]}
	for sides[0] < sides[1] || sides[0] < sides[2] {
		keys = [3]string{keys[1], keys[2], keys[0]}
		sides = [3]float64{sides[1], sides[2], sides[0]}
	}
	base, next, last := sides[0], sides[1], sides[2]
	foot := (base*base + last*last - next*next) / (2 * base)
	high := math.Sqrt(max(last*last-foot*foot, 0))
	x, y, k, isOff := room{4.2, 3.2, 23.8, 13.8}.place(&base, &high)
	right, top, low := x+k*base, x+k*foot, y+k*high
	return Sketch{
		Strokes:  []Stroke{outline(x, low, right, low, top, y)},
		Marks:    []Mark{dimension(keys[0], lineOff, x, low, right, low), dimension(keys[1], lineOff, right, low, top, y), dimension(keys[2], lineOff, top, y, x, low)},
		OffScale: isOff,
	}
}

var (
	sideArgs = []working.Arg{{Symbol: "a", Meaning: "first side", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "b", Meaning: "second side", Scale: unit.InMetre, Min: minLength, Max: maxLength}, {Symbol: "c", Meaning: "third side", Scale: unit.InMetre, Min: minLength, Max: maxLength}}

	perimeterOfThree = working.Rule3[unit.Length, unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "E = a + b + c", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
		Result: working.Arg{Symbol: "E", Meaning: "edge of a triangle", Scale: unit.InMetre, Min: 0, Max: maxEdge}, Args: sideArgs},
		Code: func(a, b, c unit.Length) unit.Length { return a + b + c }}
	halfPerimeter = working.Rule1[unit.Length, unit.Length]{Rule: &working.Rule{Formula: "s = E ÷ 2", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact, Result: working.Arg{Symbol: "s", Meaning: "half the way round", Scale: unit.InMetre, Max: mostHalf},
		Args: []working.Arg{{Symbol: "E", Meaning: "way round", Scale: unit.InMetre, Min: 3 * minLength, Max: 3 * maxLength}}},
		Code: func(e unit.Length) unit.Length { return e / 2 }}
	lessSide = working.Rule2[unit.Length, unit.Length, unit.Length]{Rule: &working.Rule{Formula: "r = s − x", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact, Result: working.Arg{Symbol: "r", Meaning: "half the way round less a side", Scale: unit.InMetre, Max: mostHalf},
		Args: []working.Arg{{Symbol: "s", Meaning: "half the way round", Scale: unit.InMetre, Max: mostHalf}, {Symbol: "x", Meaning: "side", Scale: unit.InMetre, Min: minLength, Max: maxLength}}},
		Code: func(s, x unit.Length) unit.Length { return s - x }}
	heron = working.Rule4[unit.Length, unit.Length, unit.Length, unit.Length, unit.Area]{Rule: &working.Rule{Formula: "A = √(s × r_a × r_b × r_c)", Source: source.Ref{Document: &source.Geometry, Place: "Heron"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "A", Meaning: "area of a triangle", Scale: unit.InSquareMetre, Min: minArea, Max: maxArea},
		Args: []working.Arg{{Symbol: "s", Meaning: "half the way round", Scale: unit.InMetre, Max: mostHalf}, {Symbol: "r_a", Meaning: "less the first side", Scale: unit.InMetre, Max: mostHalf},
			{Symbol: "r_b", Meaning: "less the second side", Scale: unit.InMetre, Max: mostHalf}, {Symbol: "r_c", Meaning: "less the third side", Scale: unit.InMetre, Max: mostHalf}}},
		Code: func(s, ra, rb, rc unit.Length) unit.Area { return unit.Area(math.Sqrt(float64(s * ra * rb * rc))) }}
)

// mostHalf is half the way round the largest triangle, in metres.
const mostHalf = 1.5 * maxLength

func measureThreeSides(in Input) (Measured, error) {
	sides := []working.Figure[unit.Length]{in.length("a"), in.length("b"), in.length("c")}
	if err := checkCloses(sides); err != nil {
		return Measured{}, err
	}
	edge, err := perimeterOfThree.Figure(sides[0], sides[1], sides[2])
	if err != nil {
		return Measured{}, err
	}
	s, err := halfPerimeter.Figure(edge)
	if err != nil {
		return Measured{}, err
	}
	var rest [3]working.Figure[unit.Length]
	for i, side := range sides {
		if rest[i], err = lessSide.Figure(s, side); err != nil {
			return Measured{}, err
		}
	}
	return join(heron.Figure(s, rest[0], rest[1], rest[2]))(edge, nil)
}

// checkCloses refuses three sides of which one is as long as the others together,
// but for the last bits of a conversion: no area is left.
func checkCloses(sides []working.Figure[unit.Length]) error {
	for i, key := range []string{"a", "b", "c"} {
		others := sides[(i+1)%3].Value + sides[(i+2)%3].Value
		if sides[i].Value >= others*(1-1e-12) {
			return limit(key, CantClose, float64(others))
		}
	}
	return nil
}
