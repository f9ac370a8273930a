package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// A bar of an effect goes from the plan, at 150, as far as its ends say: 52 is the whole reach. Whichever end is the larger;
// with both on one side it still begins at the plan; past the reach it is cut there. (Exact.)
func TestABarOfAnEffectGoesFromThePlan(t *testing.T) {
	for _, c := range []struct{ low, high, from, to float64 }{
		{-1.5, 3, 124, 202}, {3, -1.5, 124, 202}, {-3, 1.5, 98, 176}, {1, 2, 150, 150 + 52*2./3}, {2, 1, 150, 150 + 52*2./3},
		{-1, -2, 150 - 52*2./3, 150}, {-2, -1, 150 - 52*2./3, 150}, {-9, 9, 98, 202}, {0, 0, 150, 150},
	} {
		list, view := marksOf(t, draw.Effect(draw.EffectBar{Title: "t", Low: c.low, High: c.high, Reach: 3, LowText: "low", HighText: "high"}))
		assert.Equal(t, [4]float64{0, 0, 300, 20}, view)
		lies(t, of(list, "bar-of")[0], c.from, 3, c.to, 17, "%+v", c)
		lies(t, of(list, "axis")[0], 150, 0, 150, 20, "the plan")
		low, high := saying(t, list, "low"), saying(t, list, "high")
		assert.Equal(t, []any{"start", 0., 10.}, []any{low.anchor, low.left, low.top})
		assert.Equal(t, []any{"end", 300., 10.}, []any{high.anchor, high.left, high.top})
	}
	for _, bad := range []draw.EffectBar{{Low: math.NaN(), High: 1, Reach: 1}, {Low: 1, High: math.Inf(1), Reach: 1}, {Low: 1, High: 1, Reach: math.Inf(1)}, {Low: 1, High: 1, Reach: -1}} {
		list, _ := marksOf(t, draw.Effect(bad))
		assert.Empty(t, of(list, "bar-of"), "%+v", bad)
	}
}

// Each place has a row of 22 with its bar, 14 high, its name and its figure on the bar's middle; the least goes through all.
// Without one the rows begin at the top. (Exact.)
func TestEachPlaceHasItsRow(t *testing.T) {
	p := draw.LeftPlot{Title: "t", Least: 250, Text: "least", Rows: []draw.LeftRow{{"mean", "600 µm", 600}, {"thin", "250 µm", 250}, {"edge", "249 µm", 249}, {"gone", "none", -20}}}
	for _, least := range []float64{250, 0} {
		p.Least = least
		list, view := marksOf(t, draw.Left(p))
		top := 0.
		if least > 0 {
			top = 16
		}
		assert.Equal(t, [4]float64{0, 0, 300, top + 88}, view)
		var bars []mark
		for _, m := range list {
			if m.tag == "rect" {
				bars = append(bars, m)
			}
		}
		assert.Len(t, bars, 4)
		for i, r := range p.Rows {
			class, wide := "bar-of", 138*max(r.Film, 0)/600
			if r.Film < least {
				class = "short"
			}
			assert.Equal(t, class, bars[i].class, r.Name)
			lies(t, bars[i], 90, top+22*float64(i)+4, 90+wide, top+22*float64(i)+18, r.Name)
			name, text := saying(t, list, r.Name), saying(t, list, r.Text)
			assert.Equal(t, []any{"start", 0., bars[i].middle().y}, []any{name.anchor, name.left, name.top})
			assert.Equal(t, []any{"end", 300., bars[i].middle().y}, []any{text.anchor, text.left, text.top})
		}
		if least == 0 {
			assert.Empty(t, of(list, "least"))
			continue
		}
		lies(t, of(list, "least")[0], 147.5, 14, 147.5, 104, "90 + 138 × 250 ÷ 600")
		text := saying(t, list, "least")
		assert.Equal(t, []any{"middle", 147.5, 8.}, []any{text.anchor, text.left, text.top})
	}
	p.Least = 900
	list, _ := marksOf(t, draw.Left(p))
	lies(t, of(list, "least")[0], 228, 14, 228, 104, "the least is the longest")
	lies(t, of(list, "short")[0], 90, 20, 182, 34, "138 × 600 ÷ 900")
	p.Rows[0].Film = math.NaN()
	list, _ = marksOf(t, draw.Left(p))
	assert.Len(t, of(list, "short"), 3, "no bar of no number, its row stays")
	assert.True(t, draw.Left(draw.LeftPlot{Rows: []draw.LeftRow{{"mean", "", -1}}}).IsEmpty())
	assert.True(t, draw.Left(draw.LeftPlot{Least: 3}).IsEmpty())
}

// Filler above cutting, each 20 high in a row of 26 with its name and figure on its middle; longer than the room it is cut. (Exact.)
func TestFillerStandsOverCutting(t *testing.T) {
	list, view := marksOf(t, draw.Trade(draw.TradePlot{Title: "t", Most: 2, Rows: [2]draw.TradeRow{{"filler", "9 L", 9}, {"cut off", "0.5 L", 0.5}}}))
	assert.Equal(t, [4]float64{0, 0, 300, 52}, view)
	lies(t, of(list, "filler")[0], 64, 3, 216, 23)
	lies(t, of(list, "tone0")[0], 64, 29, 102, 49, "a quarter of 152")
	for text, want := range map[string]mark{"filler": {anchor: "start", left: 0, top: 13}, "9 L": {anchor: "end", left: 300, top: 13},
		"cut off": {anchor: "start", left: 0, top: 39}, "0.5 L": {anchor: "end", left: 300, top: 39}} {
		got := saying(t, list, text)
		assert.Equal(t, []any{want.anchor, want.left, want.top}, []any{got.anchor, got.left, got.top}, text)
	}
	none, _ := marksOf(t, draw.Trade(draw.TradePlot{Title: "t", Most: 2, Rows: [2]draw.TradeRow{{"filler", "0 L", 0}, {"cut off", "–", math.NaN()}}}))
	assert.Len(t, none, 4, "texts alone")
}

// The band stands about the line, 12 high; a ring is an entry, the diamond what they come to; the plan's line goes from its
// word to past the band; the band's text stands under the band's middle, as far as the picture goes. (Exact.)
func TestMarksOfWhatTheHandTakesStandOnTheLine(t *testing.T) {
	p := draw.TakesPlot{Title: "t", Plan: "plan", Likely: "likely", Entries: []float64{0.5, 2, math.Inf(1), 0}, Comes: 0.5, Low: 0.5, High: 1}
	list, view := marksOf(t, draw.Takes(p))
	assert.Equal(t, [4]float64{0, 0, 300, 60}, view)
	lies(t, of(list, "axis")[0], 0, 30, 300, 30)
	lies(t, of(list, "likely")[0], 12, 24, 150, 36, "from half to the plan")
	lies(t, of(list, "today dashed")[0], 150, 16, 150, 39)
	lies(t, of(list, "comes")[0], 3, 21, 21, 39, "the diamond about the half")
	for i, x := range []float64{12, 288} {
		assert.Equal(t, point{x, 30}, of(list, "dot other")[i].middle())
	}
	assert.Len(t, of(list, "dot other"), 2)
	plan, likely := saying(t, list, "plan"), saying(t, list, "likely")
	assert.Equal(t, []any{"middle", 150., 8.}, []any{plan.anchor, plan.left, plan.top})
	assert.Equal(t, []any{"middle", 81., 52.}, []any{likely.anchor, likely.left, likely.top}, "under the middle of 12 and 150")
	p.Entries, p.Comes, p.Low, p.High = nil, 1, 0.99, 1.01
	narrow, _ := marksOf(t, draw.Takes(p))
	assert.InDelta(t, 2*138*math.Log(1.01)/math.Log(1.25), of(narrow, "likely")[0].right-of(narrow, "likely")[0].left, 0.3, "a quarter more is the least reach")
}

// The band of what is left begins at the top; what is left is dressed by how far it has come. Marks are 24 long about the
// circle of 84. (Exact.)
func TestARingsMarksStandAboutIt(t *testing.T) {
	list, view := marksOf(t, draw.Ring(draw.RingPlot{Title: "t", Left: 0.5, Class: "late", Marks: []float64{0.25, 0.5, 0.75}}))
	assert.Equal(t, [4]float64{0, 0, 200, 200}, view)
	lies(t, of(list, "ring-all")[0], 16, 16, 184, 184)
	lies(t, of(list, "ring-left late")[0], 16, 16, 184, 184)
	for i, want := range [][4]float64{{172, 100, 196, 100}, {100, 172, 100, 196}, {4, 100, 28, 100}} {
		lies(t, of(list, "ring-mark")[i], want[0], want[1], want[2], want[3], "right, below, left")
	}
	assert.Contains(t, draw.Ring(draw.RingPlot{Title: "t", Left: 0.5}).String(), `transform="rotate(-90 100 100)"`, "from the top")
}
