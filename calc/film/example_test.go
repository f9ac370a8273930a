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

// A spreading-rate bulletin: 65 % volume solids at 5 mil dry. It prints 208.52
// ft²/US gal, with 1604 for 1604.17; and 5.2 m²/L at 125 µm.
func Example_spreadingRate() {
	rate := func(dry unit.DryFilm) unit.SpreadingRate {
		wet, _ := film.Wet.Of(dry, 0.65)
		r, _ := film.RateAsSold.Of(0, wet)
		return r
	}
	fmt.Printf("%.2f ft²/US gal, %.1f m²/L\n", unit.InSquareFootPerUSGallon.From(float64(rate(unit.Of[unit.DryFilm](5, unit.InMil)))),
		unit.InSquareMetrePerLitre.From(float64(rate(unit.Of[unit.DryFilm](125, unit.InMicrometre)))))
	// Output: 208.54 ft²/US gal, 5.2 m²/L
}
