package draw_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

// A character has 8.06 of room. Beside a bar of what is left a name has 86, ten of them: one that just fits is whole, one more
// is cut to nine and a sign that it goes on, never with a space or a comma before it. (Exact.)
func TestATextIsCutOnlyWhereItMustBe(t *testing.T) {
	name := func(text string) string {
		list, _ := marksOf(t, draw.Left(draw.LeftPlot{Title: "t", Rows: []draw.LeftRow{{text, "", 1}}}))
		for _, m := range list {
			if m.anchor == "start" {
				return m.text
			}
		}
		return ""
	}
	for text, want := range map[string]string{"1234567890": "1234567890", "12345678901": "123456789…", "a name, at length": "a name, a…", "the edge, and more": "the edge…", "äöüäöüäöüä": "äöüäöüäöüä"} {
		assert.Equal(t, want, name(text))
	}
}

// Lines below a map have 300, or 37 characters, and break between words; what is left after three is cut. (Exact.)
func TestLinesBreakBetweenWords(t *testing.T) {
	lines := func(text string) (list []string) {
		m := draw.HollowMap{Title: "t", Text: func(float64) string { return "" }, Depths: [][]float64{make([]float64, 30)}, Coarse: func(int) string { return text }}
		marks, _ := marksOf(t, draw.Map(m))
		last := 0.
		for _, m := range marks {
			if m.class == "aside" {
				list = append(list, m.text)
				assert.True(t, last == 0 || m.top == last+16, "a line below the other")
				last = m.top
			}
		}
		return list
	}
	thirtySeven := strings.Repeat("six by ", 5) + "no"
	assert.Equal(t, []string{thirtySeven}, lines(thirtySeven))
	assert.Equal(t, []string{strings.Repeat("six by ", 4) + "six by", "now"}, lines(strings.Repeat("six by ", 5)+"now"))
	assert.Equal(t, []string{"a", strings.Repeat("b", 37), "c"}, lines("a "+strings.Repeat("b", 37)+" c"))
	assert.Equal(t, []string{strings.Repeat("b", 37), strings.Repeat("c", 37), "dddd eeee ffff gggg hhhh iiii jjjj k…"},
		lines(strings.Repeat("b", 37)+" "+strings.Repeat("c", 37)+" dddd eeee ffff gggg hhhh iiii jjjj kkkk llll"))
}
