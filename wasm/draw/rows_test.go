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

func TestChance(t *testing.T) {
	h := draw.Chance("Chance not to run out", []draw.Choice{
		{Packs: "1 × 5 kg", Price: "84.00 EUR", Chance: 0.31, Text: "31 %"},
		{Packs: "1 × 5 kg + 1 × 1 kg", Price: "103.50 EUR", Chance: 0.92, Text: "92 %", IsChosen: true},
		{Packs: long, Price: long, Chance: 7, Text: long}, {Packs: "1", Price: "–", Chance: math.NaN(), Text: "–"}})
	list := texts(read(t, h))
	assert.Contains(t, list, "1 × 5 kg + 1 × 1 kg")
	assert.Contains(t, list, "92 %")
	assert.Contains(t, h.String(), `class="bar-of" x="0" y="58" width="206.1"`, "0.92 of 224")
	assert.True(t, draw.Chance("", nil).IsEmpty())
}

func TestBars(t *testing.T) {
	h := draw.Bars("What moves the order most", []draw.Bar{
		{Name: "Loss in spraying", Text: "± 2.1 kg", Low: -2.1, High: 2.1}, {Name: "Area", Text: "+ 1 kg", Low: 0.5, High: 1.05},
		{Name: long, Text: long, Low: math.NaN(), High: 1}, {Name: "None", Text: "0 kg"}})
	assert.Contains(t, texts(read(t, h)), "Loss in spraying")
	assert.Contains(t, h.String(), `x="0" y="18" width="300"`, "the largest is the whole width")
	assert.Contains(t, h.String(), `x="150" y="58" width="75"`, "half of it, up from the plan")
	read(t, draw.Bars("All nothing", []draw.Bar{{Name: "a", Text: "0"}}))
	read(t, draw.Bars("Wide", []draw.Bar{{Name: "a", Text: "?", Low: -math.MaxFloat64, High: math.MaxFloat64}}))
	assert.True(t, draw.Bars("", nil).IsEmpty())
}
