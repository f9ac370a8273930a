package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// steps gives the steps of the working that is open on a page, as markup.
func steps(t *testing.T, html string) []string {
	t.Helper()
	_, rest, found := strings.Cut(html, `<ol class="working"`)
	require.True(t, found)
	list, _, _ := strings.Cut(rest, "</ol>")
	return strings.Split(list, "<li>")[1:]
}

// The foredeck is a trapezium of 2.1 and 0.6 by 1.9 m less a circle of 0.46 m:
// (2.1 + 0.6) ÷ 2 × 1.9 = 2.565 m², less π × 0.46² ÷ 4 = 0.16619 m². (Worked here.)
func TestAWorkingTellsItsLastStepFirst(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	s := do(do(do(empty, "demo", "", ""), "go", "surfaces", ""), "sheet", "surface.1", "")
	last := do(s, "why", "surface.1.area", "")
	list := steps(t, view.Page(last).String())
	require.Len(t, list, 1, "the rest is behind a button")
	assert.Contains(t, list[0], "Total area comes from how many alike\u00a0<i>N</i>, sides\u00a0<i>n</i>, area of a trapezium\u00a0<i>A</i> and area of a circle\u00a0<i>C</i>.")
	assert.Contains(t, list[0], `<i>T</i> = <i>N</i> × <i>n</i> × (<i>A</i> − <i>C</i>)`)
	assert.Contains(t, list[0], "= 1 × 1 × (2.565 − 0.16619)<strong>= 2.3988\u00a0m²</strong>")
	order := regexp.MustCompile(`class="(what|formula|numbers|source)"`).FindAllStringSubmatch(list[0], -1)
	var classes []string
	for _, m := range order {
		classes = append(classes, m[1])
	}
	assert.Equal(t, []string{"what", "formula", "numbers", "source"}, classes)

	list = steps(t, view.Page(do(last, "whole", "", "")).String())
	require.Len(t, list, 3, "all of it")
	assert.Contains(t, list[0], "<i>A</i> = (<i>a</i> + <i>b</i>) ÷ 2 × <i>h</i>")
	assert.Contains(t, list[1], "= π × 0.46² ÷ 4", "π stands upright")
}
