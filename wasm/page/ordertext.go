package page

import (
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/words"
)

// OrderMoney is what the list costs, as far as prices are known.
func OrderMoney(s *State) string {
	if s.Order().IsPartial() {
		return "–"
	}
	if s.Order().Cost.IsZero() && s.Order().Unpriced > 0 {
		return words.OrderNoPrices
	}
	return Money(s.Order().Cost.StringFixed(2), s)
}

// Unpriced says how much of the list has no price; "" where all of it has, or
// nothing.
func Unpriced(s *State) string {
	if s.Order().Cost.IsZero() {
		return ""
	}
	return words.UnpricedWhole(s.Order().Unpriced)
}

// Warnings is what a list must not leave the page without: what stops a build-up,
// and what isn't on it yet.
func (s *State) Warnings() []string {
	var list []string
	for _, stop := range s.Stops() {
		list = append(list, words.StopsTheOrder+" "+stop)
	}
	if left := words.LeftOut(s.Order().LeftOut); left != "" {
		list = append(list, left)
	}
	return list
}

// oneLine is a text that ends no line and starts no cell, wherever it is pasted.
func oneLine(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, text)
}

// OrderText is the order list as plain text; what is in the basket has its mark.
// No line begins as a formula does.
func OrderText(s *State) string {
	var b strings.Builder
	b.WriteString(oneLine(words.OrderTitle(s.Plan.Job.Name)) + "\n\n")
	for _, text := range s.Warnings() {
		b.WriteString("! " + oneLine(text) + "\n\n")
	}
	for _, t := range s.Things() {
		if !t.Buys {
			continue
		}
		mark := "• "
		if t.Ticked {
			mark = "✓ "
		}
		for _, line := range t.Lines {
			if line.ToBuy.IsZero() && line.Err == nil {
				continue
			}
			text := line.Name() + ": " + words.Buy(line, s.Plan.Job.Units)
			if line.Bought.IsPriced {
				text += " (" + Money(line.Bought.Cost.StringFixed(2), s) + ")"
			}
			b.WriteString(mark + oneLine(text) + "\n")
		}
	}
	b.WriteString("\n" + words.OrderTotal + ": " + strings.TrimSpace(oneLine(OrderMoney(s))+"\n"+Unpriced(s)) + "\n\n" + words.OrderFootnote + "\n")
	return b.String()
}

// Amount writes an amount of goods in the job's units.
func Amount(amount decimal.Decimal, scale unit.Scale, units job.Units) string {
	return AmountOf(amount.InexactFloat64(), scale, units)
}

// AmountOf is Amount for one that was worked out: in the goods' scale.
func AmountOf(amount float64, scale unit.Scale, units job.Units) string {
	if scale == unit.InPure {
		return unit.Write(amount, scale, 4)
	}
	return unit.Write(scale.SI(amount), handyFor(amount, scale, units), 3)
}

// ShownIn is the scale that goods counted in a scale are shown in.
func ShownIn(scale unit.Scale, units job.Units) unit.Scale {
	for _, m := range []unit.Measure{unit.Weights, unit.Volumes, unit.Runs} {
		if m.Scales()[0] == scale {
			return units.Scale(m)
		}
	}
	return scale
}

// Months writes a time on the shelf.
func Months(t unit.Time) string {
	return words.Months(int(math.Round(float64(t / (30 * unit.Day)))))
}

// Money writes an amount with the job's currency.
func Money(amount string, s *State) string {
	return strings.TrimSpace(unit.Group(amount) + "\u00a0" + s.Plan.Job.Currency)
}

func orderText(s *State, m Message) []Effect {
	finished(s)
	return []Effect{{Kind: Copy, Text: s.Local(OrderText(s))}}
}

func shareOrder(s *State, m Message) []Effect {
	finished(s)
	return []Effect{{Kind: Share, Key: words.OrderList, Text: s.Local(OrderText(s))}}
}

func orderCSV(s *State, m Message) []Effect {
	finished(s)
	return []Effect{{Kind: Download, Key: "order-list.csv", Text: OrderCSV(s)}}
}
