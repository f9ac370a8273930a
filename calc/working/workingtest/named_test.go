package workingtest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var twice = working.Rule1[unit.Factor, unit.Factor]{Rule: &working.Rule{Formula: "b = 2 × a", Source: source.Ref{Document: &source.Geometry}, Mark: source.Exact,
	Result: working.Arg{Symbol: "b", Meaning: "double", Scale: unit.InPure, Min: 0, Max: 10}, Args: []working.Arg{{Symbol: "a", Meaning: "one", Scale: unit.InPure, Min: 0, Max: 5}}},
	Code: func(a unit.Factor) unit.Factor { return 2 * a }}

// A check that comes out right whatever its rule does is none.
func TestAWrongRuleIsNoticedByItsCheckOnly(t *testing.T) {
	b := parseBlocks(t, "rule: double\nchecks: test.twice\ncolumns: a | want\nsource: geometry\nkind: exact\ntolerance: 0\nreason: exact\n| 3 | 6")[0]
	real := Case{unit.InPure, func(r Row) (float64, error) { v, err := twice.Of(unit.Factor(r.Number("a"))); return float64(v), err }}
	idle := Case{unit.InPure, func(r Row) (float64, error) { return 2 * r.Number("a"), nil }}
	assert.NoError(t, b.check(t, real, b.rows[0]))
	assert.True(t, b.notices(t, real, twice.Rule))
	assert.False(t, b.notices(t, idle, twice.Rule))
	assert.NoError(t, b.check(t, real, b.rows[0]), "fixed")
	assert.Equal(t, []string{"test.twice"}, b.checked())
}

func TestArgumentsOfAWorkedExample(t *testing.T) {
	si, err := arguments(twice.Rule, "a = 3")
	assert.NoError(t, err)
	assert.Equal(t, []float64{3}, si)
	for _, given := range []string{"", "b = 3", "a = 6", "a = 3, c = 1", "a = much"} {
		_, err := arguments(twice.Rule, given)
		assert.Error(t, err, given)
	}
}
