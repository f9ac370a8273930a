package ready_test

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/plan/plantest"
	"shedreckoner/calc/ready"
	"shedreckoner/calc/working/workingtest"
)

// sheet is a run from the tape to the packs by another path than the program's:
// cells of plain arithmetic over earlier cells, and what they say the plan's
// figures must be. Nothing in it is a result of the program.
type sheet struct {
	cells map[string]float64
	want  map[string]float64 // a figure's name: its number
	packs map[string]string  // a line of the order: what is bought
}

// readSheet reads files of testdata/sheets, one on from the other. A line is
// "cell = formula", "want figure = formula" or "packs line = 1 × 5".
func readSheet(t *testing.T, files ...string) sheet {
	t.Helper()
	s := sheet{map[string]float64{}, map[string]float64{}, map[string]string{}}
	for _, file := range files {
		raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", "sheets", file))
		require.NoError(t, err)
		for line := range strings.Lines(string(raw)) {
			name, formula, found := strings.Cut(strings.TrimSpace(line), " = ")
			if strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
				continue
			}
			require.True(t, found, "%s: %s", file, line)
			kind, figure, isKind := strings.Cut(name, " ")
			if kind == "packs" && isKind {
				s.packs[figure] = formula
				continue
			}
			n, err := workingtest.Evaluate(formula, s.cells)
			require.NoError(t, err, "%s: %s", file, line)
			if kind == "want" && isKind {
				s.want[figure] = n
				continue
			}
			require.NotContains(t, s.cells, name, "%s: %s stands twice", file, name)
			s.cells[name] = n
		}
	}
	return s
}

// Every ready sequence on one measured rectangle, from the tape to the packs. All
// that is ordered stands in the sheet, and no more.
func TestEachReadySequenceMeetsItsSheet(t *testing.T) {
	const room, up = 1e-9, 1e-4 // needs are rounded up to a tenth of a gram or a millilitre
	for i := range ready.Sequences {
		of := &ready.Sequences[i]
		t.Run(of.Key, func(t *testing.T) {
			s := readSheet(t, "figures.txt", of.Key+".txt")
			d := onGround(of, of.Grounds()[0], job.FacingUp, "1 m")
			surface := "surface." + d.Items("surface")[0]
			for _, side := range []string{"length", "width"} {
				text := strconv.FormatFloat(s.cells[side], 'f', -1, 64)
				d = d.Set(surface+"."+side, text+" m")
			}
			p := plan.Make(d)
			require.Empty(t, p.Refused())
			got, packs := plantest.Figures(&p), plantest.Packs(&p)
			for name, want := range s.want {
				f, known := got[name]
				if assert.True(t, known, "%s isn't in the plan", name) {
					more := f.Bare.From(f.SI) - want
					isNeed := strings.HasPrefix(name, "order.")
					assert.True(t, math.Abs(more) <= room*math.Abs(want) || isNeed && more > 0 && more < up, "%s: %v, by the sheet %v", name, f.Bare.From(f.SI), want)
				}
			}
			for name, bought := range packs {
				assert.Equal(t, s.packs[name], bought, name)
				assert.Contains(t, s.want, name, "%s is ordered, but not worked out", name)
			}
			for name := range s.packs {
				assert.Contains(t, packs, name, "%s is worked out, but not ordered", name)
			}
		})
	}
}
