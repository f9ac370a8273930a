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

// The bar fills its width; each name stands on the middle of its piece, in lines as far apart as lines are; each end below its
// place. (Exact.)
func TestNamesStandOnTheirPieces(t *testing.T) {
	p := bar(2, 9, 12, 20)
	p.SpreadNames = []string{"longer than its piece", "spread\n7 min"}
	list, view := marksOf(t, draw.TimeBar(p))
	assert.Equal(t, [4]float64{0, 0, 300, 58}, view)
	lies(t, of(list, "ground")[0], 0, 0, 300, 40)
	lies(t, of(list, "tone0")[0], 0, 0, 30, 40, "mixed")
	lies(t, of(list, "tone4")[0], 30, 0, 135, 40, "spread")
	lies(t, of(list, "gel")[0], 180, 0, 300, 40)
	for text, want := range map[string]mark{
		"spread": {class: "on4 strong", anchor: "middle", left: 82.5, top: 12}, "7 min": {class: "on4 strong", anchor: "middle", left: 82.5, top: 28},
		"gels": {anchor: "middle", left: 240, top: 20}, "0": {class: "aside", anchor: "start", top: 50}, "2": {class: "aside", anchor: "middle", left: 30, top: 50},
		"9": {class: "aside", anchor: "middle", left: 135, top: 50}, "12": {class: "aside", anchor: "middle", left: 180, top: 50}, "20 min": {class: "aside", anchor: "end", left: 300, top: 50},
	} {
		got := saying(t, list, text)
		assert.Equal(t, []any{want.class, want.anchor}, []any{got.class, got.anchor}, text)
		lies(t, got, want.left, want.top, want.left, want.top, text)
	}
	unmixed, _ := marksOf(t, draw.TimeBar(bar(0, 9, 12, 20)))
	assert.Empty(t, of(unmixed, "tone0"))
	assert.Empty(t, of(unmixed, "hatch"))
	assert.Len(t, of(unmixed, "tone4"), 1)
}

// An end's text keeps clear of the last one's, whatever the picture is called: 12 of 20 stands 120 from the end, whose text of 13
// characters takes 104.8, and half of its own is 8.1. (Exact.)
func TestEndsKeepClearOfTheLast(t *testing.T) {
	p := bar(2, 9, 12, 20)
	p.Title, p.End = "a title that is far longer than the bar", "20 min, or so"
	assert.Contains(t, texts(read(t, draw.TimeBar(p))), "12")
	p.End = "20 min, or so."
	assert.NotContains(t, texts(read(t, draw.TimeBar(p))), "12")
	p.Title = "t"
	assert.NotContains(t, texts(read(t, draw.TimeBar(p))), "12")
}
