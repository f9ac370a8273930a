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
	for _, text := range []string{"½ in\t1¼ in\n-⅛ in\t2 in", "½\" 1¼\"\n-⅛\" 2\"", "1/2 in\t1 1/4 in\n-1/8 in\t2 in"} {
		got, err = paste(text)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, []float64{12.7e-3, 31.75e-3, -3.175e-3, 50.8e-3}, []float64{float64(got[0][0]), float64(got[0][1]), float64(got[1][0]), float64(got[1][1])}, 1e-12, text)
	}
	rows, err := fairing.Split("½ ¼\n1 2")
	require.NoError(t, err)
	bare, err := fairing.Read(rows, unit.InInch)
	require.NoError(t, err)
	assert.InDelta(t, 6.35e-3, float64(bare[0][1]), 1e-12, "in the field's unit")
}

func TestPasteRefusesWhatCanBeCutTwoWays(t *testing.T) {
	for text, cause := range map[string]fairing.SplitCause{
		"":                                      fairing.NothingPasted,
		" \n \r\n":                              fairing.NothingPasted,
		"1,5\n2,5\n3,0":                         fairing.CommaTwoWays,
		"1 2\n6 1/2 3":                          fairing.FractionTwoWays,
		"1 2\n6 ½ 3":                            fairing.FractionTwoWays,
		strings.Repeat("1 ", fairing.MaxPaste):  fairing.PasteTooLong,
		strings.Repeat("1\n", fairing.MaxPaste): fairing.PasteTooLong,
	} {
		_, err := fairing.Split(text)
		var refused *fairing.SplitError
		require.True(t, errors.As(err, &refused), text)
		assert.Equal(t, cause, refused.Cause)
	}
}

// Two digits with a comma between, in every line, can be one number; a point, a third cell, a space or an
// empty cell anywhere says that commas separate. A minus sign says nothing either way.
func TestWhatSaysThatCommasSeparate(t *testing.T) {
	for text, want := range map[string][][]string{
		"1.5,2\n3.5,4": {{"1.5", "2"}, {"3.5", "4"}}, "1,2.5\n3,4.5": {{"1", "2.5"}, {"3", "4.5"}}, "1,2,3\n4,5,6": {{"1", "2", "3"}, {"4", "5", "6"}},
		"1, 5\n2, 6": {{"1", "5"}, {"2", "6"}}, "1,\n2,": {{"1", ""}, {"2", ""}}, ",1\n,2": {{"", "1"}, {"", "2"}}, "1,2\n3,4.5": {{"1", "2"}, {"3", "4.5"}},
		"1,5 2,5\n3,5 4,5": {{"1,5", "2,5"}, {"3,5", "4,5"}}, "1,5\u00a02,5\n3,5\u00a04,5": {{"1,5", "2,5"}, {"3,5", "4,5"}},
		"1\n2": {{"1"}, {"2"}}, "mm 1\n2 3": {{"mm", "1"}, {"2", "3"}}, "1\u20032\n3\u20034": {{"1", "2"}, {"3", "4"}},
	} {
		rows, err := fairing.Split(text)
		require.NoError(t, err, "%q", text)
		assert.Equal(t, want, rows, "%q", text)
	}
	for _, text := range []string{"-1,5\n2,5", "−1,5\n−2,5", "1,5"} {
		_, err := fairing.Split(text)
		var refused *fairing.SplitError
		require.ErrorAs(t, err, &refused, "%q", text)
		assert.Equal(t, fairing.CommaTwoWays, refused.Cause)
	}
	full := "1 2\n3 4"
	for room, holds := range map[int]bool{fairing.MaxPaste: true, fairing.MaxPaste + 1: false} {
		_, err := fairing.Split(full + strings.Repeat(" ", room-len(full)))
		assert.Equal(t, holds, err == nil, "%d bytes", room)
	}
}

// A length in feet and inches is in feet, however it is spaced; beside feet alone it is in the same unit.
func TestPasteTakesFeetAndInches(t *testing.T) {
	for _, text := range []string{"1 ft 2 in", "1ft2in", "1 ft\u00a02 in", "1\u00a0ft 2\u00a0in", "1' 2\""} {
		got, err := paste(text + "\t1 ft\n1 ft\t0 ft")
		require.NoError(t, err, "%q", text)
		assert.InDelta(t, 0.3556, float64(got[0][0]), 1e-12, "%q", text)
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
		{"x 2\n3 4", 0, 0, fairing.Unreadable},
		{"mm 2\n3 4", 0, 0, fairing.Unreadable},
	} {
		_, err := paste(c.text)
		var cell *fairing.CellError
		require.True(t, errors.As(err, &cell), "%q: %v", c.text, err)
		assert.Equal(t, []int{c.row, c.column}, []int{cell.Row, cell.Column}, c.text)
		assert.Equal(t, c.cause, cell.Cause, c.text)
		var all fairing.CellErrors
		if require.ErrorAs(t, err, &all); c.cause != fairing.OutOfReach && c.cause != fairing.MixedUnit {
			assert.Len(t, all, 1, "%q: the others are as they should be", c.text)
		}
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
