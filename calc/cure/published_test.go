package cure_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// column reads a column as a figure.
func column[Q unit.Quantity](r workingtest.Row, name string, s unit.Scale) working.Figure[Q] {
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
		return work().InHand(gel(), s, c, batch(t), cure.Timed)
	}
	workingtest.Published(t, "gel.txt", map[string]workingtest.Case{
		"time of own tests":         tested(unit.InMinute, func(g cure.Gel) float64 { return float64(g.Time.Mid.Value) }, byTimes),
		"early end of own tests":    tested(unit.InMinute, func(g cure.Gel) float64 { return float64(g.Time.Low.Value) }, byTimes),
		"late end of own tests":     tested(unit.InMinute, func(g cure.Gel) float64 { return float64(g.Time.High.Value) }, byTimes),
		"least energy of own tests": tested(unit.InKilojoulePerMole, func(g cure.Gel) float64 { return float64(g.Energy.Low.Value) }, twoTests),
		"temperature of own tests":  tested(unit.InCelsius, func(g cure.Gel) float64 { return float64(g.Temperature.Value) }, byTemperatures),
		"catalyst of own tests":     tested(unit.InPercent, func(g cure.Gel) float64 { return float64(g.Catalyst.Value) }, byCatalysts),
		"mass of own tests":         tested(unit.InGram, func(g cure.Gel) float64 { return float64(g.Mass.Value) }, byMasses),
		"speed-up":                  {Result: unit.InPure, Got: speedUp},
		"energy of own tests":       {Result: unit.InKilojoulePerMole, Got: energyOfTests},
		"energy between two points": {Result: unit.InKilojoulePerMole, Got: energyOfLine},
		"energy of a line":          {Result: unit.InKilojoulePerMole, Got: energyOfTable},
		"measured gel time over temperature": {Result: unit.InMinute, Got: func(r workingtest.Row) (float64, error) {
			g := fixedRatio(temperature(r, "known at"), column[unit.MolarEnergy](r, "energy", unit.InKilojoulePerMole))
			g.Time = exactly(column[unit.Time](r, "known", unit.InMinute))
			b, err := g.At(temperature(r, "at"), working.Figure[unit.ByMass]{})
			return float64(b.Mid.Value), err
		}},
		"measured gel time over share": {Result: unit.InMinute, Got: func(r workingtest.Row) (float64, error) {
			g := gel()
			g.Time, g.Catalyst = exactly(column[unit.Time](r, "known", unit.InMinute)), column[unit.ByMass](r, "known with", unit.InPercent)
			g.Order = exactly(column[unit.Factor](r, "power", unit.InPure))
			b, err := g.At(g.Temperature, column[unit.ByMass](r, "with", unit.InPercent))
			return float64(b.Mid.Value), err
		}},
		"pot life":         {Result: unit.InPure, Got: potLifeShare},
		"gel time, middle": band(func(b cure.Band) working.Figure[unit.Time] { return b.Mid }),
		"gel time, early":  band(func(b cure.Band) working.Figure[unit.Time] { return b.Early }),
		"gel time, late":   band(func(b cure.Band) working.Figure[unit.Time] { return b.Late }),
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
		"largest cup, never timed": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			s := cure.Shed{Surface: temperature(r, "surface"), Product: temperature(r, "surface")}
			c, err := table(t).At(s.Surface)
			if err != nil {
				return 0, err
			}
			h, err := work().InHand(gel(), s, c, batch(t), cure.Untimed)
			return float64(h.Largest.Value), err
		}},
		"largest cup": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			h, err := hand(r, "product")
			return float64(h.Largest.Value), err
		}},
	}, cure.Rules()...)
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

// tested is a case of what the builder's cup tests make of the default gel coat.
func tested(result unit.Scale, pick func(cure.Gel) float64, tests func(workingtest.Row) []cure.CupTest) workingtest.Case {
	return workingtest.Case{Result: result, Got: func(r workingtest.Row) (float64, error) {
		g, err := gel().Tested(tests(r)...)
		return pick(g), err
	}}
}

func usualTest() cure.CupTest {
	return cure.CupTest{Gel: minutes(12), Temperature: celsius(22), Catalyst: percent(1.5), Mass: grams(100)}
}

// byTimes is usual tests with a row's times in minutes.
func byTimes(r workingtest.Row) (list []cure.CupTest) {
	for word := range strings.FieldsSeq(r.Text("times")) {
		n, err := strconv.ParseFloat(word, 64)
		if err != nil {
			panic(err)
		}
		test := usualTest()
		test.Gel = minutes(n)
		list = append(list, test)
	}
	return list
}

// byTemperatures is two tests whose times fit the temperatures they were taken at.
func byTemperatures(r workingtest.Row) []cure.CupTest {
	colder, warmer := usualTest(), usualTest()
	colder.Temperature, warmer.Temperature = temperature(r, "colder"), temperature(r, "warmer")
	colder.Gel, warmer.Gel = minutes(20), minutes(10)
	return []cure.CupTest{colder, warmer}
}

func byCatalysts(r workingtest.Row) []cure.CupTest {
	less, more := usualTest(), usualTest()
	less.Catalyst, more.Catalyst = column[unit.ByMass](r, "less", unit.InPercent), column[unit.ByMass](r, "more", unit.InPercent)
	return []cure.CupTest{less, more}
}

func byMasses(r workingtest.Row) []cure.CupTest {
	one, other := usualTest(), usualTest()
	one.Mass, other.Mass = column[unit.Mass](r, "one", unit.InGram), column[unit.Mass](r, "other", unit.InGram)
	return []cure.CupTest{one, other}
}

func energyOfTests(r workingtest.Row) (float64, error) {
	g, err := gel().Tested(twoTests(r)...)
	return float64(g.Energy.Mid.Value), err
}

func energyOfLine(r workingtest.Row) (float64, error) {
	return float64(cure.EnergyOfLine(gel(), twoTests(r)...)), nil
}

// energyOfTable is that of the line through a row's temperatures and times.
func energyOfTable(r workingtest.Row) (float64, error) {
	var tests []cure.CupTest
	times := strings.Fields(r.Text("minutes"))
	for i, word := range strings.Fields(r.Text("celsius")) {
		at, bad := strconv.ParseFloat(word, 64)
		n, worse := strconv.ParseFloat(times[i], 64)
		if err := errors.Join(bad, worse); err != nil {
			return 0, err
		}
		test := usualTest()
		test.Temperature, test.Gel = celsius(at), minutes(n)
		tests = append(tests, test)
	}
	return float64(cure.EnergyOfLine(gel(), tests...)), nil
}

var toolKinds = map[string]cure.ToolKind{"scale": cure.Scale, "syringe": cure.Syringe, "drops": cure.Drops}

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
			return si(k.Smallest(column[unit.ByMass](r, "share", unit.InPercent), cure.Mix{Product: grams(100)},
				tool(t, toolKinds[r.Text("tool")], r.Text("step")), cure.Peroxide{Density: density(1.15)}))
		}},
		"table": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			d, err := dosed(r)
			return float64(d.Wanted.Value), err
		}},
		"between the rows of a table": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
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
			k.Tool, k.Largest = tool(t, cure.Scale, r.Text("step")), upTo(2000)
			d, err := k.Dose()
			return float64(d.Error.Value / d.Share.Value), err
		}},
		"all that cures": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			mass := func(name string) working.Figure[unit.Mass] { return column[unit.Mass](r, name, unit.InGram) }
			return float64(cure.Mix{Product: mass("product"), Thinner: mass("thinner"), Wax: mass("wax"), Pigment: mass("pigment")}.Whole().Value), nil
		}},
		"dose on the tool's mark": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			k := cup(t, unit.InGram.From(r.Quantity("product", unit.InGram)), 25)
			k.Tool = tool(t, toolKinds[r.Text("tool")], r.Text("step"))
			d, err := k.Dose()
			return float64(d.Mass.Value), err
		}},
		"equal cups": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			mass := func(name string) working.Figure[unit.Mass] { return column[unit.Mass](r, name, unit.InGram) }
			cups, err := cure.CupsFor(mass("need"), mass("largest"), mass("smallest"), mass("left"))
			return float64(cups.Each.Value), err
		}},
		"cup in whole grams": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			cups, err := cure.CupsFor(grams(10), column[unit.Mass](r, "largest", unit.InGram), grams(1), grams(0))
			if err != nil {
				return 0, err
			}
			return cups.Count.Step.From[1].Out, nil
		}},
		"other part of a fixed ratio": {Result: unit.InGram, Got: func(r workingtest.Row) (float64, error) {
			p, err := cure.RatioByMass(column[unit.ByMass](r, "ratio", unit.InPure), noDensity, noDensity).ForTotal(column[unit.Mass](r, "total", unit.InGram))
			return float64(p.B.Mass.Value), err
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
	}, cure.Rules()...)
}
