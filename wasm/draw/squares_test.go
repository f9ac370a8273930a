package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/surface"
	"shedreckoner/wasm/draw"
)

func millimetres(d float64) string { return fmt.Sprintf("%.0f", d*1000) }

// squares are those of a map in the order of its readings, without frames and slants.
func squares(list []mark) (some []mark) {
	for _, m := range list {
		if m.tag == "rect" && (strings.HasPrefix(m.class, "tone") || m.class == "missing dashed") {
			some = append(some, m)
		}
	}
	return some
}

// A square is a reading, darker where deeper: nothing 0, the deepest 4, half of it 2. It has its number on its middle, in a
// dress that is read on it; proud spots are slanted and outlined, the deepest is framed, a missing one is empty. (Exact.)
func TestASquareSaysItsDepth(t *testing.T) {
	m := draw.HollowMap{Title: "t", Text: millimetres, Depths: [][]float64{{0, 0.004, 0.008}, {-0.003, 0.002, math.NaN()}, {0.006}}}
	list, view := marksOf(t, draw.Map(m))
	assert.Equal(t, [4]float64{0, 0, 300, 3*39 + 6}, view)
	for i, want := range []struct {
		x, y        float64
		class, text string
		dress       string
	}{{0, 0, "tone0", "0", "on0"}, {60, 0, "tone2", "4", "on2"}, {120, 0, "tone4", "8", "on4"}, {0, 39, "tone0", "-3", "haloed strong"}, {60, 39, "tone1", "2", "on1"},
		{120, 39, "missing dashed", "", ""}, {0, 78, "tone3", "6", "on3"}, {60, 78, "missing dashed", "", ""}, {120, 78, "missing dashed", "", ""}} {
		square := squares(list)[i]
		assert.Equal(t, want.class, square.class, i)
		lies(t, square, want.x, want.y, want.x+60, want.y+39, "no wider than 60, and as high as 39")
		if want.text != "" {
			text := saying(t, list, want.text)
			assert.Equal(t, []any{"middle", want.dress, square.middle()}, []any{text.anchor, text.class, text.middle()})
		}
	}
	frames, proud, off := of(list, "frame"), of(list, "proud"), of(list, "off")
	require.Len(t, frames, 1)
	lies(t, frames[0], 122, 2, 178, 37)
	require.Len(t, proud, 1)
	lies(t, proud[0], 1, 40, 59, 77)
	require.Len(t, off, 1)
	lies(t, off[0], 0, 39, 60, 78)

	flat, _ := marksOf(t, draw.Map(draw.HollowMap{Title: "t", Text: millimetres, Depths: [][]float64{{0, 0}, {0, -0.001}}}))
	assert.Empty(t, of(flat, "frame"), "nothing is deepest where nothing is deep")
	assert.Len(t, of(flat, "tone0"), 4)
}

// Squares fill the width: ten are 30 wide and as high, eleven less wide and never under 26 high. (Exact.)
func TestSquaresFillTheWidth(t *testing.T) {
	for columns, want := range map[int][2]float64{1: {60, 39}, 5: {60, 39}, 6: {50, 39}, 8: {37.5, 37.5}, 10: {30, 30}, 11: {300. / 11, 300. / 11}} {
		m := draw.HollowMap{Title: "t", Text: func(float64) string { return "1" }, Depths: [][]float64{make([]float64, columns)}}
		list, _ := marksOf(t, draw.Map(m))
		got := squares(list)
		require.Len(t, got, columns)
		lies(t, got[columns-1], want[0]*float64(columns-1), 0, want[0]*float64(columns), want[1], columns)
	}
}

// Where there are more readings than squares, each square is the deepest of a block, also of one cut at the edge, and below
// stands of how many. With 26 for a square, 11 fit across; 23 down. (Exact.)
func TestABlockIsItsDeepest(t *testing.T) {
	for _, c := range []struct{ columns, rows, block int }{{11, 23, 1}, {12, 1, 2}, {22, 1, 2}, {23, 1, 3}, {1, 24, 2}, {5, 47, 3}} {
		m := draw.HollowMap{Title: "t", Text: func(float64) string { return "1" }, Coarse: func(n int) string { return fmt.Sprint("of ", n) }}
		for r := range c.rows {
			m.Depths = append(m.Depths, make([]float64, c.columns))
			for col := range c.columns {
				m.Depths[r][col] = float64(r*c.columns+col) / 1000
			}
		}
		m.Text = func(d float64) string { return "" }
		list, view := marksOf(t, draw.Map(m))
		across, down := (c.columns+c.block-1)/c.block, (c.rows+c.block-1)/c.block
		require.Len(t, squares(list), across*down, "%+v", c)
		lastRow := squares(list)[across*(down-1):]
		lies(t, of(list, "frame")[0], lastRow[across-1].left+2, lastRow[across-1].top+2, lastRow[across-1].right-2, lastRow[across-1].bottom-2, "the deepest is the last: %+v", c)
		if c.block > 1 {
			below := saying(t, list, fmt.Sprint("of ", c.block))
			assert.True(t, below.top > lastRow[0].bottom+8 && below.top+8 < view[3]+0.1 && below.left == 0)
		} else {
			assert.Equal(t, lastRow[0].bottom+6, view[3])
		}
	}
	proud := draw.HollowMap{Title: "t", Text: millimetres, Depths: [][]float64{make([]float64, 12)}}
	for i := range proud.Depths[0] {
		proud.Depths[0][i] = -float64(i+1) / 1000
	}
	list, _ := marksOf(t, draw.Map(proud))
	assert.Equal(t, "-1", list[3].text, "the deepest of two proud spots is the less proud: %v", list)
	wide := draw.HollowMap{Title: "t", Text: func(float64) string { return "12345" }, Depths: [][]float64{make([]float64, 7)}}
	list, _ = marksOf(t, draw.Map(wide))
	assert.Len(t, squares(list), 4, "five characters of 8.06 and 6 are 46.3: six fit into 300")
}

// The key's samples look like the squares, each before its name.
func TestTheKeyOfAMapLooksLikeItsSquares(t *testing.T) {
	m := draw.HollowMap{Title: "t", Text: millimetres, Depths: [][]float64{{0.001}}, Names: [3]string{"hollow", "proud", "deepest"}}
	list, view := marksOf(t, draw.Map(m))
	y := 39 + 20 - 8.
	assert.Equal(t, 39+20+6., view[3])
	for i, name := range m.Names {
		text, class := saying(t, list, name), []string{"tone2", "tone0", "tone4"}[i]
		assert.Equal(t, []any{"start", 100*float64(i) + 22, y}, []any{text.anchor, text.left, text.top})
		sample := of(list, class)
		lies(t, sample[len(sample)-1], 100*float64(i), y-6, 100*float64(i)+18, y+6)
	}
	lies(t, of(list, "off")[0], 100, y-6, 118, y+6, "a proud spot is slanted")
	lies(t, of(list, "frame")[1], 202, y-4, 216, y+4, "the deepest framed")
}

// A thumb shows all of its shape, 1.3 of the sketch's units from the nearest edges and in the middle of the other two, in the
// sketch's proportions; what is hidden isn't drawn.
func TestAThumbIsFilledByItsShape(t *testing.T) {
	for _, shape := range surface.Shapes {
		sk := shape.Sketch(surface.Input{})
		list, view := marksOf(t, draw.Thumb(sk))
		left, top, right, bottom := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
		for _, m := range list {
			assert.Contains(t, []string{"outline", "outline closed"}, m.class)
			left, top, right, bottom = min(left, m.left), min(top, m.top), max(right, m.right), max(bottom, m.bottom)
		}
		margins := []float64{left - view[0], top - view[1], view[0] + view[2] - right, view[1] + view[3] - bottom}
		assert.InDelta(t, margins[0], margins[2], 0.31, "%s stands in the middle", shape.Key)
		assert.InDelta(t, margins[1], margins[3], 0.31, "%s stands in the middle", shape.Key)
		assert.InDelta(t, 13, min(margins[0], margins[1]), 0.31, "%s fills its thumb", shape.Key)
		assert.InDelta(t, float64(surface.SketchWidth)/surface.SketchHeight, view[2]/view[3], 0.01)
		drawn := 0
		for _, s := range sk.Strokes {
			if !s.Hidden {
				drawn++
			}
		}
		assert.Len(t, list, drawn)
	}
}

// A sketch draws each line through its points, closed ones back to the first, hidden ones dashed; a dimension has a slanted
// tick at either end, 7 long at 45°; letters lie over all lines.
func TestASketchDrawsItsLines(t *testing.T) {
	sk := surface.Sketch{Strokes: []surface.Stroke{{Points: []surface.Point{{X: 1, Y: 2}, {X: 5, Y: 2}, {X: 5, Y: 6}}, Closed: true}, {Points: []surface.Point{{X: 1, Y: 1}, {X: 9, Y: 1}}},
		{Points: []surface.Point{{X: 2, Y: 2}, {X: 3, Y: 3}}, Hidden: true}, {Arc: &surface.Arc{Centre: surface.Point{X: 10, Y: 8}, RadiusX: 4, RadiusY: 2, From: 0, To: 360}},
		{Arc: &surface.Arc{Centre: surface.Point{X: 10, Y: 8}, RadiusX: 4, RadiusY: 2, From: 180, To: 270}}},
		Marks: []surface.Mark{{Text: "a", Line: &surface.Stroke{Points: []surface.Point{{X: 1, Y: 10}, {X: 9, Y: 10}}}, At: surface.Point{X: 5, Y: 9}}, {Text: "b", At: surface.Point{X: 2, Y: 3}}}}
	list, view := marksOf(t, draw.Sketch(sk, "t"))
	assert.Equal(t, [4]float64{0, 0, surface.SketchWidth * 10, surface.SketchHeight * 10}, view)
	var classes []string
	for _, m := range list {
		classes = append(classes, m.class)
	}
	assert.Equal(t, []string{"outline closed", "outline", "hidden", "outline closed", "outline", "dimension", "letter", "letter"}, classes)
	assert.Equal(t, [][2]point{{{10, 20}, {50, 20}}, {{50, 20}, {50, 60}}, {{50, 60}, {10, 20}}}, list[0].lines)
	lies(t, list[3], 60, 60, 140, 100, "the whole ellipse")
	lies(t, list[4], 60, 60, 100, 80, "its upper left quarter")
	ticks := list[5].lines
	require.Len(t, ticks, 3)
	assert.Equal(t, [2]point{{10, 100}, {90, 100}}, ticks[0])
	const half = 2.5 // 3.5 ÷ √2
	for i, end := range []point{{10, 100}, {90, 100}} {
		isAt(t, end, point{(ticks[i+1][0].x + ticks[i+1][1].x) / 2, (ticks[i+1][0].y + ticks[i+1][1].y) / 2}, "about its end")
		assert.InDelta(t, 2*half, math.Abs(ticks[i+1][0].x-ticks[i+1][1].x), 0.21)
		assert.InDelta(t, 2*half, math.Abs(ticks[i+1][0].y-ticks[i+1][1].y), 0.21)
		assert.Positive(t, (ticks[i+1][0].x-ticks[i+1][1].x)*(ticks[i+1][0].y-ticks[i+1][1].y), "both ends slant one way")
	}
	assert.Equal(t, point{50, 90}, saying(t, list, "a").middle())
	assert.Equal(t, point{20, 30}, saying(t, list, "b").middle())
}
