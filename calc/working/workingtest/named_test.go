package workingtest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var twice = working.Of1("b = 2 × a", source.Geometry.At(""), source.Exact,
	working.In("b", "double", unit.InPure, 0, 10), []working.Arg{working.In("a", "one", unit.InPure, 0, 5)},
	func(a unit.Factor) unit.Factor { return 2 * a })

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
