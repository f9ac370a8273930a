package sanding

import (
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Scratch is how deep a grade scratches, which is the film that the next grade
// has to take: s = k × d, k the share of the mean grain size. Range: k 0.05 to 1.
// Source: common practice; k is an assumption.
var Scratch = working.Rule2[unit.Factor, unit.Length, unit.DryFilm]{Rule: &working.Rule{Formula: "s = k × d", Source: source.Ref{Document: &source.Practice, Place: "scratch depth as a share of the grain"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "s", Meaning: "scratch depth", Scale: unit.InMicrometre, Min: 0, Max: 2000},
	Args: []working.Arg{
		{Symbol: "k", Meaning: "scratch depth as a share of the grain size", Scale: unit.InPure, Min: 0.05, Max: 1},
		{Symbol: "d", Meaning: "mean grain size", Scale: unit.InMicrometre, Min: 5, Max: 2000},
	}},
	Code: func(k unit.Factor, d unit.Length) unit.DryFilm { return unit.DryFilm(float64(k) * float64(d)) }}

// Texture is the film that goes before the surface is flat: r = x × h. The
// first grade sands down to the valleys. A film measured at its peaks loses the
// whole depth, a mean film half of it. Range: h 0 to 1 mm.
// Source: elementary geometry.
var Texture = working.Rule2[unit.Share, unit.Length, unit.DryFilm]{Rule: &working.Rule{Formula: "r = x × h", Source: source.Ref{Document: &source.Geometry, Place: "mean of a profile"}, Mark: source.Exact,
	Result: working.Arg{Symbol: "r", Meaning: "film taken to flatten the texture", Scale: unit.InMicrometre, Min: 0, Max: 1000},
	Args: []working.Arg{
		{Symbol: "x", Meaning: "share of the texture above the film's reading", Scale: unit.InPure, Min: 0, Max: 1},
		{Symbol: "h", Meaning: "texture, peak to valley", Scale: unit.InMicrometre, Min: 0, Max: 1000},
	}},
	Code: func(x unit.Share, h unit.Length) unit.DryFilm { return unit.DryFilm(float64(x) * float64(h)) }}

// Cutting is the film that cutting compound takes: c = max(s, m), below the
// last grade's scratches and never less than the compound's own. Range: m 0 to 50 µm.
// Source: common practice.
var Cutting = working.Rule2[unit.DryFilm, unit.DryFilm, unit.DryFilm]{Rule: &working.Rule{Formula: "c = max(s, m)", Source: source.Ref{Document: &source.Practice, Place: "polish below the last grade's scratches"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "c", Meaning: "film taken by cutting compound", Scale: unit.InMicrometre, Min: 0, Max: 200},
	Args: []working.Arg{
		{Symbol: "s", Meaning: "scratch depth of the last grade", Scale: unit.InMicrometre, Min: 0, Max: 200},
		{Symbol: "m", Meaning: "least film that the compound takes", Scale: unit.InMicrometre, Min: 0, Max: 50},
	}},
	Code: func(s, m unit.DryFilm) unit.DryFilm { return max(s, m) }}

// OfMean and OfPeak are the share of the texture that lies above a film's reading:
// half of it over a mean film (by weight, by volume), all of it over one read on
// the peaks (a comb, a gauge that rests on them).
// Source: elementary geometry.
var (
	OfMean = working.Given(unit.Share(0.5), "half the texture, the film is a mean", unit.InPure, "", source.Exact)
	OfPeak = working.Given(unit.Share(1), "the whole texture, the film was read on its peaks", unit.InPure, "", source.Exact)
)

// Turn is one grade's place in a sequence. Own is the builder's own removal
// with it, nil where there is none.
type Turn struct {
	Grade Grade
	Own   *working.Figure[unit.DryFilm]
}

// Stage is what one grade does to the film.
type Stage struct {
	Grade  Grade
	Takes  working.Figure[unit.DryFilm] // film that this grade takes
	Leaves working.Figure[unit.DryFilm] // its scratches, for the next to take
}

// Ladder walks a sequence of grades: each takes the plane below the last grade's
// scratches, the first takes flatten, the film above the valleys of the texture (or
// above old scratches). A measured removal replaces both.
// Errors: *GradeError, *working.RangeError.
func Ladder(turns []Turn, k working.Figure[unit.Factor], flatten working.Figure[unit.DryFilm]) ([]Stage, error) {
	stages := make([]Stage, 0, len(turns))
	takes := flatten
	for _, turn := range turns {
		size, err := turn.Grade.Size()
		if err != nil {
			return nil, err
		}
		scratches, err := Scratch.Figure(k, size)
		if err != nil {
			return nil, err
		}
		if turn.Own != nil {
			takes = *turn.Own
		}
		stages = append(stages, Stage{turn.Grade, takes, scratches})
		takes = scratches
	}
	return stages, nil
}

// Polish walks polishing stages over the scratches that the last grade left:
// the first takes the plane below them and never less than its own film, the
// later ones their own. Errors: *working.RangeError.
func Polish(scratches working.Figure[unit.DryFilm], own ...working.Figure[unit.DryFilm]) ([]working.Figure[unit.DryFilm], error) {
	if len(own) == 0 {
		return nil, nil
	}
	first, err := Cutting.Figure(scratches, own[0])
	return append([]working.Figure[unit.DryFilm]{first}, own[1:]...), err
}

var wholeRun = working.SumRule("film taken by the whole run", unit.InMicrometre)

// Runs gives the film that a run takes in all, polish included, when it is begun at
// each of its grades in turn: what a thin place can still take.
// Errors: *GradeError, *working.RangeError.
func Runs(turns []Turn, k working.Figure[unit.Factor], flatten working.Figure[unit.DryFilm], polish ...working.Figure[unit.DryFilm]) ([]working.Figure[unit.DryFilm], error) {
	totals := make([]working.Figure[unit.DryFilm], len(turns))
	for i := range turns {
		stages, err := Ladder(turns[i:], k, flatten)
		if err != nil {
			return nil, err
		}
		parts, err := Polish(stages[len(stages)-1].Leaves, polish...)
		if err != nil {
			return nil, err
		}
		for _, s := range stages {
			parts = append(parts, s.Takes)
		}
		totals[i] = working.Sum(wholeRun, parts...)
	}
	return totals, nil
}
