package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// Of a room of 152, 1.5 of 3 L is half. (Exact.)
func TestFillerAgainstCuttingIsToOneScale(t *testing.T) {
	p := draw.TradePlot{Title: "t", Most: 3, Rows: [2]draw.TradeRow{{"filler", "3 L", 3}, {"cut off", "1.5 L", 1.5}}}
	h := draw.Trade(p)
	assert.Equal(t, []string{"filler", "3 L", "cut off", "1.5 L"}, texts(read(t, h)))
	assert.Contains(t, h.String(), `class="filler" x="64" y="3" width="152"`)
	assert.Contains(t, h.String(), `class="tone0" x="64" y="29" width="76"`)
	for _, wild := range []float64{math.NaN(), math.Inf(1), -4, 0, 1e308} {
		p.Rows[0], p.Most = draw.TradeRow{Name: long, Text: long, Volume: wild}, wild
		read(t, draw.Trade(p))
	}
}
