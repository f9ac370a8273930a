package chain

import (
	"errors"

	"shedreckoner/calc/air"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/source"
)

// Why a card has no catalyst table, besides what is wrong with the rows.
var (
	ErrNoTable    = errors.New("chain: no catalyst table")
	ErrUnfinished = errors.New("chain: the builder's catalyst table has an unfinished row")
)

// DoseTable is the card's catalyst table: the one that the builder typed from the
// maker's sheet, or the one that ships. Errors: ErrNoTable, ErrUnfinished,
// *cure.TableError.
func DoseTable(card *job.Card) (cure.Table, error) {
	rows, origin, mark := card.DoseTable, card.Name, source.CommonPractice
	if card.DoseRows > 0 {
		if card.DoseRows != len(card.OwnDoses) {
			return cure.Table{}, ErrUnfinished
		}
		rows, origin, mark = card.OwnDoses, "your table", source.Typed
	}
	if len(rows) == 0 {
		return cure.Table{}, ErrNoTable
	}
	list := make([]cure.Row, len(rows))
	for i, r := range rows {
		list[i] = cure.Row{Surface: r.Surface, Catalyst: r.Catalyst}
	}
	return cure.NewTable(origin, mark, list...)
}

// AirLimits gives the air in which a card's material may be coated, and for how
// long it must hold: all of it stands on every card that is coated or filled with.
func AirLimits(c *job.Card) air.Limits {
	return air.Limits{
		Least: c.SurfaceLeast.Value, Most: c.SurfaceMost.Value, Driest: c.HumidityLeast.Value, Dampest: c.HumidityMost.Value,
		Margin: air.DewMargin.Value, Cure: c.CureHours.Value,
	}
}
