package cure_test

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// given is a typed figure in a scale.
func given[Q unit.Quantity](n float64, s unit.Scale) working.Figure[Q] {
	return working.Given(unit.Of[Q](n, s), "test", s, "typed", source.Typed)
}

func celsius(n float64) working.Figure[unit.Temperature] {
	return given[unit.Temperature](n, unit.InCelsius)
}
func grams(n float64) working.Figure[unit.Mass]     { return given[unit.Mass](n, unit.InGram) }
func percent(n float64) working.Figure[unit.ByMass] { return given[unit.ByMass](n, unit.InPercent) }
func minutes(n float64) working.Figure[unit.Time]   { return given[unit.Time](n, unit.InMinute) }
func density(n float64) working.Figure[unit.Density] {
	return given[unit.Density](n, unit.InKilogramPerLitre)
}
func factor(n float64) working.Figure[unit.Factor] { return given[unit.Factor](n, unit.InPure) }
func energy(n float64) working.Figure[unit.MolarEnergy] {
	return given[unit.MolarEnergy](n, unit.InKilojoulePerMole)
}

func inCelsius(f working.Figure[unit.Temperature]) float64 {
	return unit.InCelsius.From(float64(f.Value))
}
func inMinutes(f working.Figure[unit.Time]) float64 { return unit.InMinute.From(float64(f.Value)) }
func inGrams(f working.Figure[unit.Mass]) float64   { return unit.InGram.From(float64(f.Value)) }

func row(c, p float64) cure.Row {
	return cure.Row{Surface: unit.Of[unit.Temperature](c, unit.InCelsius), Catalyst: unit.Of[unit.ByMass](p, unit.InPercent)}
}

// The generic promoted polyester gel coat: common practice, no maker's sheet.
func table(t testing.TB) cure.Table {
	made, err := cure.NewTable("generic gel coat", source.CommonPractice,
		row(15, 2.20), row(18, 2.00), row(20, 1.85), row(22, 1.70), row(25, 1.50), row(28, 1.35), row(30, 1.25), row(32, 1.20))
	require.NoError(t, err)
	return made
}

func gel() cure.Gel {
	return cure.Gel{
		Time:        cure.Range[unit.Time]{Low: minutes(10), Mid: minutes(13), High: minutes(17)},
		Temperature: celsius(25),
		Catalyst:    percent(1.8),
		Order:       cure.Range[unit.Factor]{Low: factor(0.5), Mid: factor(0.8), High: factor(1)},
		Energy:      cure.Range[unit.MolarEnergy]{Low: energy(40), Mid: energy(55), High: energy(85)},
		Mass:        grams(100),
	}
}

func card(t testing.TB) cure.Card {
	return cure.Card{
		Table: table(t), Floor: percent(1.0), Ceiling: percent(2.5),
		Limits: cure.Limits{Coldest: celsius(15).Value, Warmest: celsius(32).Value},
		Takes:  cure.Takes{Families: []cure.Family{cure.Ketone, cure.KetoneLowHydrogenPeroxide}, Promoted: true},
	}
}

func tool(t testing.TB, kind cure.ToolKind, step string) cure.Tool {
	made, err := cure.NewTool(kind, decimal.RequireFromString(step))
	require.NoError(t, err)
	return made
}

// shed is a shed where product, surface and evening are equally warm.
func shed(c float64) cure.Shed {
	return cure.Shed{Product: celsius(c), Surface: celsius(c), ColdestAhead: celsius(c).Value}
}

// upTo is a largest cup that depends on nothing.
func upTo(g float64) cure.Largest {
	return func(working.Figure[unit.ByMass]) (working.Figure[unit.Mass], error) { return grams(g), nil }
}

func cup(t testing.TB, mass, c float64) cure.Cup {
	return cure.Cup{
		Mix: cure.Mix{Product: grams(mass)}, Card: card(t),
		Peroxide: cure.Peroxide{Family: cure.Ketone, Density: density(1.15)},
		Shed:     shed(c), Tool: tool(t, cure.Scale, "0.1"), Largest: upTo(500),
	}
}

// work is the short nap roller's of the worked table: 0.3 m²/min at 500 g/m² out
// of the cup, with nothing left behind.
func work() cure.Work {
	return cure.Work{
		Speed:   given[unit.SpreadingSpeed](0.3, unit.InSquareMetrePerMinute),
		Stretch: minutes(1), Mixing: minutes(1.5), Usable: given[unit.Share](0.67, unit.InPure),
		Film: given[unit.WetFilm](400, unit.InMicrometre), Density: density(1.25),
		Loss: given[unit.Share](0, unit.InPure), Leftover: grams(0),
	}
}

// batch is the card's 500 g, stated for 25 °C with the table's 1.5 %.
func batch(t testing.TB) cure.Batch {
	b, err := gel().At(celsius(25), percent(1.5))
	require.NoError(t, err)
	return cure.Batch{Most: grams(500), Gel: b.Early}
}
