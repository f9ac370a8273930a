package plan_test

import (
	"strings"
	"testing"

	"shedreckoner/calc/job"
)

// document takes lines as they are saved; a later one replaces an earlier, and
// one without a text takes it away.
func document(t testing.TB, lines ...string) job.Document {
	t.Helper()
	var d job.Document
	for _, line := range strings.Split(strings.Join(lines, "\n"), "\n") {
		if path, text, found := strings.Cut(line, " = "); found {
			d = d.Set(path, text)
		}
	}
	return d
}
