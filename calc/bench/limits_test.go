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

// Filler that is mixed on a board leaves nothing on a cup's wall: what the wet knife
// holds, 30 g, is all. Put on another way it is mixed in a cup, and its wall counts.
func TestFillerOnABoardHasNoWall(t *testing.T) {
	lines := []string{bare, "bench.now.card = polyester-filler", "bench.now.amount = 120 g", "bench.now.ahead = 18"}
	covers := func(method string) (area, perArea float64) {
		b := benchOf(t, tenOClock, append(lines, "bench.now.method = "+method)...)
		require.NotNil(t, b.Covers.Step, "%s: %v %v", method, b.Reasons, b.Waiting)
		return float64(b.Covers.Value), float64(b.PerArea.Value)
	}
	area, perArea := covers("knife")
	assert.InDelta(t, 0.120-0.030, area*perArea, 1e-9)
	area, perArea = covers("brush") // 15 g in the brush, 8 g on the wall of a cup of 250 mL
	assert.InDelta(t, 0.120-0.015-0.008, area*perArea, 1e-9)
}
