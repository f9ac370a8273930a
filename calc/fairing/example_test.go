package fairing_test

import (
	"fmt"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
)

// A retailer's guide to fairing: a US gallon at an eighth of an inch, with no
// loss, covers 12.8 ft² (in print; it halves 25.6, which is 25.667 cut off).
func Example() {
	onOne, _ := fairing.Skim.Of(1, unit.Of[unit.Length](1./8, unit.InInch))
	area := unit.InUSGallon.SI(1) / float64(onOne)
	fmt.Printf("%.2f ft²\n", unit.InSquareFoot.From(area))
	// Output: 12.83 ft²
}

// US Army TM 55-1905-223 par. 8-24: resin and hardener 4 to 1 by mass, 100 g for
// 400 g.
func Example_hardener() {
	hardener, _ := fairing.HardenerByMass.Of(unit.Of[unit.Mass](400, unit.InGram), 0.25)
	fmt.Println(unit.Write(float64(hardener), unit.InGram, 3) == "100\u00a0g")
	// Output: true
}
