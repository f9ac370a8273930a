package buildup

import (
	"errors"
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// MinForSpread is the fewest readings from which a spread is taken: with fewer,
// chance makes a film look more even than it is, and the planned spread is kept.
// Source: assumption.
const MinForSpread = 5

// MeanReading and ReadingCV are the methods of Measure. Source: sample mean and
// sample standard deviation.
var (
	MeanReading = &working.Rule{Formula: "mean of the readings", Source: source.Ref{Document: &source.Geometry, Place: "sample mean"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "F", Meaning: "film as measured", Scale: unit.InMicrometre, Min: 0, Max: mostFilm}, IsProse: true}
	ReadingCV = &working.Rule{Formula: "sample standard deviation of the readings ÷ their mean", Source: source.Ref{Document: &source.Geometry, Place: "sample standard deviation"}, Mark: source.Exact,
		Result: working.Arg{Symbol: "c", Meaning: "point-to-point spread as measured", Scale: unit.InPercent, Min: 1, Max: 1500}, IsProse: true}
)

// Measured is what readings of a film say.
type Measured struct {
	Mean     working.Figure[unit.DryFilm]
	CV       working.Figure[unit.Share] // without a step: fewer than MinForSpread readings, or all alike
	Thinnest int                        // index of the thinnest reading
}

// ErrNoReadings says that there is nothing to take a mean of.
var ErrNoReadings = errors.New("buildup: no readings, or one that is no film")

// Measure turns the readings of one film, each as it will cure, into a mean and a
// spread. Range: readings 0 to 50 mm, one of them above zero. Errors:
// ErrNoReadings.
func Measure(readings []working.Figure[unit.DryFilm]) (m Measured, err error) {
	sum := 0.0
	steps := make([]*working.Step, len(readings))
	for i, r := range readings {
		v := unit.InMicrometre.From(float64(r.Value))
		if !(v >= 0 && v <= mostFilm) {
			return m, ErrNoReadings
		}
		if r.Value < readings[m.Thinnest].Value {
			m.Thinnest = i
		}
		sum += float64(r.Value)
		steps[i] = r.Step
	}
	if !(sum > 0) {
		return m, ErrNoReadings
	}
	n := float64(len(readings))
	mean := sum / n
	m.Mean = working.By(MeanReading, unit.DryFilm(mean), steps...)
	if len(readings) < MinForSpread {
		return m, nil
	}
	squares := 0.0
	for _, r := range readings {
		squares += (float64(r.Value) - mean) * (float64(r.Value) - mean)
	}
	if cv := math.Sqrt(squares/(n-1)) / mean; cv >= 0.01 {
		m.CV = working.By(ReadingCV, unit.Share(cv), steps...)
	}
	return m, nil
}

// AsCoated puts measured coats in place of the planned film of each round.
func (f Film) AsCoated(m Measured) Film {
	f.Adds = m.Mean
	if m.CV.Step != nil {
		f.AddsCV = m.CV
	}
	return f
}

// AsFound puts a measured film in place of everything counted up to the step;
// planned is the spread where too few readings were taken for one.
func (f Film) AsFound(m Measured, planned working.Figure[unit.Share]) Film {
	f.Found, f.FoundCV = m.Mean, planned
	if m.CV.Step != nil {
		f.FoundCV = m.CV
	}
	return f
}
