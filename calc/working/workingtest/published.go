package workingtest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Case computes what a published row states.
type Case struct {
	Result unit.Scale                 // the scale in which the row's want and tolerance are read
	Got    func(Row) (float64, error) // the result in SI base units
}

// Row is one line of a published table.
type Row struct {
	t      *testing.T
	values map[string]string
	used   map[string]bool
}

// Quantity reads a column as a quantity of the scale's dimension, in SI.
func (r Row) Quantity(column string, bare unit.Scale) float64 {
	r.t.Helper()
	v, err := unit.Read(r.Text(column), bare)
	if err != nil {
		r.t.Fatalf("column %s: %v", column, err)
	}
	return v
}

// Number reads a column as a bare number.
func (r Row) Number(column string) float64 { r.t.Helper(); return r.Quantity(column, unit.InPure) }

// Text gives a column as it is written.
func (r Row) Text(column string) string {
	r.t.Helper()
	text, found := r.values[column]
	if !found {
		r.t.Fatalf("no column %s", column)
	}
	r.used[column] = true
	return text
}

var settings = []string{"rule", "checks", "columns", "source", "place", "kind", "tolerance", "reason"}

// checksNothing stands where rows hold a constant, a card's figure or a
// conversion, and no rule.
const checksNothing = "none"

// block is a table: its settings and the rows under them.
type block struct {
	settings map[string]string
	rows     [][]string
}

// rules gives the names of the rules that the block says it checks.
func (b *block) rules() []string {
	if c := b.settings["checks"]; c == checksNothing || c == checksItsRows {
		return nil
	}
	return strings.Fields(b.settings["checks"])
}

// Published runs every row of a table in testdata/published against the case named
// by its rule. A file is made of blocks; a block opens with its rule, the rules of
// this project that it checks and its columns, says source, place, kind, tolerance
// (in the result's unit, or in %) and the tolerance's reason, and holds rows that
// start with a bar. The column want is the published result. An unknown setting,
// rule, source or kind, a column that isn't used and a case without a row fail the
// test.
//
// Of the rules given, which are the Rules of the test's own package, each one that
// a block says it checks is made wrong once, and a row of that block must notice.
func Published(t *testing.T, file string, cases map[string]Case, rules ...*working.Rule) {
	t.Helper()
	named := Named(t, ".", rules)
	tested := map[string]bool{}
	for _, b := range readBlocks(t, file) {
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
			t.Run(name, func(t *testing.T) {
				if err := b.check(t, c, cells); err != nil {
					t.Error(err)
				}
			})
		}
		b.mustNotice(t, c, named)
	}
	for rule := range cases {
		if !tested[rule] {
			t.Errorf("%s: no row for rule %q", file, rule)
		}
	}
}

func readBlocks(t *testing.T, file string) []*block {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join(root(t), "testdata", "published", file))
	if err != nil {
		t.Fatal(err)
	}
	return parseBlocks(t, string(raw))
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
	if !slices.Contains(source.CheckKinds, b.settings["kind"]) {
		t.Fatalf("unknown kind %q", b.settings["kind"])
	}
	if b.settings["kind"] == "reference library" && b.settings["place"] == "" {
		t.Fatalf("%s: a reference library needs its version and call", b.settings["rule"])
	}
	if !slices.ContainsFunc(source.Documents, func(d *source.Document) bool { return d.ID == b.settings["source"] }) {
		t.Fatalf("unknown source %q", b.settings["source"])
	}
}

// check computes one row; its error says how far off it came out.
func (b *block) check(t *testing.T, c Case, cells []string) error {
	t.Helper()
	row := b.row(t, cells)
	want := c.Result.From(row.Quantity("want", c.Result))
	si, err := c.Got(row)
	if err != nil {
		return err
	}
	if err := b.compare(t, c.Result.From(si), want); err != nil {
		return err
	}
	return row.allUsed()
}

func (b *block) row(t *testing.T, cells []string) Row {
	t.Helper()
	columns := strings.Split(b.settings["columns"], "|")
	if len(columns) != len(cells) {
		t.Fatalf("%d cells for %d columns", len(cells), len(columns))
	}
	row := Row{t, map[string]string{}, map[string]bool{}}
	for i, column := range columns {
		row.values[strings.TrimSpace(column)] = cells[i]
	}
	return row
}

func (b *block) compare(t *testing.T, got, want float64) error {
	t.Helper()
	if room := tolerance(t, b.settings["tolerance"], want); !(math.Abs(got-want) <= room) {
		return fmt.Errorf("got %v, published %v ± %v (%s)", got, want, room, b.settings["reason"])
	}
	return nil
}

func (r Row) allUsed() error {
	for column := range r.values {
		if !r.used[column] {
			return fmt.Errorf("column %q isn't used", column)
		}
	}
	return nil
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
