package order_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/order"
)

// For a linear total, each bar is its coefficient times the input's uncertainty.
func TestSensitivitySortsByWhatMovesMost(t *testing.T) {
	inputs := []order.Input{{10, 9, 11}, {0.4, 0.3, 0.6}, {2, 2, 2}}
	bars, err := order.Sensitivity(inputs, func(v []float64) (float64, error) { return v[0] - 50*v[1] + v[2], nil })
	require.NoError(t, err)
	require.Len(t, bars, 3)
	assert.Equal(t, []int{1, 0, 2}, []int{bars[0].Input, bars[1].Input, bars[2].Input})
	assert.InDelta(t, 5, bars[0].Low, 1e-12)
	assert.InDelta(t, -10, bars[0].High, 1e-12)
	assert.InDelta(t, 10, bars[0].Reach(), 1e-12)
	assert.InDelta(t, -1, bars[1].Low, 1e-12)
	assert.Zero(t, bars[2].Reach())
}

func TestSensitivityPassesOnARefusal(t *testing.T) {
	refused := errors.New("refused")
	for _, at := range []float64{0, 1, 2} { // at the low end, as planned, at the high end
		bars, err := order.Sensitivity([]order.Input{{1, 0, 2}}, func(v []float64) (float64, error) {
			if v[0] == at {
				return 0, refused
			}
			return v[0], nil
		})
		assert.ErrorIs(t, err, refused, at)
		assert.Empty(t, bars, at)
	}
}
