package job_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
)

// readable is a text that a field takes, and not what it stands at when empty.
func readable(f *job.Field) string {
	switch f.Kind {
	case job.Choice:
		return f.Options[len(f.Options)-1].Key
	case job.Checked:
		return f.Example
	case job.Whole:
		return "2"
	case job.Quantity, job.MassOrVolume:
		scale := scaleOf(f)
		return typedAs(math.Round(scale.From((f.Min+f.Max)/2)*100)/100, scale)
	}
	return ""
}

// What a step asks only under another answer of its choices is kept, and read by
// nobody: neither a figure of it nor a slip in it reaches the plan. A film read on
// its peaks, typed before the step was changed to a film given as a number, would
// take the texture off once more. Under its own answer each of them is read.
func TestWhatAStepDoesNotAskIsNotRead(t *testing.T) {
	const step = "buildup.1.step.1"
	hidden := map[string]int{}
	for _, kind := range job.StepKinds {
		base := jobtest.Doc(t, "buildup = 1", "buildup.1.step = 1", step+".kind = "+kind.Key, step+".unknown = x")
		choices := []job.Document{base}
		for _, key := range []string{"by", "fill-by"} {
			if f := job.FieldAt(step + "." + key); slices.Contains(kind.Fields, key) {
				choices = choices[:0]
				for _, o := range f.Options {
					choices = append(choices, base.Set(step+"."+key, o.Key))
				}
			}
		}
		for _, d := range choices {
			shown := kind.Shown(func(key string) string { return d.Get(step + "." + key) })
			for _, key := range kind.Fields {
				f := job.FieldAt(step + "." + key)
				if f.Kind == job.Words || f.Kind == job.Pasted || strings.HasSuffix(key, "by") {
					continue
				}
				empty, _ := job.Read(d)
				typed, problems := job.Read(d.Set(step+"."+key, readable(f)))
				same := reflect.DeepEqual(empty.Buildups, typed.Buildups)
				require.Empty(t, problems, "%s.%s", kind.Key, key)
				_, slips := job.Read(d.Set(step+"."+key, "?!"))
				if slices.Contains(shown, key) {
					assert.False(t, same, "%s: %s is asked for and read", kind.Key, key)
					continue
				}
				hidden[key]++
				assert.True(t, same, "%s: %s isn't asked for, and is read", kind.Key, key)
				assert.Empty(t, slips, "%s: %s isn't asked for, and a slip in it is refused", kind.Key, key)
			}
		}
	}
	assert.GreaterOrEqual(t, len(hidden), 15, "%v", hidden)
}
