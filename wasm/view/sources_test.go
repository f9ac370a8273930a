package view_test

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc"
	"shedreckoner/calc/source"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

var (
	lowSign    = regexp.MustCompile(`_([\pL\d]+)`)
	wholePower = regexp.MustCompile(` ?\^ ?\((.*)\)$`)
	shortPower = regexp.MustCompile(` ?\^ ?([\pL\d.]+)`)
	slant      = strings.NewReplacer("<i>", "", "</i>", "")
)

// set is a formula as it stands on the page, but for its slanted letters.
func set(r *working.Rule) string {
	formula := lowSign.ReplaceAllString(r.Formula, "<sub>$1</sub>")
	if r.IsProse {
		return formula
	}
	return shortPower.ReplaceAllString(wholePower.ReplaceAllString(formula, "<sup>$1</sup>"), "<sup>$1</sup>")
}

// Every rule and document that the sums declare stands on the page of sources,
// with its mark and its checks.
func TestEveryRuleIsOnThePageOfSources(t *testing.T) {
	empty, _ := page.Start(nil, noon)
	text := slant.Replace(strings.ReplaceAll(html.UnescapeString(view.Page(do(empty, "go", "sources", "")).String()), "\u00a0", " "))
	for i, topic := range calc.Topics {
		for j, r := range topic.Rules() {
			checks := calc.Checked.Of(i, j)
			if checks == "" {
				checks = "nothing from outside"
			}
			source := r.Source.String()
			source = strings.ToUpper(source[:1]) + source[1:]
			assert.Contains(t, text, `<p class="formula">`+set(r)+`</p><p class="source">`+source+" – "+r.Mark.String()+". Checked by: "+checks+".</p>", "%s %d", topic.Package, j)
		}
	}
	for _, d := range source.Documents {
		assert.Contains(t, strings.ToLower(text), strings.ToLower(d.Title))
	}
}

func TestSettingsShowTheVersionAndLeadToTheSources(t *testing.T) {
	s, _ := page.Start(nil, noon)
	s.Version = "0123456789ab"
	settings := view.Page(do(s, "go", "settings", "")).String()
	assert.Contains(t, settings, `<span id="version">0123456789ab</span>`)
	assert.Contains(t, settings, `data-do="go" data-path="sources"`)
}
