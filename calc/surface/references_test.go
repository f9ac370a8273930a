package surface

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// Every shape against a reference library, and rules over ordinates and corners
// against books.
func TestPublishedShapes(t *testing.T) {
	ordinates := func(rules ...spacedRule) workingtest.Case {
		return workingtest.Case{Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) { return byOrdinates(r, rules), nil }}
	}
	workingtest.Published(t, "shapes.txt", map[string]workingtest.Case{
		"area of a shape":              {Result: unit.InSquareMetre, Got: areaOf(ofShape)},
		"edge of a shape":              {Result: unit.InMetre, Got: edgeOf(ofShape)},
		"area of a panel":              {Result: unit.InSquareMetre, Got: areaOf(ofPanel)},
		"edge of a panel":              {Result: unit.InMetre, Got: edgeOf(ofPanel)},
		"area by corners":              {Result: unit.InSquareMetre, Got: areaOf(ofCorners)},
		"way round the corners":        {Result: unit.InMetre, Got: edgeOf(ofCorners)},
		"trapezoids":                   ordinates(trapezoids),
		"first rule":                   ordinates(firstRule),
		"second rule":                  ordinates(secondRule),
		"first rule, then a trapezoid": ordinates(firstRule, trapezoids),
		"girths over a length": {Result: unit.InSquareMetre, Got: areaOf(func(r workingtest.Row) (Measured, error) {
			in := Input{Lengths: lengths(L{"length": r.Quantity("length", unit.InMetre)})}
			for _, g := range numbers(r.Text("ordinates")) {
				in.Rows = append(in.Rows, Row{"girth": metres(g)})
			}
			return girths.Measure(in)
		})},
		"cone, by its height": ofLengths(frustum, "large", "small", "height"),
		"cone, by its slant": {Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			length := func(column string) unit.Length { return unit.Length(r.Quantity(column, unit.InMetre)) }
			area, err := frustumArea.Of(length("large"), length("small"), length("slant"))
			return float64(area), err
		}},
	}, Rules()...)
}

// ofShape measures the shape of a row as its form would be filled in: "length =
// 3.7, part = half", in metres. Of a box all faces are taken.
func ofShape(r workingtest.Row) (Measured, error) {
	s := Shapes[slices.IndexFunc(Shapes, func(s *Shape) bool { return s.Key == r.Text("shape") })]
	in := Input{Lengths: lengths(L{}), Choices: map[string]string{}, Faces: keys(s.Faces)}
	in.Counts = map[string]working.Figure[unit.Factor]{}
	for part := range strings.SplitSeq(r.Text("given"), ",") {
		key, text, _ := strings.Cut(strings.TrimSpace(part), " = ")
		d := s.Dims[slices.IndexFunc(s.Dims, func(d Dim) bool { return d.Key == key })]
		if d.Kind == Choice {
			in.Choices[key] = text
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return Measured{}, err
		}
		if d.Kind == Count {
			in.Counts[key] = number(v)
		} else {
			in.Lengths[key] = metres(v)
		}
	}
	return s.Measure(in)
}

// ofPanel is a panel of 2.4 × 1.3 m with a round and a rectangular hole.
func ofPanel(r workingtest.Row) (Measured, error) {
	panel, err := rectangle.Measure(Input{Lengths: lengths(L{"length": 2.4, "width": 1.3})})
	if err != nil {
		return Measured{}, err
	}
	hole, err := circle.Measure(Input{Lengths: lengths(L{"diameter": r.Quantity("hole", unit.InMetre)})})
	if err != nil {
		return Measured{}, err
	}
	sides := numbers(r.Text("slot"))
	slot, err := rectangle.Measure(Input{Lengths: lengths(L{"length": sides[0], "width": sides[1]})})
	if err != nil {
		return Measured{}, err
	}
	return Total(panel, []Measured{hole, slot}, number(r.Number("many")), number(r.Number("sides")))
}

// byOrdinates runs the last rule over what the first leaves: over the last space.
func byOrdinates(r workingtest.Row, rules []spacedRule) float64 {
	var of []float64
	for _, y := range numbers(r.Text("ordinates")) {
		of = append(of, math.Pow(y, r.Number("power")))
	}
	spacing, last, sum := r.Number("spacing"), len(of)-1, unit.Area(0)
	if len(rules) == 2 {
		sum = rules[1].area(0, spacing, of[last-1:])
		last--
	}
	return r.Number("times") * float64(sum+rules[0].area(0, spacing*float64(last), of[:last+1]))
}
