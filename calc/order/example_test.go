package order_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

// Gel coat for Tern's foredeck, 6.3 kg with 1.1 kg on the shelf: one 5 kg tin
// and a 1 kg tin cost less than six single ones, and far less than a drum.
func ExampleChoose() {
	need, _ := order.RoundUp(unit.Mass(6.3), unit.InKilogram, order.Tenth)
	tins := []order.Pack{
		{Size: decimal.RequireFromString("1"), Price: decimal.NewNullDecimal(decimal.RequireFromString("19.90"))},
		{Size: decimal.RequireFromString("5"), Price: decimal.NewNullDecimal(decimal.RequireFromString("79"))},
		{Size: decimal.RequireFromString("20"), Price: decimal.NewNullDecimal(decimal.RequireFromString("259"))},
	}
	buy, _ := order.Choose(order.ToBuy(need, decimal.RequireFromString("1.1")), tins)
	fmt.Println(buy.Counts, buy.Cost, buy.Left)
	// Output: [1 1 0] 98.9 0.8
}

// Box and Tiao: one physicist believes a constant to be 900 ± 20, another
// 800 ± 80. One measurement of 850 ± 40 brings them to 890 and 840.
func ExampleBelief_Update() {
	sure, _ := order.Belief{Mean: 900, SD: 20}.Update(order.Reading{X: 850, SD: 40})
	doubtful, _ := order.Belief{Mean: 800, SD: 80}.Update(order.Reading{X: 850, SD: 40})
	fmt.Printf("%.0f ± %.1f, %.0f ± %.1f\n", sure.Mean, sure.SD, doubtful.Mean, doubtful.SD)
	// Output: 890 ± 17.9, 840 ± 35.8
}

// A simulation in slices of a hundred draws.
func ExampleModel() {
	m := order.NewModel(1)
	hand := m.Draw("short nap roller, gel coat", order.LogNormal(0, 0.25))
	m.Add(0, 4.2, m.Draw("foredeck, area", order.CV(0.03)), hand)
	m.Add(0, 1.1, m.Draw("engine box, area", order.CV(0.03)), hand)
	s, _ := m.Simulate(10_000, 1)
	for !s.Step(100) {
	}
	need, _ := s.Outcome(0)
	kilograms, _ := need.Enough(0.95)
	fmt.Printf("plan 5.3 kg; %.0f kg is enough in 95 of 100 jobs\n", kilograms)
	// Output: plan 5.3 kg; 8 kg is enough in 95 of 100 jobs
}
