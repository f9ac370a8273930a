package air_test

import (
	"fmt"

	"shedreckoner/calc/air"
	"shedreckoner/calc/unit"
)

// The dew point of a reading, shown so that it is never too low, and the least
// temperature of the surface by the 5 °F of the US chart.
func ExampleDewPoint() {
	td, err := air.DewPoint(given(unit.Of[unit.Temperature](70, unit.InFahrenheit), unit.InFahrenheit), percent(65))
	if err != nil {
		fmt.Println(err)
		return
	}
	shown := air.RoundUp(td.Value, unit.InFahrenheit)
	fmt.Println(unit.Write(float64(shown), unit.InFahrenheit, 3))
	fmt.Println(unit.Write(float64(shown)+unit.InFahrenheitDifference.SI(5), unit.InFahrenheit, 3))
	// Output:
	// 57.7 °F
	// 62.7 °F
}

// Abulencia and Theodore, Ex. 20.2: 3/8 US gal/h of an adhesive with 40 % by
// volume of toluene, to be kept under 80 ppm at 20 °C with K = 5. In print:
// 134 400 L/min, from a vapour flow cut to three digits.
func Example_ventilation() {
	liquid := 0.375 * float64(unit.USGallon) * 0.40
	solvent := unit.MassFlow(liquid * 870 / float64(unit.Hour))
	limit, err := air.Concentration.Of(80e-6, 0.092, air.Atmosphere.Value, celsius(20).Value)
	if err != nil {
		fmt.Println(err)
		return
	}
	q, err := air.AirFor.Of(5, solvent, limit)
	fmt.Println(unit.Write(float64(q), unit.InLitrePerMinute, 4), err)
	// Output: 134 546 L/min <nil>
}

// The hours of a hot day in which gel coat fits, with four hours of cure after them.
func ExampleFit_Windows() {
	d, err := makeDay(16, 38, 6, read(30, 45, 11*hour))
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := air.NewFit(d, underRoof, gelCoat)
	if err != nil {
		fmt.Println(err)
		return
	}
	list, err := f.Windows(wholeDay)
	for _, w := range list {
		end := w.Closing[0]
		fmt.Printf("%.1f to %.1f h, then past %s\n", float64(w.From/hour), float64(w.To/hour), unit.Write(end.Limit, end.Condition.Scale(), 3))
	}
	fmt.Println(len(list), err)
	// Output:
	// 7.9 to 12.3 h, then past 32 °C
	// 20.2 to 21.9 h, then past 3 °C
	// 2 <nil>
}
