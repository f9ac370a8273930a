package order_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

var before = order.Belief{SD: 0.15}

func used(ratio, planned float64) order.Entry {
	return order.Entry{Used: unit.Mass(ratio * planned), Planned: unit.Mass(planned), FilmOnly: unit.Mass(0.8 * planned), SD: 0.2}
}

func TestLearnWeighsByPlannedMass(t *testing.T) {
	even, err := order.Learn(before, []order.Entry{used(1.2, 2), used(1.2, 2), used(1.2, 2)})
	require.NoError(t, err)
	uneven, err := order.Learn(before, []order.Entry{used(1.2, 1), used(1.2, 0.5), used(1.2, 4.5)})
	require.NoError(t, err)
	assert.Less(t, uneven.Mean, even.Mean, "one deck and two dabs say less than three decks")
	assert.Greater(t, uneven.SD, even.SD)

	byHand, err := before.Update(order.Reading{X: math.Log(1.2), SD: 0.2}, order.Reading{X: math.Log(1.2), SD: 0.2}, order.Reading{X: math.Log(1.2), SD: 0.2})
	require.NoError(t, err)
	assert.InDelta(t, byHand.Mean, even.Mean, 1e-12)

	deckHeavy, err := order.Learn(before, []order.Entry{used(1.5, 5), used(1, 0.5)})
	require.NoError(t, err)
	dabHeavy, err := order.Learn(before, []order.Entry{used(1.5, 0.5), used(1, 5)})
	require.NoError(t, err)
	assert.Greater(t, deckHeavy.Mean, dabHeavy.Mean)
}

// By hand, the prior 0 ± 0.15, σ 0.20: entries of 1, 0.5 and 4.5 kg, used 1.2,
// 0.9 and 1.1 of what was planned.
//
//	n   6² ÷ (1 + 0.25 + 20.25) = 36 ÷ 21.5 = 1.674419
//	x̄   (ln 1.2 + 0.5 ln 0.9 + 4.5 ln 1.1) ÷ 6 = (0.182322 − 0.052680 + 0.428896) ÷ 6 = 0.0930896
//	1/v 44.444444 + 1.674419 ÷ 0.04 = 86.304910, v = 0.01158683, √v = 0.1076421
//	m   0.01158683 × 41.860465 × 0.0930896 = 0.0451513
func TestLearnByHand(t *testing.T) {
	got, err := order.Learn(before, []order.Entry{used(1.2, 1), used(0.9, 0.5), used(1.1, 4.5)})
	require.NoError(t, err)
	assert.InDelta(t, 0.0451513, got.Mean, 1e-6)
	assert.InDelta(t, 0.1076421, got.SD, 1e-6)
}

// n lies between one and the number of entries: as many where they are alike, one
// where a single one has all the weight. Scaling all masses changes nothing, and
// surfaces and cups add up their own.
func TestTheEffectiveNumberOfEntries(t *testing.T) {
	number := func(log ...order.Entry) float64 {
		got, err := order.Learn(before, log)
		require.NoError(t, err)
		return (1/(got.SD*got.SD) - 1/(before.SD*before.SD)) * 0.2 * 0.2
	}
	assert.InDelta(t, 1, number(used(1.3, 0.02)), 1e-9)
	assert.InDelta(t, 4, number(used(1, 2), used(1.1, 2), used(1.2, 2), used(0.9, 2)), 1e-9)
	assert.InDelta(t, 1, number(used(1, 1000), used(1.1, 1e-6)), 1e-6)
	assert.InDelta(t, number(used(1, 3), used(1.1, 1)), number(used(1, 30), used(1.1, 10)), 1e-9)
	cup := used(1.1, 0.3)
	cup.SD = 0.35
	assert.InDelta(t, 1+(0.2*0.2)/(0.35*0.35), number(used(1, 3), cup), 1e-9, "a deck, and a cup of a wider spread")
}

// An entry that came out exactly as planned narrows what the next job may take.
func TestAnEntryAsPlannedOnlyNarrows(t *testing.T) {
	for _, s0 := range []float64{0.15, 0.25, 0.30} {
		for _, sigma := range []float64{0.20, 0.35} {
			prior := order.Belief{SD: s0}
			entry := used(1, 0.5)
			entry.SD = sigma
			got, err := order.Learn(prior, []order.Entry{entry})
			require.NoError(t, err)
			assert.InDelta(t, 0, got.Mean, 1e-12)
			assert.Less(t, got.Next(0.2).SD, prior.Next(0.2).SD)
		}
	}
}

// Learning in one go or in several is the same; uncertainty only shrinks; the mean
// moves towards what was seen and not past it.
func TestUpdateInAnyRounds(t *testing.T) {
	readings := []order.Reading{{0.3, 0.2}, {-0.1, 0.35}, {0.2, 0.2}}
	atOnce, err := before.Update(readings...)
	require.NoError(t, err)
	step := before
	for _, r := range readings {
		next, err := step.Update(r)
		require.NoError(t, err)
		assert.Less(t, next.SD, step.SD)
		assert.True(t, (next.Mean-step.Mean)*(r.X-step.Mean) > 0 && (r.X-next.Mean)*(r.X-step.Mean) > 0)
		step = next
	}
	assert.InDelta(t, atOnce.Mean, step.Mean, 1e-12)
	assert.InDelta(t, atOnce.SD, step.SD, 1e-12)
	same, err := before.Update()
	require.NoError(t, err)
	assert.InDelta(t, before.SD, same.SD, 1e-12)
}

func TestNextAddsTheSpreadOfTheWork(t *testing.T) {
	s := order.Belief{Mean: 0.12, SD: 0.3}.Next(0.4)
	assert.Equal(t, 1.0, s.Moving)
	assert.Equal(t, 0.12, s.Mean)
	assert.InDelta(t, 0.5, s.SD, 1e-12)
	assert.InDelta(t, 1.1275, float64(order.Belief{Mean: 0.12}.Factor()), 1e-4)
}

func TestLearnRefuses(t *testing.T) {
	thin := used(0.7, 2)
	read := thin
	read.HasComb = true
	for name, c := range map[string]struct {
		entry order.Entry
		cause order.LogCause
	}{
		"nothing used":      {used(0, 2), order.BadMass},
		"not a number":      {used(math.NaN(), 2), order.BadMass},
		"no plan":           {order.Entry{Used: 1, SD: 0.2}, order.BadMass},
		"no spread":         {order.Entry{Used: 1, Planned: 1}, order.BadSpread},
		"grams for kilos":   {used(1000, 2), order.Unlikely},
		"kilos for grams":   {used(0.001, 2), order.Unlikely},
		"just over the top": {used(order.MaxRatio*1.001, 2), order.Unlikely},
		"a thin film":       {thin, order.ThinFilm},
		"less than nothing": {order.Entry{Used: 1, Planned: 1, FilmOnly: -1, SD: 0.2}, order.BadMass},
		"film unknown":      {order.Entry{Used: 1, Planned: 1, FilmOnly: unit.Mass(math.NaN()), SD: 0.2}, order.BadMass},
		"a plan for ever":   {order.Entry{Used: 1, Planned: unit.Mass(math.Inf(1)), SD: 0.2}, order.Unlikely},
	} {
		_, err := order.Learn(before, []order.Entry{used(1.1, 1), c.entry})
		var refused *order.LogError
		require.ErrorAs(t, err, &refused, name)
		assert.Equal(t, c.cause, refused.Cause, name)
		assert.Equal(t, 1, refused.At, name)
	}
	for _, c := range []struct {
		entry order.Entry
		ratio float64
	}{{used(0.7, 2), 0.7 / 0.8}, {used(10, 2), 10}} {
		_, err := order.Learn(before, []order.Entry{c.entry})
		var refused *order.LogError
		require.ErrorAs(t, err, &refused)
		assert.InDelta(t, c.ratio, refused.Ratio, 1e-9, "how far off it is")
	}
	_, err := order.Learn(before, []order.Entry{{Used: 1, Planned: 1, FilmOnly: 1, SD: 0.2}})
	assert.NoError(t, err, "what the film itself takes is enough")
	_, err = order.Learn(before, []order.Entry{used(1.1, 1), used(1.1, 1), {Used: 1, Planned: 1}})
	var refused *order.LogError
	require.ErrorAs(t, err, &refused)
	assert.Equal(t, order.LogError{Cause: order.BadSpread, At: 2}, *refused)
	_, err = order.Learn(before, []order.Entry{read})
	assert.NoError(t, err, "a thin film that was read with a comb")
	_, err = order.Belief{}.Update()
	assert.Error(t, err)
	for _, r := range []order.Reading{{X: 1}, {X: 1, SD: -0.1}, {X: 1, SD: math.Inf(1)}, {X: 1, SD: math.NaN()}, {X: math.NaN(), SD: 0.1}, {X: math.Inf(1), SD: 0.1}, {X: math.Inf(-1), SD: 0.1}} {
		_, err = before.Update(r)
		assert.Error(t, err, "%+v", r)
	}
	least := used(1/float64(order.MaxRatio), 1)
	least.HasComb = true
	top, err := order.Learn(before, []order.Entry{used(order.MaxRatio, 1), least})
	require.NoError(t, err, "the farthest that is believed")
	assert.Less(t, top.SD, before.SD)
}
