package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/draw"
)

func hollows(rows, columns int) draw.HollowMap {
	m := draw.HollowMap{Title: "Depths in mm", Text: func(d float64) string { return unit.Number(d*1000, 3) },
		Coarse: func(n int) string { return fmt.Sprintf("Each square is the deepest of %d × %d readings.", n, n) }}
	for r := range rows {
		var row []float64
		for c := range columns {
			row = append(row, float64((r*7+c*3)%11)/1000)
		}
		m.Depths = append(m.Depths, row)
	}
	return m
}

func TestMapSaysEveryDepth(t *testing.T) {
	h := draw.Map(hollows(3, 4))
	assert.Len(t, read(t, h), 12)
	assert.Contains(t, h.String(), `class="tone4"`)
	assert.Contains(t, h.String(), `class="tone0"`)
}

func TestAWideMapShowsTheDeepest(t *testing.T) {
	for _, size := range []int{30, 100} {
		m := hollows(size, size)
		m.Depths[size-1][size-1] = 0.5 // the deepest of all stays in sight
		list := texts(read(t, draw.Map(m)))
		assert.Contains(t, list, "500")
		assert.True(t, strings.HasPrefix(strings.Join(list[len(list)-2:], " "), "Each") || strings.HasPrefix(list[len(list)-1], "Each"))
	}
}

func TestMapStandsWhateverComes(t *testing.T) {
	assert.True(t, draw.Map(draw.HollowMap{}).IsEmpty())
	m := hollows(3, 3)
	m.Depths[0][0], m.Depths[1][1], m.Depths[2], m.Coarse = math.NaN(), math.Inf(1), m.Depths[2][:1], nil
	assert.Len(t, read(t, draw.Map(m)), 5, "a place without a reading has no number")
	for _, all := range []float64{0, -1, math.NaN(), math.MaxFloat64, -math.MaxFloat64} {
		read(t, draw.Map(draw.HollowMap{Title: "Depths", Depths: [][]float64{{all, all}}, Text: m.Text}))
	}
	read(t, draw.Map(hollows(1, 100)))
	read(t, draw.Map(hollows(100, 1)))
}

// Half of the longest way is half of the room that is left beside the two texts: 26 of 52. (Exact.)
func TestAnEffectEndsInsideThePicture(t *testing.T) {
	bar := draw.EffectBar{Title: "Loss in spraying", Low: -1.5, High: 3, Reach: 3, LowText: "−1.5 kg", HighText: "+3 kg"}
	h := draw.Effect(bar)
	assert.Equal(t, []string{"−1.5 kg", "+3 kg"}, texts(read(t, h)))
	assert.Contains(t, h.String(), `class="bar-of" x="124" y="3" width="78"`)
	bar.Reach = 0
	assert.NotContains(t, draw.Effect(bar).String(), "bar-of")
	for _, b := range []draw.EffectBar{{Title: "t", Low: math.NaN(), High: 1, Reach: 1}, {Title: "t", Low: -1e300, High: 1e300, Reach: 1, LowText: long, HighText: long}} {
		read(t, draw.Effect(b))
	}
}
