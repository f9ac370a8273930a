package page_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// tableOf reads a table: the names of its columns, and its rows by them. A row has a cell for each column and no more.
func tableOf(t *testing.T, text string, part rune) (names []string, rows []map[string]string) {
	t.Helper()
	r := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff")))
	r.Comma = part
	list, err := r.ReadAll()
	require.NoError(t, err)
	for _, cells := range list[1:] {
		require.Len(t, cells, len(list[0]))
		row := map[string]string{}
		for i, cell := range cells {
			row[list[0][i]] = strings.ReplaceAll(cell, "\u00a0", " ")
		}
		rows = append(rows, row)
	}
	for _, name := range list[0] {
		require.NotEmpty(t, name, "a column without a name")
	}
	require.Len(t, rows[0], len(list[0]), "no name stands twice")
	return list[0], rows
}

// Each figure of the order stands under its own name, also where a line waits and where decimals are written with a comma.
func TestEachColumnOfTheOrderIsItsOwn(t *testing.T) {
	priced := do(do(demo(t), "set", "currency", "EUR"), "set", "card.gelcoat.stock", "0.5 kg")
	for _, mark := range []string{"point", "comma"} {
		s, part := do(priced, "decimal", "", mark), ','
		figure := func(text string) string { return text }
		if mark == "comma" {
			part = ';'
			figure = func(text string) string { return strings.ReplaceAll(text, ".", ",") }
		}
		names, rows := tableOf(t, page.OrderCSV(s), part)
		assert.Len(t, names, 10)
		costs := 0
		for i, l := range s.Order().Lines {
			row := rows[i]
			cost := ""
			if l.Bought.IsPriced && !l.ToBuy.IsZero() {
				cost, costs = figure(l.Bought.Cost.StringFixed(2)), costs+1
			}
			symbol := l.Scale.Symbol()
			if symbol == "" {
				symbol = "pieces"
			}
			assert.Equal(t, map[string]string{"material": l.Name(), "need": figure(l.Need.String()), words.SheetStock: figure(l.Stock.String()), words.SheetHero: figure(l.ToBuy.String()), "unit": symbol,
				"packs": strings.ReplaceAll(figure(words.Buy(&l, s.Plan.Job.Units)), "\u00a0", " "), "bought": figure(l.Bought.Bought.String()), words.LeftOverName: figure(l.Bought.Left.String()), "cost": cost, "currency": "EUR"}, row)
		}
		assert.Positive(t, costs)
	}
	waiting := do(do(priced, "decimal", "", "point"), "set", "surface.1.height", "none")
	_, rows := tableOf(t, page.OrderCSV(waiting), ',')
	waits := 0
	for i, l := range waiting.Order().Lines {
		if l.Waits() != nil {
			waits++
			assert.Equal(t, []string{"", "", "", ""}, []string{rows[i]["need"], rows[i][words.SheetStock], rows[i][words.SheetHero], rows[i]["cost"]})
			assert.Contains(t, rows[i]["packs"], "Waits for ")
		}
	}
	assert.Positive(t, waits)
	require.Len(t, rows, len(waiting.Order().Lines)+len(waiting.Warnings()))
	for i, text := range waiting.Warnings() {
		assert.Equal(t, strings.ReplaceAll(text, "\u00a0", " "), rows[len(waiting.Order().Lines)+i]["material"])
	}
}

// What was taken down of a cup stands under its own name in the table of the log.
func TestEachColumnOfTheLogIsItsOwn(t *testing.T) {
	s := loggedDemo(t)
	for key, text := range map[string]string{"left": "7 g", "covered": "0.3 m²", "gel": "31 min", "note": "a note"} {
		s, _ = sent(s, tenOClock, "set", "cup.1."+key, text)
	}
	_, rows := tableOf(t, page.LogCSV(s), ',')
	for name, key := range map[string]string{"tin": "tin", "mixed": "mixed", "catalyst": "dose", words.ColumnShare: "share", words.ColumnProductAt: "product-temp", words.ColumnSurfaceAt: "surface-temp",
		words.ColumnAirAt: "air-temp", "humidity": "humidity", "usable": "usable", words.ColumnEarlyGel: "early", words.GelledName: "gel", words.LeftOverName: "left", "covered": "covered",
		words.ColumnPerArea: "per-area", words.ColumnEnd: "end", words.ColumnFault: "fault", "note": "note", "day": "day"} {
		assert.True(t, strings.HasPrefix(rows[0][name], strings.ReplaceAll(s.Doc().Get("cup.1."+key), "\u00a0", " ")), "%s: %q for %q", name, rows[0][name], s.Doc().Get("cup.1."+key))
		assert.Equal(t, s.Doc().Get("cup.1."+key) == "", rows[0][name] == "", name)
	}
	assert.Equal(t, "cup", rows[0]["kind"])
	assert.Equal(t, s.HourOf("cup.1.weighed"), rows[0]["hour"])
}
