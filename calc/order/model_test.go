package order_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

func TestModelsThatCannotBeSimulatedAreRefused(t *testing.T) {
	for what, spoil := range map[string]func(*order.Model){
		"spread": func(m *order.Model) { m.Draw("x", order.LogNormal(0, math.NaN())) },
		"amount": func(m *order.Model) { m.Add(0, -1) },
		"total":  func(m *order.Model) { m.Add(1, 1) },
		"draw":   func(m *order.Model) { m.Add(0, 1, 5) },
		"terms": func(m *order.Model) {
			for range order.MaxTerms + 1 {
				m.Add(0, 1)
			}
		},
	} {
		m := order.NewModel(1)
		spoil(m)
		_, err := m.Simulate(10, 1)
		var refused *order.ModelError
		require.ErrorAs(t, err, &refused, what)
		assert.Equal(t, what, refused.What)
	}
	two := order.NewModel(1)
	two.Draw("hand", order.CV(0.2))
	two.Draw("hand", order.CV(0.3))
	_, err := two.Simulate(10, 1)
	assert.Error(t, err, "one hand with two spreads")
	_, err = order.NewModel(1).Simulate(order.MaxSimulated+1, 1)
	assert.Error(t, err)
	full := order.NewModel(1)
	for range order.MaxTerms {
		full.Add(0, 1)
	}
	_, err = full.Simulate(order.MaxSimulated, 1)
	assert.NoError(t, err)
}

// Every bound of a model: what lies at it is drawn, what lies beyond it, on either side, is refused.
func TestTheBoundsOfAModel(t *testing.T) {
	spread := func(s order.Spread) func(*order.Model) { return func(m *order.Model) { m.Draw("x", s) } }
	add := func(total int, amount float64) func(*order.Model) {
		return func(m *order.Model) { m.Add(total, amount) }
	}
	draw := func(d order.Draw) func(*order.Model) {
		return func(m *order.Model) { m.Draw("only", order.CV(0.1)); m.Add(0, 1, d) }
	}
	of := func(mean, sd, moving float64) order.Spread {
		s := order.LogNormal(mean, sd)
		s.Moving = moving
		return s
	}
	for name, c := range map[string]struct {
		in, out []func(*order.Model)
	}{
		"mean": {[]func(*order.Model){spread(of(order.MaxLogMean, 0, 0)), spread(of(-order.MaxLogMean, 0, 0))},
			[]func(*order.Model){spread(of(order.MaxLogMean*1.001, 0, 0)), spread(of(-order.MaxLogMean*1.001, 0, 0))}},
		"standard deviation": {[]func(*order.Model){spread(of(0, 0, 0)), spread(of(0, order.MaxLogSD, 0))},
			[]func(*order.Model){spread(of(0, -0.001, 0)), spread(of(0, order.MaxLogSD*1.001, 0))}},
		"moving": {[]func(*order.Model){spread(of(0, 0.1, 0)), spread(of(0, 0.1, 1))}, []func(*order.Model){spread(of(0, 0.1, -0.001)), spread(of(0, 0.1, 1.001))}},
		"total":  {[]func(*order.Model){add(0, 1), add(2, 1)}, []func(*order.Model){add(-1, 1), add(3, 1)}},
		"amount": {[]func(*order.Model){add(0, 0), add(0, math.MaxFloat32)}, []func(*order.Model){add(0, -1e-9), add(0, 1e39), add(0, math.NaN())}},
		"draw":   {[]func(*order.Model){draw(0)}, []func(*order.Model){draw(-1), draw(1)}},
	} {
		for i, make := range append(c.in, c.out...) {
			m := order.NewModel(3)
			make(m)
			_, err := m.Simulate(10, 1)
			if i < len(c.in) {
				assert.NoError(t, err, "%s, inside %d", name, i)
			} else {
				assert.Error(t, err, "%s, outside %d", name, i-len(c.in))
			}
		}
	}
}

// Totals and draws that there are none of are refused, not looked up.
func TestTotalsAndDrawsThatAreNotThere(t *testing.T) {
	m := order.NewModel(2)
	m.Add(1, 1)
	for draws, holds := range map[int]bool{-1: false, 0: false, 1: true, order.MaxSimulated / 2: true, order.MaxSimulated/2 + 1: false} {
		again := order.NewModel(2)
		again.Add(1, 1)
		_, err := again.Simulate(draws, 1)
		assert.Equal(t, holds, err == nil, draws)
	}
	s, err := m.Simulate(10, 1)
	require.NoError(t, err)
	_, err = s.Outcome(1)
	assert.ErrorIs(t, err, order.ErrUnfinished)
	require.True(t, s.Step(10))
	empty, err := order.NewModel(0).Simulate(10, 1)
	require.NoError(t, err)
	assert.Equal(t, 10, empty.Drawn(), "without goods there is nothing left to draw")
	for total, isThere := range map[int]bool{-1: false, 0: true, 1: true, 2: false} {
		_, err := s.Outcome(total)
		assert.Equal(t, isThere, err == nil, total)
	}
}

// Of seven draws each share in turn is held by as many of them as it takes, and by no fewer; a step makes as
// many draws as were asked for, and none over the last.
func TestSharesOfFewDraws(t *testing.T) {
	m := order.NewModel(1)
	m.Add(0, 1, m.Draw("hand", order.CV(0.3)))
	s, err := m.Simulate(7, 1)
	require.NoError(t, err)
	for _, step := range []struct {
		n, drawn int
		isDone   bool
	}{{0, 0, false}, {3, 3, false}, {1, 4, false}, {9, 7, true}, {1, 7, true}} {
		assert.Equal(t, step.isDone, s.Step(step.n))
		assert.Equal(t, step.drawn, s.Drawn())
	}
	o := outcome(t, s, 0)
	for n := 1; n <= 7; n++ {
		whole := enough(t, o, unit.Share(float64(n)/7))
		assert.InDelta(t, float64(n)/7, float64(o.Chance(whole)), 1e-12)
		for _, less := range []float64{0.1, 0.5, 0.9} {
			assert.InDelta(t, whole, enough(t, o, unit.Share((float64(n)-less)/7)), 1e-12, "%d less %v of seven", n, less)
		}
	}
}
