package workingtest

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// checksItsRows stands where every row names the rule that it works an example of.
const checksItsRows = "rows"

// Worked runs a table of examples that were worked by hand: each row has a
// rule's name, what goes in by its symbol ("A = 2 m², t = 3 mm"), the result and
// how it was got. The code is run, not the shown formula. A rule that isn't
// known, an argument that is missing, not the rule's or outside its range, and a
// row that doesn't say how it was got fail the test.
func Worked(t *testing.T, file string, named map[string]*working.Rule) {
	t.Helper()
	for _, b := range readBlocks(t, file) {
		b.validate(t)
		for _, cells := range b.rows {
			row := b.row(t, cells)
			t.Run(row.Text("rule")+" "+row.Text("given"), func(t *testing.T) {
				row.t = t
				b.work(t, row, named[row.Text("rule")])
			})
		}
	}
}

func (b *block) work(t *testing.T, row Row, rule *working.Rule) {
	t.Helper()
	if rule == nil || rule.IsProse {
		t.Fatal("no such rule with a formula")
	}
	si, err := arguments(rule, row.Text("given"))
	if err != nil {
		t.Fatal(err)
	}
	result := rule.Result.Scale
	if err := b.compare(t, result.From(rule.Eval(si...)), result.From(row.Quantity("want", result))); err != nil {
		t.Error(err)
	}
	if row.Text("how") == "" {
		t.Error("how it was got isn't said")
	}
	if err := row.allUsed(); err != nil {
		t.Error(err)
	}
}

// arguments reads "A = 2 m², t = 3 mm" in the order of the rule's arguments.
func arguments(rule *working.Rule, given string) ([]float64, error) {
	texts := map[string]string{}
	for part := range strings.SplitSeq(given, ",") {
		symbol, text, _ := strings.Cut(part, "=")
		texts[strings.TrimSpace(symbol)] = strings.TrimSpace(text)
	}
	var si []float64
	for _, a := range rule.Args {
		v, err := unit.Read(texts[a.Symbol], a.Scale)
		if n := a.Scale.From(v); err == nil && !(n >= a.Min-1e-9 && n <= a.Max+1e-9) {
			err = fmt.Errorf("%v is outside %v to %v", n, a.Min, a.Max)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", a.Symbol, err)
		}
		si = append(si, v)
		delete(texts, a.Symbol)
	}
	if len(texts) > 0 {
		return nil, fmt.Errorf("not arguments of the rule: %v", texts)
	}
	return si, nil
}

// Checks counts the rows of all published tables by the rule that they check
// and by their kind.
func Checks(t *testing.T) map[string]map[string]int {
	t.Helper()
	counts := map[string]map[string]int{}
	for _, file := range files(t) {
		for _, b := range readBlocks(t, file) {
			for _, name := range b.checked() {
				if counts[name] == nil {
					counts[name] = map[string]int{}
				}
				counts[name][b.settings["kind"]]++
			}
		}
	}
	return counts
}

// Rows counts the rows of all published tables by their kind.
func Rows(t *testing.T) map[string]int {
	t.Helper()
	counts := map[string]int{}
	for _, file := range files(t) {
		for _, b := range readBlocks(t, file) {
			counts[b.settings["kind"]] += len(b.rows)
		}
	}
	return counts
}

// files names the published tables; NoneFile isn't one.
func files(t *testing.T) (list []string) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(root(t), "testdata", "published", "*.txt"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		if file := filepath.Base(path); file != NoneFile {
			list = append(list, file)
		}
	}
	return list
}

// checked names the rule that each row checks; a row of several rules counts for
// each of them.
func (b *block) checked() (list []string) {
	for _, cells := range b.rows {
		if b.settings["checks"] == checksItsRows {
			list = append(list, cells[0])
			continue
		}
		list = append(list, b.rules()...)
	}
	return list
}

// NoneFile names each rule that nothing from outside checks.
const NoneFile = "none.txt"

// None is why a rule has no check from outside.
type None struct {
	LookedFor string // what was looked for, and where
	Property  string // what holds the rule instead
}

// Unchecked reads NoneFile: rows of rule, what was looked for, and the property
// that stands in.
func Unchecked(t *testing.T) map[string]None {
	t.Helper()
	list := map[string]None{}
	for _, b := range readBlocks(t, NoneFile) {
		for _, row := range b.rows {
			if len(row) != 3 || slices.Contains(row, "") {
				t.Fatalf("%s: a row has a rule, what was looked for and the property that stands in: %q", NoneFile, row)
			}
			if _, twice := list[row[0]]; twice {
				t.Fatalf("%s: %s stands twice", NoneFile, row[0])
			}
			list[row[0]] = None{row[1], row[2]}
		}
	}
	return list
}
