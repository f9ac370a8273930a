package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
)

// What a cup covers is what leaves it, less what the method loses on the way: a
// gun that loses 45 % covers 0.55 ÷ 0.95 of what a roller does from the same cup
// at the same film.
func TestACupCoversWhatArrives(t *testing.T) {
	for _, key := range []string{"gravity-gun", "nap-roller", "brush"} {
		method, known := material.FindMethod(key)
		require.True(t, known)
		b := benchOf(t, tenOClock, warmMorning, "bench.now.method = "+key, "bench.now.film = 450 µm")
		require.NotNil(t, b.Covers.Step, key)
		perArea := float64(b.Film.Value) * 1250 / (1 - float64(method.Loss.Value))
		assert.InDelta(t, perArea, float64(b.PerArea.Value), 1e-9, key)
		left := float64(b.Whole.Value) - perArea*float64(b.Covers.Value)
		assert.InDelta(t, float64(method.Leftover.Value)+0.008, left, 1e-9, "%s: the tool and the wall of a small cup keep theirs", key)
	}
}
