package order_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/order"
)

// The ends of what a spread may be are taken: a hand that never moves and one that
// is drawn again each time, no spread at all and the widest. Beyond, nothing is
// drawn.
func TestTheEndsOfASpread(t *testing.T) {
	simulated := func(s order.Spread) error {
		m := order.NewModel(1)
		m.Add(0, 1, m.Draw("hand", s))
		_, err := m.Simulate(100, 1)
		return err
	}
	for _, s := range []order.Spread{{SD: 0.1, Moving: 0}, {SD: 0.1, Moving: 1}, {SD: 0}, {SD: order.MaxLogSD}, {Mean: order.MaxLogMean, SD: 0.1}, {Mean: -order.MaxLogMean, SD: 0.1}} {
		assert.NoError(t, simulated(s), "%+v", s)
	}
	for _, s := range []order.Spread{{SD: 0.1, Moving: -0.001}, {SD: 0.1, Moving: 1.001}, {SD: -0.001}, {SD: order.MaxLogSD * 1.001}, {Mean: order.MaxLogMean * 1.001, SD: 0.1}, {Mean: -order.MaxLogMean * 1.001, SD: 0.1}} {
		assert.Error(t, simulated(s), "%+v", s)
	}
}
