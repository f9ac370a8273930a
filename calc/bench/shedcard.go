package bench

import (
	"strconv"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ShedCups are the cups of a shed card, by the mass of everything that cures.
var ShedCups = []unit.Mass{100 * unit.Gram, 200 * unit.Gram, 300 * unit.Gram, 400 * unit.Gram, 500 * unit.Gram}

// ShedRow is a shed card's line: one temperature of the surface.
type ShedRow struct {
	Surface unit.Temperature
	Doses   []string // by cup, in the unit of the tool alone; drops are bare; a dash where there is none
}

// ShedCard is the doses of the bench's card and tool for the wall, at the table's
// own temperatures, with the product as warm as the surface. Each is made as a
// cup's dose is; one that is refused is a dash, also where the cup is too large for
// its minutes.
func ShedCard(p *plan.Plan, now Now, table cure.Table) []ShedRow {
	b := newBencher(p, now)
	choose, mix, gel, dose := chooser{b}, mixer{b}, gelling{b}, doser{b}
	if !choose.inputs() || b.out.IsRatio {
		return nil
	}
	mix.recipe()
	gel.knowledge()
	dose.tool()
	if b.cup.Tool.Kind() == 0 {
		return nil
	}
	b.cup.Card.Table, b.cup.Opened = table, nil
	var rows []ShedRow
	for _, r := range table.Rows() {
		row := ShedRow{Surface: r.Surface}
		at := working.Given(r.Surface, "surface", unit.InCelsius, "", source.Exact)
		b.cup.Shed = cure.Shed{Product: at, Surface: at, ColdestAhead: r.Surface}
		for _, m := range ShedCups {
			row.Doses = append(row.Doses, dose.shedDose(m))
		}
		rows = append(rows, row)
	}
	return rows
}

func (b doser) shedDose(m unit.Mass) string {
	d, err := b.dosed(working.Given(m, "all that cures", unit.InGram, "", source.Exact))
	if err != nil {
		return "–"
	}
	switch b.cup.Tool.Kind() {
	case cure.Syringe:
		return d.Millilitres.String()
	case cure.Drops:
		return strconv.FormatInt(d.Drops, 10)
	}
	return d.Grams.String()
}
