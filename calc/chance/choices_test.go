package chance_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
)

// Both ways are there whichever the list takes: before the start for 80 of 100 jobs,
// all at once for 95 and a reserve. Either buys what it has to have, and the chance
// of running short is that of its packs.
func TestTwoWaysToBuy(t *testing.T) {
	first := simulatedLine(t, planned(t, rolledTwice...), "gelcoat")
	once := simulatedLine(t, planned(t, append([]string{"card.gelcoat.buy = once"}, rolledTwice...)...), "gelcoat")
	assert.Equal(t, first.Confidence.Start, once.Confidence.Start)
	assert.Equal(t, first.Confidence.AtOnce, once.Confidence.AtOnce)
	assert.Equal(t, first.Confidence.Start, first.Confidence.Way)
	assert.Equal(t, once.Confidence.AtOnce, once.Confidence.Way)
	assert.EqualValues(t, 0.80, first.Confidence.Start.Chance)
	assert.EqualValues(t, 0.95, first.Confidence.AtOnce.Chance)
	assert.True(t, first.Need.LessThan(once.Need))
	for _, w := range []chance.Way{first.Confidence.Start, first.Confidence.AtOnce} {
		assert.GreaterOrEqual(t, float64(w.Buys.Chance), float64(w.Chance))
		assert.GreaterOrEqual(t, w.Buys.Bought.Bought.InexactFloat64(), float64(w.Have.Value)-1e-6, "never less than is to be had")
	}
	assert.True(t, once.Bought.Bought.Equal(first.Confidence.AtOnce.Buys.Bought.Bought))
}

// The choices go up in amount and in chance; the chosen one is at least as likely
// to be enough as was wanted, and priced against the others.
func TestChoicesOfPacks(t *testing.T) {
	prices := []string{"card.gelcoat.pack.1.price = 21", "card.gelcoat.pack.2.price = 84", "card.gelcoat.pack.3.price = 299", "card.gelcoat.stock = 0.8"}
	l := simulatedLine(t, planned(t, append(prices, rolledTwice...)...), "gelcoat")
	choices := l.Confidence.Choices
	require.NotEmpty(t, choices)
	chosen := slices.IndexFunc(choices, func(c chance.Choice) bool { return c.IsChosen })
	require.GreaterOrEqual(t, chosen, 0)
	assert.GreaterOrEqual(t, float64(choices[chosen].Chance), 0.80)
	assert.True(t, choices[chosen].Bought.Cost.Equal(l.Bought.Cost))
	for i := 1; i < len(choices); i++ {
		assert.True(t, choices[i].Bought.Bought.GreaterThan(choices[i-1].Bought.Bought))
		assert.GreaterOrEqual(t, float64(choices[i].Chance), float64(choices[i-1].Chance))
	}
}

// With packs of 20 g every share of jobs has its own purchase: each of those that
// are offered is there, to the nearest pack.
func TestTheChancesThatAreOffered(t *testing.T) {
	fine := []string{"card.gelcoat.pack.1.size = 0.02", "card.gelcoat.pack.2.sold = no", "card.gelcoat.pack.3.sold = no", "card.gelcoat.chance = 85"}
	l := simulatedLine(t, planned(t, append(fine, rolledTwice...)...), "gelcoat")
	for _, want := range []float64{0.5, 0.7, 0.8, 0.85, 0.9, 0.95, 0.99} {
		assert.True(t, slices.ContainsFunc(l.Confidence.Choices, func(c chance.Choice) bool {
			return float64(c.Chance) >= want-1e-9 && float64(c.Chance) < want+0.01
		}), "%v", want)
	}
}

// What either way to buy would buy is among the choices, whichever the list takes.
func TestBothWaysAreAmongTheChoices(t *testing.T) {
	fine := []string{"card.gelcoat.pack.1.size = 0.02", "card.gelcoat.pack.2.sold = no", "card.gelcoat.pack.3.sold = no", "card.gelcoat.chance = 63", "card.gelcoat.chance-at-once = 97"}
	for _, buy := range []string{"card.gelcoat.buy = once", ""} {
		c := simulatedLine(t, planned(t, append(append(fine, rolledTwice...), buy)...), "gelcoat").Confidence
		for _, w := range []chance.Way{c.Start, c.AtOnce} {
			assert.True(t, slices.ContainsFunc(c.Choices, func(o chance.Choice) bool { return o.Bought.Bought.Equal(w.Buys.Bought.Bought) }), "%v of 100", w.Chance)
		}
	}
}

// Every way to buy 1, 5 and 20 kg that gives the wanted chance is tried: none
// costs less than what is bought, and none of that price leaves less over.
func TestNoPacksOfThatChanceCostLess(t *testing.T) {
	sizes := []int{1, 5, 20}
	random := rand.New(rand.NewPCG(3, 9))
	for range 12 {
		lines := append([]string{}, rolledTwice...)
		prices := make([]int, len(sizes))
		for i, size := range sizes {
			prices[i] = int(float64(size) * (10 + 15*random.Float64()))
			lines = append(lines, "card.gelcoat.pack."+strconv.Itoa(i+1)+".price = "+strconv.Itoa(prices[i]))
		}
		lines = append(lines, "card.gelcoat.stock = 0.8", "card.gelcoat.chance = "+[]string{"80", "90", "95", "99"}[random.IntN(4)])
		l := simulatedLine(t, planned(t, lines...), "gelcoat")
		best, least := math.MaxInt, 0.0
		for a := range 41 {
			for b := range 9 {
				for c := range 3 {
					mass, cost := float64(a+5*b+20*c), a*prices[0]+b*prices[1]+c*prices[2]
					if mass+0.8 >= l.Need.InexactFloat64()-1e-9 && (cost < best || cost == best && mass < least) {
						best, least = cost, mass
					}
				}
			}
		}
		assert.InDelta(t, float64(best), l.Bought.Cost.InexactFloat64(), 1e-9, "%v", lines)
		assert.InDelta(t, least, l.Bought.Bought.InexactFloat64(), 1e-9, "%v", lines)
		chosen := slices.IndexFunc(l.Confidence.Choices, func(c chance.Choice) bool { return c.IsChosen })
		assert.GreaterOrEqual(t, l.Confidence.Choices[chosen].Chance, l.Confidence.Chance)
	}
}

// A wish for more certainty never buys less.
func TestMoreChanceNeverNeedsLess(t *testing.T) {
	last := 0.0
	for _, chance := range []string{"50", "80", "90", "95", "99"} {
		l := simulatedLine(t, planned(t, append([]string{"card.gelcoat.chance = " + chance}, rolledTwice...)...), "gelcoat")
		need := l.Need.InexactFloat64()
		assert.Greater(t, need, last, chance)
		last = need
	}
}

// With all of it on the shelf nothing is bought, and what is left of nothing is
// worth nothing, prices or not.
func TestNothingBoughtIsWorthNothing(t *testing.T) {
	lines := append([]string{"card.gelcoat.stock = 50 kg", "card.gelcoat.pack.1.price = 20", "card.gelcoat.pack.2.price = 80", "card.gelcoat.pack.3.price = 300"}, rolledTwice...)
	l := simulatedLine(t, planned(t, lines...), "gelcoat")
	for _, c := range append(l.Confidence.Choices, l.Confidence.Start.Buys, l.Confidence.AtOnce.Buys) {
		if c.Bought.Bought.IsZero() {
			assert.False(t, c.Worth.Valid)
		}
	}
	assert.Empty(t, l.Packs)
}
