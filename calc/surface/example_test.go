package surface_test

import (
	"fmt"
	"strings"

	"shedreckoner/calc/source"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

func typed(metres float64, name string) working.Figure[unit.Length] {
	return working.Given(unit.Length(metres), name, unit.InMetre, "typed", source.Typed)
}

func one(name string) working.Figure[unit.Factor] {
	return working.Given(unit.Factor(1), name, unit.InPure, "typed", source.Typed)
}

// The half-ordinates of a waterplane, taken by Simpson's first rule. The book's
// interval is 20 m, for 1207 m² on both sides; here it is 2 m.
// Source: Barrass and Derrett, Ship Stability for Masters and Mates, p. 74.
func ExampleShape_Measure() {
	in := surface.Input{Lengths: map[string]working.Figure[unit.Length]{"spacing": typed(2, "station spacing")}}
	for _, g := range []float64{0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1} {
		in.Rows = append(in.Rows, surface.Row{"girth": typed(g, "girth")})
	}
	m, err := surface.Find("girths").Measure(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	both := working.Given(unit.Factor(2), "sides", unit.InPure, "typed", source.Typed)
	total, err := surface.Total(m, nil, one("how many alike"), both)
	fmt.Printf("%.2f m² %v\n", total.Area.Value, err)
	// Output: 120.67 m² <nil>
}

// A foredeck with a round hatch, as the demo job has it.
func ExampleTotal() {
	deck, _ := surface.Find("trapezium").Measure(surface.Input{Lengths: map[string]working.Figure[unit.Length]{
		"long-side": typed(2.1, "long side"), "short-side": typed(0.6, "side across from it"), "height": typed(1.9, "height"),
	}})
	hatch, _ := surface.Find("circle").Measure(surface.Input{Lengths: map[string]working.Figure[unit.Length]{
		"diameter": typed(0.46, "diameter"),
	}})
	total, _ := surface.Total(deck, []surface.Measured{hatch}, one("how many alike"), one("sides"))
	for _, step := range total.Area.Step.Texts() {
		fmt.Println(strings.ReplaceAll(step.Formula+" | "+step.Numbers+" = "+step.Result, "\u00a0", " "))
	}
	// Output:
	// A = (a + b) ÷ 2 × h | (2.1 + 0.6) ÷ 2 × 1.9 = 2.565 m²
	// A = π × d² ÷ 4 | π × 0.46² ÷ 4 = 0.16619 m²
	// T = N × n × (A − C) | 1 × 1 × (2.565 − 0.16619) = 2.3988 m²
}

// A tank of 10 × 6 × 4 ft, painted outside on all faces: 248 ft².
// Source: Nicholls's Seamanship, p. 355.
func ExampleShape_Measure_box() {
	feet := func(n float64, name string) working.Figure[unit.Length] { return typed(unit.InFoot.SI(n), name) }
	tank, err := surface.Find("box").Measure(surface.Input{
		Lengths: map[string]working.Figure[unit.Length]{"length": feet(10, "length"), "width": feet(6, "width"), "height": feet(4, "height")},
		Faces:   []string{"top", "bottom", "front", "back", "left", "right"},
	})
	fmt.Printf("%.0f ft² %v\n", unit.InSquareFoot.From(float64(tank.Area.Value)), err)
	// Output: 248 ft² <nil>
}
