package draw_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/draw"
)

func plain(unit string) func(float64) string {
	return func(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) + unit }
}

// tenByTen is a plot from 0 to 10 to the right and from 0 to 100 up.
func tenByTen() draw.Plot {
	return draw.Plot{Title: "t", X: draw.Axis{Label: "right", Ticks: draw.NiceTicks(0, 10, 2, plain(" r"))}, Y: draw.Axis{Label: "up", Ticks: draw.NiceTicks(0, 100, 2, plain(" u"))}}
}

// scaled reads a plot's scales off its own axes: the place of a value as a reader finds it from the ticks.
func scaled(t *testing.T, list []mark) (at func(x, y float64) point, box mark) {
	t.Helper()
	axis := of(list, "axis")[0]
	require.Len(t, axis.lines, 2)
	box = mark{left: axis.left, top: axis.top, right: axis.right, bottom: axis.bottom}
	assert.Equal(t, [2]point{{box.left, box.top}, {box.left, box.bottom}}, axis.lines[0], "up the left side")
	assert.Equal(t, [2]point{{box.left, box.bottom}, {box.right, box.bottom}}, axis.lines[1], "along the foot")
	at = func(x, y float64) point {
		return point{box.left + (box.right-box.left)*x/10, box.bottom - (box.bottom-box.top)*y/100}
	}
	return at, box
}

func isAt(t *testing.T, want, got point, why ...any) {
	t.Helper()
	assert.InDeltaSlice(t, []float64{want.x, want.y}, []float64{got.x, got.y}, 0.101, why...)
}

// Every tick's line stands where its value is, its text beside it; the first and the last stand at the ends of the axes.
func TestTicksStandAtTheirValues(t *testing.T) {
	list, view := marksOf(t, tenByTen().Draw())
	at, box := scaled(t, list)
	lines := of(list, "grid")
	require.Len(t, lines, 6)
	for i, x := range []float64{0, 5, 10} {
		p := at(x, 0)
		lies(t, lines[i], p.x, box.bottom, p.x, box.bottom+4)
		text := saying(t, list, plain(" r")(x))
		assert.Equal(t, "middle", text.anchor)
		assert.Greater(t, text.top, box.bottom)
		if x < 10 {
			assert.InDelta(t, p.x, text.left, 0.1)
		} else {
			assert.InDelta(t, p.x, text.left, 16, "as near as the picture's edge lets it")
		}
	}
	for i, y := range []float64{0, 50, 100} {
		p := at(0, y)
		lies(t, lines[3+i], box.left, p.y, box.right, p.y, "right across")
		text := saying(t, list, plain(" u")(y))
		assert.Equal(t, []any{"end", box.left - 4}, []any{text.anchor, text.left})
		assert.InDelta(t, p.y, text.top, 0.1)
	}
	up, right := saying(t, list, "up"), saying(t, list, "right")
	assert.Equal(t, []any{"start", 0., 8.}, []any{up.anchor, up.left, up.top})
	assert.Equal(t, []any{"end", view[2], box.bottom + 32}, []any{right.anchor, right.left, right.top})
	assert.InDelta(t, 150, box.bottom-box.top, 0.1)
}

// Of ticks whose texts would touch, the later is left out with its line; those that are shown stand apart.
func TestTicksThatWouldTouchAreLeftOut(t *testing.T) {
	p := tenByTen()
	p.X.Ticks, p.Y.Ticks = draw.NiceTicks(0, 10, 10, plain(" metres")), draw.NiceTicks(0, 100, 20, plain(""))
	list, _ := marksOf(t, p.Draw())
	lines, labels := 0, 0
	for _, m := range list {
		if m.class == "grid" {
			lines++
		}
		if m.text != "" && m.class == "" {
			labels++
		}
	}
	assert.Equal(t, lines, labels, "a line for each text")
	read(t, p.Draw())
	assert.NotPanics(t, func() { saying(t, list, "0 metres") })
	var ups []float64
	for _, m := range list {
		if m.class == "" && m.anchor == "end" {
			ups = append(ups, m.top)
		}
	}
	for i := 1; i < len(ups); i++ {
		assert.Less(t, ups[i], ups[i-1]-15.9)
	}
	assert.Len(t, ups, 7, "of 150, every third of 21 ticks: 22.5 apart")
}

// What a figure says is where it lies: points, band, shade, course, marks, dots.
func TestAPlotsMarksLieAtTheirValues(t *testing.T) {
	p := tenByTen()
	p.Lines = []draw.Line{{Name: "curve", Class: "curve", Points: []draw.Point{{X: 0, Y: 10}, {X: 4, Y: 70}, {X: math.NaN(), Y: 3}, {X: 7, Y: 20}, {X: 10, Y: 90}}}}
	p.Band = draw.Band{Name: "band", Spans: []draw.Span{{X: 1, Low: 20, High: 40}, {X: 5, Low: math.NaN(), High: 2}, {X: 9, Low: 30, High: 80}}}
	p.Shaded = []draw.Shade{{Name: "fit", Class: "fit", Parts: []draw.Interval{{From: 2, To: 3}, {From: 5, To: 5}, {From: 6, To: 8}}}}
	p.Course = draw.Course{Name: "cures", Interval: draw.Interval{From: 4, To: 9}}
	p.Dots = []draw.Dots{{Name: "tin", Class: "tested", Points: []draw.Point{{X: 3, Y: 60}, {X: 11, Y: 5}, {X: 5, Y: 101}, {X: -1, Y: 5}, {X: 5, Y: -1}, {X: 0, Y: 0}, {X: 10, Y: 100}}}}
	p.Marks = []draw.Mark{{Point: draw.Point{X: 6, Y: 50}, Class: "today", Text: "now", Name: "the hour"}, {Point: draw.Point{X: 12, Y: 50}, Class: "today", Text: "beyond"}}
	list, view := marksOf(t, p.Draw())
	at, box := scaled(t, list)

	curve := of(list, "curve")
	require.NotEmpty(t, curve)
	require.Len(t, curve[0].lines, 2, "a point that is none breaks the line")
	for i, want := range [][2]point{{at(0, 10), at(4, 70)}, {at(7, 20), at(10, 90)}} {
		isAt(t, want[0], curve[0].lines[i][0])
		isAt(t, want[1], curve[0].lines[i][1])
	}
	band := of(list, "band")
	for i, want := range []point{at(1, 40), at(9, 80), at(9, 30), at(1, 20)} {
		isAt(t, want, band[0].lines[i][0], "round the band")
	}
	shades := of(list, "shaded fit")
	require.Len(t, shades, 3, "two, and one in the key")
	lies(t, shades[0], at(2, 0).x, box.top, at(3, 0).x, box.bottom)
	lies(t, shades[1], at(6, 0).x, box.top, at(8, 0).x, box.bottom)
	windows := 0
	for _, m := range list {
		if m.tag == "window" {
			windows++
			lies(t, m, box.left, box.top, box.right, box.bottom, "what is cut off is cut off at the axes")
		}
	}
	assert.Equal(t, 2, windows, "under the axes and over them")
	lies(t, of(list, "course")[0], at(4, 0).x, box.bottom-8, at(9, 0).x, box.bottom, "at the foot")

	dots := of(list, "dot tested")
	require.Len(t, dots, 4, "three in the plot, its edges too, and one in the key")
	for i, want := range []point{at(3, 60), at(0, 0), at(10, 100)} {
		isAt(t, want, dots[i].middle())
	}
	today := of(list, "today")
	lies(t, today[0], at(6, 0).x, today[0].top, at(6, 0).x, box.bottom)
	isAt(t, at(6, 50), of(list, "dot today")[0].middle())
	now := saying(t, list, "now")
	assert.InDelta(t, at(6, 0).x+4, now.left, 0.1, "beside its line")
	assert.Equal(t, "start", now.anchor)
	assert.InDelta(t, now.top, today[0].top+6, 0.1, "which begins at its text")
	assert.Less(t, now.top, box.top, "above the plot")
	for _, m := range list {
		assert.NotEqual(t, "beyond", m.text)
	}

	var order []string
	for _, m := range list {
		order = append(order, m.class)
	}
	assert.Less(t, first(order, "shaded fit"), first(order, "band"), "shades lie under the band")
	assert.Less(t, first(order, "band"), first(order, "axis"))
	assert.Less(t, first(order, "axis"), first(order, "curve"), "and the curve over all lines")
	assert.Less(t, first(order, "curve"), first(order, "dot tested"))

	last := 0.
	for name, class := range map[string]string{"curve": "curve", "band": "band", "fit": "shaded fit", "tin": "dot tested", "the hour": "today", "cures": "course"} {
		text, samples := saying(t, list, name), of(list, class)
		sample := samples[len(samples)-1]
		assert.InDelta(t, text.top, sample.middle().y, 0.1, "%s stands beside its sample", name)
		assert.True(t, sample.right < text.left && text.left-sample.right < 15, "%s: %v to %v", name, sample.right, text.left)
		assert.Greater(t, sample.middle().y, box.bottom+32, "below the axis")
		last = max(last, text.top)
	}
	assert.InDelta(t, view[3], last+10, 8, "the picture ends below its last line")
}

func first(list []string, want string) int {
	for i, s := range list {
		if s == want {
			return i
		}
	}
	return math.MaxInt
}

// What isn't drawn isn't in the key, nor what has no name.
func TestAKeyNamesWhatIsThere(t *testing.T) {
	p := tenByTen()
	p.Lines = []draw.Line{{Name: "no points", Class: "curve"}, {Class: "curve", Points: []draw.Point{{X: 1, Y: 1}, {X: 2, Y: 2}}}}
	p.Band.Name, p.Shaded, p.Dots, p.Course.Name = "no spans", []draw.Shade{{Name: "no parts"}}, []draw.Dots{{Name: "no dots"}}, "lasts not"
	list, view := marksOf(t, p.Draw())
	_, box := scaled(t, list)
	for _, m := range list {
		assert.LessOrEqual(t, m.bottom, box.bottom+32, "%+v", m)
	}
	assert.InDelta(t, box.bottom+44, view[3], 0.1)
	assert.Empty(t, of(list, "course"))
	assert.Empty(t, of(list, "band"))
	p.Band.Spans = []draw.Span{{X: 1, Low: 1, High: 2}}
	list, _ = marksOf(t, p.Draw())
	assert.Empty(t, of(list, "band")[1:], "one place spans nothing: only its sample is there")
}

// A mark at either end of the axis is drawn, one a little beyond is not.
func TestAMarkAtTheEndIsDrawn(t *testing.T) {
	p := tenByTen()
	for _, x := range []float64{0, 10, -0.01, 10.01} {
		p.Marks = append(p.Marks, draw.Mark{Point: draw.Point{X: x, Y: math.NaN()}, Class: "today", Text: "at " + plain("")(x)})
	}
	list, _ := marksOf(t, p.Draw())
	_, box := scaled(t, list)
	lines := of(list, "today")
	require.Len(t, lines, 2)
	assert.Equal(t, []float64{box.left, box.right}, []float64{lines[0].left, lines[1].left})
}

// Texts of marks stand in rows; a line passes no text when it can be helped; where there is no room on the right a text stands
// on the left of its line.
func TestMarksTextsStandClearOfLines(t *testing.T) {
	for _, xs := range [][]float64{{1, 2, 3}, {9, 8, 7}, {5, 5.2, 5.4, 5.6}, {1, 9, 5}, {9.5, 0.5}, {2, 2, 8, 8}} {
		p := tenByTen()
		for i, x := range xs {
			p.Marks = append(p.Marks, draw.Mark{Point: draw.Point{X: x, Y: math.NaN()}, Class: "today", Text: "a text no " + strconv.Itoa(i)})
		}
		list, _ := marksOf(t, p.Draw())
		at, box := scaled(t, list)
		boxes := read(t, p.Draw())
		lines := of(list, "today")
		require.Len(t, lines, len(xs))
		for i, x := range xs {
			text := saying(t, list, "a text no "+strconv.Itoa(i))
			off := 4.
			if text.anchor == "end" {
				off = -4
			}
			assert.InDelta(t, at(x, 0).x+off, text.left, 0.1)
			assert.Less(t, text.top+8, box.top+0.1)
			for _, b := range boxes {
				if b.text == text.text {
					for _, l := range lines {
						isOther := math.Abs(l.left-at(x, 0).x) > 0.2
						assert.False(t, isOther && l.left > b.left && l.left < b.right && l.top < b.top, "%v: the line at %v passes %q", xs, l.left, b.text)
					}
				}
			}
		}
	}
}
