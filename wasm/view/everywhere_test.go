package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var (
	window     = regexp.MustCompile(`<svg x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="([\d.]+)" viewBox="[^"]*">(.*?)</svg>`)
	curve      = regexp.MustCompile(`class="(?:curve[^"]*|band)" d="([^"]*)"`)
	pair       = regexp.MustCompile(`-?[\d.]+ (-?[\d.]+)`)
	aPath      = regexp.MustCompile(`>\s*(?:surface|buildup|cup|card|putty|test|done|bench|day)\.[a-z0-9.-]+\s*<`)
	anID       = regexp.MustCompile(` (?:id="(?:why|fig|f|line|say|setup|open)-|data-do="|data-path=")([^"]*)"`)
	aHint      = regexp.MustCompile(`<p class="hint">(.*?)</p>`)
	aDefault   = regexp.MustCompile(` placeholder="([^"]*)"`)
	aClass     = regexp.MustCompile(`>(?:curve|today|dot|band|shaded)(?: \w+)?</text>`)
	miscounted = regexp.MustCompile(`(?:^|[^\d.,])(?:1 (?:cups|days|entries|surfaces|steps|layers|passes|pieces|cards|coats)|[02-9] (?:day|entry|surface|layer|step|pass|card))(?:[ .,;]|$)`)
	aRange     = regexp.MustCompile(`(?:^| )(\d+(?:\.\d+)?)(?: ([^\d\s]\S*))?(?: to |–)(\d+(?:\.\d+)?) ([^\d\s]\S*)`)
	aSelect    = regexp.MustCompile(`<select data-path="([^"]*)"[^>]*>(.*?)</select>`)
	anOption   = regexp.MustCompile(`<option value="([^"]*)">([^<]*)`)
	isKey      = regexp.MustCompile(`^[a-z0-9.-]*$`)
	aNudge     = regexp.MustCompile(`: \pL{2,}`)
	aLabel     = regexp.MustCompile(`<label[^>]*>(.*?)</label>`)
)

// On every page each button and each control says what it is; a path of the job is no text for people; in every plot the
// curves lie between the axes, since an axis ends past the last of what it measures; what goes from one figure to another goes
// from the smaller.
func TestEveryPageIsSaidAndDrawnWhole(t *testing.T) {
	plots, ranges := map[string]bool{}, 0
	everywhere(t, func(name, html string) {
		sound(t, name, html)
		for _, b := range buttonsOf(html) {
			assert.NotEmpty(t, b.label, "%s: a button without a name: %+v", name, b)
			assert.NotEqual(t, b.path, b.label, "%s: %+v", name, b)
			assert.True(t, b.do != "step" || aNudge.MatchString(b.label), "%s: what is stepped has a name: %+v", name, b)
		}
		for _, m := range aLabel.FindAllStringSubmatch(html, -1) {
			assert.Regexp(t, `\pL\pL`, textIn(m[1]), "%s: a label that says nothing", name)
		}
		for _, m := range anID.FindAllStringSubmatch(html, -1) {
			assert.NotContains(t, m[1], " ", "%s: no id is a text for people", name)
		}
		for _, m := range aHint.FindAllStringSubmatch(html, -1) {
			assert.Regexp(t, `\pL\pL`, textIn(m[1]), "%s: a hint that says nothing", name)
		}
		for _, m := range aDefault.FindAllStringSubmatch(html, -1) {
			assert.Less(t, len([]rune(m[1])), 60, "%s: what holds while nothing is typed has room in its field", name)
		}
		for _, m := range aSelect.FindAllStringSubmatch(html, -1) {
			for _, o := range anOption.FindAllStringSubmatch(m[2], -1) {
				assert.True(t, isKey.MatchString(o[1]) || strings.HasSuffix(m[1], ".agency"), "%s: %s: %q is no key", name, m[1], o[1])
				assert.NotEmpty(t, o[2], "%s: %s: an answer without a name", name, m[1])
			}
		}
		assert.Empty(t, aClass.FindAllString(html, -1), "%s: a class of the style is no text for people", name)
		for _, m := range aRange.FindAllStringSubmatch(textIn(html), -1) {
			if m[2] == "" || m[2] == m[4] {
				ranges++
				assert.LessOrEqual(t, mustRead(t, m[1]), mustRead(t, m[3]), "%s: %q goes from the larger to the smaller", name, m[0])
			}
		}
		assert.Empty(t, miscounted.FindAllString(textIn(html), -1), name)
		assert.Empty(t, aPath.FindAllString(html, -1), name)
		for _, plot := range strings.Split(html, `class="picture plot"`)[1:] {
			title, _, _ := strings.Cut(strings.SplitN(plot, `aria-label="`, 2)[1], `"`)
			for _, w := range window.FindAllStringSubmatch(plot, -1) {
				top, high := mustRead(t, w[1]), mustRead(t, w[2])
				for _, c := range curve.FindAllStringSubmatch(w[3], -1) {
					for _, p := range pair.FindAllStringSubmatch(c[1], -1) {
						plots[title] = true
						y := mustRead(t, p[1])
						assert.True(t, y > top-0.2 && y < top+high+0.2, "%s: %s: a curve at %v between %v and %v", name, title, y, top, top+high)
					}
				}
			}
		}
	}, nil)
	assert.GreaterOrEqual(t, len(plots), 3, "%v", plots)
	assert.Greater(t, ranges, 20)
}
