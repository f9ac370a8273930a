package site_test

import (
	"go/ast"
	"go/parser"
	gotoken "go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var classInStyle = regexp.MustCompile(`\.([a-z][a-z0-9-]*)`)

// markupWords is every word of the texts in the program's views and pictures, and those that go on with something worked
// out, as "screen-" does with a screen's key.
func markupWords(t *testing.T) (words map[string]bool, beginnings []string) {
	t.Helper()
	words = map[string]bool{}
	text := func(e ast.Expr) []string {
		lit, ok := e.(*ast.BasicLit)
		if !ok || lit.Kind != gotoken.STRING {
			return nil
		}
		whole, err := strconv.Unquote(lit.Value)
		require.NoError(t, err)
		return strings.Fields(whole)
	}
	for _, folder := range []string{"../wasm/view", "../wasm/draw"} {
		names, err := filepath.Glob(folder + "/*.go")
		require.NoError(t, err)
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			p, err := parser.ParseFile(gotoken.NewFileSet(), name, nil, 0)
			require.NoError(t, err)
			ast.Inspect(p, func(n ast.Node) bool {
				if sum, ok := n.(*ast.BinaryExpr); ok && sum.Op == gotoken.ADD {
					if list := text(sum.X); len(list) > 0 {
						beginnings = append(beginnings, list[len(list)-1])
					}
				}
				if e, ok := n.(ast.Expr); ok {
					for _, w := range text(e) {
						words[w] = true
					}
				}
				return true
			})
		}
	}
	return words, beginnings
}

// Every class that the style speaks of stands in markup: what nothing wears any more goes.
func TestEveryClassOfTheStyleIsWorn(t *testing.T) {
	words, beginnings := markupWords(t)
	index, err := os.ReadFile("index.html")
	require.NoError(t, err)
	for _, m := range regexp.MustCompile(`class="([^"]*)"`).FindAllStringSubmatch(string(index), -1) {
		for _, w := range strings.Fields(m[1]) {
			words[w] = true
		}
	}
	isWorn := func(class string) bool {
		if words[class] {
			return true
		}
		for _, b := range beginnings {
			rest, found := strings.CutPrefix(class, b)
			if _, err := strconv.Atoi(rest); found && (err == nil || words[rest]) {
				return true
			}
		}
		return false
	}
	checked := map[string]bool{}
	for _, r := range rules(t) {
		for _, m := range classInStyle.FindAllStringSubmatch(r.selector, -1) {
			checked[m[1]] = true
			assert.True(t, isWorn(m[1]), "nothing is a .%s", m[1])
		}
	}
	assert.Greater(t, len(checked), 80)
	assert.False(t, isWorn("tone-of-old") || isWorn("buttons"), "and what isn't there is found out")
}
