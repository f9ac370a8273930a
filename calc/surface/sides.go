package surface

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var threeSides = &Shape{
	Key: "three-sides", Name: "triangle, three sides",
	Dims:    []Dim{length("a", "first side", "a"), length("b", "second side", "b"), length("c", "third side", "c")},
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
	sideArgs = []working.Arg{arg("a", "first side"), arg("b", "second side"), arg("c", "third side")}

	perimeterOfThree = working.Of3("E = a + b + c", source.Geometry.At(""), source.Exact, edgeResult("edge of a triangle"), sideArgs,
		func(a, b, c unit.Length) unit.Length { return a + b + c })
	halfPerimeter = working.Of1("s = E ÷ 2", source.Geometry.At(""), source.Exact, half("s", "half the way round"),
		[]working.Arg{working.In("E", "way round", unit.InMetre, 3*minLength, 3*maxLength)},
		func(e unit.Length) unit.Length { return e / 2 })
	lessSide = working.Of2("r = s − x", source.Geometry.At(""), source.Exact, half("r", "half the way round less a side"),
		[]working.Arg{half("s", "half the way round"), arg("x", "side")},
		func(s, x unit.Length) unit.Length { return s - x })
	heron = working.Of4("A = √(s × r_a × r_b × r_c)", source.Geometry.At("Heron"), source.Exact, areaResult("area of a triangle"),
		[]working.Arg{half("s", "half the way round"), half("r_a", "less the first side"),
			half("r_b", "less the second side"), half("r_c", "less the third side")},
		func(s, ra, rb, rc unit.Length) unit.Area { return unit.Area(math.Sqrt(float64(s * ra * rb * rc))) })
)

func half(symbol, meaning string) working.Arg {
	return working.In(symbol, meaning, unit.InMetre, 0, 1.5*maxLength)
}

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
