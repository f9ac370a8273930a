package buildup_test

import (
	"errors"
	"fmt"
	"math"

	"shedreckoner/calc/buildup"
)

// The topsides of the launch Tern: gel coat, rolled, sanded from P220 to P1200
// and polished, 177 µm in all. 400 µm are to be left in the mean, and 250 µm on
// all but a twentieth of the area.
func ExampleNeeded() {
	steps := []buildup.Step{coat(1, 0.20), leaving(sand(177, 0.4), 400, 250)}
	need, _ := buildup.Needed(steps, 0, terms(0.05, 0))
	fmt.Printf("put on %.0f µm, for the thin side: %t\n", math.Ceil(um(need.Film)), need.IsThin)

	steps[0].Film.AddsCV = share(0.65)
	_, err := buildup.Needed(steps, 0, terms(0.05, 0))
	var uneven *buildup.TooUnevenError
	if errors.As(err, &uneven) {
		fmt.Printf("not by more film: its spread must be below %.0f %%\n", 100*uneven.Below)
	}
	// Output:
	// put on 679 µm, for the thin side: true
	// not by more film: its spread must be below 61 %
}

func ExampleWalk() {
	points, _ := buildup.Walk([]buildup.Step{coat(160, 0.25), coat(160, 0.25), sand(177, 0.4)}, terms(0.05, 0))
	for _, p := range points {
		fmt.Printf("step %d: %.0f µm left, %.0f µm on the thin side\n", p.Step, um(p.Mean), um(p.Thin))
	}
	fmt.Printf("through on %.0f %% of the area\n", 100*points[2].Through.Value)
	// Output:
	// step 0: 160 µm left, 94 µm on the thin side
	// step 1: 320 µm left, 188 µm on the thin side
	// step 2: 143 µm left, -33 µm on the thin side
	// through on 9 % of the area
}
