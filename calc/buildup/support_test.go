package buildup_test

import (
	"shedreckoner/calc/buildup"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// given makes a figure as plan would, in a scale's own unit.
func given[Q unit.Quantity](n float64, s unit.Scale) working.Figure[Q] {
	return working.Given(unit.Of[Q](n, s), "given", s, "test", source.Typed)
}

func micrometres(n float64) working.Figure[unit.DryFilm] {
	return given[unit.DryFilm](n, unit.InMicrometre)
}

func share(n float64) working.Figure[unit.Share] { return given[unit.Share](n, unit.InPure) }

func um(f working.Figure[unit.DryFilm]) float64 { return unit.InMicrometre.From(float64(f.Value)) }

// coat adds a film, sand takes one, each in micrometres with its CV.
func coat(film, cv float64) buildup.Step {
	return buildup.Step{Kind: buildup.Coat, Film: buildup.Film{Adds: micrometres(film), AddsCV: share(cv)}}
}

func sand(film, cv float64) buildup.Step {
	return buildup.Step{Kind: buildup.Sand, Film: buildup.Film{Takes: micrometres(film), TakesCV: share(cv)}}
}

// leaving asks a least mean and thinnest film of a step, in micrometres; zero:
// none.
func leaving(s buildup.Step, mean, thinnest float64) buildup.Step {
	if mean > 0 {
		s.Film.Least.Mean = micrometres(mean)
	}
	if thinnest > 0 {
		s.Film.Least.Thinnest = micrometres(thinnest)
	}
	return s
}

func terms(thin, unfairness float64) buildup.Terms {
	return buildup.Terms{Thin: share(thin), Unfairness: micrometres(unfairness)}
}
