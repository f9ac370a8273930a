package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// forPeople is what only a text for people has: two words beside each other, one
// word that is a sentence, or the beginning or the end of more.
var forPeople = regexp.MustCompile(`\pL[\pL'’,:.;]* \pL+|^\p{Lu}\pL+[.?]$|^[\p{Lu}]\pL+:? $|^[.,;] \pL{2,}`)

// aWord is a text for people where it is shown as it stands.
var aWord = regexp.MustCompile(`\pL{3}`)

// showing are the functions whose text is shown, and the fields of a line that are.
var showing = []string{"txt", "hint", "cell", "Default", "First", "Label", "Hint", "Title"}

// shownWord gives a text with a word in it that a call or a field shows as it stands.
func shownWord(name string, of ast.Expr) (text string, found bool) {
	lit, isText := of.(*ast.BasicLit)
	if !isText || lit.Kind != token.STRING || !slices.Contains(showing, name) {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil && aWord.MatchString(text) && !forPeople.MatchString(text)
}

// readOut gives the texts in attributes of an element that people hear or read.
func readOut(call *ast.CallExpr) (list []string) {
	for i := 0; i+1 < len(call.Args); i++ {
		lit, isText := call.Args[i].(*ast.BasicLit)
		if !isText || !slices.Contains([]string{`"aria-label"`, `"aria-description"`, `"placeholder"`, `"title"`, `"alt"`}, lit.Value) {
			continue
		}
		ast.Inspect(call.Args[i+1], func(n ast.Node) bool {
			if text, isText := n.(*ast.BasicLit); isText && aWord.MatchString(text.Value) {
				list = append(list, text.Value)
			}
			return true
		})
	}
	return list
}

// forMachines are texts of two words that are none: classes of the style.
var forMachines = []string{"curve dashed", "today dashed", "time long"}

// asData are files whose texts are a saved job.
var asData = []string{"demo.go"}

// isForMachines reports whether a call's texts are read by no one: errors inside the
// program, attributes of markup (what people read of them comes by name), what a
// text is searched for.
func isForMachines(call *ast.CallExpr) bool {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name == "a" || f.Name == "panic"
	case *ast.SelectorExpr:
		return slices.Contains([]string{"New", "A", "Cut", "Contains", "Split", "HasPrefix", "CutPrefix", "TrimPrefix"}, f.Sel.Name)
	}
	return false
}

// strays gives the texts for people in a source.
func strays(t *testing.T, name string, source any) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), name, source, 0)
	require.NoError(t, err)
	var list []string
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			for _, text := range readOut(n) {
				list = append(list, name+": "+text)
			}
			if f, isName := n.Fun.(*ast.Ident); isName && len(n.Args) == 1 {
				if text, found := shownWord(f.Name, n.Args[0]); found {
					list = append(list, name+": "+text)
				}
			}
			return !isForMachines(n)
		case *ast.KeyValueExpr:
			if f, isName := n.Key.(*ast.Ident); isName {
				if text, found := shownWord(f.Name, n.Value); found {
					list = append(list, name+": "+text)
				}
			}
		case *ast.ImportSpec:
			return false
		case *ast.BasicLit:
			if n.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(n.Value)
			require.NoError(t, err)
			if forPeople.MatchString(text) && !slices.Contains(forMachines, text) {
				list = append(list, name+": "+text)
			}
		}
		return true
	})
	return list
}

// Every sentence for people stands in this package: the state and the views hold
// none.
func TestNoSentenceStrays(t *testing.T) {
	for _, room := range []string{"page", "view"} {
		files, err := filepath.Glob("../" + room + "/*.go")
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") || slices.Contains(asData, filepath.Base(name)) {
				continue
			}
			source, err := os.ReadFile(name)
			require.NoError(t, err)
			assert.Empty(t, strays(t, name, source))
		}
	}
	planted := `package p; var a = []string{"Type a whole number.", "Removed.", ", as measured", "Row ", "surface.3", "item", "curve dashed"}`
	assert.Len(t, strays(t, "planted.go", planted), 4, "planted ones are found")
	planted = `package p; var b = []any{txt("Need"), txt("–"), fields{Default: "none", Class: "none"}, fields{Default: "25 mm"}, el("none"), a("id", "none", "aria-label", "Row "+n)}`
	assert.Len(t, strays(t, "planted.go", planted), 3, "single words too, where they are shown or read out")
}
