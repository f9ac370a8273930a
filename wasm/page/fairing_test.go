package page_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/buildup"
	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

const fillStep = "buildup.1.step.1"

// gridded is a state with a fill step by a grid, of so many columns and one row.
func gridded(t *testing.T, columns string) *page.State {
	t.Helper()
	s, _ := page.Start(nil, page.Moment{})
	for _, m := range []page.Message{
		{Verb: "add", Path: "buildup"}, {Verb: "add", Path: "buildup.1.step", Text: "fill"},
		{Verb: "set", Path: fillStep + ".card", Text: "epoxy-filler"}, {Verb: "set", Path: fillStep + ".fill-by", Text: "grid"},
		{Verb: "set", Path: fillStep + ".row-gap", Text: "200"}, {Verb: "set", Path: fillStep + ".column-gap", Text: "200"},
		{Verb: "set", Path: fillStep + ".columns", Text: columns}, {Verb: "add", Path: fillStep + ".grid"},
	} {
		s, _ = page.Update(s, m)
	}
	return s
}

func cell(row, column int) string {
	return page.CellPath(fillStep+".grid."+strconv.Itoa(row)+".z", column)
}

// A 12 × 8 grid typed reading by reading, with Enter in between: the focus goes
// along the row, and to a new row at its end.
func TestAGridIsTypedFromReadingToReading(t *testing.T) {
	s := gridded(t, "8")
	for row := 1; row <= 12; row++ {
		for column := range 8 {
			var effects []page.Effect
			s, _ = page.Update(s, page.Message{Verb: "set", Path: cell(row, column), Text: strconv.Itoa(row + column)})
			if row == 12 && column == 7 {
				break
			}
			s, effects = page.Update(s, page.Message{Verb: "next", Path: cell(row, column)})
			want := cell(row, column+1)
			if column == 7 {
				want = cell(row+1, 0)
			}
			require.Contains(t, effects, page.Effect{Kind: page.Focus, Key: "f-" + want})
		}
	}
	require.Len(t, s.Doc().Items(fillStep+".grid"), 12)
	assert.Equal(t, "12; 13; 14; 15; 16; 17; 18; 19", s.Doc().Get(fillStep+".grid.12.z"))
	require.NotNil(t, s.Plan.Buildups()[0].Steps[0].Fill)
	// row + column from 1 to 19 over 2.2 m × 1.4 m: a plane, its mean the middle's 10
	assert.InDelta(t, 2.2*1.4*0.010, float64(s.Plan.Buildups()[0].Steps[0].Fill.Left.Value), 1e-9)
}

func TestRowsArePastedIntoAnyReading(t *testing.T) {
	s := gridded(t, "4")
	s, _ = page.Update(s, page.Message{Verb: "set", Path: cell(1, 0), Text: "9"})
	s, _ = page.Update(s, page.Message{Verb: "paste", Path: cell(1, 1), Text: "1\t2\t3\n4\t5\t6\n"})
	assert.Equal(t, "9; 1; 2; 3", s.Doc().Get(fillStep+".grid.1.z"))
	assert.Equal(t, "; 4; 5; 6", s.Doc().Get(fillStep+".grid.2.z"))
	assert.Equal(t, "4", s.Doc().Get(fillStep+".columns"))
	assert.Error(t, s.Plan.WaitingAt(fillStep+".grid.2.z"), "the blank is asked about")

	s, _ = page.Update(s, page.Message{Verb: "paste", Path: cell(1, 0), Text: "1 2 3 4 5 6"})
	assert.Equal(t, "6", s.Doc().Get(fillStep+".columns"), "the grid grows")
	s, _ = page.Update(s, page.Message{Verb: "undo"})
	assert.Equal(t, "9; 1; 2; 3", s.Doc().Get(fillStep+".grid.1.z"), "a paste is one change")
}

// What can't be cut, or doesn't fit, stays in the box to be put right.
func TestABadPasteIsKept(t *testing.T) {
	s := gridded(t, "4")
	for _, text := range []string{"1,5\n2,5", strings.Repeat("1 ", 101), strings.Repeat("1 2\n", 101), "6 1/2 3"} {
		after, _ := page.Update(s, page.Message{Verb: "paste", Path: cell(1, 0), Text: text})
		assert.Equal(t, text, after.Doc().Get(fillStep+".paste"))
		assert.NotEmpty(t, after.Notice)
		assert.Equal(t, s.Doc().Get(fillStep+".grid"), after.Doc().Get(fillStep+".grid"))
	}
	s, _ = page.Update(s, page.Message{Verb: "set", Path: fillStep + ".paste", Text: "1; 2; 3; 4\n5; 6"})
	s, _ = page.Update(s, page.Message{Verb: "fill", Path: fillStep})
	assert.Empty(t, s.Doc().Get(fillStep+".paste"))
	assert.Contains(t, s.Notice, "Row 2 has 2")
	assert.Error(t, s.Plan.WaitingAt(fillStep+".grid.2.z"))
}

func TestAProudSpotWithoutAMinusKey(t *testing.T) {
	s := gridded(t, "4")
	row := fillStep + ".grid.1"
	s, _ = page.Update(s, page.Message{Verb: "sign", Path: row})
	assert.NotEmpty(t, s.Notice)
	s, _ = page.Update(s, page.Message{Verb: "set", Path: cell(1, 0), Text: "1.5"})
	s, _ = page.Update(s, page.Message{Verb: "sign", Path: row})
	assert.Equal(t, "-1.5", s.Doc().Get(row+".z"))
	s, _ = page.Update(s, page.Message{Verb: "sign", Path: row})
	assert.Equal(t, "1.5", s.Doc().Get(row+".z"))
}

// Every check, want and fix has words; none falls back to the last resort.
func TestEveryFindingHasWords(t *testing.T) {
	last, _, _ := words.Finding(&plan.Finding{Finding: buildup.Finding{Rule: "none"}}, "Gel coat", job.Units{})
	for _, rule := range buildup.Keys {
		for want := buildup.Another; want <= buildup.Promptly; want++ {
			for _, fix := range buildup.Fixes {
				f := plan.Finding{Finding: buildup.Finding{Rule: rule, Requirement: want, Fix: fix, Got: 1, Limit: 2, Scale: unit.InHour}}
				what, how, _ := words.Finding(&f, "Gel coat", job.Units{})
				assert.NotEmpty(t, how, fix)
				assert.NotEqual(t, last, what, rule)
				assert.NotContains(t, what, "{", fix)
			}
		}
	}
}

func TestEveryBadReadingHasWords(t *testing.T) {
	for _, err := range []error{
		&fairing.SizeError{Rows: 1, Columns: 3}, &fairing.RaggedError{Row: 2, Has: 3, First: 4}, &fairing.CurveError{},
		&fairing.BalloonError{Share: 0.7, Most: 0.62}, fairing.ErrNothing, plan.ErrFewRows, plan.ErrNoSpots, plan.ErrNoGrades,
		&fairing.SplitError{}, &fairing.SplitError{Cause: fairing.CommaTwoWays, Text: "1,5"}, &fairing.CellError{Cause: fairing.Blank},
		&fairing.CellError{Cause: fairing.MixedUnit}, &fairing.CellError{Cause: fairing.OutOfReach}, buildup.ErrNoReadings,
		&plan.GradesError{First: 400, Last: 80}, &plan.RoundTakesError{}, &job.OrderError{Before: 400, After: 320},
	} {
		assert.NotEqual(t, words.Sentence(errors.New("unheard of"), nil, job.Units{}), words.Sentence(err, nil, job.Units{}), "%T", err)
	}
}

// Where decimals are written with a comma, a point before three digits is asked
// about in a reading too; readings that stood there before mean what they meant.
func TestAReadingThatMeansTwoThings(t *testing.T) {
	s := gridded(t, "2")
	for at, text := range []string{"1.500", "2.250", "-1.125", "0.500"} {
		if at == 2 {
			s = do(s, "next", cell(1, 1), "")
		}
		s = do(s, "set", cell(at/2+1, at%2), text)
	}
	left := func() any { return s.Plan.Buildups()[0].Steps[0].Fill.Left.Value }
	require.Empty(t, s.Plan.Refused())
	before := left()
	s = do(s, "decimal", "", "comma")
	assert.Empty(t, s.Plan.Refused())
	assert.Equal(t, before, left())
	assert.Equal(t, "-1.1250; 0.500", s.Doc().Get(fillStep+".grid.2.z"))

	s = do(do(s, "set", cell(1, 0), "1.750"), "set", cell(1, 1), "2.250")
	shown := view.Page(do(do(s, "go", "buildup", ""), "sheet", fillStep, "")).String()
	assert.Contains(t, shown, "1.750 can be read two ways. Type 1,75 or 1750.")
	assert.Contains(t, shown, "1.750  2.250", "as they were typed")
	s = do(do(s, "set", cell(1, 0), "1,75"), "set", cell(1, 1), "2,25")
	assert.Empty(t, s.Plan.Refused())
}
