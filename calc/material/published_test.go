package material_test

import (
	"fmt"
	"testing"

	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestPublishedFigures(t *testing.T) {
	workingtest.Published(t, "materials.txt", map[string]workingtest.Case{
		"loss with what stays in the tool": {Result: unit.InPercent, Got: lossOfCup},
		"figure of a card":                 {Result: unit.InMicrometre, Got: figure},
		"share on a card":                  {Result: unit.InPercent, Got: figure},
		"density on a card":                {Result: unit.InKilogramPerLitre, Got: named("density")},
		"gel time on a card":               {Result: unit.InMinute, Got: named("gel-time")},
		"activation energy on a card":      {Result: unit.InKilojoulePerMole, Got: named("gel-energy")},
		"row of a dose table":              {Result: unit.InPercent, Got: doseRow},
	})
}

// lossOfCup is what never reaches the surface of a cup of gel coat: what stays
// in the tool and on the cup's wall, and the loss of what leaves them.
func lossOfCup(r workingtest.Row) (float64, error) {
	m, found := material.FindMethod(r.Text("method"))
	if !found {
		return 0, fmt.Errorf("no such method")
	}
	cup := r.Quantity("cup", unit.InGram)
	gelcoat, _ := material.Find("gelcoat")
	stays := float64(m.Leftover.Value + material.CupWall(unit.Volume(cup/float64(gelcoat.Density.Value))).Value)
	return (stays + (cup-stays)*float64(m.Loss.Value)) / cup, nil
}

func figure(r workingtest.Row) (float64, error) { return value(r.Text("card"), r.Text("figure")) }

func named(key string) func(workingtest.Row) (float64, error) {
	return func(r workingtest.Row) (float64, error) { return value(r.Text("card"), key) }
}

func value(card, key string) (float64, error) {
	c, found := material.Find(card)
	for _, f := range material.Fields {
		if found && f.Key == key && f.Of(&c).Known {
			return f.Of(&c).Value, nil
		}
	}
	return 0, fmt.Errorf("no figure %s on %s", key, card)
}

func doseRow(r workingtest.Row) (float64, error) {
	c, found := material.Find(r.Text("card"))
	row := int(r.Number("row")) - 1
	if !found || row >= len(c.DoseTable) {
		return 0, fmt.Errorf("no such row")
	}
	return float64(c.DoseTable[row].Catalyst), nil
}
