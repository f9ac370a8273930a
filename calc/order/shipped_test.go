package order_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/order"
)

// The packs of every card that ships, for needs about every total that they make
// and at random, without prices and with: what is bought covers the need, and no
// other purchase is cheaper, or as cheap and leaves less, or that with fewer packs.
func TestEveryShippedTableOfPacksAgainstExhaustiveSearch(t *testing.T) {
	const hundredths = 100
	random := rand.New(rand.NewPCG(12, 5))
	for _, card := range material.Cards {
		sizes := make([]int, len(card.Packs))
		packs := make([]order.Pack, len(card.Packs))
		for i, p := range card.Packs {
			packs[i].Size = dec(p.Size)
			sizes[i] = int(packs[i].Size.Shift(2).IntPart())
			require.True(t, packs[i].Size.Equal(decimal.New(int64(sizes[i]), -2)), "%s: finer than the search here", card.Key)
		}
		smallest, largest := slices.Min(sizes), slices.Max(sizes)
		needs := []int{0, 1, smallest, smallest + 1, largest - 1, largest, largest + 1, largest + smallest}
		for range 20 {
			needs = append(needs, 1+random.IntN(min(3*largest, 40*smallest)))
		}
		for _, need := range needs {
			prices := make([]int, len(sizes))
			for i := range prices {
				prices[i] = 1
			}
			settles(t, card.Key, need, max(need/10, smallest), sizes, prices, packs, false)
			priced := slices.Clone(packs)
			for i := range prices {
				prices[i] = 1 + random.IntN(sizes[i]*30/hundredths+20)
				priced[i].Price = decimal.NewNullDecimal(decimal.New(int64(prices[i]), 0))
			}
			settles(t, card.Key, need, math.MaxInt, sizes, prices, priced, true)
		}
	}
}

func settles(t *testing.T, card string, need, spare int, sizes, prices []int, packs []order.Pack, isPriced bool) {
	t.Helper()
	got, err := order.Choose(decimal.New(int64(need), -2), packs)
	require.NoError(t, err, "%s, %d", card, need)
	require.False(t, got.Bought.LessThan(decimal.New(int64(need), -2)), "%s: %v doesn't cover %d", card, got.Counts, need)
	cost, left, count := exhaustive(need, spare, sizes, prices)
	if isPriced {
		require.True(t, got.Cost.Equal(decimal.New(int64(cost), 0)), "%s, %d: %v, want %d", card, need, got, cost)
	}
	require.True(t, got.Left.Equal(decimal.New(int64(left), -2)), "%s, %d: %v, want left %d", card, need, got, left)
	require.Equal(t, count, got.Packs, "%s, %d", card, need)
}
