package pack_test

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/site/pack"
)

// heavy are packages that would make the program too large for a phone with a weak signal.
var heavy = []string{"encoding/json", "html/template", "text/template", "net", "net/http", "net/url"}

func TestProgramLeavesHeavyPackagesOut(t *testing.T) {
	imports, found := programImports(t)
	if !found {
		t.Skipf("not run: there is no %s", pack.Program)
	}
	for _, name := range heavy {
		if _, there := imports[name]; there {
			t.Errorf("%s is linked into the program: %s", name, strings.Join(why(imports, name), " → "))
		}
	}
}

func TestWhyFindsAChain(t *testing.T) {
	imports := map[string][]string{pack.Program: {"a", "b"}, "a": {"b"}, "b": {"heavy"}, "heavy": nil}
	require.Equal(t, []string{pack.Program, "b", "heavy"}, why(imports, "heavy"))
}

// programImports gives what each package of the program imports.
func programImports(t *testing.T) (imports map[string][]string, found bool) {
	t.Helper()
	list := func(args ...string) (string, error) {
		cmd := exec.Command("go", append([]string{"list"}, args...)...)
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		out, err := cmd.Output()
		return string(out), err
	}
	if _, err := list(pack.Program); err != nil {
		return nil, false
	}
	out, err := list("-deps", "-f", `{{.ImportPath}} {{join .Imports " "}}`, pack.Program)
	require.NoError(t, err)
	imports = map[string][]string{}
	for line := range strings.Lines(out) {
		fields := strings.Fields(line)
		imports[fields[0]] = fields[1:]
	}
	return imports, true
}

// why gives the shortest chain of imports from the program to a package.
func why(imports map[string][]string, name string) []string {
	chains := [][]string{{pack.Program}}
	seen := map[string]bool{}
	for len(chains) > 0 {
		chain := chains[0]
		chains = chains[1:]
		last := chain[len(chain)-1]
		if last == name {
			return chain
		}
		for _, next := range imports[last] {
			if !seen[next] {
				seen[next] = true
				chains = append(chains, append(slices.Clone(chain), next))
			}
		}
	}
	return nil
}
