package order_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
	"shedreckoner/calc/unit"
)

func TestRoundUp(t *testing.T) {
	tenth := 0.1 // a variable: constants would add up exactly
	for _, c := range []struct {
		v    unit.Mass
		want string
	}{
		{0, "0"},
		{unit.Mass(tenth + 0.2), "0.3"}, // 0.30000000000000004
		{unit.Mass(tenth * 3), "0.3"},
		{0.30001, "0.3001"},
		{0.29999, "0.3"},
		{1e-9, "0"}, // a microgram is nothing
		{1e-5, "0.0001"},
		{-1e-12, "0"},
		{12345.6789, "12345.6789"},
	} {
		got, err := order.RoundUp(c.v, unit.InKilogram, order.Tenth)
		require.NoError(t, err)
		assert.True(t, got.Equal(dec(c.want)), "%v: %v", c.v, got)
	}
	got, err := order.RoundUp(0.5*unit.Litre+0.01*unit.Millilitre, unit.InLitre, order.Tenth)
	require.NoError(t, err)
	assert.True(t, got.Equal(dec("0.5001")), got.String())
}

func TestRoundUpRefusesWhatCannotBeBought(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), -1, 1e9} {
		_, err := order.RoundUp(unit.Mass(v), unit.InKilogram, order.Tenth)
		var refused *order.RoundUpError
		assert.ErrorAs(t, err, &refused, "%v", v)
	}
}

// What RoundUp gives is a whole number of steps, never under the amount by more
// than the slack, and a second pass changes nothing.
func TestRoundUpGoesToTheNextStep(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 1000 {
		v := math.Exp(12*random.Float64() - 6)
		got, err := order.RoundUp(unit.Mass(v), unit.InKilogram, order.Tenth)
		require.NoError(t, err)
		assert.True(t, got.Mod(order.Tenth).IsZero())
		over := got.InexactFloat64() - v
		assert.True(t, over > -1.001e-7 && over < 1.001e-4, "%v: %v", v, got)
		again, err := order.RoundUp(unit.Mass(got.InexactFloat64()), unit.InKilogram, order.Tenth)
		require.NoError(t, err)
		assert.True(t, again.Equal(got))
	}
}

func TestStockIsTakenOffTheNeed(t *testing.T) {
	assert.True(t, order.ToBuy(dec("3.2"), dec("1.1")).Equal(dec("2.1")))
	assert.True(t, order.ToBuy(dec("1"), dec("5")).IsZero())
}
