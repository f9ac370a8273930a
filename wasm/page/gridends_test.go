package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/wasm/page"
)

// Pasted rows may end where a grid ends, and not one further.
func TestPastedRowsEndWhereAGridEnds(t *testing.T) {
	const step = "buildup.1.step.1"
	grid := lined(t, "buildup", step, "buildup = 1", "buildup.1.step = 1", step+".kind = fill", step+".fill-by = grid", step+".columns = 2", step+".grid = 1", step+".grid.1.z = 1; 2")
	wide := func(n int) string { return strings.TrimSuffix(strings.Repeat("1\t", n), "\t") }
	for columns, fits := range map[int]bool{99: true, 100: true, 101: false} {
		after := do(grid, "paste", step+".grid.1.z.0", wide(columns))
		assert.Equal(t, fits, after.Doc().Get(step+".grid.1.z") != "1; 2", "%d columns", columns)
		moved := do(grid, "paste", step+".grid.1.z.1", wide(columns-1))
		assert.Equal(t, fits, moved.Doc().Get(step+".grid.1.z") != "1; 2", "one further, %d columns", columns)
		rows := do(grid, "paste", step+".grid.1.z.0", strings.TrimSuffix(strings.Repeat("1\n", columns), "\n"))
		assert.Equal(t, fits, len(rows.Doc().Items(step+".grid")) == columns, "%d rows", columns)
		assert.Equal(t, !fits, rows.Doc().Get(step+".paste") != "", "what doesn't fit stays to be looked at")
	}
}

// How likely an order is enough is worked out while it is looked at, and on no other screen.
func TestTheChanceIsWorkedOutWhereItIsLookedAt(t *testing.T) {
	s := demo(t)
	for _, screen := range page.Screens {
		next, effects := page.Update(s, page.Message{Verb: "go", Path: screen.Key, At: noon})
		asked := false
		for _, e := range effects {
			asked = asked || e.Kind == page.Later
		}
		assert.Equal(t, screen.Key == "order", asked, screen.Key)
		assert.Equal(t, asked, next.Working, screen.Key)
		_, effects = page.Update(next, page.Message{Verb: "sheet", Path: "menu", At: noon})
		for _, e := range effects {
			assert.NotEqual(t, page.Later, e.Kind, "%s: it was asked for once", screen.Key)
		}
	}
}
