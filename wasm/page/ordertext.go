package page

import (
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	sentences "shedreckoner/wasm/words"
)

// PackWords writes packs as a shop reads them, "2 × 5 kg, 1 × 1 kg": a line
// breaks only between packs.
func PackWords(line chance.Line) string {
	var words []string
	for _, p := range line.Packs {
		scale := p.Size.Scale
		if scale == unit.NoScale {
			scale = line.Scale
		}
		size := unit.WithUnit(unit.Group(p.Size.Amount.String()), scale)
		if scale == unit.InPure {
			size = "pack of " + size
			if p.Size.Amount.String() == "1" {
				size = "piece"
			}
		}
		words = append(words, strconv.Itoa(p.Count)+"\u00a0×\u00a0"+size)
	}
	return strings.Join(words, ", ")
}

// BuyWords says what to buy of a line, or why that can't be said.
func BuyWords(l *chance.Line, units job.Units) string {
	switch {
	case l.Err != nil:
		return sentences.Sentence(l.Err, nil, units)
	case l.ToBuy.IsZero():
		return sentences.NothingToBuy
	}
	return PackWords(*l)
}

// OrderTitle is the heading of a list that leaves the page.
func OrderTitle(s *State) string {
	if s.Plan.Job.Name == "" {
		return "Order list"
	}
	return "Order list: " + s.Plan.Job.Name
}

// OrderMoney is what the list costs, as far as prices are known.
func OrderMoney(s *State) string {
	if s.Order().IsPartial() {
		return "–"
	}
	if s.Order().Cost.IsZero() && s.Order().Unpriced > 0 {
		return sentences.OrderNoPrices
	}
	return Money(s.Order().Cost.StringFixed(2), s)
}

// Unpriced says how much of the list has no price; "" where all of it has, or
// nothing.
func Unpriced(s *State) string {
	if s.Order().Cost.IsZero() {
		return ""
	}
	return sentences.UnpricedWhole(s.Order().Unpriced)
}

// Warnings is what a list must not leave the page without: what stops a build-up,
// and what isn't on it yet.
func (s *State) Warnings() []string {
	var list []string
	for _, stop := range s.Stops() {
		list = append(list, sentences.StopsTheOrder+" "+stop)
	}
	if left := sentences.LeftOut(s.Order().LeftOut); left != "" {
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
	b.WriteString(oneLine(OrderTitle(s)) + "\n\n")
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
			text := line.Name() + ": " + BuyWords(line, s.Plan.Job.Units)
			if line.Bought.IsPriced {
				text += " (" + Money(line.Bought.Cost.StringFixed(2), s) + ")"
			}
			b.WriteString(mark + oneLine(text) + "\n")
		}
	}
	b.WriteString("\n" + sentences.OrderTotal + ": " + strings.TrimSpace(oneLine(OrderMoney(s))+"\n"+Unpriced(s)) + "\n\n" + sentences.OrderFootnote + "\n")
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
	return unit.Write(scale.SI(amount), ShownIn(scale, units), 3)
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
	return sentences.Months(int(math.Round(float64(t / (30 * unit.Day)))))
}

// Money writes an amount with the job's currency.
func Money(amount string, s *State) string {
	return strings.TrimSpace(unit.Group(amount) + "\u00a0" + s.Plan.Job.Currency)
}

func orderText(s *State, m Message) []Effect {
	s.finished()
	return []Effect{{Kind: Copy, Text: s.Local(OrderText(s))}}
}

func shareOrder(s *State, m Message) []Effect {
	s.finished()
	return []Effect{{Kind: Share, Key: "Order list", Text: s.Local(OrderText(s))}}
}

func orderCSV(s *State, m Message) []Effect {
	s.finished()
	return []Effect{{Kind: Download, Key: "order-list.csv", Text: OrderCSV(s)}}
}
