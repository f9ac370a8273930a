package order_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/order"
)

// Where every size costs the same by the kilogram, what is cheapest leaves least,
// and of the many ways to make that the one with the fewest packs is bought, over
// three and four sizes: all needs up to three of the largest, against every choice.
func TestOfEqualCostsTheFewestPacksAreBought(t *testing.T) {
	for _, sizes := range [][]int{{100, 200, 500}, {100, 300, 400}, {100, 200, 500, 700}, {50, 100, 250, 1000}} {
		packs := make([]order.Pack, len(sizes))
		for i, size := range sizes {
			packs[i] = order.Pack{Size: decimal.New(int64(size), -2), Price: decimal.NewNullDecimal(decimal.New(int64(size), 0))}
		}
		for need := 10; need <= 3*sizes[len(sizes)-1]; need += 30 {
			settles(t, "equal costs", need, math.MaxInt, sizes, sizes, packs, true)
		}
	}
}
