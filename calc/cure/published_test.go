package cure_test

import (
	"testing"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// column reads a column as a figure.
func column[Q unit.Quantity](r workingtest.Row, name string, s *unit.Scale) working.Figure[Q] {
	return working.Given(Q(r.Quantity(name, s)), name, s, "published", source.Published)
}

func temperature(r workingtest.Row, name string) working.Figure[unit.Temperature] {
	return column[unit.Temperature](r, name, unit.InCelsius)
}

func si[Q unit.Quantity](f working.Figure[Q], err error) (float64, error) {
	return float64(f.Value), err
}

func TestPublishedGelTimes(t *testing.T) {
	band := func(pick func(cure.Band) working.Figure[unit.Time]) workingtest.Case {
		return workingtest.Case{Result: unit.InMinute, Got: func(r workingtest.Row) (float64, error) {
			b, err := gel().At(temperature(r, "surface"), column[unit.ByMass](r, "catalyst", unit.InPercent))
			return float64(pick(b).Value), err
		}}
	}
	hand := func(r workingtest.Row, productColumn string) (cure.Hand, error) {
		s := cure.Shed{Surface: temperature(r, "surface"), Product: temperature(r, productColumn)}
		c, err := table(t).At(s.Surface)
		if err != nil {
			return cure.Hand{}, err
		}
		return work().InHand(gel(), s, c, batch(t), true)
	}
	workingtest.Published(t, "gel.txt", map[string]workingtest.Case{
		"speed-up":                  {Result: unit.InPure, Got: speedUp},
		"energy of own tests":       {Result: unit.InKilojoulePerMole, Got: energyOfTests},
		"energy between two points": {Result: unit.InKilojoulePerMole, Got: energyOfLine},
		"pot life":                  {Result: unit.InPure, Got: potLifeShare},
		"gel time, middle":          band(func(b cure.Band) working.Figure[unit.Time] { return b.Mid }),
		"gel time, early":           band(func(b cure.Band) working.Figure[unit.Time] { return b.Early }),
		"gel time, late":            band(func(b cure.Band) working.Figure[unit.Time] { return b.Late }),
		"spreading minutes": {Result: unit.InMinute, Got: func(r workingtest.Row) (float64, error) {
			h, err := hand(r, "product")
			return float64(h.Spreading.Value), err
		}},
		"largest cup by time": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			h, err := hand(r, "surface")
			if err != nil {
				return 0, err
			}
			return si(cure.LargestByTime(work(), h.Spreading))
		}},
		"largest cup": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			h, err := hand(r, "product")
			return float64(h.Largest.Value), err
		}},
	}, cure.Rules...)
}

// exactly is a range without width.
func exactly[Q unit.Quantity](f working.Figure[Q]) cure.Range[Q] {
	return cure.Range[Q]{Low: f, Mid: f, High: f}
}

// fixedRatio is a pot life of an hour at a temperature.
func fixedRatio(at working.Figure[unit.Temperature], ea working.Figure[unit.MolarEnergy]) cure.Gel {
	return cure.Gel{Time: exactly(minutes(60)), Temperature: at, Energy: exactly(ea), Mass: grams(100)}
}

func speedUp(r workingtest.Row) (float64, error) {
	cold := fixedRatio(temperature(r, "colder"), column[unit.MolarEnergy](r, "energy", unit.InKilojoulePerMole))
	b, err := cold.InCup(temperature(r, "warmer"), working.Figure[unit.ByMass]{}, 100*unit.Gram)
	return float64(cold.Time.Mid.Value / b.Mid.Value), err
}

func potLifeShare(r workingtest.Row) (float64, error) {
	listed := fixedRatio(celsius(25), energy(57))
	b, err := listed.InCup(temperature(r, "temperature"), working.Figure[unit.ByMass]{}, 100*unit.Gram)
	return float64(b.Mid.Value / listed.Time.Mid.Value), err
}

func twoTests(r workingtest.Row) []cure.CupTest {
	test := func(at, time string) cure.CupTest {
		return cure.CupTest{Gel: column[unit.Time](r, time, unit.InMinute), Temperature: temperature(r, at), Catalyst: percent(1.5), Mass: grams(100)}
	}
	return []cure.CupTest{test("colder", "time"), test("warmer", "sooner")}
}

func energyOfTests(r workingtest.Row) (float64, error) {
	g, err := gel().Tested(twoTests(r)...)
	return float64(g.Energy.Mid.Value), err
}

func energyOfLine(r workingtest.Row) (float64, error) {
	return float64(cure.EnergyOfLine(gel(), twoTests(r)...)), nil
}

func TestPublishedDoses(t *testing.T) {
	dosed := func(r workingtest.Row) (cure.Dose, error) {
		at := unit.InCelsius.From(float64(temperature(r, "surface").Value))
		return cup(t, 100, at).Dose()
	}
	smallestAt := func(r workingtest.Row) (float64, error) {
		c, err := table(t).At(temperature(r, "surface"))
		if err != nil {
			return 0, err
		}
		k := cup(t, 100, 25)
		return si(card(t).Smallest(c, k.Mix, tool(t, cure.Scale, r.Text("step")), k.Peroxide))
	}
	workingtest.Published(t, "dose.txt", map[string]workingtest.Case{
		"catalyst by volume": {Result: unit.InMillilitre, Got: func(r workingtest.Row) (float64, error) {
			v, err := cure.VolumeOfVolume.Of(unit.ByVolume(r.Quantity("share", unit.InPercent)), unit.Volume(r.Quantity("product", unit.InMillilitre)))
			return float64(v), err
		}},
		"share by mass of a share by volume": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			c, err := cure.ShareByMass.Of(unit.ByVolume(r.Quantity("share", unit.InPercent)),
				unit.Density(r.Quantity("catalyst density", unit.InKilogramPerLitre)), unit.Density(r.Quantity("product density", unit.InKilogramPerLitre)))
			return float64(c), err
		}},
		"dose": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			g, err := cure.DoseRule.Of(unit.ByMass(r.Quantity("share", unit.InPercent)), unit.Mass(r.Quantity("product", unit.InGram)))
			return float64(g), err
		}},
		"dose in millilitres": {Result: unit.InMillilitre, Got: func(r workingtest.Row) (float64, error) {
			v, err := cure.DoseVolume.Of(unit.Mass(r.Quantity("dose", unit.InGram)), unit.Density(r.Quantity("density", unit.InKilogramPerLitre)))
			return float64(v), err
		}},
		"smallest cup": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			k := card(t)
			k.Floor, k.Ceiling = column[unit.ByMass](r, "floor", unit.InPercent), column[unit.ByMass](r, "ceiling", unit.InPercent)
			kinds := map[string]cure.ToolKind{"scale": cure.Scale, "syringe": cure.Syringe, "drops": cure.Drops}
			return si(k.Smallest(column[unit.ByMass](r, "share", unit.InPercent), cure.Mix{Product: grams(100)},
				tool(t, kinds[r.Text("tool")], r.Text("step")), cure.Peroxide{Density: density(1.15)}))
		}},
		"table": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			d, err := dosed(r)
			return float64(d.Wanted.Value), err
		}},
		"table, millilitres": {Result: unit.InMillilitre, Got: func(r workingtest.Row) (float64, error) {
			d, err := dosed(r)
			if err != nil {
				return 0, err
			}
			return si(cure.DoseVolume.Figure(d.Wanted, density(1.15)))
		}},
		"smallest cup of the table": {Result: unit.InGram, Got: smallestAt},
		"step as a share of the dose": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			k := cup(t, r.Quantity("mass", unit.InGram)*1000, unit.InCelsius.From(r.Quantity("surface", unit.InCelsius)))
			k.Tool, k.Largest = tool(t, cure.Scale, r.Text("step")), grams(1000)
			d, err := k.Dose()
			return float64(d.Error.Value / d.Share.Value), err
		}},
		"part of a fixed ratio": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			p, err := cure.RatioByMass(column[unit.ByMass](r, "ratio", unit.InPure), noDensity, noDensity).ForTotal(column[unit.Mass](r, "total", unit.InGram))
			return float64(p.A.Mass.Value), err
		}},
		"good practice": {Result: unit.InPercent, Got: func(r workingtest.Row) (float64, error) {
			rows := table(t).Rows()
			if r.Text("bound") == "most" {
				return float64(rows[0].Catalyst), nil
			}
			return float64(rows[len(rows)-1].Catalyst), nil
		}},
	}, cure.Rules...)
}
