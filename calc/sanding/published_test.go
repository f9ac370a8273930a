package sanding_test

import (
	"strings"
	"testing"

	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestPublished(t *testing.T) {
	size := workingtest.Case{Result: unit.InMicrometre, Got: meanSize}
	workingtest.Published(t, "abrasives.txt", map[string]workingtest.Case{
		"mean size":         size,
		"american grade":    size,
		"ladder and cut":    {Result: unit.InMil, Got: ladderAndCut},
		"removal by weight": {Result: unit.InMicrometre, Got: removalByWeight},
		"wet sheets":        {Result: unit.InPure, Got: wetSheets},
		"hand speed":        {Result: unit.InSquareMetrePerHour, Got: handSpeed},
	}, sanding.Rules()...)
}

func meanSize(r workingtest.Row) (float64, error) {
	g, err := sanding.ReadGrade(r.Text("grade"))
	if err != nil {
		return 0, err
	}
	size, err := g.MeanSize()
	return float64(size), err
}

func ladderAndCut(r workingtest.Row) (float64, error) {
	var turns []sanding.Turn
	for _, word := range strings.Fields(r.Text("grades")) {
		g, err := sanding.ReadGrade(word)
		if err != nil {
			return 0, err
		}
		turns = append(turns, sanding.Turn{Grade: g})
	}
	flatten, err := sanding.Texture.Figure(sanding.OfPeak, given[unit.Length](r.Quantity("texture", unit.InMicrometre)/1e-6, unit.InMicrometre))
	if err != nil {
		return 0, err
	}
	runs, err := sanding.Runs(turns, given[unit.Factor](1./3, unit.InPure), flatten, micrometres(3))
	if err != nil {
		return 0, err
	}
	return float64(runs[0].Value), nil
}

func removalByWeight(r workingtest.Row) (float64, error) {
	removed, err := sanding.ByWeight.Of(
		unit.Mass(r.Quantity("before", unit.InGram)), unit.Mass(r.Quantity("after", unit.InGram)),
		unit.Area(r.Quantity("area", unit.InSquareMetre)), unit.Density(r.Quantity("density", unit.InKilogramPerLitre)))
	return float64(removed), err
}

func wetSheets(r workingtest.Row) (float64, error) {
	n, err := sanding.Sheets.Of(unit.Area(r.Quantity("area", unit.InSquareMetre)), unit.Factor(r.Number("per")))
	return float64(n), err
}

// handSpeed is the area finished per hour when every grade goes over it once.
func handSpeed(r workingtest.Row) (float64, error) {
	area, err := sanding.RepeatedArea.Of(1, unit.Factor(r.Number("grades")))
	if err != nil {
		return 0, err
	}
	hours, err := sanding.Hours.Of(area, unit.Of[unit.SpreadingSpeed](r.Number("speed"), unit.InSquareMetrePerHour))
	return 1 / float64(hours), err
}
