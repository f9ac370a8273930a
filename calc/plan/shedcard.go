package plan

import (
	"shedreckoner/calc/cure"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ShedCups are the cups of a shed card, all in the cup that cures.
var ShedCups = []unit.Mass{100 * unit.Gram, 200 * unit.Gram, 300 * unit.Gram, 400 * unit.Gram, 500 * unit.Gram}

// ShedRow is a shed card's line: one temperature of the surface.
type ShedRow struct {
	Surface unit.Temperature
	Doses   []string // by cup: grams and millilitres, or a dash where there is none
}

// ShedCard is the doses of the bench's card and tool for the wall, at the
// table's own temperatures, product as warm as the surface. Each comes through
// the same door as a cup's dose; what that refuses stands as a dash.
func ShedCard(p *Plan, b *Bench, table cure.Table) []ShedRow {
	maker := &bencher{plan: p, typed: &p.Job.Bench, out: Bench{Card: b.Card}}
	maker.hand()
	var cup cure.Cup
	maker.tool(&cup)
	if cup.Tool.Kind() == 0 {
		return nil
	}
	cup.Card, cup.Peroxide = maker.cup.Card, maker.cup.Peroxide
	cup.Card.Table = table
	var rows []ShedRow
	for _, r := range table.Rows() {
		row := ShedRow{Surface: r.Surface}
		at := working.Given(r.Surface, "surface", unit.InCelsius, "", source.Exact)
		cup.Shed = cure.Shed{Product: at, Surface: at, ColdestAhead: r.Surface}
		for _, m := range ShedCups {
			row.Doses = append(row.Doses, shedDose(cup, m))
		}
		rows = append(rows, row)
	}
	return rows
}

func shedDose(cup cure.Cup, m unit.Mass) string {
	cup.Mix = cure.Mix{Product: working.Given(m, "all that cures", unit.InGram, "", source.Exact)}
	cup.Largest = cup.Mix.Product
	d, err := cup.Dose()
	if err != nil {
		return "–"
	}
	return d.Grams.String() + " / " + d.Millilitres.String()
}
