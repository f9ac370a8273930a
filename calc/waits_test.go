package calc_test

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/plan"
)

// A figure that isn't optional is waited for while its field is empty, at its own place, or nothing hangs
// on it: no plan reckons with the nothing that stands there. Over the kept jobs, each kind of field in each.
func TestWhatIsNotTypedIsWaitedForOrNothingHangsOnIt(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("..", "testdata", "kept", "jobs.txt"))
	require.NoError(t, err)
	waited, unused := map[string]bool{}, 0
	for _, text := range strings.Split(string(raw), "\n== ")[1:] {
		name, lines, _ := strings.Cut(text, "\n")
		d := jobtest.Doc(t, lines)
		before := planned(d)
		seen := map[string]bool{}
		for _, l := range d.Lines() {
			f := job.FieldAt(l.Path)
			key := withoutIDs(l.Path)
			if f == nil || f.Optional || l.Text == "" || seen[key] || f.Kind != job.Quantity && f.Kind != job.Whole && f.Kind != job.MassOrVolume {
				continue
			}
			if item, _, _ := strings.Cut(l.Path, "."); item != "surface" && item != "buildup" && item != "putty" {
				continue
			}
			seen[key] = true
			empty := d.Set(l.Path, "")
			p := plan.Make(empty)
			if p.WaitingAt(l.Path) != nil {
				waited[key] = true
				continue
			}
			unused++
			assert.Equal(t, before, planned(empty), "%s: %s is empty, isn't waited for, and the plan is another", name, l.Path)
		}
	}
	t.Log(len(waited), unused)
	assert.Greater(t, len(waited), 25)
}

// withoutIDs is a path without the numbers of its items.
func withoutIDs(path string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return -1
		}
		return r
	}, path)
}

// planned is what a plan comes to, as text.
func planned(d job.Document) string {
	p := plan.Make(d)
	w := figures{pointers: map[uintptr]bool{}}
	for _, v := range []any{p.Area(), p.Needs(), p.Removals(), p.Putties()} {
		w.write("", reflect.ValueOf(v))
	}
	return w.text.String()
}
