package cure

import (
	"fmt"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Row is one line of a catalyst table: at this temperature of the surface, this
// share of catalyst by mass of all that cures.
type Row struct {
	Surface  unit.Temperature
	Catalyst unit.ByMass
}

// Table is catalyst over the temperature of the surface. NewTable makes one; the
// zero table holds no dose.
type Table struct {
	rows   []Row
	origin string
	mark   source.Mark
}

// TableFault says what is wrong with a table.
type TableFault int

// The faults of a table.
const (
	TooFewRows      TableFault = iota // a line needs two
	TooManyRows                       // more than MaxRows
	NotATemperature                   // outside −20 to 60 °C
	NotAShare                         // outside 0.2 to 5 %
	OutOfOrder                        // colder than the row before
	SameTemperature                   // as the row before, to a tenth of a degree
)

// TableError says which row of a table is wrong, and how.
type TableError struct {
	Row   int // from 0
	Fault TableFault
}

// Error names row and fault.
func (e *TableError) Error() string {
	return fmt.Sprintf("cure: row %d of the catalyst table: fault %d", e.Row+1, e.Fault)
}

// The limits of a table. Outside them is a slip of the pen: 15 % for 1.5 %.
const (
	MaxRows    = 40
	leastShare = unit.ByMass(0.002)
	mostShare  = unit.ByMass(0.05)
	rowGap     = unit.Temperature(0.1)

	// lastBits forgives a temperature the error that a conversion from °F leaves in
	// its last bits.
	lastBits = unit.Temperature(1e-10)
)

// NewTable makes a table of rows from cold to warm; origin and mark say where
// it comes from. Doses that rise with temperature are not refused: see Asks.
// Range: 2–40 rows of −20 to 60 °C and 0.2–5 %. Errors: *TableError.
func NewTable(origin string, mark source.Mark, rows ...Row) (Table, error) {
	switch {
	case len(rows) < 2:
		return Table{}, &TableError{len(rows), TooFewRows}
	case len(rows) > MaxRows:
		return Table{}, &TableError{MaxRows, TooManyRows}
	}
	for i, row := range rows {
		switch {
		case !isTemperature(row.Surface):
			return Table{}, &TableError{i, NotATemperature}
		case !(row.Catalyst >= leastShare && row.Catalyst <= mostShare):
			return Table{}, &TableError{i, NotAShare}
		case i > 0 && row.Surface <= rows[i-1].Surface-rowGap:
			return Table{}, &TableError{i, OutOfOrder}
		case i > 0 && row.Surface < rows[i-1].Surface+rowGap:
			return Table{}, &TableError{i, SameTemperature}
		}
	}
	return Table{append([]Row(nil), rows...), origin, mark}, nil
}

// Ask is a question to the builder about a row of the table.
type Ask struct {
	Row int // from 0
	Why AskWhy
}

// AskWhy says what is unusual about a row.
type AskWhy int

// What is asked about.
const (
	Rises   AskWhy = iota // more catalyst than the colder row before it
	Unusual               // outside the 0.5–4 % of the trade
)

// Asks lists the rows that are allowed but look like a slip.
// Source: common practice for 0.5–4 %; a warmer surface needs less.
func (t Table) Asks() []Ask {
	var list []Ask
	for i, row := range t.rows {
		if i > 0 && row.Catalyst > t.rows[i-1].Catalyst {
			list = append(list, Ask{i, Rises})
		}
		if row.Catalyst < 0.005 || row.Catalyst > 0.04 {
			list = append(list, Ask{i, Unusual})
		}
	}
	return list
}

// Rows gives a copy of the rows, from cold to warm.
func (t Table) Rows() []Row { return append([]Row(nil), t.rows...) }

// Ends gives the coldest and the warmest temperature that the table covers;
// both are zero for the zero table.
func (t Table) Ends() (coldest, warmest unit.Temperature) {
	if len(t.rows) == 0 {
		return 0, 0
	}
	return t.rows[0].Surface, t.rows[len(t.rows)-1].Surface
}

// BeyondTableError says that a temperature lies outside a catalyst table: there is
// no dose there, and none is extrapolated.
type BeyondTableError struct {
	Of               Reading // whose temperature it is
	Value            unit.Temperature
	Coldest, Warmest unit.Temperature // the table's ends
}

// IsCold says if the temperature is under the table, not over it.
func (e *BeyondTableError) IsCold() bool { return e.Value < e.Coldest }

// Error names the temperature and the ends.
func (e *BeyondTableError) Error() string {
	return fmt.Sprintf("cure: %s %s is beyond the catalyst table, %s to %s", e.Of, celsius(e.Value), celsius(e.Coldest), celsius(e.Warmest))
}

// At is the catalyst at a temperature of the surface, on the straight line between
// the rows on either side and never beyond the table's ends.
// Errors: *BeyondTableError; *TableError for the zero table.
// Source: assumption: no table by a public body was found, and none says how to
// read between its rows.
func (t Table) At(surface working.Figure[unit.Temperature]) (working.Figure[unit.ByMass], error) {
	return t.at(surface, Surface)
}

func (t Table) at(at working.Figure[unit.Temperature], of Reading) (working.Figure[unit.ByMass], error) {
	if len(t.rows) < 2 {
		return working.Figure[unit.ByMass]{}, &TableError{0, TooFewRows}
	}
	coldest, warmest := t.Ends()
	if !(at.Value >= coldest-lastBits && at.Value <= warmest+lastBits) { // also refuses NaN
		return working.Figure[unit.ByMass]{}, &BeyondTableError{of, at.Value, coldest, warmest}
	}
	above := 1
	for above < len(t.rows)-1 && at.Value >= t.rows[above].Surface {
		above++
	}
	cold, warm := t.rows[above-1], t.rows[above]
	p, err := position.Figure(at, t.temperature(cold), t.temperature(warm))
	if err != nil {
		return working.Figure[unit.ByMass]{}, err
	}
	return onLine.Figure(t.share(cold), t.share(warm), p)
}

func (t Table) temperature(r Row) working.Figure[unit.Temperature] {
	return working.Given(r.Surface, "row of the table", unit.InCelsius, t.origin, t.mark)
}

func (t Table) share(r Row) working.Figure[unit.ByMass] {
	return working.Given(r.Catalyst, "catalyst of the row", unit.InPercent, t.origin, t.mark)
}

var (
	share       = working.Arg{Symbol: "c", Meaning: "catalyst by mass of all that cures", Scale: unit.InPercent, Min: 0.1, Max: 6}
	placeInRows = working.Arg{Symbol: "p", Meaning: "place between two rows", Scale: unit.InPure, Min: 0, Max: 1}
)

var position = working.Rule3[unit.Temperature, unit.Temperature, unit.Temperature, unit.Factor]{Rule: &working.Rule{Formula: "p = (T − T_1) ÷ (T_2 − T_1)", Source: source.Ref{Document: &source.House, Place: "straight line between the rows"}, Mark: source.Assumption,
	Result: placeInRows,
	Args: []working.Arg{
		{Symbol: "T", Meaning: "temperature", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead},
		{Symbol: "T_1", Meaning: "colder row", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead},
		{Symbol: "T_2", Meaning: "warmer row", Scale: unit.InCelsius, Min: coldestRead, Max: warmestRead},
	}},
	Code: func(t, cold, warm unit.Temperature) unit.Factor { return unit.Factor((t - cold) / (warm - cold)) }}

var onLine = working.Rule3[unit.ByMass, unit.ByMass, unit.Factor, unit.ByMass]{Rule: &working.Rule{Formula: "c = c_1 + (c_2 − c_1) × p", Source: source.Ref{Document: &source.House, Place: "straight line between the rows"}, Mark: source.Assumption,
	Result: share,
	Args: []working.Arg{
		{Symbol: "c_1", Meaning: "catalyst of the colder row", Scale: unit.InPercent, Min: 0.1, Max: 6},
		{Symbol: "c_2", Meaning: "catalyst of the warmer row", Scale: unit.InPercent, Min: 0.1, Max: 6},
		placeInRows,
	}},
	Code: func(cold, warm unit.ByMass, p unit.Factor) unit.ByMass { return cold + (warm-cold)*unit.ByMass(p) }}
