package fairing_test

import (
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func TestPublished(t *testing.T) {
	workingtest.Published(t, "filler.txt", map[string]workingtest.Case{
		"coverage":          {Result: unit.InSquareFoot, Got: coverage},
		"mix by mass":       {Result: unit.InGram, Got: mixByMass},
		"fillet":            {Result: unit.InLitre, Got: fillet},
		"batten hollow":     {Result: unit.InMillilitre, Got: battenHollow},
		"trough":            {Result: unit.InLitre, Got: trough},
		"putty density":     {Result: unit.InKilogramPerLitre, Got: puttyDensity},
		"putty yield":       {Result: unit.InPure, Got: puttyYield},
		"share sanded off":  {Result: unit.InLitre, Got: shareSandedOff},
		"grid, hollows":     {Result: unit.InLitre, Got: gridFill},
		"grid, proud spots": {Result: unit.InLitre, Got: gridCut},
		"best datum":        {Result: unit.InMillimetre, Got: bestDatum},
	}, fairing.Rules()...)
}

// grid reads "0 1 / 2 3" as two rows of readings in millimetres.
func grid(r workingtest.Row, gap working.Figure[unit.Length]) (*fairing.Grid, error) {
	var readings [][]unit.Length
	for line := range strings.SplitSeq(r.Text("depths"), "/") {
		var row []unit.Length
		for word := range strings.FieldsSeq(line) {
			mm, err := strconv.ParseFloat(word, 64)
			if err != nil {
				return nil, err
			}
			row = append(row, unit.Length(mm)*unit.Millimetre)
		}
		readings = append(readings, row)
	}
	return fairing.NewGrid(readings, gap, gap)
}

func gridFill(r workingtest.Row) (float64, error) {
	g, err := grid(r, metres(float64(length(r, "gap"))))
	if err != nil {
		return 0, err
	}
	return float64(g.Fill(metres(0)).Value), nil
}

func gridCut(r workingtest.Row) (float64, error) {
	g, err := grid(r, metres(float64(length(r, "gap"))))
	if err != nil {
		return 0, err
	}
	return float64(g.Cut(metres(0)).Value), nil
}

func bestDatum(r workingtest.Row) (float64, error) {
	g, err := grid(r, metres(1))
	if err != nil {
		return 0, err
	}
	best, err := g.Best(fairing.Cost{Fill: 1, Cut: unit.Factor(r.Number("cut"))}, 10*unit.Millimetre)
	return float64(best.Value), err
}

func length(r workingtest.Row, column string) unit.Length {
	return unit.Length(r.Quantity(column, unit.InMetre))
}

// coverage is the area that a volume skims: its volume over that of 1 m².
func coverage(r workingtest.Row) (float64, error) {
	onOne, err := fairing.Skim.Of(1, length(r, "thickness"))
	return r.Quantity("volume", unit.InLitre) / float64(onOne), err
}

func mixByMass(r workingtest.Row) (float64, error) {
	resin := unit.Mass(r.Quantity("resin", unit.InGram))
	hardener, err := fairing.HardenerByMass.Of(resin, unit.ByMass(r.Number("hardener per resin")))
	return float64(resin + hardener), err
}

func fillet(r workingtest.Row) (float64, error) {
	v, err := fairing.Fillet.Of(length(r, "radius"), unit.Angle(r.Quantity("angle", unit.InDegree)), length(r, "length"))
	return float64(v), err
}

func battenHollow(r workingtest.Row) (float64, error) {
	v, err := fairing.BattenHollow.Of(length(r, "length"), length(r, "width"), length(r, "depth"))
	return float64(v), err
}

func trough(r workingtest.Row) (float64, error) {
	v, err := fairing.Trough.Of(length(r, "chord"), length(r, "depth"), length(r, "length"))
	return float64(v), err
}

// bulkRecipe is a litre of resin with a number of litres of balloons, as poured.
func bulkRecipe(balloons float64) (fairing.Recipe, error) {
	powder, err := fairing.MassOf.Figure(given[unit.Volume](balloons, unit.InLitre), given[unit.Density](0.10, unit.InKilogramPerLitre))
	return fairing.Recipe{
		Parts: []fairing.Part{
			{Kind: fairing.Resin, Mass: given[unit.Mass](1.15, unit.InKilogram), Density: given[unit.Density](1.15, unit.InKilogramPerLitre)},
			{Kind: fairing.Balloons, Mass: powder, Density: given[unit.Density](0.25, unit.InKilogramPerLitre)},
		},
		Air: working.Given(unit.Share(0), "air", unit.InPure, "none", source.Assumption),
	}, err
}

func puttyDensity(r workingtest.Row) (float64, error) {
	p, err := mixed(r)
	return float64(p.Density.Value), err
}

func puttyYield(r workingtest.Row) (float64, error) {
	p, err := mixed(r)
	return float64(p.Volume.Value / unit.Litre), err
}

func mixed(r workingtest.Row) (fairing.Putty, error) {
	recipe, err := bulkRecipe(r.Number("balloons"))
	if err != nil {
		return fairing.Putty{}, err
	}
	return recipe.Mix()
}

func shareSandedOff(r workingtest.Row) (float64, error) {
	v, err := fairing.Applied.Of(unit.Volume(r.Quantity("left", unit.InLitre)), unit.Share(r.Number("share")))
	return float64(v), err
}
