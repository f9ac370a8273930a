package page_test

import (
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

func TestAJobBegunOnAPhoneThatWritesCommas(t *testing.T) {
	s, _ := start(t, nil)
	s = do(do(s, "locale", "", ","), "add", "surface", "")
	require.True(t, job.HasComma(s.Doc()))
	s = do(do(do(s, "set", "surface.1.length", "1,5 m"), "set", "surface.1.width", "700"), "set", "surface.1.name", "Tin 3.2 & more")
	html := plain(view.Page(s).String())
	assert.Contains(t, html, ">1,05 m²<")
	assert.NotContains(t, html, "1.05")
	assert.Contains(t, html, "Tin 3.2 &amp; more", "a name stays as it was typed")
	s = do(s, "set", "surface.1.length", "1.500")
	assert.Contains(t, view.Page(s).String(), "1.500 can be read two ways. Type 1,5 or 1500.")
	assert.Equal(t, "1.500", s.Doc().Get("surface.1.length"))
	undone := do(do(do(do(do(s, "undo", "", ""), "undo", "", ""), "undo", "", ""), "undo", "", ""), "undo", "", "")
	assert.Empty(t, undone.Doc().Lines())

	// elsewhere the job means what it meant, and the builder may choose
	other, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(s.Doc(), 1)})
	assert.True(t, other.Plan.Job.Units.Comma)
	other = do(do(other, "set", "surface.1.length", "1,5 m"), "decimal", "", "point")
	assert.Contains(t, plain(view.Page(other).String()), ">1.05 m²<")

	// and a job begun with points goes on with points
	point, _ := start(t, nil)
	point = do(do(do(point, "add", "surface", ""), "locale", "", ","), "set", "surface.1.length", "1.500 m")
	assert.False(t, job.HasComma(point.Doc()))
	point = do(point, "decimal", "", "comma")
	assert.Equal(t, "1.5000 m", point.Doc().Get("surface.1.length"))
}

// A spreadsheet that writes decimals with a comma parts cells by semicolons.
// Common practice: the list separator of a system whose decimal mark is a comma.
func TestATableForASpreadsheetThatWritesCommas(t *testing.T) {
	s := demo(t)
	s = do(do(s, "set", "card.gelcoat.name", "Gel 1.5; white, no. 2.5"), "decimal", "", "comma")
	s = do(s, "set", "card.gelcoat.pack.2.price", "84,50")
	read := func(text string) [][]string {
		text, found := strings.CutPrefix(text, "\ufeff")
		require.True(t, found)
		r := csv.NewReader(strings.NewReader(text))
		r.Comma = ';'
		rows, err := r.ReadAll()
		require.NoError(t, err)
		return rows
	}
	rows := read(page.OrderCSV(s))
	require.Len(t, rows, len(s.Order().Lines)+1)
	decimals := 0
	for i, row := range rows[1:] {
		line := s.Order().Lines[i]
		assert.Equal(t, line.Name(), row[0], "a name stays as it was typed")
		for column, want := range map[int]string{1: line.Need.String(), 2: line.Stock.String(), 3: line.ToBuy.String(), 6: line.Bought.Bought.String(), 7: line.Bought.Left.String()} {
			got := strings.Replace(row[column], ",", ".", 1)
			assert.Equal(t, want, got, row[0])
			assert.NotContains(t, row[column], ".", row[0])
			decimals += strings.Count(row[column], ",")
		}
		assert.NotRegexp(t, `\d\.\d`, row[5], row[0])
	}
	assert.Greater(t, decimals, 5)

	logged := do(do(loggedDemo(t), "set", "cup.1.note", "tin 2.5; shaken"), "decimal", "", "comma")
	rows = read(page.LogCSV(logged))
	text := fmt.Sprint(rows)
	assert.Contains(t, text, "tin 2.5; shaken")
	assert.NotRegexp(t, `\d\.\d`, strings.ReplaceAll(text, "tin 2.5", ""))
	assert.Regexp(t, `\d,\d+ min`, text)
}
