package calc_test

import (
	"cmp"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc"
	"shedreckoner/calc/source"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

// named is every rule by the name that the published tables call it.
func named(t *testing.T) map[string]*working.Rule {
	t.Helper()
	all := map[string]*working.Rule{}
	for folder, rules := range allRules {
		maps.Copy(all, workingtest.Named(t, filepath.Join(".", folder), rules))
	}
	return all
}

func TestWorkedExamples(t *testing.T) { workingtest.Worked(t, "worked.txt", named(t)) }

// mustBeChecked is the rooms whose rules could hurt or cost: dose and gel, film,
// dew, order. None of theirs may lack a check from outside.
var mustBeChecked = []string{"cure", "film", "air", "order"}

// Every rule has a row, but for what none.txt names; a rule without a row from
// outside is worked here, exact, or remembered, and says so in Sources and go doc.
func TestEveryRuleIsChecked(t *testing.T) {
	rules, counts, none := named(t), workingtest.Checks(t), workingtest.Unchecked(t)
	for name := range counts {
		assert.Contains(t, rules, name, "a table checks a rule that isn't there")
	}
	for name := range none {
		if room, isRoom := strings.CutSuffix(name, ".*"); isRoom {
			assert.DirExists(t, room)
			continue
		}
		assert.Contains(t, rules, name, "%s names a rule that isn't there", workingtest.NoneFile)
	}
	for _, name := range slices.Sorted(maps.Keys(rules)) {
		_, isListed := none[name]
		switch total := sumOf(counts[name], source.CheckKinds); {
		case total == 0:
			assert.True(t, isListed, "%s has no check, and %s doesn't say why", name, workingtest.NoneFile)
			room, _, _ := strings.Cut(name, ".")
			assert.NotContains(t, mustBeChecked, room, "%s: a rule of dose, gel, film, dew or order must have a check", name)
		case isListed && sumOf(counts[name], source.CheckKinds[:source.OutsideKinds]) > 0:
			t.Errorf("%s has a check from outside: take it off %s", name, workingtest.NoneFile)
		case sumOf(counts[name], source.CheckKinds[:source.OutsideKinds]) == 0:
			room, _, _ := strings.Cut(name, ".")
			assert.True(t, isListed || none[room+".*"].LookedFor != "", "%s has no figure from outside, and %s doesn't say what was looked for", name, workingtest.NoneFile)
		}
	}
}

// leastOutside is how many rules are held by a check from outside, at least: more
// may come, none may go unseen.
const leastOutside = 90

// The summary of the proof: rules by the firmest kind of check that they have,
// and rows by their kind.
func TestRulesByTheKindOfTheirChecks(t *testing.T) {
	rules, counts := named(t), workingtest.Checks(t)
	firmest, rows, outside := map[string]int{}, workingtest.Rows(t), 0
	for name := range rules {
		kind := firmestOf(counts[name])
		firmest[kind]++
		if slices.Contains(source.CheckKinds[:source.OutsideKinds], kind) {
			outside++
		}
	}
	all := 0
	for _, n := range rows {
		all += n
	}
	t.Logf("%d rules, %d of them held from outside; %d rows", len(rules), outside, all)
	for i, kind := range append(source.CheckKinds, unchecked) {
		if i == source.OutsideKinds {
			t.Log("not from outside:")
		}
		t.Logf("  %-26s %3d rules at best, %3d rows", kind, firmest[kind], rows[kind])
	}
	for i, kind := range source.CheckKinds {
		assert.Equal(t, firmest[kind], shownAs(kind, i < source.OutsideKinds), "%s: the page's Sources and go doc show another count than the tables hold", kind)
	}
	assert.Equal(t, firmest[unchecked], shownAs("", false), "shown without a check")
	assert.GreaterOrEqual(t, outside, leastOutside, "rules that a published figure, a reference library or somebody else's measurement holds")
}

const unchecked = "by no row"

// shownAs is how many rules are shown, in the page's Sources and in go doc, with a
// kind as their firmest check; without a kind, how many with none.
func shownAs(kind string, isOutside bool) (n int) {
	first := calc.NoneOutside
	switch {
	case isOutside:
		first = "from outside: " + kind
	case kind != "":
		first += "; besides: " + kind
	}
	for i, topic := range calc.Topics {
		for j := range topic.Rules() {
			shown, _, _ := strings.Cut(calc.Checked.Of(i, j), " × ")
			if shown == first {
				n++
			}
		}
	}
	return n
}

// firmestOf is the first of source.CheckKinds that a rule has a row of.
func firmestOf(counts map[string]int) string {
	for _, kind := range source.CheckKinds {
		if counts[kind] > 0 {
			return kind
		}
	}
	return unchecked
}

func sumOf(counts map[string]int, kinds []string) (sum int) {
	for _, kind := range kinds {
		sum += counts[kind]
	}
	return sum
}

var update = flag.Bool("update", false, "write what is made from the rules and the published tables")

// counted is each rule's checks by kind, as the page keeps them.
func counted(t *testing.T) calc.Counts {
	t.Helper()
	counts := workingtest.Checks(t)
	var b strings.Builder
	for _, topic := range calc.Topics {
		var words []string
		for _, name := range workingtest.Names(t, topic.Package) {
			word := ""
			for i, kind := range source.CheckKinds {
				if n := counts[name][kind]; n > 0 {
					word += string(rune('a'+i)) + strconv.Itoa(n)
				}
			}
			words = append(words, cmp.Or(word, "-"))
		}
		b.WriteString(strings.Join(words, " ") + "\n")
	}
	return calc.Counts(b.String())
}

// upToDate compares a generated file with what would be generated now, or writes
// it.
func upToDate(t *testing.T, path, want string) {
	t.Helper()
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(want), 0o644))
		return
	}
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	if string(got) != want {
		t.Errorf("calc/%s isn't what the rules and tables give. Make it anew: go test ./calc -run UpToDate -update", path)
	}
}

const generated = "// Code generated by go test ./calc -run UpToDate -update; DO NOT EDIT.\n\n"

func TestCountsAreUpToDate(t *testing.T) {
	upToDate(t, "checked.go", generated+`package calc

// Checked counts the rows of testdata/published.
const Checked Counts = `+"`"+string(counted(t))+"`\n")
}

// The contents of the house, for go doc: every topic with its package and
// sources, and every rule with its source, mark and checks.
func TestContentsAreUpToDate(t *testing.T) {
	counts := counted(t)
	var b strings.Builder
	b.WriteString(generated + `// Package calc holds the sums of the page, a package a topic. These are its
// contents: the topics with the documents that they rest on, then every rule as
// it is shown on the page, with the ranges that it takes and gives, its source, its
// mark, and by how many rows of testdata/published it is checked, of which kind:
// what is from outside the project first.
//
`)
	for _, topic := range calc.Topics {
		fmt.Fprintf(&b, "//   - %s: package %s. %s.\n", topic.Name, topic.Package, strings.Join(documents(topic.Rules()), "; "))
	}
	for i, topic := range calc.Topics {
		fmt.Fprintf(&b, "//\n// # %s: package %s\n//\n", strings.ToUpper(topic.Name[:1])+topic.Name[1:], topic.Package)
		for j, r := range topic.Rules() {
			fmt.Fprintf(&b, "//\t%s | %s | %s | %s | %s\n", r.Formula, ranges(r), r.Source, r.Mark, counts.Of(i, j))
		}
	}
	b.WriteString("package calc\n")
	upToDate(t, "doc.go", b.String())
}

// ranges gives the range of each argument of a rule and of its result: outside of
// them it refuses.
func ranges(r *working.Rule) string {
	var list []string
	for _, a := range append(slices.Clone(r.Args), r.Result) {
		list = append(list, strings.TrimSpace(fmt.Sprintf("%s %v to %v %s", a.Symbol, a.Min, a.Max, a.Scale.Symbol())))
	}
	return strings.Join(list, ", ")
}

// documents gives the titles of what the rules rest on, each once.
func documents(rules []*working.Rule) (list []string) {
	for _, r := range rules {
		if !slices.Contains(list, r.Source.Document.Title) {
			list = append(list, r.Source.Document.Title)
		}
	}
	return list
}
