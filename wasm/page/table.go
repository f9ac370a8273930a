package page

import (
	"slices"
	"strings"
	"unicode/utf8"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// byteOrderMark tells a spreadsheet that the text is UTF-8.
const byteOrderMark = "\ufeff"

// table is a table for a spreadsheet (RFC 4180). Where decimals are written with
// a comma, a spreadsheet takes semicolons between cells: the two go together.
type table struct {
	text    strings.Builder
	comma   bool
	columns int // of every row: a reader takes a shorter one for damage
}

func newTable(comma bool, head ...string) *table {
	t := &table{comma: comma, columns: len(head)}
	t.text.WriteString(byteOrderMark)
	t.row(head...)
	return t
}

func (t *table) row(cells ...string) {
	part := byte(',')
	if t.comma {
		part = ';'
	}
	cells = append(slices.Clone(cells), make([]string, max(0, t.columns-len(cells)))...)
	for i, cell := range cells {
		if i > 0 {
			t.text.WriteByte(part)
		}
		t.text.WriteString(csvCell(cell))
	}
	t.text.WriteString("\r\n")
}

// figures writes a cell that holds no name, with the table's decimal mark.
func (t *table) figures(text string) string {
	if t.comma {
		return unit.Commas(text)
	}
	return text
}

// formulaStarts is what makes a spreadsheet run a cell, full-width forms too.
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// csvCell quotes a cell; one that a spreadsheet would take for a formula gets an
// apostrophe before it.
func csvCell(s string) string {
	if first, size := utf8.DecodeRuneInString(strings.TrimLeft(s, " \u00a0")); size > 0 && strings.ContainsRune(formulaStarts, first) {
		s = "'" + s
	}
	return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
}

// OrderCSV is the order list for a spreadsheet.
func OrderCSV(s *State) string {
	t := newTable(s.Plan.Job.Units.Comma, "material", "need", words.SheetStock, words.SheetHero, "unit", "packs", "bought", words.LeftOverName, "cost", "currency")
	for i := range s.Order().Lines {
		l := &s.Order().Lines[i]
		cost := ""
		if l.Bought.IsPriced && !l.ToBuy.IsZero() {
			cost = l.Bought.Cost.StringFixed(2)
		}
		symbol := l.Scale.Symbol()
		if symbol == "" {
			symbol = "pieces"
		}
		if l.Waits() != nil {
			t.row(l.Name(), "", "", "", symbol, words.Buy(l, s.Plan.Job.Units), "", "", "", "")
			continue
		}
		t.row(l.Name(), t.figures(l.Need.String()), t.figures(l.Stock.String()), t.figures(l.ToBuy.String()), symbol, t.figures(words.Buy(l, s.Plan.Job.Units)),
			t.figures(l.Bought.Bought.String()), t.figures(l.Bought.Left.String()), t.figures(cost), s.Plan.Job.Currency)
	}
	for _, text := range s.Warnings() {
		t.row(text)
	}
	return t.text.String()
}
