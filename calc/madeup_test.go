package calc_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// entries are what a made-up shape, figure of a card, kind of step and rule take:
// one line in a table each. The code that they name lies in testdata/madeup.
var entries = []struct{ file, after, entry string }{
	{"calc/surface/shape.go", "var Shapes = []*Shape{\n", "\tmadeUp,\n"},
	{"calc/surface/shape.go", "\treturn working.List(\n", "\t\t&madeUpArea,\n"},
	{"calc/material/card.go", "type Card struct {\n", "\tThirst Spec[unit.MassPerArea]\n"},
	{"calc/material/additions.go", `Key: "compound", Name: "Cutting compound", Kind: Polish, SoldBy: ByMass,` + "\n", "\t\tThirst: spec[unit.MassPerArea](0.02, 0.01, 0.04, assumption),\n"},
	{"calc/material/field.go", "var Fields = []*Field{\n", "\t" + `{"thirst", "thirst", unit.AreaWeights, 0.001, 1, func(c *Card) handle { return &c.Thirst }},` + "\n"},
	{"calc/job/step.go", "var StepKinds = []*StepKind{\n", "\t" + `{Key: "oil", Name: "Oil it in", Fields: []string{"card", "wait"}},` + "\n"},
	{"calc/plan/kind.go", "var Kinds = []*Kind{\n", "\toil,\n"},
	{"calc/plan/rules.go", "\treturn working.List(\n", "\t\t&oiled,\n"},
}

// One entry in one table: a test of the views runs in a copy of the house that
// has the made-up entries, and finds them in form, sketch, check, saved text,
// working, sequence, budget, calendar and sources. Their rules are held to their formulas like any other.
func TestMadeUpEntries(t *testing.T) {
	needsTools(t)
	eachFile(t, "", func(string, string) {}) // read, so that go test runs this again once any of them has changed
	root, err := filepath.Abs("..")
	require.NoError(t, err)
	dir := t.TempDir()
	replace := map[string]string{}
	for _, e := range entries {
		path := filepath.Join(root, filepath.FromSlash(e.file))
		from := path
		if copied := replace[path]; copied != "" {
			from = copied
		}
		source, err := os.ReadFile(from)
		require.NoError(t, err)
		require.Equal(t, 1, strings.Count(string(source), e.after), "%s: %s", e.file, e.after)
		replace[path] = filepath.Join(dir, strings.ReplaceAll(e.file, "/", "-"))
		require.NoError(t, os.WriteFile(replace[path], []byte(strings.Replace(string(source), e.after, e.after+e.entry, 1)), 0o644))
	}
	for file, from := range map[string]string{"calc/surface/madeup.go": "surface.go", "calc/plan/madeup.go": "plan.go", "calc/schedule/madeup_test.go": "schedule_test.go", "wasm/view/madeup_test.go": "view_test.go"} {
		replace[filepath.Join(root, filepath.FromSlash(file))] = filepath.Join(root, "testdata", "madeup", from)
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	require.NoError(t, err)
	name := filepath.Join(dir, "overlay.json")
	require.NoError(t, os.WriteFile(name, overlay, 0o644))
	for _, args := range [][]string{
		{"./wasm/view", "-run", "TestMadeUp|TestEveryRuleIsOnThePage"},
		{"./calc/plan", "./calc/surface", "-run", "TestFormulasAndCodeAgree|TestEveryKind"},
		{"./calc/schedule", "-run", "TestAMadeUp"},
	} {
		cmd := exec.Command("go", append([]string{"test", "-count=1", "-overlay=" + name}, args...)...)
		cmd.Dir = ".."
		said, err := cmd.CombinedOutput()
		assert.NoError(t, err, "%s", said)
		assert.NotContains(t, string(said), "no tests to run")
	}
}
