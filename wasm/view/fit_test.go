package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// What holds is one strip under the dose. It says 'fit to coat' only where nothing else bears on the cup; a stop, a question and
// what nobody checked stand by themselves.
func TestFitIsSaidOnlyWhereAllHolds(t *testing.T) {
	strips := func(s *page.State) []string {
		return regexp.MustCompile(`class="verdict" data-is="(\w+)"[^>]*><span><b>[^<]*</b>[^<]*`).FindAllString(view.Page(s).String(), -1)
	}
	fit := madeUpCup()
	said := strips(fit)
	assert.Len(t, said, 1)
	assert.Regexp(t, `data-is="holds".*Fit to coat</b> until midnight\.$`, said[0])
	for _, c := range []struct{ path, text, says string }{
		{job.DayPath + ".read-humidity", "97 %", `data-is="stops"`},
		{job.DayPath + ".read-humidity", "", "not checked"},
		{"bench.now.locker", "0.5 m³", "Hazardous space:"},
		{"bench.now.surface-temp", "14 °C", `data-is="stops"`},
		{"bench.now.scale-step", "5 g", "Holds:</b> no dew"}, // no dose: the tool is too coarse
	} {
		s := do(fit, "set", c.path, c.text)
		text := strings.Join(strips(s), "\n")
		assert.NotContains(t, text, "Fit to coat</b>", "%s = %s", c.path, c.text)
		assert.Contains(t, text, c.says, "%s = %s", c.path, c.text)
	}
}

// Vapour in a closed space holds with a caution: no line takes it up with the rest. Its sheet has each verdict by itself.
func TestVapourThatHoldsKeepsItsCaution(t *testing.T) {
	s := do(do(madeUpCup(), "set", "bench.now.locker", "500 m³"), "set", "bench.now.amount", "50 g")
	for _, v := range s.Bench().Verdicts() {
		if v.Subject == bench.Explosive {
			assert.Equal(t, bench.Holds, v.Kind)
		}
	}
	markup := view.Page(s).String()
	assert.Contains(t, markup, "No clearance: the limit for the lungs is far lower.")
	assert.Contains(t, markup, "Holds:</b> no dew until midnight")
	sheet := view.Page(do(s, "sheet", page.FitSheet, "")).String()
	for _, each := range []string{"No dew until midnight:", "Warm enough:", "Humidity 58\u00a0%:", "Product and surface:"} {
		assert.Contains(t, sheet, each)
	}
}

func madeUpCup() *page.State {
	s, _ := page.Start(nil, noon)
	return do(do(s, "demo", "", ""), "go", "cup", "")
}

// A cup of no grams is none.
func TestNoCupIsOfferedThatHoldsNothing(t *testing.T) {
	s := madeUpCup()
	assert.Contains(t, view.Page(s).String(), "largest now 500\u00a0g")
	slow := view.Page(do(s, "set", "bench.now.mixing", "25 min")).String()
	assert.NotContains(t, slow, "largest now 0")
	assert.Contains(t, slow, "none can be spread now")
}

// The method that is marked is the one that the cup is planned with: that of its coat until another is chosen.
func TestTheMethodOfTheCoatIsMarked(t *testing.T) {
	marked := regexp.MustCompile(`id="chip-bench\.now\.method-([a-z-]+)"[^>]*aria-pressed="true"`)
	s := do(madeUpCup(), "sheet", "how", "")
	for _, key := range []string{"gravity-gun", "brush", "foam-roller"} {
		if key != "gravity-gun" {
			s = do(s, "set", "bench.now.method", key)
		}
		assert.Equal(t, key, s.Bench().Method.Key)
		found := marked.FindAllStringSubmatch(view.Page(s).String(), -1)
		if assert.Len(t, found, 1) {
			assert.Equal(t, key, found[0][1])
		}
	}
}
