package draw_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// The circle's length is 2π × 84 = 527.8 units: half of it is 263.9. (Exact.)
func TestARingEmptiesWithTheTime(t *testing.T) {
	dash := func(left float64) string {
		text := draw.Ring(draw.RingPlot{Title: "t", Left: left}).String()
		_, rest, found := strings.Cut(text, `stroke-dasharray="`)
		if !found {
			return ""
		}
		dash, _, _ := strings.Cut(rest, `"`)
		return dash
	}
	assert.Equal(t, "527.8 527.8", dash(1))
	assert.Equal(t, "263.9 527.8", dash(0.5))
	for left, want := range map[float64]string{1.7: "527.8 527.8", 0: "", -3: "", math.Inf(1): "527.8 527.8", math.Inf(-1): ""} {
		assert.Equal(t, want, dash(left), left)
	}
	assert.Empty(t, dash(math.NaN()))
}

// A mark at a quarter of the whole lies to the right of the middle, from 72 to 96 units off.
func TestMarksOfARingGoClockwise(t *testing.T) {
	text := draw.Ring(draw.RingPlot{Title: "t", Left: 1, Marks: []float64{0.25, 0, 1, math.NaN()}}).String()
	assert.Contains(t, text, `d="M172 100L196 100"`)
	assert.Equal(t, 1, strings.Count(text, "ring-mark"), "ends aren't marked, nor what is no number")
}
