package film_test

import (
	"fmt"

	"shedreckoner/calc/film"
	"shedreckoner/calc/unit"
)

// Coating inspection notes: a coating of 50 % volume solids, thinned with 10 %,
// for a dry film of 60 µm and with 30 % lost. The notes print 45.45 %, 7.57
// (cut off) and 5.30 m²/L, all per litre as thinned.
func Example() {
	share, _ := film.Thinned.Of(0.50, 0, 0.10, 0)
	wet, _ := film.Wet.Of(unit.Of[unit.DryFilm](60, unit.InMicrometre), share)
	rate, _ := film.RateAsThinned.Of(wet)
	practical, _ := film.Practical.Of(rate, 0.30)
	fmt.Printf("%.2f %%, %.3f and %.2f m²/L\n", unit.InPercent.From(float64(share)),
		unit.InSquareMetrePerLitre.From(float64(rate)), unit.InSquareMetrePerLitre.From(float64(practical)))
	// Output: 45.45 %, 7.576 and 5.30 m²/L
}

// Styrene at 5 % by mass is more by volume, for it is the lighter.
func Example_byVolume() {
	t, _ := film.ThinnerByVolume.Of(0.05, unit.Of[unit.Density](1.25, unit.InKilogramPerLitre), unit.Of[unit.Density](0.906, unit.InKilogramPerLitre))
	fmt.Printf("%.3f %%\n", unit.InPercent.From(float64(t)))
	// Output: 6.898 %
}
