package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// Of a room of 138, 300 of 600 is half, and the least of 250 lies at 90 + 57.5. (Exact.)
func TestWhatIsLeftIsToOneScale(t *testing.T) {
	p := draw.LeftPlot{Title: "t", Least: 250, Text: "least 250 µm", Rows: []draw.LeftRow{{"mean", "600 µm", 600}, {"thin side", "300 µm", 300}, {"edge strip", "150 µm", 150}}}
	h := draw.Left(p)
	assert.Equal(t, []string{"mean", "600 µm", "thin side", "300 µm", "edge strip", "150 µm", "least 250 µm"}, texts(read(t, h)))
	assert.Contains(t, h.String(), `class="bar-of" x="90" y="42" width="69"`)
	assert.Contains(t, h.String(), `class="short" x="90" y="64" width="34.5"`, "what lies under the least looks otherwise")
	assert.Contains(t, h.String(), `class="least" d="M147.5 14L147.5 82"`)
	for _, wild := range []float64{math.NaN(), math.Inf(1), -4, 1e308} {
		p.Rows[1] = draw.LeftRow{Name: long, Text: long, Film: wild}
		read(t, draw.Left(p))
	}
	assert.True(t, draw.Left(draw.LeftPlot{}).IsEmpty())
}
