package buildup_test

import (
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/sanding"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func TestPublished(t *testing.T) {
	workingtest.Published(t, "budget.txt", map[string]workingtest.Case{
		"share through":      {Result: unit.InPercent, Got: shareThrough},
		"chosen share":       {Result: unit.InPure, Got: chosenShare},
		"lost to sanding":    {Result: unit.InMil, Got: lostToSanding},
		"left after sanding": {Result: unit.InMil, Got: leftAfterSanding},
		"to put on":          {Result: unit.InMil, Got: toPutOn},
		"mean of readings": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) {
			m, err := buildup.Measure(readings(r))
			return float64(m.Mean.Value), err
		}},
		"spread of readings": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			m, err := buildup.Measure(readings(r))
			return float64(m.CV.Value), err
		}},
		"film for a share": {Result: unit.InMicrometre, Got: filmForShare},
		"normal distribution": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			p, err := buildup.Through.Of(micrometres(500+100*r.Number("z")).Value, 0, micrometres(500).Value, micrometres(100).Value)
			return float64(p), err
		}},
		"spread of a sum": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) {
			s, err := buildup.Spread.Of(film(r, "one"), film(r, "other"), 0)
			return float64(s), err
		}},
		"spread of a multiple": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) {
			s, err := buildup.StepSpread.Of(unit.Share(r.Number("share")), film(r, "film"))
			return float64(s), err
		}},
		"thin side": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) {
			thin, err := buildup.ThinSide.Of(film(r, "mean"), unit.Factor(r.Number("z")), film(r, "spread"))
			return float64(thin), err
		}},
	}, buildup.Rules()...)
}

// readings reads a row's micrometres.
func readings(r workingtest.Row) (list []working.Figure[unit.DryFilm]) {
	for word := range strings.FieldsSeq(r.Text("readings")) {
		n, err := strconv.ParseFloat(word, 64)
		if err != nil {
			panic(err)
		}
		list = append(list, micrometres(n))
	}
	return list
}

func filmForShare(r workingtest.Row) (float64, error) {
	need, err := buildup.Needed([]buildup.Step{
		coat(1, r.Number("film cv")), sand(inMicrometres(r, "removal"), r.Number("removal cv")),
	}, 0, terms(r.Quantity("share", unit.InPercent), 0))
	return float64(need.Film.Value), err
}

func film(r workingtest.Row, column string) unit.DryFilm {
	return unit.DryFilm(r.Quantity(column, unit.InMicrometre))
}

func inMicrometres(r workingtest.Row, column string) float64 {
	return unit.InMicrometre.From(r.Quantity(column, unit.InMicrometre))
}

func shareThrough(r workingtest.Row) (float64, error) {
	points, err := buildup.Walk([]buildup.Step{
		coat(inMicrometres(r, "film")/2, r.Number("film cv")), coat(inMicrometres(r, "film")/2, r.Number("film cv")),
		sand(inMicrometres(r, "removal"), r.Number("removal cv")),
	}, terms(0.05, 0))
	if err != nil {
		return 0, err
	}
	return float64(points[len(points)-1].Through.Value), nil
}

// chosenShare is z from the thin side of a film of 1000 µm and 10 %: the thin
// side lies z × 100 µm below the mean.
func chosenShare(r workingtest.Row) (float64, error) {
	points, err := buildup.Walk([]buildup.Step{coat(1000, 0.1)}, terms(r.Quantity("share", unit.InPercent), 0))
	if err != nil {
		return 0, err
	}
	return (1000 - um(points[0].Thin)) / 100, nil
}

// schedule is the run of practice, P220 to P1200 and polish, as steps, with a
// texture read on its peaks.
func schedule(texture float64) ([]buildup.Step, error) {
	flatten, err := sanding.Texture.Figure(sanding.OfPeak, given[unit.Length](texture, unit.InMicrometre))
	if err != nil {
		return nil, err
	}
	var turns []sanding.Turn
	for _, g := range []sanding.Grade{220, 320, 400, 600, 800, 1000, 1200} {
		turns = append(turns, sanding.Turn{Grade: g})
	}
	stages, err := sanding.Ladder(turns, given[unit.Factor](0.33, unit.InPure), flatten)
	if err != nil {
		return nil, err
	}
	polish, err := sanding.Polish(stages[len(stages)-1].Leaves, micrometres(3), micrometres(1))
	var steps []buildup.Step
	taking := func(kind buildup.Kind, film working.Figure[unit.DryFilm]) {
		steps = append(steps, buildup.Step{Kind: kind, Film: buildup.Film{Takes: film, TakesCV: share(0.4)}})
	}
	for _, s := range stages {
		taking(buildup.Sand, s.Takes)
	}
	for _, film := range polish {
		taking(buildup.Polish, film)
	}
	return steps, err
}

func left(film, texture float64) (float64, error) {
	run, err := schedule(texture)
	if err != nil {
		return 0, err
	}
	points, err := buildup.Walk(append([]buildup.Step{coat(film, 0.25)}, run...), terms(0.05, 0))
	if err != nil {
		return 0, err
	}
	return float64(points[len(points)-1].Mean.Value), nil
}

func lostToSanding(r workingtest.Row) (float64, error) {
	kept, err := left(1000, inMicrometres(r, "texture"))
	return 1000e-6 - kept, err
}

func leftAfterSanding(r workingtest.Row) (float64, error) {
	return left(inMicrometres(r, "film"), inMicrometres(r, "texture"))
}

func toPutOn(r workingtest.Row) (float64, error) {
	run, err := schedule(inMicrometres(r, "texture"))
	if err != nil {
		return 0, err
	}
	last := len(run) - 1
	run[last] = leaving(run[last], inMicrometres(r, "keep"), 0)
	need, err := buildup.Needed(append([]buildup.Step{coat(1, 0.25)}, run...), 0, terms(0.05, 0))
	return float64(need.Film.Value), err
}
