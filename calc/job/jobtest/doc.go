package jobtest

import (
	"strings"
	"testing"

	"shedreckoner/calc/job"
)

// Doc makes a document of lines as they are saved, "path = text", each argument
// one or several of them.
func Doc(t testing.TB, lines ...string) job.Document {
	t.Helper()
	var list []job.Line
	for _, text := range lines {
		for line := range strings.Lines(text) {
			path, text, found := strings.Cut(strings.TrimSpace(line), " = ")
			if !found && strings.TrimSpace(line) != "" {
				t.Fatalf("%q is no line of a job", line)
			}
			list = append(list, job.Line{Path: path, Text: text})
		}
	}
	return job.Of(list)
}
