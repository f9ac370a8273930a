package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
)

// The day ends at 24:00 and an hour at its 59th minute; the same hour is read however it is written.
func TestTheEndsOfTheClock(t *testing.T) {
	end := job.FieldAt("day.today.work-to")
	require.NotNil(t, end)
	for text, hours := range map[string]float64{"0:00": 0, "0": 0, "6.30": 6.5, "6:30": 6.5, "14": 14, "23:59": 23 + 59./60, "24:00": 24, "24": 24} {
		got, err := end.Read(text, job.Units{})
		require.NoError(t, err, text)
		assert.InDelta(t, hours, got/float64(unit.Hour), 1e-9, text)
	}
	for _, text := range []string{"24:01", "25", "-1", "6:60", "6:-1", "6:30:00", "noon"} {
		_, err := end.Read(text, job.Units{})
		assert.Error(t, err, text)
	}
}

// A run of grades goes from coarse to fine, each once.
func TestARunNamesEachGradeOnce(t *testing.T) {
	grades := job.FieldAt("buildup.1.step.1.grades")
	require.NotNil(t, grades)
	for text, holds := range map[string]bool{"P220 P320": true, "P220": true, "P220 P220": false, "P320 P220": false, "P220 P320 P320": false, "US 320 P400": false, "P220 US": false, "P": false, "US 320 P 800": true} {
		_, err := grades.Read(text, job.Units{})
		assert.Equal(t, holds, err == nil, text)
	}
}

// What isn't in its list is neither copied nor removed, the first of a list is both.
func TestTheFirstOfAListAndWhatIsInNone(t *testing.T) {
	d := jobtest.Doc(t, "surface = 4 2\nsurface.4.length = 2 m\nsurface.2.length = 3 m\nsurface.9.length = 4 m")
	for _, none := range []string{"surface.9", "surface.1"} {
		same, path := d.Copy(none)
		assert.Equal(t, d, same)
		assert.Equal(t, none, path)
		assert.Equal(t, d, d.Remove(none))
	}
	first, path := d.Copy("surface.4")
	assert.Equal(t, []string{"4", "10", "2"}, first.Items("surface"))
	assert.Equal(t, "2 m", first.Get(path+".length"))
	assert.Equal(t, []string{"2"}, d.Remove("surface.4").Items("surface"))
	assert.Empty(t, d.Remove("surface.4").Get("surface.4.length"))
}

// A shape's error leads to the field that it is of, in the first row as in the last, and in no row that there isn't.
func TestAnErrorLeadsToItsRow(t *testing.T) {
	var rows *surface.Shape
	for _, s := range surface.Shapes {
		if s.Rows != nil {
			rows = s
			break
		}
	}
	require.NotNil(t, rows)
	p := job.Part{Path: "surface.1", Shape: rows, RowIDs: []string{"7", "3"}}
	column := rows.Rows.Columns[0].Key
	at := "surface.1." + rows.Rows.Key + "."
	for _, c := range []struct {
		dim  string
		row  int
		path string
	}{
		{column, 0, at + "7." + column}, {column, 1, at + "3." + column}, {rows.Rows.Key, 0, at + "7." + column},
		{"length", -1, "surface.1.length"}, {"length", 2, "surface.1.length"},
	} {
		assert.Equal(t, c.path, p.FieldPath(c.dim, c.row), "%+v", c)
	}
	plain := job.Part{Path: "surface.1", Shape: &surface.Shape{}, RowIDs: []string{"7"}}
	assert.Equal(t, "surface.1.width", plain.FieldPath("width", 0))
}

// A text is as long as it may be, and no longer.
func TestTheLongestTextThatIsKept(t *testing.T) {
	for length, holds := range map[int]bool{job.MaxWords: true, job.MaxWords + 1: false} {
		_, err := job.FieldAt("name").Read(strings.Repeat("x", length), job.Units{})
		assert.Equal(t, holds, err == nil, length)
	}
}

// The latest moment of a log is that of its moments, of cups and of what was finished: no mass or temperature beside them
// counts, and what is no moment doesn't either.
func TestTheLatestMomentOfALog(t *testing.T) {
	d := jobtest.Doc(t, "cup = 1 2\ncup.1.in = 1000\ncup.1.mixed = 5000\ncup.1.product = 4000\ncup.1.surface-temp = 9000\ncup.2.in = 900\ncup.2.ended = 1200\ndone = 1\ndone.1.at = 1100")
	assert.InDelta(t, 1200, job.Latest(d), 1e-9)
	assert.InDelta(t, 1300, job.Latest(d.Set("done.1.at", "1300")), 1e-9)
	assert.InDelta(t, 1100, job.Latest(d.Set("cup.2.ended", "NaN")), 1e-9)
	for _, text := range []string{"soon", "inf", "1e12"} {
		assert.InDelta(t, 1100, job.Latest(d.Set("cup.2.ended", text)), 1e-9, text)
	}
	assert.Zero(t, job.Latest(job.Document{}))
}
