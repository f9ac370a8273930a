package view_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
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

// Every figure that can be opened opens, to formulas that are text too, and its working comes to what is shown.
func TestEveryWorkingOpens(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	s, compared := do(empty, "demo", "", ""), 0
	for _, us := range []string{"metric", "us"} {
		s = do(s, "system", "", us)
		for _, screen := range page.Screens {
			s := do(s, "go", screen.Key, "")
			for _, path := range append(openable(s, screen.Key), "") {
				shown := s
				if path != "" {
					shown = opened(s, parents(path)...)
				}
				compared += workingsOpen(t, screen.Key, shown)
			}
		}
		fair, before := do(fairState(t), "system", "", us), compared
		for _, sheet := range []string{"step.1", "step.1.why", "step.2.why", "step.3.why", "step.4.why", "step.5.why", "budget", "points"} {
			compared += workingsOpen(t, sheet, opened(fair, "sheet buildup.1."+sheet))
		}
		assert.Greater(t, compared, before+20, "of a grid, spots, combs and grades")
	}
	assert.Greater(t, compared, 220, "in both systems")
}

// workingsOpen opens each working that a page offers, and counts those whose figures could be compared.
func workingsOpen(t *testing.T, name string, shown *page.State) (compared int) {
	t.Helper()
	for _, e := range elements(t, name, view.Page(shown).String()) {
		if e.attrs["data-do"] != "why" {
			continue
		}
		path := e.attrs["data-path"]
		last := do(shown, "why", path, "")
		require.Equal(t, 1, strings.Count(view.Page(last).String(), `class="numbers"`), "%s: the last step alone", path)
		if value, result, hasBoth := comesTo(view.Page(last).String(), path); hasBoth {
			compared++
			require.InDelta(t, result, value, 0.06*math.Abs(result), "%s shows another figure than its working comes to", path)
		}
		html := view.Page(do(last, "whole", "", "")).String()
		require.Contains(t, html, `class="working"`, path)
		check(t, path, elements(t, path, html))
		require.NotContains(t, html, "NaN")
	}
	return compared
}

var (
	lastResult = regexp.MustCompile(`<strong>= ([^<]*)</strong></p>`)
	shownValue = `id="why-%s"[^>]*>(?:<span class="label">[^<]*</span>)?<span class="value">([^<]*)</span>`
)

// comesTo reads a figure as it is shown, and as its working, which is open, comes to: both to one unit, the figure with two or
// three digits. Not of what is none or is read in no unit.
func comesTo(html, path string) (value, result float64, hasBoth bool) {
	shown := regexp.MustCompile(fmt.Sprintf(shownValue, regexp.QuoteMeta(path))).FindStringSubmatch(html)
	worked := lastResult.FindStringSubmatch(html)
	if shown == nil || worked == nil {
		return 0, 0, false
	}
	for _, bare := range []unit.Scale{unit.InPure, unit.InMillimetre, unit.InSquareMetre, unit.InLitre, unit.InKilogram, unit.InMinute, unit.InPercent, unit.InSquareMetrePerLitre, unit.InCelsius} {
		value, err1 := unit.Read(strings.TrimPrefix(shown[1], "− "), bare)
		result, err2 := unit.Read(worked[1], bare)
		if err1 == nil && err2 == nil {
			return value, result, true
		}
	}
	return 0, 0, false
}
