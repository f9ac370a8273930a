package fairing_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/unit"
)

// paste cuts and reads a text in millimetres.
func paste(text string) ([][]unit.Length, error) {
	rows, err := fairing.Split(text)
	if err != nil {
		return nil, err
	}
	return fairing.Read(rows, unit.InMillimetre)
}

func TestPasteTakesRowsAsPeopleWriteThem(t *testing.T) {
	want := [][]float64{{1.5, 0, -2}, {3, 4.25, 5}}
	for name, text := range map[string]string{
		"tabs":               "1.5\t0\t-2\n3\t4.25\t5\n",
		"tabs, commas":       "1,5\t0\t−2\r\n3\t4,25\t5\r\n",
		"semicolons":         "1,5; 0; -2\n3; 4,25; 5",
		"commas":             "1.5,0,-2\n3,4.25,5",
		"commas and spaces":  "1.5, 0, -2\n\n3, 4.25, 5",
		"spaces":             "  1.5 0   -2\n3 4.25 5  ",
		"spaces and commas":  "1,5 0 -2\n3 4,25 5",
		"units behind":       "1.5 mm 0 mm -2 mm\n3 mm 4.25 mm 5 mm",
		"units at the digit": "1.5mm 0mm -2mm\n3mm 4.25mm 5mm",
		"the field's unit":   "1.5 mm\t0\t-2\n3\t4.25 mm\t5",
	} {
		got, err := paste(text)
		require.NoError(t, err, name)
		require.Len(t, got, len(want), name)
		for r := range want {
			require.Len(t, got[r], len(want[r]), name)
			for c := range want[r] {
				assert.InDelta(t, want[r][c], unit.InMillimetre.From(float64(got[r][c])), 1e-9, name)
			}
		}
	}
}

func TestPasteReadsFractionsOfAnInch(t *testing.T) {
	got, err := paste("1/8\" 1/4\" 3/16 in\n0\" -1/16\" 1/2\"")
	require.NoError(t, err)
	assert.InDelta(t, 25.4e-3/16*3, float64(got[0][2]), 1e-12)
	assert.InDelta(t, -25.4e-3/16, float64(got[1][1]), 1e-12)
	got, err = paste("6 1/2 mm\t1 mm\n2 mm\t3 mm")
	require.NoError(t, err)
	assert.InDelta(t, 6.5e-3, float64(got[0][0]), 1e-12)
}

func TestPasteRefusesWhatCanBeCutTwoWays(t *testing.T) {
	for text, cause := range map[string]fairing.SplitCause{
		"":                                      fairing.NothingPasted,
		" \n \r\n":                              fairing.NothingPasted,
		"1,5\n2,5\n3,0":                         fairing.CommaTwoWays,
		"1 2\n6 1/2 3":                          fairing.FractionTwoWays,
		strings.Repeat("1 ", fairing.MaxPaste):  fairing.PasteTooLong,
		strings.Repeat("1\n", fairing.MaxPaste): fairing.PasteTooLong,
	} {
		_, err := fairing.Split(text)
		var refused *fairing.SplitError
		require.True(t, errors.As(err, &refused), text)
		assert.Equal(t, cause, refused.Cause)
	}
}

func TestPasteSaysWhichCellIsWrong(t *testing.T) {
	for _, c := range []struct {
		text        string
		row, column int
		cause       fairing.CellCause
	}{
		{"1\t\t3\n4\t5\t6", 0, 1, fairing.Blank},
		{"1\t2\t3\n4\t5\t-", 1, 2, fairing.Blank},
		{"1;2;\n4;5;6", 0, 2, fairing.Blank},
		{"1 2 x\n4 5 6", 0, 2, fairing.Unreadable},
		{"1 mm 2 mm\n3 in 4 mm", 1, 0, fairing.MixedUnit},
		{"1\" 2\"\n3 4\"", 1, 0, fairing.MixedUnit},
		{"1 2\n1/8\" 3", 1, 0, fairing.MixedUnit},
		{"1\t2\n3\t1,500", 1, 1, fairing.Unreadable},
		{"1\t2\n3\t4 kg", 1, 1, fairing.Unreadable},
		{"1 2\n3 501", 1, 1, fairing.OutOfReach},
		{"1 m, 2 m\n3 m, 4 m", 0, 0, fairing.OutOfReach},
	} {
		_, err := paste(c.text)
		var cell *fairing.CellError
		require.True(t, errors.As(err, &cell), "%q: %v", c.text, err)
		assert.Equal(t, []int{c.row, c.column}, []int{cell.Row, cell.Column}, c.text)
		assert.Equal(t, c.cause, cell.Cause, c.text)
	}
	_, err := paste("1\t\n\t4")
	var all fairing.CellErrors
	require.True(t, errors.As(err, &all))
	assert.Len(t, all, 2, "every bad cell is named")
	_, err = paste("1\t2\n3\t1,500")
	var read *unit.ReadError
	require.True(t, errors.As(err, &read))
	assert.Equal(t, unit.TwoReadings, read.Cause)
}

func TestPasteRefusesRaggedRows(t *testing.T) {
	_, err := paste("1 2 3\n4 5 6\n7 8")
	var ragged *fairing.RaggedError
	require.True(t, errors.As(err, &ragged))
	assert.Equal(t, &fairing.RaggedError{Row: 2, Has: 2, First: 3}, ragged)
	_, err = paste(strings.Repeat("1 2\n", 101))
	var size *fairing.SizeError
	assert.True(t, errors.As(err, &size))
}

func FuzzPaste(f *testing.F) {
	for _, seed := range []string{"1 2\n3 4", "1,5\t2\n3\t4", "1/2\" 3\"\n1\" 2\"", "1;;2", "6 1/2", "1 mm 2 in\n3 4"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		readings, err := paste(text)
		if err != nil {
			return
		}
		for _, row := range readings {
			for _, z := range row {
				if !(math.Abs(float64(z)) <= 0.5) || len(row) != len(readings[0]) {
					t.Fatalf("%q read as %v", text, readings)
				}
			}
		}
	})
}
