package film_test

import (
	"errors"
	"math"
	"testing"

	"shedreckoner/calc/film"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func wet(r workingtest.Row) unit.WetFilm { return unit.WetFilm(r.Quantity("wet", unit.InMillimetre)) }

func dry(r workingtest.Row) unit.DryFilm { return unit.DryFilm(r.Quantity("dry", unit.InMillimetre)) }

func share(r workingtest.Row) unit.SolidsByVolume {
	return unit.SolidsByVolume(r.Quantity("share", unit.InPure))
}

func thinner(r workingtest.Row) unit.ByVolume {
	return unit.ByVolume(r.Quantity("thinner", unit.InPure))
}

func density(r workingtest.Row, column string) unit.Density {
	return unit.Density(r.Quantity(column, unit.InKilogramPerLitre))
}

func si[Q unit.Quantity](v Q, err error) (float64, error) { return float64(v), err }

func TestPublishedFilms(t *testing.T) {
	workingtest.Published(t, "film.txt", map[string]workingtest.Case{
		"dry film": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) { return si(film.Dry.Of(wet(r), share(r))) }},
		"wet film": {Result: unit.InMillimetre, Got: func(r workingtest.Row) (float64, error) { return si(film.Wet.Of(dry(r), share(r))) }},
		"cured share, solvent thinner": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			return si(film.Thinned.Of(share(r), 0, thinner(r), 0))
		}},
		"cured share": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			return si(film.Thinned.Of(share(r), unit.Share(r.Number("stays")), thinner(r), unit.Share(r.Number("shrinks"))))
		}},
		"thinner by volume": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			return si(film.ThinnerByVolume.Of(unit.ByMass(r.Number("by mass")), density(r, "density"), density(r, "thinner density")))
		}},
		"thinner by mass": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			return si(film.ThinnerByMass.Of(unit.ByVolume(r.Number("by volume")), density(r, "density"), density(r, "thinner density")))
		}},
		"mass per area": {Result: unit.InGramPerSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			return si(film.MassPerArea.Of(wet(r), density(r, "density")))
		}},
		"mass": {Result: unit.InKilogram, Got: func(r workingtest.Row) (float64, error) {
			v, err := film.Mix.Of(unit.Area(r.Quantity("area", unit.InSquareMetre)), wet(r), 0, 0)
			if err != nil {
				return 0, err
			}
			return si(film.Weight.Of(v, density(r, "density")))
		}},
		// A film of a millimetre on as many square metres as there are litres.
		"mix with loss": {Result: unit.InLitre, Got: func(r workingtest.Row) (float64, error) {
			kept := unit.Area(r.Quantity("kept", unit.InLitre) / 1e-3)
			return si(film.Mix.Of(kept, 1e-3, 0, unit.Share(r.Number("loss"))))
		}},
		"area of a kilogram": {Result: unit.InSquareMetre, Got: func(r workingtest.Row) (float64, error) {
			g, err := film.MassPerArea.Of(wet(r), density(r, "density"))
			return 1 / float64(g), err
		}},
		"dead volume": {Result: unit.InMicrometre, Got: func(r workingtest.Row) (float64, error) {
			f, err := film.DeadFilm(working.Given(unit.Length(r.Quantity("profile", unit.InMicrometre)), "profile", unit.InMicrometre, "", source.Typed))
			return float64(f.Value), err
		}},
		"flow cup":                {Result: unit.InSquareMillimetrePerSec, Got: flowCup},
		"all that thins":          {Result: unit.InPercent, Got: allThatThins},
		"thinner for a flow time": {Result: unit.InPercent, Got: thinnerForTime},
	}, film.Rules()...)
}

func flowCup(r workingtest.Row) (float64, error) {
	orifice := r.Quantity("cup", unit.InMillimetre)
	for _, cup := range film.FlowCups {
		if math.Abs(float64(cup.Orifice)-orifice) < 1e-9 {
			return si(cup.Viscosity.Of(unit.Time(r.Quantity("time", unit.InSecond))))
		}
	}
	return 0, errors.New("no such cup")
}

// column reads a column as a figure.
func column[Q unit.Quantity](r workingtest.Row, name string, s unit.Scale) working.Figure[Q] {
	return working.Given(Q(r.Quantity(name, s)), name, s, "", source.Typed)
}

func allThatThins(r workingtest.Row) (float64, error) {
	sum := working.Sum(film.Thinners, column[unit.ByMass](r, "styrene", unit.InPercent), column[unit.ByMass](r, "wax", unit.InPercent))
	return float64(sum.Value), nil
}

func thinnerForTime(r workingtest.Row) (float64, error) {
	none := working.Given(unit.ByVolume(0), "thinner", unit.InPercent, "", source.Typed)
	t, err := film.ThinnerForFlow(
		film.FlowReading{Thinner: none, Time: column[unit.Time](r, "none", unit.InSecond)},
		film.FlowReading{Thinner: column[unit.ByVolume](r, "thinner", unit.InPercent), Time: column[unit.Time](r, "much", unit.InSecond)},
		column[unit.Time](r, "wanted", unit.InSecond))
	return float64(t.Value), err
}

func TestPublishedCoverage(t *testing.T) {
	asSold := func(r workingtest.Row) (float64, error) { return rate(share(r), 0, dry(r)) }
	workingtest.Published(t, "coverage.txt", map[string]workingtest.Case{
		"rate as sold":         {Result: unit.InSquareFootPerUSGallon, Got: asSold},
		"rate as sold, metric": {Result: unit.InSquareMetrePerLitre, Got: asSold},
		"rate as thinned": {Result: unit.InSquareFootPerUSGallon, Got: func(r workingtest.Row) (float64, error) {
			return si(film.RateAsThinned.Of(wet(r)))
		}},
		"rate of a thinned product": {Result: unit.InSquareMetrePerLitre, Got: func(r workingtest.Row) (float64, error) {
			vs, err := film.Thinned.Of(share(r), 0, thinner(r), 0)
			if err != nil {
				return 0, err
			}
			wft, err := film.Wet.Of(dry(r), vs)
			if err != nil {
				return 0, err
			}
			thinned, err := film.RateAsThinned.Of(wft)
			if err != nil {
				return 0, err
			}
			return si(film.Practical.Of(thinned, unit.Share(r.Number("loss"))))
		}},
		"area of a gallon": {Result: unit.InSquareFootPerUSGallon, Got: func(r workingtest.Row) (float64, error) {
			sold, err := rate(share(r), 0, dry(r))
			if err != nil {
				return 0, err
			}
			return si(film.Practical.Of(unit.SpreadingRate(sold), unit.Share(1-r.Number("efficiency"))))
		}},
		"transfer efficiency": {Result: unit.InSquareFootPerUSGallon, Got: func(r workingtest.Row) (float64, error) {
			return si(film.Practical.Of(unit.SpreadingRate(r.Quantity("rated", unit.InSquareFootPerUSGallon)), unit.Share(1-r.Number("efficiency"))))
		}},
	}, film.Rules()...)
}

// rate is the area per volume of product as sold for a dry film.
func rate(vs unit.SolidsByVolume, t unit.ByVolume, dft unit.DryFilm) (float64, error) {
	thinned, err := film.Thinned.Of(vs, 0, t, 0)
	if err != nil {
		return 0, err
	}
	wft, err := film.Wet.Of(dft, thinned)
	if err != nil {
		return 0, err
	}
	return si(film.RateAsSold.Of(t, wft))
}
