package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// By logarithms: twice as far from the plan as half is on its other side, and 1.25, their tenth or more, between. The band
// from 0.8 to 2 reaches the glass's end at 2, 138 from the middle; 1.2599 is a third of the way, 0.8 at 0.3219 of it.
// (Exact.)
func TestWhatTheHandTakesIsByFactors(t *testing.T) {
	p := draw.TakesPlot{Title: "t", Plan: "as planned", Likely: "the next: 0.8 to 2 ×", Entries: []float64{1.2599, 0.8, math.NaN(), -1}, Comes: 1.2599, Low: 0.8, High: 2}
	h := draw.Takes(p)
	assert.Equal(t, []string{"as planned", "the next: 0.8 to 2 ×"}, texts(read(t, h)))
	assert.Contains(t, h.String(), `class="likely" x="105.6" y="24" width="182.4"`)
	assert.Contains(t, h.String(), `class="today dashed" d="M150 16`)
	assert.Contains(t, h.String(), `class="dot other" cx="196" cy="30"`, "150 + 138 ÷ 3")
	assert.Contains(t, h.String(), `class="dot other" cx="105.6"`, "150 − 138 × 0.3219")
	assert.Contains(t, h.String(), `class="comes" d="M187 30L196 21`)
	for _, wild := range []float64{math.NaN(), math.Inf(1), 0, -4, 1e308, 1e-308} {
		for _, set := range []func(){func() { p.Low = wild }, func() { p.High = wild }, func() { p.Comes = wild }, func() { p.Likely, p.Plan = long, long }} {
			was := p
			set()
			read(t, draw.Takes(p))
			p = was
		}
	}
	assert.True(t, draw.Takes(draw.TakesPlot{}).IsEmpty())
}
