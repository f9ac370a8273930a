package order_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
)

func dec(text string) decimal.Decimal { return decimal.RequireFromString(text) }

func pack(size, price string) order.Pack {
	return order.Pack{Size: dec(size), Price: decimal.NewNullDecimal(dec(price))}
}

func unpriced(sizes ...string) []order.Pack {
	var list []order.Pack
	for _, s := range sizes {
		list = append(list, order.Pack{Size: dec(s)})
	}
	return list
}

// bySize has one price per unit for every size, so that only the rest decides.
func bySize(sizes ...string) []order.Pack {
	var list []order.Pack
	for _, s := range sizes {
		list = append(list, pack(s, s))
	}
	return list
}

func TestChoose(t *testing.T) {
	gelcoat := []order.Pack{pack("1", "19.90"), pack("5", "79"), pack("20", "259")}
	for _, c := range []struct {
		name, need string
		packs      []order.Pack
		counts     []int
	}{
		{"nothing", "0", gelcoat, []int{0, 0, 0}},
		{"a larger pack is cheaper than what is needed", "4.2", gelcoat, []int{0, 1, 0}},
		{"mixed", "6.3", gelcoat, []int{2, 1, 0}},
		{"three fives and three ones cost less than twenty", "16.2", []order.Pack{pack("1", "12"), pack("5", "50"), pack("20", "259")}, []int{2, 3, 0}},
		{"three packs of 0.1 for 0.3", "0.3", []order.Pack{pack("0.1", "3")}, []int{3}},
		{"just over is one more", "0.3001", []order.Pack{pack("0.1", "3")}, []int{4}},
		{"same cost: the least left over", "3", []order.Pack{pack("4", "10"), pack("3", "10")}, []int{0, 1}},
		{"same cost and rest: the fewest packs", "6", []order.Pack{pack("2", "10"), pack("6", "30")}, []int{0, 1}},
		{"no price, two packs: the least left over", "6", unpriced("5", "4", "2.5"), []int{0, 1, 1}},
		{"no price: two drums and no 39 tins", "39.2", unpriced("1", "5", "20"), []int{0, 0, 2}},
		{"no price: no drum for a tin's worth", "1.2", unpriced("1", "5", "20"), []int{2, 0, 0}},
		{"no price: 2.9 left over are more than a tenth", "17.1", unpriced("1", "5", "20"), []int{3, 3, 0}},
		{"no price: exactly a tenth may be left over", "18", unpriced("0.1", "19.8"), []int{0, 1}},
		{"no price: not more", "17.99", unpriced("0.1", "19.8"), []int{180, 0}},
		{"free", "7", []order.Pack{pack("5", "0"), pack("2", "0")}, []int{1, 1}},
		{"four quarts are a gallon, but one pack", "3.5", unpriced("0.946352946", "3.785411784"), []int{0, 1}},
	} {
		got, err := order.Choose(dec(c.need), c.packs)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.counts, got.Counts, c.name)
		assert.True(t, got.Left.Sign() >= 0, c.name)
		assert.True(t, got.Left.Equal(got.Bought.Sub(dec(c.need))), c.name)
	}
}

func TestOneMissingPriceAndPricesDoNotCount(t *testing.T) {
	mixed := append(unpriced("3"), pack("5", "1"))
	got, err := order.Choose(dec("3"), mixed)
	require.NoError(t, err)
	assert.False(t, got.IsPriced)
	assert.Equal(t, []int{1, 0}, got.Counts)
	assert.True(t, got.Cost.IsZero())
}

func TestChooseRefuses(t *testing.T) {
	six := unpriced("1", "2", "3", "4", "5", "6")
	for _, c := range []struct {
		need  string
		packs []order.Pack
		cause order.PackCause
		at    int
	}{
		{"1", nil, order.NoPacks, 0},
		{"1", append(six, unpriced("7")...), order.TooManySizes, 6},
		{"1", unpriced("1", "0"), order.BadSize, 1},
		{"1", unpriced("-1"), order.BadSize, 0},
		{"1", []order.Pack{pack("1", "-0.01")}, order.BadPrice, 0},
		{"-0.1", six, order.BadNeed, 0},
		{"1000.1", unpriced("1"), order.TooManyPacks, 0},
		{"900", []order.Pack{pack("0.5", "1"), pack("1", "3")}, order.TooManyPacks, 0},
		{"1e30", unpriced("1e27"), order.TooFine, 0},
		{"1", unpriced("0.0000000000000000001"), order.TooFine, 0},
		{"3999", bySize("0.473176473", "0.946352946", "3.785411784", "18.92705892", "1", "5"), order.TooFine, 0},
		{"1000", []order.Pack{pack("1", "5000000000000000")}, order.TooFine, 0},
		{"4", []order.Pack{pack("1", "4611686018427387904")}, order.TooFine, 0}, // 4 × 2⁶² mustn't be taken for nothing
		{"1e18", unpriced("1e17", "0.000000001"), order.TooFine, 0},
		{"18446744073709551617", unpriced("10"), order.TooFine, 0}, // 2⁶⁴ + 1 mustn't be taken for one
		{"1", []order.Pack{pack("1", "18446744073709551617")}, order.TooFine, 0},
		{"4611686018427387905", unpriced("4611686018427387904"), order.TooFine, 0}, // 2⁶² + 1
		{"1", unpriced("1e-19"), order.TooFine, 0},
		{"1", unpriced("1e19"), order.TooFine, 0},
	} {
		_, err := order.Choose(dec(c.need), c.packs)
		var refused *order.PackError
		require.ErrorAs(t, err, &refused, c.need)
		assert.Equal(t, c.cause, refused.Cause, c.need)
		assert.Equal(t, c.at, refused.At, c.need)
	}
	_, err := order.Choose(dec("17"), six) // as many sizes as allowed
	assert.NoError(t, err)
	for need, size := range map[string]string{"4611686018427387904": "4611686018427387904", "1e-18": "1e-18", "1e18": "1e18"} {
		got, err := order.Choose(dec(need), unpriced(size)) // as large and as fine as allowed: 2⁶², 18 places
		require.NoError(t, err, need)
		assert.Equal(t, 1, got.Packs, need)
	}
	got, err := order.Choose(dec("1000"), unpriced("1")) // as many packs as allowed
	require.NoError(t, err)
	assert.Equal(t, order.MaxPacks, got.Packs)
}

// exhaustive finds the best purchase by trying every one that could be it and
// leaves no more over than it may.
func exhaustive(need, spare int, sizes, prices []int) (cost, left, packs int) {
	best := [3]int{math.MaxInt, 0, 0}
	var try func(i, rest, cost, packs int)
	try = func(i, rest, cost, packs int) {
		if rest <= 0 {
			c := [3]int{cost, -rest, packs}
			if -rest > spare {
				return
			}
			if c[0] < best[0] || c[0] == best[0] && (c[1] < best[1] || c[1] == best[1] && c[2] < best[2]) {
				best = c
			}
			return
		}
		if i == len(sizes) {
			return
		}
		for n := 0; ; n++ {
			try(i+1, rest-n*sizes[i], cost+n*prices[i], packs+n)
			if n*sizes[i] >= rest {
				return
			}
		}
	}
	try(0, need, 0, 0)
	return best[0], best[1], best[2]
}

func TestChooseAgainstExhaustiveSearch(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	for range 3000 {
		n := 1 + random.IntN(4)
		need := random.IntN(60)
		sizes, prices, packs := make([]int, n), make([]int, n), make([]order.Pack, n)
		isPriced := random.IntN(3) > 0
		for i := range n {
			sizes[i] = 1 + random.IntN(25)
			prices[i] = 1 // unpriced: packs are what counts
			packs[i] = order.Pack{Size: decimal.New(int64(sizes[i]), -2)}
			if isPriced {
				prices[i] = random.IntN(40) // many ties
				packs[i].Price = decimal.NewNullDecimal(decimal.New(int64(prices[i]), -1))
			}
		}
		got, err := order.Choose(decimal.New(int64(need), -2), packs)
		require.NoError(t, err)
		spare := math.MaxInt
		if !isPriced {
			spare = max(need/10, slices.Min(sizes))
		}
		cost, left, count := exhaustive(need, spare, sizes, prices)
		if isPriced {
			require.True(t, got.Cost.Equal(decimal.New(int64(cost), -1)), "%v %v: %v, want %d", need, packs, got, cost)
		}
		require.True(t, got.Left.Equal(decimal.New(int64(left), -2)), "%v %v: %v, want left %d", need, packs, got, left)
		require.Equal(t, count, got.Packs, "%v %v", need, packs)
	}
}

// A larger need never costs less, the order of the sizes doesn't matter, and
// finer needs than the packs are handled exactly.
// Sizes and prices whose products don't fit in 64 bits are compared as rightly as small ones.
func TestChooseWithProductsOver64Bits(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 4))
	large := func(most int) int { return (1+random.IntN(most))*1_000_000_000 + random.IntN(1_000_000_000) }
	for range 500 {
		sizes, prices, packs := make([]int, 3), make([]int, 3), make([]order.Pack, 3)
		for i := range packs {
			sizes[i], prices[i] = large(20), large(40)
			packs[i] = order.Pack{Size: decimal.NewFromInt(int64(sizes[i])), Price: decimal.NewNullDecimal(decimal.NewFromInt(int64(prices[i])))}
		}
		need := large(60)
		got, err := order.Choose(decimal.NewFromInt(int64(need)), packs)
		require.NoError(t, err)
		cost, left, count := exhaustive(need, math.MaxInt, sizes, prices)
		require.Equal(t, []string{strconv.Itoa(cost), strconv.Itoa(left), strconv.Itoa(count)}, []string{got.Cost.String(), got.Left.String(), strconv.Itoa(got.Packs)}, "%d of %v at %v", need, sizes, prices)
	}
}

func TestChooseIsMonotonicAndSymmetric(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 40 {
		packs := make([]order.Pack, 1+random.IntN(order.MaxSizes))
		for i := range packs {
			packs[i] = pack(strconv.FormatFloat(0.25*float64(1+random.IntN(80)), 'f', -1, 64), strconv.Itoa(1+random.IntN(300)))
		}
		last := decimal.Zero
		for need := dec("0.0001"); need.LessThan(dec("40")); need = need.Add(dec("1.3337")) {
			got, err := order.Choose(need, packs)
			require.NoError(t, err)
			require.True(t, got.Cost.GreaterThanOrEqual(last), "%v for %v", packs, need)
			last = got.Cost

			turned := append(append([]order.Pack{}, packs[1:]...), packs[0])
			same, err := order.Choose(need, turned)
			require.NoError(t, err)
			require.True(t, same.Cost.Equal(got.Cost) && same.Left.Equal(got.Left) && same.Packs == got.Packs)
		}
	}
}

// Large needs and awkward sizes are settled exactly: the search gives up on none.
func TestChooseSettlesAwkwardSizes(t *testing.T) {
	random := rand.New(rand.NewPCG(10, 10))
	for range 2000 {
		packs := make([]order.Pack, 1+random.IntN(order.MaxSizes))
		for i := range packs {
			packs[i].Size = decimal.NewFromFloat(0.4 + 20*random.Float64()).Round(3)
		}
		_, err := order.Choose(decimal.NewFromFloat(300*random.Float64()).Round(4), packs)
		require.NoError(t, err, "%v", packs)
	}
}

func BenchmarkChoose(b *testing.B) {
	litres := unpriced("0.473", "0.946", "1", "3.785", "5", "18.93")
	for b.Loop() {
		if _, err := order.Choose(dec("100.03"), litres); err != nil {
			b.Fatal(err)
		}
	}
}
