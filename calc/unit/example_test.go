package unit_test

import (
	"fmt"

	"shedreckoner/calc/unit"
)

// What people write; a text that can be read two ways is refused.
func ExampleRead() {
	for _, text := range []string{"450", "2 ft 6 in", "18 mil", "3/4 in", "1,5 m", "1,500"} {
		metres, err := unit.Read(text, unit.InMillimetre)
		fmt.Printf("%s: %.6g m, refused: %v\n", text, metres, err != nil)
	}
	// Output:
	// 450: 0.45 m, refused: false
	// 2 ft 6 in: 0.762 m, refused: false
	// 18 mil: 0.0004572 m, refused: false
	// 3/4 in: 0.01905 m, refused: false
	// 1,5 m: 1.5 m, refused: false
	// 1,500: 0 m, refused: true
}
