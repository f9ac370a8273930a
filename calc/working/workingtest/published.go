package workingtest

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
)

// Case computes what a published row states.
type Case struct {
	Result *unit.Scale                // the scale in which the row's want and tolerance are read
	Got    func(Row) (float64, error) // the result in SI base units
}

// Row is one line of a published table.
type Row struct {
	t      *testing.T
	values map[string]string
	used   map[string]bool
}

// Quantity reads a column as a quantity of the scale's dimension, in SI.
func (r Row) Quantity(column string, bare *unit.Scale) float64 {
	r.t.Helper()
	v, err := unit.Read(r.Text(column), bare)
	if err != nil {
		r.t.Fatalf("column %s: %v", column, err)
	}
	return v
}

// Number reads a column as a bare number.
func (r Row) Number(column string) float64 { r.t.Helper(); return r.Quantity(column, unit.InPure) }

// Text gives a column as it stands.
func (r Row) Text(column string) string {
	r.t.Helper()
	text, found := r.values[column]
	if !found {
		r.t.Fatalf("no column %s", column)
	}
	r.used[column] = true
	return text
}

// Kinds of proof that a row can be.
var kinds = []string{"published example", "published table", "exact", "reference library", "from memory", "common practice"}

var settings = []string{"rule", "columns", "source", "place", "kind", "tolerance", "reason"}

// block is a table: its settings and the rows under them.
type block struct {
	settings map[string]string
	rows     [][]string
}

// Published runs every row of a table in testdata/published against the case
// named by its rule. A file is made of blocks; a block opens with its rule and
// columns, says source, place, kind, tolerance (in the result's unit, or in %)
// and the tolerance's reason, and holds rows that start with a bar. The column
// want is the published result. An unknown setting, rule, source or kind, a
// column that isn't used and a case without a row fail the test.
func Published(t *testing.T, file string, cases map[string]Case) {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join(root(t), "testdata", "published", file))
	if err != nil {
		t.Fatal(err)
	}
	tested := map[string]bool{}
	for _, b := range parseBlocks(t, string(raw)) {
		rule := b.settings["rule"]
		c, known := cases[rule]
		if !known {
			t.Errorf("%s: no case for rule %q", file, rule)
			continue
		}
		b.validate(t)
		tested[rule] = true
		for _, cells := range b.rows {
			name := rule + " " + strings.Join(cells, " ")
			t.Run(name, func(t *testing.T) { b.check(t, c, cells) })
		}
	}
	for rule := range cases {
		if !tested[rule] {
			t.Errorf("%s: no row for rule %q", file, rule)
		}
	}
}

func parseBlocks(t *testing.T, raw string) []*block {
	var blocks []*block
	for n, line := range strings.Split(raw, "\n") {
		line = strings.TrimSpace(line)
		switch key, value, isSetting := strings.Cut(line, ":"); {
		case line == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "|") && len(blocks) > 0:
			last := blocks[len(blocks)-1]
			last.rows = append(last.rows, cells(strings.TrimPrefix(line, "|")))
		case key == "rule":
			blocks = append(blocks, &block{settings: map[string]string{"rule": strings.TrimSpace(value)}})
		case isSetting && slices.Contains(settings, key) && len(blocks) > 0:
			blocks[len(blocks)-1].settings[key] = strings.TrimSpace(value)
		default:
			t.Fatalf("line %d: can't read %q", n+1, line)
		}
	}
	return blocks
}

func (b *block) validate(t *testing.T) {
	t.Helper()
	for _, s := range settings {
		if b.settings[s] == "" && s != "place" {
			t.Fatalf("%s: no %s", b.settings["rule"], s)
		}
	}
	if !slices.Contains(kinds, b.settings["kind"]) {
		t.Fatalf("unknown kind %q", b.settings["kind"])
	}
	if !slices.ContainsFunc(source.Documents, func(d *source.Document) bool { return d.ID == b.settings["source"] }) {
		t.Fatalf("unknown source %q", b.settings["source"])
	}
}

func (b *block) check(t *testing.T, c Case, cells []string) {
	columns := strings.Split(b.settings["columns"], "|")
	if len(columns) != len(cells) {
		t.Fatalf("%d cells for %d columns", len(cells), len(columns))
	}
	row := Row{t, map[string]string{}, map[string]bool{}}
	for i, column := range columns {
		row.values[strings.TrimSpace(column)] = cells[i]
	}
	want := c.Result.From(row.Quantity("want", c.Result))
	si, err := c.Got(row)
	if err != nil {
		t.Fatal(err)
	}
	got := c.Result.From(si)
	if room := tolerance(t, b.settings["tolerance"], want); !(math.Abs(got-want) <= room) {
		t.Errorf("got %v, published %v ± %v (%s)", got, want, room, b.settings["reason"])
	}
	for column := range row.values {
		if !row.used[column] {
			t.Errorf("column %q isn't used", column)
		}
	}
}

func tolerance(t *testing.T, text string, want float64) float64 {
	digits, relative := strings.CutSuffix(text, "%")
	room, err := strconv.ParseFloat(strings.TrimSpace(digits), 64)
	if err != nil {
		t.Fatalf("tolerance %q: %v", text, err)
	}
	if relative {
		return math.Abs(want) * room / 100
	}
	return room
}

func cells(line string) []string {
	list := strings.Split(line, "|")
	for i := range list {
		list[i] = strings.TrimSpace(list[i])
	}
	return list
}

// root is the folder of go.mod, found upwards from the test's own.
func root(t *testing.T) string {
	dir, err := os.Getwd()
	for err == nil {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if dir == filepath.Dir(dir) {
			break
		}
		dir = filepath.Dir(dir)
	}
	t.Fatal("no go.mod above the test")
	return ""
}
