package draw_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

func bar(mixed, spread, from, until float64) draw.TimeBarPlot {
	return draw.TimeBarPlot{Title: "t", Mixed: mixed, Spread: spread, From: from, Until: until, SpreadNames: []string{"spread 7 min", "7 min"}, GelNames: []string{"gels in the cup", "gels"},
		End: "20 min", Text: func(t float64) string { return strconv.FormatFloat(t, 'f', -1, 64) }}
}

// Mixed after 2 min of 20, spread by 9, gels from 12: on a bar of 300 these lie at 30, 135 and 180. (Exact.)
func TestATimeBarIsToScale(t *testing.T) {
	h := draw.TimeBar(bar(2, 9, 12, 20))
	text := h.String()
	assert.Contains(t, text, `class="tone4" x="30" y="0" width="105"`)
	assert.Contains(t, text, `class="gel" x="180" y="0" width="120"`)
	assert.Equal(t, []string{"spread 7 min", "gels", "20 min", "0", "2", "9", "12"}, texts(read(t, h)))
}

// Ends that lie close share no place: the later one is left out. A name that doesn't fit its piece is too.
func TestNothingOnATimeBarTouches(t *testing.T) {
	list := texts(read(t, draw.TimeBar(bar(1, 1.4, 1.8, 60))))
	assert.Equal(t, []string{"gels in the cup", "20 min", "0"}, list)
}

func TestATimeBarOfNonsenseIsNone(t *testing.T) {
	for _, p := range []draw.TimeBarPlot{bar(2, 1, 12, 20), bar(2, 9, 8, 20), bar(2, 9, 12, math.NaN()), bar(0, 0, 0, 0), bar(-1, 9, 12, 20), bar(2, 9, 12, math.Inf(1))} {
		assert.Empty(t, draw.TimeBar(p).String())
	}
}
