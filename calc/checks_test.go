package calc_test

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/source"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// named is every rule by the name that the published tables call it.
func named(t *testing.T) map[string]*working.Rule {
	t.Helper()
	all := map[string]*working.Rule{}
	for folder, rules := range allRules {
		maps.Copy(all, workingtest.Named(t, filepath.Join(".", folder), rules))
	}
	return all
}

func TestWorkedExamples(t *testing.T) { workingtest.Worked(t, "worked.txt", named(t)) }

// mustBeChecked is the rooms whose rules could hurt or cost: dose and gel, film,
// dew, order. None of theirs may lack a check from outside.
var mustBeChecked = []string{"cure", "film", "air", "order"}

// Every rule has a check from outside the project: published, exact, or by a
// reference library. What is from memory and common practice doesn't count.
func TestEveryRuleIsCheckedFromOutside(t *testing.T) {
	rules, counts, none := named(t), workingtest.Checks(t), workingtest.Unchecked(t)
	for name := range counts {
		assert.Contains(t, rules, name, "a table checks a rule that isn't there")
	}
	for name := range none {
		assert.Contains(t, rules, name, "%s names a rule that isn't there", workingtest.NoneFile)
	}
	printed, exact := 0, 0
	for _, name := range slices.Sorted(maps.Keys(rules)) {
		outside := 0
		for _, kind := range source.Checks[:source.OutsideChecks] {
			outside += counts[name][kind]
		}
		_, isListed := none[name]
		switch {
		case outside == 0:
			assert.True(t, isListed, "%s has no check from outside, and %s doesn't say why", name, workingtest.NoneFile)
			room, _, _ := strings.Cut(name, ".")
			assert.NotContains(t, mustBeChecked, room, "%s: a rule of dose, gel, film, dew or order must have a check from outside", name)
		case isListed:
			t.Errorf("%s has a check from outside: take it off %s", name, workingtest.NoneFile)
		case outside == counts[name]["exact"]:
			exact++
		default:
			printed++
		}
	}
	t.Logf("%d rules: %d held by published figures or a reference library, %d by exact examples alone, %d by neither", len(rules), printed, exact, len(none))
}
