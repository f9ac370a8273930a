package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/unit"
)

func TestWithADecimalCommaAPointMayBeThousands(t *testing.T) {
	for path, text := range map[string]string{"surface.1.length": "1.500", "bench.now.amount": "1.500 g", "card.gelcoat.density": "1.250",
		"card.gelcoat.pack.1.size": "1.500", "card.gelcoat.pack.1.price": "1.500", "card.gelcoat.pack.2.size": "2.500 kg"} {
		d := job.Document{}.Set("surface", "1").Set(path, text)
		_, problems := job.Read(d)
		assert.NotContains(t, refusals(problems), unit.TwoReadings, "%s with a decimal point", path)
		_, problems = job.Read(job.SetComma(job.Document{}.Set("surface", "1"), true).Set(path, text))
		assert.Contains(t, refusals(problems), unit.TwoReadings, path)
		_, problems = job.Read(job.SetComma(job.Document{}.Set("surface", "1"), true).Set(path, "1,500"))
		assert.Contains(t, refusals(problems), unit.TwoReadings, "%s: nor is a comma guessed", path)
	}
}

func refusals(problems []job.Problem) (list []unit.Cause) {
	for _, p := range problems {
		if read, ok := p.Err.(*unit.ReadError); ok {
			list = append(list, read.Cause)
		}
	}
	return list
}

// Whatever stands in a job means the same after the mark is changed, there and back.
func TestTheMarkChangesNoFigure(t *testing.T) {
	for seed := range uint64(40) {
		d := jobtest.New(seed).Document().Set("surface.1.count", "3").Set("test", "1").Set("test.1.minutes", "12.125").Set("test.1.mass", "100.125 g")
		comma := job.SetComma(d, true)
		require.True(t, job.HasComma(comma))
		before, was := job.Read(d)
		after, is := job.Read(comma)
		assert.Equal(t, len(was), len(is), "seed %d", seed)
		after.Units, before.Units = job.Units{}, job.Units{}
		assert.Equal(t, before.Bench, after.Bench, "seed %d", seed)
		assert.Equal(t, before.Tests, after.Tests, "seed %d", seed)
		for i := range before.Surfaces {
			assert.Equal(t, before.Surfaces[i].Part.Input, after.Surfaces[i].Part.Input, "seed %d", seed)
		}
		assert.False(t, job.HasComma(job.SetComma(comma, false)))
	}
}

// FuzzSetComma: whatever was typed in a field that a dose depends on means the same
// after the mark is changed, or is refused as before.
func FuzzSetComma(f *testing.F) {
	for _, text := range []string{"1.125", "1.5", "1,125", "2 ft 6.125 in", "1.125.5", "12.125 lb", ".125", "0.125", "1.125 1.250"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d := job.Document{}.Set("bench.now.amount", text).Set("bench.now.surface-temp", text)
		before, was := job.Read(d)
		after, is := job.Read(job.SetComma(d, true))
		if len(was) != len(is) || before.Bench.Amount.Value != after.Bench.Amount.Value || before.Bench.Surface.Value != after.Bench.Surface.Value {
			t.Fatalf("%q: %v, %v", text, was, is)
		}
	})
}
