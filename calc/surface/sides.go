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
	sketch: func() Sketch {
		return Sketch{
			Strokes: []Stroke{outline(4, 14, 24, 14, 16, 2)},
			Marks:   []Mark{beside("a", 4, 14, 24, 14), beside("b", 24, 14, 16, 2), beside("c", 16, 2, 4, 14)},
		}
	},
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
	if err := canClose(sides); err != nil {
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

// canClose refuses three sides of which one is as long as the others together.
// The last bits of a conversion count as closed up: no area is left.
func canClose(sides []working.Figure[unit.Length]) error {
	for i, key := range []string{"a", "b", "c"} {
		others := sides[(i+1)%3].Value + sides[(i+2)%3].Value
		if sides[i].Value >= others*(1-1e-12) {
			return limit(key, CantClose, float64(others))
		}
	}
	return nil
}
