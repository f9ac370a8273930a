// Package calc_test holds the house: which package may know which, what must
// not be linked into the page, and that every rule is listed.
package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc"
	"shedreckoner/calc/working"
	"shedreckoner/calc/working/workingtest"
)

const module = "shedreckoner/"

// needsTools skips where there is no go command: in a browser's kind of build.
func needsTools(t *testing.T) {
	t.Helper()
	if runtime.GOOS == "js" {
		t.Skip("NOT RUN: needs the go command, which a WebAssembly build can't start")
	}
}

// arrows is what each package may import of our own. A sum knows no other sum,
// no card and no job.
var arrows = map[string][]string{
	"calc/source":              {},
	"calc/unit":                {},
	"calc/working":             {"calc/source", "calc/unit"},
	"calc/working/workingtest": {"calc/source", "calc/unit", "calc/working"},
	"calc/surface":             sum, "calc/film": sum, "calc/cure": sum, "calc/fairing": sum, "calc/sanding": sum,
	"calc/buildup": sum, "calc/air": sum, "calc/order": sum,
	"calc/material":      {"calc/source", "calc/unit"},
	"calc/job":           slices.Concat(sum, sums, []string{"calc/material"}),
	"calc/ready":         {"calc/job"},
	"calc/job/jobtest":   slices.Concat(sum, sums, []string{"calc/material", "calc/job"}),
	"calc/chain":         slices.Concat(sum, []string{"calc/air", "calc/cure", "calc/material", "calc/job"}),
	"calc":               rooms,
	"calc/plan":          slices.Concat(sum, sums, []string{"calc/material", "calc/job", "calc/chain"}),
	"calc/plan/plantest": rooms,
	"calc/bench":         followsFromPlan,
	"calc/chance":        followsFromPlan,
	"calc/schedule":      followsFromPlan,
	"calc/fault":         followsFromPlan,
	"wasm/markup":        {},
	"wasm/draw":          slices.Concat(sum, sums, []string{"wasm/markup"}),
	"wasm/words":         rooms,
	"wasm/page":          slices.Concat(rooms, []string{"wasm/words"}),
	"wasm/view":          slices.Concat(rooms, []string{"calc", "wasm/words", "wasm/page", "wasm/draw", "wasm/markup"}),
	"wasm":               {"wasm/page", "wasm/view", "wasm/markup"},

	// What is served and what packs, measures and tests it, its tests too: none of calc or wasm knows any of these.
	"site":               {},
	"site/module":        {},
	"site/webdriver":     {},
	"site/fuzz":          {},
	"site/pack":          {"site", "site/module"},
	"site/pack/cmd":      {"site/pack"},
	"site/serve":         {"site/pack"},
	"site/prove":         {"site/pack", "site/module"},
	"site/shots":         {"site/pack", "site/webdriver", "wasm/page"},
	"site/bench":         {"site/pack", "site/module", "site/webdriver", "wasm/page", "wasm/view", "wasm/markup", "calc/job", "calc/plan", "calc/chance"},
	"site/browser":       {"site", "site/pack", "site/webdriver", "wasm/page", "wasm/view", "wasm/markup", "calc/job"},
	"site/browser/empty": {},
}

var (
	sum  = []string{"calc/source", "calc/unit", "calc/working"}
	sums = []string{"calc/surface", "calc/film", "calc/cure", "calc/fairing", "calc/sanding", "calc/buildup", "calc/air", "calc/order"}
	// followsFromPlan is what a room may know that asks a plan.
	followsFromPlan = slices.Concat(sum, sums, []string{"calc/material", "calc/job", "calc/chain", "calc/plan"})
	rooms           = slices.Concat(followsFromPlan, []string{"calc/bench", "calc/chance", "calc/schedule", "calc/fault", "calc/ready"})
)

// imports gives what each package imports, by its path; its tests aside.
func imports(t *testing.T, env []string, args ...string) map[string][]string {
	t.Helper()
	return goList(t, `{{join .Imports " "}}`, env, args...)
}

// importsWithTests gives what each package imports, its tests too.
func importsWithTests(t *testing.T, args ...string) map[string][]string {
	t.Helper()
	return goList(t, `{{join .Imports " "}} {{join .TestImports " "}} {{join .XTestImports " "}}`, nil, args...)
}

// goList gives what go list says of each package, by its path.
func goList(t *testing.T, of string, env []string, args ...string) map[string][]string {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-f", "{{.ImportPath}} " + of}, args...)...)
	cmd.Dir, cmd.Env, cmd.Stderr = "..", append(os.Environ(), env...), os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	list := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		list[words[0]] = words[1:]
	}
	return list
}

var forBrowser = []string{"GOOS=js", "GOARCH=wasm"}

func TestArrowsRunOneWay(t *testing.T) {
	needsTools(t)
	found := imports(t, forBrowser, "./calc/...", "./wasm/...")
	maps.Copy(found, importsWithTests(t, "./site/..."))
	for path, list := range found {
		name := strings.TrimPrefix(path, module)
		allowed, known := arrows[name]
		if !assert.True(t, known, "%s is a new room: say here what it may know", name) {
			continue
		}
		for _, other := range list {
			if own, isOwn := strings.CutPrefix(other, module); isOwn && other != path { // a test knows what it tests
				assert.Contains(t, allowed, own, "%s imports %s", name, own)
			}
		}
	}
	for name := range arrows {
		assert.Contains(t, found, module+name, "%s is gone", name)
	}
}

// forbidden is what the sums may not touch: the browser, clock, disk, net, and
// what would swell the page. workingtest and jobtest are for tests.
var forbidden = []string{"syscall/js", "time", "os", "io", "net", "net/http", "encoding/json", "html/template", "text/template", "reflect", "regexp", "math/rand", "log", "embed"}

func TestTheSumsAreSums(t *testing.T) {
	needsTools(t)
	for path, list := range imports(t, nil, "./calc/...") {
		if strings.HasSuffix(path, "test") || path == module+"calc" {
			continue
		}
		for _, other := range list {
			assert.NotContains(t, forbidden, other, "%s imports %s", path, other)
			outside := strings.Contains(other, ".") && other != "github.com/shopspring/decimal"
			assert.False(t, outside, "%s imports %s", path, other)
		}
	}
	eachFile(t, "", func(path string, source string) {
		if !strings.HasSuffix(path, "_test.go") && (strings.HasPrefix(path, "calc/") || strings.HasPrefix(path, "wasm/page") || strings.HasPrefix(path, "wasm/view")) {
			assert.NotContains(t, source, "time.Now", path)
		}
	})
}

// eachFile calls f with every Go file below the folder.
func eachFile(t *testing.T, folder string, f func(path, source string)) {
	t.Helper()
	root := os.DirFS("..")
	err := fs.WalkDir(root, filepath.Join(".", folder), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		raw, err := fs.ReadFile(root, path)
		f(filepath.ToSlash(path), string(raw))
		return err
	})
	require.NoError(t, err)
}

func TestTheBrowserIsKnownAtTheBorderOnly(t *testing.T) {
	needsTools(t)
	counts := map[string]int{}
	eachFile(t, "", func(path, source string) {
		isEmptyPage := path == "site/browser/empty/main_js.go" // what start and keys are measured beside
		atBorder := isEmptyPage || strings.HasPrefix(path, "wasm/") && strings.Count(path, "/") == 1 && strings.HasSuffix(path, "_js.go")
		testsBrowser := strings.HasPrefix(path, "site/") || strings.HasSuffix(path, "_test.go")
		if !atBorder {
			assert.NotContains(t, importsOf(t, path, source), "syscall/js", path)
		}
		if !testsBrowser {
			counts["js.FuncOf"] += strings.Count(source, "js.FuncOf")
			counts["innerHTML"] += strings.Count(source, "innerHTML")
		}
		tagged := strings.HasPrefix(source, "//go:build js") || strings.Contains(source, "\n//go:build js")
		assert.False(t, tagged && !atBorder, "%s is for the browser only", path)
	})
	assert.Equal(t, map[string]int{"js.FuncOf": 1, "innerHTML": 1}, counts)
}

func importsOf(t *testing.T, path, source string) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, source, parser.ImportsOnly)
	require.NoError(t, err)
	var list []string
	for _, spec := range file.Imports {
		list = append(list, strings.Trim(spec.Path.Value, `"`))
	}
	return list
}

// heavy is what the page can do without.
func heavy(path string) bool {
	return slices.Contains([]string{"encoding/json", "html/template", "text/template", "net"}, path) || strings.HasPrefix(path, "net/")
}

func TestThePageIsLinkedLightly(t *testing.T) {
	needsTools(t)
	all := imports(t, forBrowser, "-deps", "./wasm")
	for path := range all {
		if heavy(path) {
			t.Errorf("%s is linked: %s", path, strings.Join(chain(all, module+"wasm", path), " → "))
		}
	}
	assert.Equal(t, []string{module + "wasm", module + "wasm/page", module + "calc/plan"}, chain(all, module+"wasm", module+"calc/plan"), "the chain is found")
}

// chain is the shortest way of imports from one package to another.
func chain(imports map[string][]string, from, to string) []string {
	cameFrom := map[string]string{from: ""}
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		if queue[0] == to {
			break
		}
		for _, next := range imports[queue[0]] {
			if _, seen := cameFrom[next]; !seen {
				cameFrom[next] = queue[0]
				queue = append(queue, next)
			}
		}
	}
	var way []string
	for at := to; at != ""; at = cameFrom[at] {
		way = append([]string{at}, way...)
	}
	return way
}

// allRules is every package's rules by its folder.
var allRules = func() map[string][]*working.Rule {
	all := map[string][]*working.Rule{}
	for _, topic := range calc.Topics {
		all[topic.Package] = topic.Rules()
	}
	return all
}()

func TestEveryRuleAgreesWithItsCode(t *testing.T) {
	for name, rules := range allRules {
		require.NotEmpty(t, rules, name)
		workingtest.Check(t, rules...)
	}
}

// A rule that isn't in its package's Rules would be checked by nobody.
func TestEveryRuleIsListed(t *testing.T) {
	needsTools(t)
	folders, err := filepath.Glob("*")
	require.NoError(t, err)
	for _, folder := range folders {
		declared, listed := rulesOf(t, folder)
		if len(declared) == 0 && len(listed) == 0 {
			continue
		}
		assert.Contains(t, allRules, folder, "%s has rules: list them above", folder)
		for _, name := range declared {
			assert.Contains(t, listed, name, "calc/%s: rule %s isn't in Rules", folder, name)
		}
	}
}

// rulesOf gives the names of a package's variables that are rules, and those
// that its Rules hold.
func rulesOf(t *testing.T, folder string) (declared, listed []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	require.NoError(t, err)
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		for _, decl := range file.Decls {
			if f, isFunc := decl.(*ast.FuncDecl); isFunc && f.Name.Name == "Rules" && f.Recv == nil {
				listed = append(listed, names(f.Body.List[0].(*ast.ReturnStmt).Results[0])...)
			}
			general, isVar := decl.(*ast.GenDecl)
			if !isVar || general.Tok != token.VAR {
				continue
			}
			for _, spec := range general.Specs {
				values := spec.(*ast.ValueSpec)
				for i, value := range values.Values {
					if declaresRule(value) {
						declared = append(declared, values.Names[min(i, len(values.Names)-1)].Name)
					}
				}
			}
		}
	}
	return declared, listed
}

// declaresRule says if an expression holds a working.Rule.
func declaresRule(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		if _, inFunction := n.(*ast.FuncLit); inFunction {
			return false
		}
		if literal, isLiteral := n.(*ast.CompositeLit); isLiteral {
			if s, isSelector := literal.Type.(*ast.SelectorExpr); isSelector {
				pkg, isName := s.X.(*ast.Ident)
				found = found || isName && pkg.Name == "working" && s.Sel.Name == "Rule"
			}
		}
		return !found
	})
	return found
}

func names(e ast.Expr) []string {
	var list []string
	ast.Inspect(e, func(n ast.Node) bool {
		if name, isName := n.(*ast.Ident); isName {
			list = append(list, name.Name)
		}
		return true
	})
	return list
}

// What lies at the top is what the drawing of the house shows.
func TestTheTopOfTheHouse(t *testing.T) {
	needsTools(t)
	cmd := exec.Command("git", "ls-files")
	cmd.Dir = ".."
	out, err := cmd.Output()
	if err != nil {
		t.Skip("NOT RUN: not a git work tree")
	}
	known := []string{".ci", ".gitignore", "DEVELOPERS.md", "LICENSE", "Makefile", "README.md", "calc", "go.mod", "go.sum", "site", "testdata", "wasm"}
	for line := range strings.Lines(string(out)) {
		first, _, _ := strings.Cut(strings.TrimSpace(line), "/")
		assert.Contains(t, known, first, "%s lies at the top", first)
	}
}

// longest is the ceiling of a file that is read as a whole; what is made from the code has none.
const longest = 300

func TestFilesAreShortEnoughToRead(t *testing.T) {
	needsTools(t)
	eachFile(t, "", func(path, source string) {
		if !strings.HasSuffix(path, "_test.go") && !strings.HasSuffix(path, "calc/doc.go") {
			assert.LessOrEqual(t, strings.Count(source, "\n"), longest, path)
		}
	})
}

// mostMethods is how many methods a type may have.
const mostMethods = 40

var method = regexp.MustCompile(`(?m)^func \(\w* ?\*?(\w+)(?:\[[^\]]*\])?\) \w`)

func TestNoTypeDoesEverything(t *testing.T) {
	needsTools(t)
	count := map[string]int{}
	eachFile(t, "", func(path, source string) {
		if strings.HasSuffix(path, "_test.go") {
			return
		}
		for _, of := range method.FindAllStringSubmatch(source, -1) {
			count[filepath.ToSlash(filepath.Dir(path))+"."+of[1]]++
		}
	})
	assert.Greater(t, len(count), 100, "no methods were found")
	for name, n := range count {
		assert.LessOrEqual(t, n, mostMethods, name)
	}
}
