package job_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

func scaleOf(f *job.Field) unit.Scale {
	if f.Measure == unit.NoMeasure {
		return unit.InPure
	}
	return f.Measure.Scales()[0]
}

// What can be typed reaches from one figure to another, both of them in it, and no
// further: a slip by a unit lies outside, what a builder may mean inside. The table
// has the ends of every number that a job takes.
func TestWhatCanBeTyped(t *testing.T) {
	raw, err := os.ReadFile("testdata/limits.txt")
	require.NoError(t, err)
	rows := map[string][]string{}
	for line := range strings.Lines(string(raw)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			cells := strings.Split(line, " | ")
			require.Len(t, cells, 3, line)
			rows[cells[0]] = cells[1:]
		}
	}
	everyField(func(path string, _ *job.List, f *job.Field) {
		if f.Kind != job.Quantity && f.Kind != job.Whole && f.Kind != job.MassOrVolume {
			return
		}
		row, known := rows[path]
		if !assert.True(t, known, "%s isn't in the table", path) {
			return
		}
		delete(rows, path)
		scale := scaleOf(f)
		from, to := number(t, row[0], scale), number(t, row[1], scale)
		for i, end := range []float64{from, to} {
			_, err := f.Read(typedAs(end, scale), job.Units{})
			assert.NoError(t, err, "%s: %s is its end", path, row[i])
			past := end + (to-from)*1e-4*float64(2*i-1)
			if f.Kind == job.Whole {
				past = end + float64(2*i-1)
			}
			if i == 0 && end != 0 && math.Abs(end) < 1e-3*to {
				past = end * 0.99
			}
			_, err = f.Read(typedAs(past, scale), job.Units{})
			assert.Error(t, err, "%s: %s is past its end", path, typedAs(past, scale))
		}
	})
	assert.Empty(t, rows, "no such fields")
}

func number(t *testing.T, text string, scale unit.Scale) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, scale.Symbol())), 64)
	require.NoError(t, err, text)
	return n
}

func typedAs(n float64, scale unit.Scale) string {
	return strings.TrimSpace(strconv.FormatFloat(n, 'f', -1, 64) + " " + scale.Symbol())
}
