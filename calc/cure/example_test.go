package cure_test

import (
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// A surfboard builder's book puts 14 cc of catalyst into a US quart for 1.5 %
// by volume.
func ExampleVolumeOfVolume() {
	v, err := cure.VolumeOfVolume.Of(0.015, unit.USQuart)
	fmt.Printf("%.1f mL %v\n", v/unit.Millilitre, err)
	// Output: 14.2 mL <nil>
}

// US Army TM 55-1905-223 par. 8-24: 4 to 1 by mass, 400 g and 100 g.
func ExampleRatio_ForTotal() {
	p, err := cure.RatioByMass(given[unit.ByMass](4, unit.InPure), noDensity, noDensity).ForTotal(grams(500))
	fmt.Printf("%.0f g, %.0f g %v\n", inGrams(p.A.Mass), inGrams(p.B.Mass), err)
	// Output: 400 g, 100 g <nil>
}

// 350 g of gel coat at 25 °C get 1.5 %; over the end of the table there is no dose.
func ExampleCup_Dose() {
	table, _ := cure.NewTable("maker's sheet", source.Typed, row(20, 1.85), row(25, 1.50), row(28, 1.35))
	scale, _ := cure.NewTool(cure.Scale, decimal.RequireFromString("0.05"))
	c := cure.Cup{
		Mix: cure.Mix{Product: grams(350)},
		Card: cure.Card{Table: table, Floor: percent(1), Ceiling: percent(2.5),
			Limits: cure.Limits{Coldest: celsius(15).Value, Warmest: celsius(32).Value},
			Takes:  cure.Takes{Families: []cure.Family{cure.Ketone}, Promoted: true}},
		Peroxide: cure.Peroxide{Family: cure.Ketone, Density: density(1.15)},
		Shed:     shed(25), Tool: scale, Largest: upTo(500),
	}
	d, err := c.Dose()
	fmt.Printf("%s g, %s mL %v\n", d.Grams.Number(), d.Millilitres.Number(), err)

	c.Shed = shed(30)
	_, err = c.Dose()
	var beyond *cure.BeyondTableError
	fmt.Println(errors.As(err, &beyond), beyond.Of, beyond.IsCold())
	// Output:
	// 5.25 g, 4.57 mL <nil>
	// true surface false
}
