package view_test

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// with types lines of the form "path = text".
func with(s *page.State, lines ...string) *page.State {
	for _, line := range lines {
		path, text, _ := strings.Cut(line, " =")
		s = do(s, "set", path, strings.TrimSpace(text))
	}
	return s
}

// plain writes a text as it is compared: spaces that don't break are spaces.
func plain(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(html.UnescapeString(text), "\u00a0", " ")), " ")
}

// textOf is what a region of the page says.
func textOf(t *testing.T, s *page.State, region string) string {
	t.Helper()
	return plain(textIn(regionOf(t, view.Page(s).String(), region)))
}

// saying is what a state says in a region, and what it doesn't: parts between bars.
type saying struct {
	s           *page.State
	region      string
	says, hides string
}

func saysEach(t *testing.T, rows []saying) {
	t.Helper()
	for i, row := range rows {
		text := textOf(t, row.s, row.region)
		for _, part := range strings.Split(row.says, "|") {
			assert.Contains(t, text, plain(part), "row %d", i)
		}
		for _, part := range strings.Split(row.hides, "|") {
			if part != "" {
				assert.NotContains(t, text, plain(part), "row %d", i)
			}
		}
	}
}

// fig is a figure that opens to its working.
type fig struct{ id, label, value string }

var figureAt = regexp.MustCompile(`<button class="figure"[^>]*data-path="([^"]*)"[^>]*>(?:<span class="label">([^<]*)</span>)?<span class="value">([^<]*)`)

// figuresOf are the figures of a piece of a page, in their order.
func figuresOf(markup string) (list []fig) {
	for _, m := range figureAt.FindAllStringSubmatch(markup, -1) {
		list = append(list, fig{m[1], plain(m[2]), plain(m[3])})
	}
	return list
}

// figures holds a sheet to the figures that it must show, no more and no fewer.
func figures(t *testing.T, s *page.State, region string, want []fig) {
	t.Helper()
	for i := range want {
		want[i].label, want[i].value = plain(want[i].label), plain(want[i].value)
	}
	require.Equal(t, want, figuresOf(regionOf(t, view.Page(s).String(), region)))
}

// shownAs writes a figure with three digits in the scale that suits its size; of less than a square metre two are said.
func shownAs[Q unit.Quantity](f working.Figure[Q], scale unit.Scale) string {
	digits := 3
	if scale == unit.InSquareMetre && float64(f.Value) < 1 {
		digits = 2
	}
	return unit.Write(float64(f.Value), unit.Handy(float64(f.Value), scale), digits)
}

// where leaves out figures that there are none of.
func where(list []fig, has ...bool) (left []fig) {
	for i, f := range list {
		if has[i] {
			left = append(left, f)
		}
	}
	return left
}
