package air_test

import (
	"math"
	"strings"
	"testing"

	"shedreckoner/calc/air"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

func given[Q unit.Quantity](v Q, scale unit.Scale) working.Figure[Q] {
	return working.Given(v, "given", scale, "typed", source.Typed)
}

func celsius(t float64) working.Figure[unit.Temperature] {
	return given(unit.Of[unit.Temperature](t, unit.InCelsius), unit.InCelsius)
}

func percent(rh float64) working.Figure[unit.Share] {
	return given(unit.Of[unit.Share](rh, unit.InPercent), unit.InPercent)
}

type row = workingtest.Row

// vapourOf is the vapour pressure of a row's columns t and RH.
func vapourOf(r row) (unit.Pressure, error) {
	return air.Vapour.Of(unit.Temperature(r.Quantity("t", unit.InCelsius)), unit.Share(r.Quantity("RH", unit.InPercent)))
}

func dewOf(r row) (unit.Temperature, error) {
	e, err := vapourOf(r)
	if err != nil {
		return 0, err
	}
	return air.Dew.Of(e)
}

func dewCase(r row) (float64, error) {
	td, err := dewOf(r)
	return float64(td), err
}

// frostPoint is what tables print below 0 °C: Magnus over ice, constants 22.46
// and 272.62 °C of WMO-No. 8 (from memory). It is a trap, not a rule of ours.
func frostPoint(r row) (float64, error) {
	e, err := vapourOf(r)
	x := math.Log(float64(e) / 611.2)
	return float64(unit.ZeroCelsius) + 272.62*x/(22.46-x), err
}

func TestPublishedDewPoints(t *testing.T) {
	workingtest.Published(t, "dew.txt", map[string]workingtest.Case{
		"dew point": {Result: unit.InCelsius, Got: dewCase},
		"saturated vapour": {Result: unit.InHectopascal, Got: func(r row) (float64, error) {
			e, err := air.Vapour.Of(unit.Temperature(r.Quantity("t", unit.InCelsius)), 1)
			return float64(e), err
		}},
		"surface over dew point": {Result: unit.InFahrenheitDifference, Got: func(r row) (float64, error) {
			m, err := air.OverDew.Of(unit.Temperature(r.Quantity("ts", unit.InFahrenheit)), unit.Temperature(r.Quantity("td", unit.InFahrenheit)))
			return float64(m), err
		}},
		"humidity after heating": {Result: unit.InPercent, Got: func(r row) (float64, error) {
			td, err := dewOf(r)
			if err != nil {
				return 0, err
			}
			rh, err := air.HumidityAt.Of(td, unit.Temperature(r.Quantity("warmer", unit.InCelsius)))
			return float64(rh), err
		}},
		"water in a room": {Result: unit.InKilogram, Got: func(r row) (float64, error) {
			w, err := waterOf(r)
			return w * r.Quantity("volume", unit.InCubicMetre), err
		}},
		"rise of the day":         {Result: unit.InCelsius, Got: onCurve(true)},
		"fall of the day":         {Result: unit.InCelsius, Got: onCurve(false)},
		"dew point in Fahrenheit": {Result: unit.InFahrenheit, Got: dewCase},
		"least surface temperature": {Result: unit.InFahrenheit, Got: func(r row) (float64, error) {
			td, err := dewOf(r)
			return float64(td) + r.Quantity("margin", unit.InFahrenheitDifference), err
		}},
		"frost point": {Result: unit.InCelsius, Got: func(r row) (float64, error) {
			frost, err := frostPoint(r)
			if td, err := dewOf(r); err != nil || float64(td) > frost-0.1 {
				t.Errorf("dew point %v isn't clear below the frost point %v (%v)", td, frost, err)
			}
			return frost, err
		}},
		"dew margin": {Result: unit.InCelsiusDifference, Got: func(row) (float64, error) { return float64(air.DewMargin.Value), nil }},
		"humidity of a dew point": {Result: unit.InPercent, Got: func(r row) (float64, error) {
			rh, err := air.HumidityAt.Of(unit.Temperature(r.Quantity("td", unit.InCelsius)), unit.Temperature(r.Quantity("t", unit.InCelsius)))
			return float64(rh), err
		}},
		"water in the air": {Result: unit.InGramPerCubicMetre, Got: waterOf},
	}, air.Rules()...)
}

func waterOf(r row) (float64, error) {
	e, err := vapourOf(r)
	if err != nil {
		return 0, err
	}
	w, err := air.WaterInAir.Of(e, unit.Temperature(r.Quantity("t", unit.InCelsius)))
	return float64(w), err
}

// onCurve is the air temperature of a row's day at its hour, before 15:00 or after.
func onCurve(rises bool) func(row) (float64, error) {
	return func(r row) (float64, error) {
		hour := func(column string) unit.Time { return unit.Time(r.Number(column)) * unit.Hour }
		from, to := unit.Temperature(r.Quantity("low", unit.InCelsius)), unit.Temperature(r.Quantity("high", unit.InCelsius))
		since, span := hour("hour")-hour("sunrise"), 15*unit.Hour-hour("sunrise")
		if !rises {
			from, to, since, span = to, from, hour("hour")-15*unit.Hour, 9*unit.Hour+hour("sunrise")
		}
		p, err := air.Along.Of(since, span)
		if err != nil {
			return 0, err
		}
		t, err := air.Between.Of(from, to, p)
		return float64(t), err
	}
}

func emission(rule working.Rule1[unit.ByMass, unit.Emission], result unit.Scale) workingtest.Case {
	return workingtest.Case{Result: result, Got: func(r row) (float64, error) {
		e, err := rule.Of(unit.ByMass(r.Quantity("h", unit.InPercent)))
		return float64(e), err
	}}
}

func TestPublishedStyrene(t *testing.T) {
	workingtest.Published(t, "styrene.txt", map[string]workingtest.Case{
		"boat rule":        emission(air.BoatEmission, unit.InGramPerKilogram),
		"sprayed gel coat": emission(air.SprayedEmission, unit.InPoundPerShortTon),
		"not atomised":     emission(air.OtherEmission, unit.InPoundPerShortTon),
		"lb per ton in g per kg": {Result: unit.InGramPerKilogram, Got: func(r row) (float64, error) {
			return r.Quantity("E", unit.InPoundPerShortTon), nil
		}},
		"styrene in air": {Result: unit.InMilligramPerCubicMetre, Got: func(r row) (float64, error) {
			c, err := air.Concentration.Of(unit.Share(r.Quantity("ppm", unit.InPartsPerMillion)), air.StyreneMolarMass.Value,
				air.Atmosphere.Value, unit.Temperature(r.Quantity("t", unit.InCelsius)))
			return float64(c), err
		}},
		"styrene": {Result: unit.InPure, Got: func(r row) (float64, error) {
			if r.Text("property") == "molar mass" {
				return unit.InGramPerMole.From(float64(air.StyreneMolarMass.Value)), nil
			}
			return unit.InPartsPerMillion.From(float64(air.StyreneExplosive.Value)), nil
		}},
		"vapour pressure of styrene": {Result: unit.InKilopascal, Got: func(r row) (float64, error) {
			p, err := air.StyreneVapour.Of(unit.Temperature(r.Quantity("t", unit.InCelsius)))
			return float64(p), err
		}},
		"saturated air": {Result: unit.InPartsPerMillion, Got: func(r row) (float64, error) {
			p, err := air.StyreneVapour.Of(unit.Temperature(r.Quantity("t", unit.InCelsius)))
			if err != nil {
				return 0, err
			}
			x, err := air.Saturated.Of(p, air.Atmosphere.Value)
			return float64(x), err
		}},
		"saturated air of a pressure": {Result: unit.InPartsPerMillion, Got: func(r row) (float64, error) {
			x, err := air.Saturated.Of(unit.Of[unit.Pressure](r.Number("P"), unit.InKilopascal), air.Atmosphere.Value)
			return float64(x), err
		}},
		"explosive limit": {Result: unit.InPartsPerMillion, Got: func(r row) (float64, error) { r.Text("what"); return float64(air.StyreneExplosive.Value), nil }},
		"limit": {Result: unit.InPartsPerMillion, Got: func(r row) (float64, error) {
			for _, e := range air.Exposures {
				if !strings.HasPrefix(e.Agency, r.Text("agency")) {
					continue
				}
				if r.Text("over") == "short" {
					return float64(e.Short), nil
				}
				return float64(e.EightHours), nil
			}
			return math.NaN(), nil
		}},
	}, air.Rules()...)
}

// hourly is the mass of solvent in a row's liquid, used in an hour.
func hourly(r row) unit.MassFlow {
	liquid, share, density := r.Quantity("liquid", unit.InUSGallon), r.Quantity("share", unit.InPercent), r.Quantity("SG", unit.InKilogramPerLitre)
	return unit.MassFlow(liquid * share * density / float64(unit.Hour))
}

// concentration is that of a share of the air, for a row's columns M and t.
func concentration(r row, x unit.Share) (unit.Density, error) {
	return air.Concentration.Of(x, unit.MolarMass(r.Quantity("M", unit.InGramPerMole)), air.Atmosphere.Value,
		unit.Temperature(r.Quantity("t", unit.InCelsius)))
}

func TestPublishedVentilation(t *testing.T) {
	workingtest.Published(t, "ventilation.txt", map[string]workingtest.Case{
		"vapour flow": {Result: unit.InLitrePerMinute, Got: func(r row) (float64, error) {
			hundredth, err := concentration(r, 0.01)
			return float64(hourly(r)) / (100 * float64(hundredth)), err
		}},
		"air for a vapour": {Result: unit.InLitrePerMinute, Got: func(r row) (float64, error) {
			limit, err := concentration(r, unit.Share(r.Quantity("limit", unit.InPartsPerMillion)))
			if err != nil {
				return 0, err
			}
			q, err := air.AirFor.Of(unit.Factor(r.Number("K")), hourly(r), limit)
			return float64(q), err
		}},
		"vapour in air": {Result: unit.InMilligramPerCubicMetre, Got: func(r row) (float64, error) {
			c, err := concentration(r, unit.Share(r.Quantity("ppm", unit.InPartsPerMillion)))
			return float64(c), err
		}},
		"air for a gas": {Result: unit.InCubicMetrePerHour, Got: func(r row) (float64, error) {
			limit, err := concentration(r, unit.Share(r.Quantity("limit", unit.InPartsPerMillion)))
			if err != nil {
				return 0, err
			}
			return airFor(r, limit)
		}},
		"air for a limit": {Result: unit.InCubicMetrePerHour, Got: func(r row) (float64, error) {
			return airFor(r, unit.Density(r.Quantity("limit", unit.InMilligramPerCubicMetre)))
		}},
		"share of a limit in a closed room": {Result: unit.InPure, Got: func(r row) (float64, error) {
			x, err := air.ShareOfLimit.Of(unit.Mass(r.Quantity("m", unit.InGram)), unit.Volume(r.Quantity("V", unit.InCubicMetre)),
				unit.Density(r.Quantity("limit", unit.InMilligramPerCubicMetre)))
			return float64(x), err
		}},
		"air for styrene": {Result: unit.InCubicMetrePerHour, Got: func(r row) (float64, error) {
			q, err := air.StyreneAir(
				given(unit.MassFlow(r.Quantity("G", unit.InGramPerHour)), unit.InGramPerHour),
				given(unit.Share(r.Quantity("limit", unit.InPartsPerMillion)), unit.InPartsPerMillion),
				given(unit.Temperature(r.Quantity("t", unit.InCelsius)), unit.InCelsius),
				given(unit.Factor(r.Number("K")), unit.InPure))
			return float64(q.Value), err
		}},
	}, air.Rules()...)
}

func airFor(r row, limit unit.Density) (float64, error) {
	q, err := air.AirFor.Of(unit.Factor(r.Number("K")), unit.MassFlow(r.Quantity("G", unit.InGramPerHour)), limit)
	return float64(q), err
}
