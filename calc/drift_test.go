package calc_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// drift reads a file of testdata/drift: rows of cells, the last one says what
// is wrong.
func drift(t *testing.T, file string, cells int) [][]string {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "testdata", "drift", file))
	require.NoError(t, err)
	var rows [][]string
	for line := range strings.Lines(string(raw)) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		row := strings.Split(strings.TrimSpace(line), " | ")
		require.Len(t, row, cells, line)
		rows = append(rows, row)
	}
	require.NotEmpty(t, rows)
	return rows
}

// shown gives a copy of every rule of the package that shows the formula.
func shown(t *testing.T, name, formula string) []*working.Rule {
	t.Helper()
	var list []*working.Rule
	for _, r := range allRules[name] {
		if r.Formula == formula {
			wrong := *r
			wrong.Args = slices.Clone(r.Args)
			list = append(list, &wrong)
		}
	}
	require.NotEmpty(t, list, "no rule of %s shows %s", name, formula)
	return list
}

func TestWrongFormulasAreCaught(t *testing.T) {
	for _, row := range drift(t, "formulas.txt", 4) {
		t.Run(row[3], func(t *testing.T) {
			for _, r := range shown(t, row[0], row[1]) {
				require.NoError(t, workingtest.Agrees(r))
				r.Formula = row[2]
				assert.Error(t, workingtest.Agrees(r), row[2])
			}
		})
	}
}

func TestWrongUnitsAreCaught(t *testing.T) {
	for _, row := range drift(t, "units.txt", 5) {
		t.Run(row[4], func(t *testing.T) {
			for _, r := range shown(t, row[0], row[1]) {
				if r.Result.Symbol == row[2] {
					r.Result.Scale = other(t, r.Result.Scale, row[3])
				}
				for i, a := range r.Args {
					if a.Symbol == row[2] {
						r.Args[i].Scale = other(t, a.Scale, row[3])
					}
				}
				assert.Error(t, workingtest.Agrees(r), "%s in %s", row[2], row[3])
			}
		})
	}
}

// other finds the scale of the same dimension with the symbol.
func other(t *testing.T, s unit.Scale, symbol string) unit.Scale {
	t.Helper()
	for _, scale := range unit.Scales {
		if scale.Symbol() == symbol && scale.Dimension() == s.Dimension() {
			return scale
		}
	}
	t.Fatalf("%s is no unit of the kind of %s", symbol, s.Symbol())
	return unit.NoScale
}
