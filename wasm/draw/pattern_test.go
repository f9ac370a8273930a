package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/draw"
)

// fills holds the lines of a pattern to its box: evenly spaced from corner to corner, each from edge to edge. It gives what
// lies between two of them: upright lines and level ones by their distance, slanted ones by it along an edge.
func fills(t *testing.T, m, box mark) (gap float64) {
	t.Helper()
	require.Greater(t, len(m.lines), 1)
	first := m.lines[0]
	along, end := func(p point) float64 { return p.x - box.left + p.y - box.top }, box.right-box.left+box.bottom-box.top // slanted
	switch {
	case first[0].x == first[1].x:
		along, end = func(p point) float64 { return p.x - box.left }, box.right-box.left
	case first[0].y == first[1].y:
		along, end = func(p point) float64 { return p.y - box.top }, box.bottom-box.top
	}
	at := func(i int) float64 { return along(m.lines[i][0]) }
	gap = at(1) - at(0)
	assert.InDelta(t, gap/2, at(0), 0.21, "the first stands half a gap from the corner")
	for i, l := range m.lines {
		assert.InDelta(t, at(0)+gap*float64(i), at(i), 0.41, "evenly spaced")
		assert.InDelta(t, along(l[0]), along(l[1]), 0.21, "all one way")
		for _, p := range l {
			near := min(math.Abs(p.x-box.left), math.Abs(p.x-box.right), math.Abs(p.y-box.top), math.Abs(p.y-box.bottom))
			assert.InDelta(t, 0, near, 0.11, "%v ends at an edge", l)
			assert.True(t, p.x > box.left-0.11 && p.x < box.right+0.11 && p.y > box.top-0.11 && p.y < box.bottom+0.11, "%v lies in its box", l)
		}
		assert.Greater(t, math.Hypot(l[0].x-l[1].x, l[0].y-l[1].y), 0.5, "a line that shows")
	}
	assert.LessOrEqual(t, at(len(m.lines)-1), end)
	assert.Greater(t, at(len(m.lines)-1)+gap, end-0.41, "up to the far corner")
	return gap
}

// Whatever is hatched is hatched from corner to corner, in a flat box, a square one and a high one; what is polished more
// finely than what is sanded, so that the two are told apart.
func TestAPatternFillsItsBox(t *testing.T) {
	ways := map[draw.Stuff][]string{draw.Ground: {"hatch"}, draw.FlowCoatFilm: {"hatch"}, draw.PrimerFilm: {"hatch"},
		draw.TopcoatFilm: {"hatch", "hatch"}, draw.Sanded: {"off"}, draw.Polished: {"off"}, draw.GelCoatFilm: nil, draw.Filling: {"dots"}, draw.Washed: {"dashed"}}
	tone := map[draw.Stuff]string{draw.Ground: "tone1", draw.Filling: "filler", draw.GelCoatFilm: "wetfilm", draw.FlowCoatFilm: "wetfilm",
		draw.PrimerFilm: "tone3", draw.TopcoatFilm: "tone2", draw.Sanded: "tone0", draw.Polished: "tone0", draw.Washed: "tone0"}
	for _, size := range [][2]float64{{36, 0}, {52, 30}, {88, 88}, {200, 150}} {
		gaps := map[draw.Stuff]float64{}
		for stuff, classes := range ways {
			list, view := marksOf(t, draw.Swatch{Stuff: stuff, Height: size[0], Film: size[1]}.Layer())
			film := size[1]
			if film == 0 {
				film = size[0]
			}
			assert.Equal(t, [4]float64{0, 0, 88, size[0]}, view)
			lies(t, list[0], 0, size[0]-film, 88, size[0], stuff)
			assert.Equal(t, tone[stuff], list[0].class)
			require.Len(t, list, 1+len(classes), stuff)
			for i, class := range classes {
				m := list[1+i]
				assert.Equal(t, class, m.class)
				switch class {
				case "dots":
					gaps[stuff] = scattered(t, m, list[0])
				case "dashed":
					lies(t, m, 0, size[0]-1, 88, size[0]-1, "at the foot")
				default:
					gaps[stuff] = fills(t, m, list[0])
				}
			}
		}
		assert.Less(t, gaps[draw.Polished], gaps[draw.Sanded]/2)
	}
}

// scattered holds dots to a box: rows evenly apart, every second one moved by half.
func scattered(t *testing.T, m, box mark) (gap float64) {
	t.Helper()
	gap = m.lines[1][0].x - m.lines[0][0].x
	row, x := 0, box.left+gap/2
	for _, l := range m.lines {
		assert.Equal(t, l[0], l[1], "a dot")
		y := box.top + gap/2 + gap*float64(row)
		if l[0].y > y+0.11 {
			assert.Greater(t, x, box.right-0.11, "a row goes on to the edge")
			row++
			x, y = box.left+gap/2+gap/2*float64(row%2), y+gap
		}
		assert.InDeltaSlice(t, []float64{x, y}, []float64{l[0].x, l[0].y}, 0.11)
		assert.Less(t, x, box.right)
		x += gap
	}
	assert.Greater(t, box.top+gap/2+gap*float64(row+1), box.bottom-0.11, "rows go on to the foot")
	return gap
}

// What is drawn as cut off or filled on has its pattern over the very bar that it fills.
func TestAPatternLiesOnItsBar(t *testing.T) {
	trade, _ := marksOf(t, draw.Trade(draw.TradePlot{Title: "t", Most: 3, Rows: [2]draw.TradeRow{{"filler", "3 L", 2}, {"cut off", "1.5 L", 1.5}}}))
	scattered(t, of(trade, "dots")[0], of(trade, "filler")[0])
	fills(t, of(trade, "off")[0], of(trade, "tone0")[0])
	proud, _ := marksOf(t, draw.Map(draw.HollowMap{Title: "t", Depths: [][]float64{{0.002, 0.001}, {0.001, -0.003}}, Text: func(float64) string { return "1" },
		Names: [3]string{"hollow", "proud", "deepest"}}))
	off, tone := of(proud, "off"), of(proud, "tone0")
	require.Len(t, off, 2)
	require.Len(t, tone, 2)
	for i := range off {
		fills(t, off[i], tone[i])
	}
	mixed, _ := marksOf(t, draw.TimeBar(bar(2, 9, 12, 20)))
	fills(t, of(mixed, "hatch")[0], of(mixed, "tone0")[0])
}

// What is drawn shorter than its scale has a break right across its middle.
func TestABreakGoesRightAcross(t *testing.T) {
	list, _ := marksOf(t, draw.Swatch{Stuff: draw.Filling, Height: 96, Film: 60, Broken: true}.Layer())
	teeth := of(list, "break")[0]
	assert.Equal(t, point{0, 66}, teeth.lines[0][0], "96 − 60 ÷ 2")
	assert.InDelta(t, 88, teeth.lines[len(teeth.lines)-1][1].x, 0.1)
	assert.Len(t, teeth.lines, 8)
	for i, l := range teeth.lines {
		assert.InDelta(t, 11, l[1].x-l[0].x, 0.1, "an eighth each")
		up := -1.
		if i%2 == 0 {
			up = 1
		}
		assert.InDelta(t, 66+5*up, l[1].y, 0.1)
	}
	none, _ := marksOf(t, draw.Swatch{Stuff: draw.Filling, Height: 96, Film: 60}.Layer())
	assert.Empty(t, of(none, "break"))
	assert.Empty(t, of(none, "least"), "no least is known")
	whole, _ := marksOf(t, draw.Swatch{Stuff: draw.GelCoatFilm, Height: 96, Film: 60, Least: 1}.Layer())
	assert.Empty(t, of(whole, "least"), "a least as thick as the film isn't left")
}

// Three films of a row of 88 with gaps of 4 are 24 wide; a height that is none is one. The least is drawn over all films. (Exact.)
func TestEndsStandSideBySide(t *testing.T) {
	list, view := marksOf(t, draw.Ends{Stuff: draw.Sanded, Films: []float64{90, 0, 30}, Least: 40}.Layer())
	assert.Equal(t, [4]float64{0, 0, 88, 98}, view)
	lies(t, of(list, "edge-of")[0], 4, 8, 28, 98)
	lies(t, of(list, "short")[0], 60, 68, 84, 98)
	assert.Len(t, of(list, "tone0"), 2, "what isn't there isn't drawn")
	assert.Equal(t, "least", list[len(list)-1].class)
	for _, off := range of(list, "off") {
		assert.Greater(t, len(off.lines), 1)
	}
	at, _ := marksOf(t, draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{40}, Least: 40}.Layer())
	assert.Empty(t, of(at, "short"), "as thick as it must be")
	_, high := marksOf(t, draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{9000}, Least: 40}.Layer())
	assert.Equal(t, 360., high[3], "never higher than four times its width, and the room above")
	_, low := marksOf(t, draw.Ends{Stuff: draw.GelCoatFilm}.Layer())
	assert.Equal(t, 10., low[3])
	over, _ := marksOf(t, draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{20}, Least: 60}.Layer())
	lies(t, of(over, "least")[0], 0, 8, 88, 8, "the least has its room even over what is left")
	_, one := marksOf(t, draw.Swatch{Stuff: draw.Washed, Height: -3}.Layer())
	assert.Equal(t, 1., one[3])
}
