package sanding_test

import (
	"fmt"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
)

// The engine box of the launch Tern: a rolled flow coat, read as a mean, sanded
// from P220 to P1200 and polished.
func ExampleLadder() {
	grades, _ := sanding.Propose(220, 1200, []sanding.Grade{220, 320, 400, 600, 800, 1000, 1200}, 1.8)
	var turns []sanding.Turn
	for _, g := range grades {
		turns = append(turns, sanding.Turn{Grade: g})
	}
	flatten, _ := sanding.Texture.Figure(sanding.OfMean, given[unit.Length](120, unit.InMicrometre))
	stages, _ := sanding.Ladder(turns, given[unit.Factor](0.33, unit.InPure), flatten)
	for _, s := range stages {
		fmt.Println(s.Grade, "takes", unit.Number(unit.InMicrometre.From(float64(s.Takes.Value)), 3), "µm")
	}
	// Output:
	// P220 takes 60 µm
	// P320 takes 22.4 µm
	// P600 takes 15.2 µm
	// P1200 takes 8.51 µm
}
