package order_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working/workingtest"
)

func TestFormulasAndCodeAgree(t *testing.T) { workingtest.Check(t, order.Rules()...) }

func TestPublishedOrder(t *testing.T) {
	workingtest.Published(t, "order.txt", map[string]workingtest.Case{
		"learned mean": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			b, err := learned(r)
			return b.Mean, err
		}},
		"learned uncertainty": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			b, err := learned(r)
			return b.SD, err
		}},
		"effective number":   {Result: unit.InPure, Got: effectiveNumber},
		"factor drawn apart": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) { return factor(r, strconv.Itoa) }},
		"factor shared": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			return factor(r, func(int) string { return "one hand" })
		}},
		"packs without prices": {Result: unit.InPure, Got: bought},
		"number of packs": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			p, err := purchase(r, false)
			return float64(p.Packs), err
		}},
		"cost of packs": {Result: unit.InPure, Got: func(r workingtest.Row) (float64, error) {
			p, err := purchase(r, true)
			return p.Cost.InexactFloat64(), err
		}},
		"packs by price": {Result: unit.InPure, Got: boughtByPrice},
	}, order.Rules()...)
}

func packsOf(r workingtest.Row) (list []order.Pack, err error) {
	for word := range strings.FieldsSeq(r.Text("sizes")) {
		size, err := decimal.NewFromString(word)
		if err != nil {
			return nil, err
		}
		list = append(list, order.Pack{Size: size})
	}
	return list, nil
}

// purchase is what a row's need takes, with the row's prices or without.
func purchase(r workingtest.Row, byPrice bool) (order.Purchase, error) {
	packs, err := packsOf(r)
	if err != nil {
		return order.Purchase{}, err
	}
	if byPrice {
		for i, word := range strings.Fields(r.Text("prices")) {
			price, err := decimal.NewFromString(word)
			if err != nil {
				return order.Purchase{}, err
			}
			packs[i].Price = decimal.NewNullDecimal(price)
		}
	}
	need, err := decimal.NewFromString(r.Text("need"))
	if err != nil {
		return order.Purchase{}, err
	}
	return order.Choose(need, packs)
}

func bought(r workingtest.Row) (float64, error) {
	p, err := purchase(r, false)
	return p.Bought.InexactFloat64(), err
}

func boughtByPrice(r workingtest.Row) (float64, error) {
	p, err := purchase(r, true)
	return p.Bought.InexactFloat64(), err
}

// effectiveNumber is how many entries of equal weight narrow a belief as those of
// a row do, by the precision that they add: "50×1 50×2".
func effectiveNumber(r workingtest.Row) (float64, error) {
	var log []order.Entry
	for word := range strings.FieldsSeq(r.Text("weights")) {
		times, weight, _ := strings.Cut(word, "×")
		n, bad := strconv.Atoi(times)
		w, worse := strconv.ParseFloat(weight, 64)
		if err := errors.Join(bad, worse); err != nil {
			return 0, err
		}
		for range n {
			log = append(log, order.Entry{Used: unit.Mass(w), Planned: unit.Mass(w), SD: 1})
		}
	}
	prior := order.Belief{SD: 2}
	b, err := order.Learn(prior, log)
	return 1/(b.SD*b.SD) - 1/(prior.SD*prior.SD), err
}

func learned(r workingtest.Row) (order.Belief, error) {
	readings := make([]order.Reading, int(r.Number("times")))
	for i := range readings {
		readings[i] = order.Reading{X: r.Number("seen"), SD: r.Number("spread")}
	}
	return order.Belief{Mean: r.Number("believed"), SD: r.Number("uncertainty")}.Update(readings...)
}

// factor is the amount enough for 90 % over that for half.
func factor(r workingtest.Row, key func(int) string) (float64, error) {
	m := order.NewModel(1)
	for i := range int(r.Number("surfaces")) {
		m.Add(0, 1, m.Draw(key(i), order.CV(r.Number("cv"))))
	}
	s, err := m.Simulate(40_000, 1)
	if err != nil {
		return 0, err
	}
	s.Step(40_000)
	o, err := s.Outcome(0)
	if err != nil {
		return 0, err
	}
	ninety, err := o.Enough(0.9)
	if err != nil {
		return 0, err
	}
	half, err := o.Enough(0.5)
	return ninety / half, err
}

func run(t *testing.T, m *order.Model, draws int) *order.Simulation {
	t.Helper()
	s, err := m.Simulate(draws, 7)
	require.NoError(t, err)
	assert.True(t, s.Step(draws))
	return s
}
