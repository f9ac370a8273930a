package draw_test

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/draw"
)

var partHeight = regexp.MustCompile(`<svg x="[^"]*" y="([^"]*)" width="[^"]*" height="([^"]*)"`)

// films gives the top and the height of each film of a swatch.
func films(t *testing.T, markup string) (list [][2]float64) {
	t.Helper()
	for _, m := range partHeight.FindAllStringSubmatch(markup, -1) {
		top, err := strconv.ParseFloat(m[1], 64)
		assert.NoError(t, err)
		high, err := strconv.ParseFloat(m[2], 64)
		assert.NoError(t, err)
		list = append(list, [2]float64{top, high})
	}
	return list
}

// A film lies at the foot of its place as high as it is, polish as a hairline: a film of 30 in a place of 52 begins at 22, what
// is thinner than 2 is drawn 2. Without a film the place is full. (Exact.)
func TestAFilmIsAsHighAsItIs(t *testing.T) {
	for _, c := range []struct{ film, top, high float64 }{{30, 22, 30}, {0.5, 50, 2}, {52, 0, 52}, {500, 0, 52}, {0, 0, 52}, {math.NaN(), 0, 52}, {math.Inf(1), 0, 52}, {-3, 0, 52}} {
		got := films(t, draw.Swatch{Stuff: draw.Sanded, Height: 52, Film: c.film}.Layer().String())
		assert.Equal(t, [][2]float64{{c.top, c.high}}, got, "%v", c.film)
	}
	assert.Contains(t, draw.Swatch{Stuff: draw.GelCoatFilm, Height: 100, Film: 80, Least: 0.25}.Layer().String(), `class="least" d="M0 80L88 80"`, "a quarter of 80 from the foot")
	assert.Contains(t, draw.Swatch{Stuff: draw.Filling, Height: 96, Broken: true}.Layer().String(), `class="break"`)
}

// Every stuff is told from every other without colour: no two draw the same lines.
func TestStuffsDifferWithoutColour(t *testing.T) {
	colours := regexp.MustCompile(`class="[^"]*"`)
	seen := map[string]draw.Stuff{}
	for stuff := draw.Ground; stuff <= draw.Washed; stuff++ {
		lines := colours.ReplaceAllString(draw.Swatch{Stuff: stuff, Height: 52}.Layer().String(), "")
		other, isTwice := seen[lines]
		assert.False(t, isTwice, "%v is drawn as %v", stuff, other)
		seen[lines] = stuff
	}
}

// What is left stands side by side to one scale, the least across; what lies under it has an outline of its own. (Exact.)
func TestTheEndsAreToOneScale(t *testing.T) {
	text := draw.Ends{Stuff: draw.GelCoatFilm, Films: []float64{90, 45, 30}, Least: 40}.Layer().String()
	assert.Equal(t, [][2]float64{{8, 90}, {53, 45}, {68, 30}}, films(t, text))
	assert.Contains(t, text, `class="least" d="M0 58L88 58"`)
	assert.Regexp(t, `class="short" x="[^"]*" y="68"`, text)
	assert.NotRegexp(t, `class="short" x="[^"]*" y="53"`, text)
	for _, wild := range []float64{math.NaN(), math.Inf(1), -4, 1e308} {
		text := draw.Ends{Films: []float64{wild, 3}, Least: wild}.Layer().String()
		assert.NotRegexp(t, "NaN|Inf|e\\+", text)
	}
}
