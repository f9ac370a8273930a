package workingtest

import (
	"fmt"
	"go/ast"
	goparser "go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"shedreckoner/calc/working"
)

// Named gives a package's rules by the names that they have in its source, as
// the published tables call them: "film.Wet". The folder holds the package, the
// rules are its Rules.
func Named(t *testing.T, folder string, rules []*working.Rule) map[string]*working.Rule {
	t.Helper()
	if len(rules) == 0 {
		return nil
	}
	names := Names(t, folder)
	if len(names) != len(rules) {
		t.Fatalf("%s: Rules lists %d names, but holds %d rules", folder, len(names), len(rules))
	}
	named := map[string]*working.Rule{}
	for i, name := range names {
		named[name] = rules[i]
	}
	return named
}

// Names gives the names in a package's Rules, in their order.
func Names(t *testing.T, folder string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := goparser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		if list := rulesIn(file); list != nil {
			return list
		}
	}
	t.Fatalf("%s: no Rules", folder)
	return nil
}

// rulesIn reads the names out of a file's Rules; none where it hasn't got them.
func rulesIn(file *ast.File) (list []string) {
	for _, decl := range file.Decls {
		f, isFunc := decl.(*ast.FuncDecl)
		if !isFunc || f.Name.Name != "Rules" || f.Recv != nil {
			continue
		}
		for _, e := range f.Body.List[0].(*ast.ReturnStmt).Results[0].(*ast.CallExpr).Args {
			list = append(list, file.Name.Name+"."+dotted(e))
		}
	}
	return list
}

func dotted(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.UnaryExpr: // the address of a rule that has code
		return dotted(e.X)
	case *ast.SelectorExpr:
		return dotted(e.X) + "." + e.Sel.Name
	}
	return fmt.Sprint(e)
}

// mustNotice makes each rule wrong that the block says it checks, and fails the
// test if every row still comes out right. A method described in words has no code
// to make wrong from outside.
func (b *block) mustNotice(t *testing.T, c Case, named map[string]*working.Rule) {
	t.Helper()
	if named == nil && len(b.rules()) > 0 {
		t.Errorf("%s: says it checks %s, but the test gave no rules", b.settings["rule"], b.settings["checks"])
	}
	for _, name := range b.rules() {
		rule, known := named[name]
		switch {
		case !known && named != nil:
			t.Errorf("%s: says it checks %s, which isn't a rule of this package", b.settings["rule"], name)
		case known && !rule.IsProse && !b.notices(t, c, rule):
			t.Errorf("%s: says it checks %s, but comes out right with that rule wrong", b.settings["rule"], name)
		}
	}
}

func (b *block) notices(t *testing.T, c Case, rule *working.Rule) bool {
	t.Helper()
	defer rule.Spoil()()
	for _, cells := range b.rows {
		if b.check(t, c, cells) != nil {
			return true
		}
	}
	return false
}
