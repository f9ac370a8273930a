package page

import (
	"strings"

	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// PackWords writes packs as a shop reads them: "2 × 5 kg, 1 × 1 kg".
func PackWords(line plan.Line) string {
	var words []string
	for _, p := range line.Packs {
		scale := p.Size.Scale
		if scale == nil {
			scale = line.Scale
		}
		size := unit.WithUnit(unit.Group(p.Size.Amount.String()), scale)
		if scale == unit.InPure {
			size = "pack of " + size
			if p.Size.Amount.String() == "1" {
				size = "piece"
			}
		}
		words = append(words, unit.Number(float64(p.Count), 3)+" × "+size)
	}
	return strings.Join(words, ", ")
}

// OrderText is the order list as plain text.
func OrderText(p plan.Plan) string {
	var b strings.Builder
	b.WriteString("Order list")
	if p.Job.Name != "" {
		b.WriteString(": " + p.Job.Name)
	}
	b.WriteString("\n\n")
	for _, line := range p.Order.Lines {
		if line.ToBuy.IsZero() {
			continue
		}
		b.WriteString("- " + line.Card.Name + ": " + PackWords(line))
		if line.Bought.IsPriced {
			b.WriteString(" (" + Money(line.Bought.Cost.StringFixed(2), p) + ")")
		}
		b.WriteString("\n")
	}
	if !p.Order.Cost.IsZero() {
		b.WriteString("\nTogether, where a price is known: " + Money(p.Order.Cost.StringFixed(2), p) + "\n")
	}
	b.WriteString("\nAn estimate. The maker's sheet stands above it.\n")
	return b.String()
}

// Money writes an amount with the job's currency.
func Money(amount string, p plan.Plan) string {
	return strings.TrimSpace(unit.Group(amount) + "\u00a0" + p.Job.Currency)
}

// OrderCSV is the order list for a spreadsheet (RFC 4180). A cell that a
// spreadsheet would take for a formula gets an apostrophe before it.
func OrderCSV(p plan.Plan) string {
	var b strings.Builder
	row(&b, "material", "need", "in stock", "to buy", "unit", "packs", "bought", "left over", "cost", "currency")
	for _, l := range p.Order.Lines {
		cost := ""
		if l.Bought.IsPriced && !l.ToBuy.IsZero() {
			cost = l.Bought.Cost.StringFixed(2)
		}
		symbol := l.Scale.Symbol
		if symbol == "" {
			symbol = "pieces"
		}
		row(&b, l.Card.Name, l.Need.String(), l.Stock.String(), l.ToBuy.String(), symbol, PackWords(l),
			l.Bought.Bought.String(), l.Bought.Left.String(), cost, p.Job.Currency)
	}
	return b.String()
}

func row(b *strings.Builder, cells ...string) {
	for i, cell := range cells {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(csvCell(cell))
	}
	b.WriteString("\r\n")
}

func csvCell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		s = "'" + s
	}
	return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
}

func orderText(s State, m Message) (State, []Effect) {
	return s, []Effect{{Kind: Copy, Text: OrderText(s.Plan)}}
}

func shareOrder(s State, m Message) (State, []Effect) {
	return s, []Effect{{Kind: Share, Key: "Order list", Text: OrderText(s.Plan)}}
}

func orderCSV(s State, m Message) (State, []Effect) {
	return s, []Effect{{Kind: Download, Key: "order-list.csv", Text: OrderCSV(s.Plan)}}
}
