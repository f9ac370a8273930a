package job_test

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/fairing"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/order"
)

func TestASavedJobIsTheSame(t *testing.T) {
	for seed := range uint64(60) {
		d := jobtest.New(seed).Document()
		again, revision, err := job.Load(job.Save(d, int(seed)))
		require.NoError(t, err, "seed %d", seed)
		require.Equal(t, d.Lines(), again.Lines(), "seed %d", seed)
		require.Equal(t, int(seed), revision)
	}
	empty, _, err := job.Load(job.Save(job.Document{}, 3))
	require.NoError(t, err)
	assert.Empty(t, empty.Lines())
}

func TestEveryTextComesBack(t *testing.T) {
	for _, text := range []string{"a\nb", "a\r\nb", `a\nb`, `\`, `\\n`, " = ", "a = b = c", "=", " lead and trail ", "\n\n", "checksum = 0",
		"½ µm “x”", "\x00\xff", strings.Repeat("x", 1000), "# x", "\t"} {
		again, _, err := job.Load(job.Save(job.Document{}.Set("name", text).Set("currency", "€"), 1))
		require.NoError(t, err, "%q", text)
		assert.Equal(t, text, again.Get("name"))
		assert.Equal(t, len(job.Save(again, 12)), job.SavedSize(again, 12), "%q", text)
		assert.Equal(t, "€", again.Get("currency"))
	}
}

func FuzzSave(f *testing.F) {
	f.Add("surface.1.name", "a\\nb = c\n")
	f.Fuzz(func(t *testing.T, key, text string) {
		path := "surface.1." + strings.Map(func(r rune) rune {
			if r == ' ' || r == '\n' || r == '\r' || r == '=' {
				return 'x' // no field has such a key
			}
			return r
		}, key)
		again, _, err := job.Load(job.Save(job.Document{}.Set(path, text), 1))
		if err != nil || again.Get(path) != text {
			t.Fatalf("%q = %q came back as %q, %v", path, text, again.Get(path), err)
		}
	})
}

func FuzzLoad(f *testing.F) {
	f.Add(job.Save(jobtest.New(1).Document(), 9))
	f.Fuzz(func(t *testing.T, text string) {
		d, revision, err := job.Load(text)
		if err != nil {
			return
		}
		if again, _, err := job.Load(job.Save(d, revision)); err != nil || len(job.Changes(d, again)) > 0 {
			t.Fatalf("%q: what was loaded doesn't save: %v", text, err)
		}
		job.Read(d)
	})
}

func TestEveryDamageIsRefused(t *testing.T) {
	saved := job.Save(jobtest.New(2).Document(), 41)
	headLen := strings.Index(saved, "\n\n") + 2
	require.Greater(t, len(saved), headLen+100)
	for _, cut := range []int{0, 1, 10, strings.Index(saved, "format"), headLen - 2, headLen - 1, headLen, headLen + 7, len(saved) / 2,
		strings.LastIndex(strings.TrimSuffix(saved, "\n"), "\n") + 1, len(saved) - 1} {
		_, _, err := job.Load(saved[:cut])
		assert.Error(t, err, "cut at %d", cut)
	}
	for at := range headLen { // a header says what the rest is worth: every bit of it
		for bit := range 8 {
			assertFlipRefused(t, saved, at, bit)
		}
	}
	small := job.Save(jobtest.Doc(t, "name = Tern\nsurface = 1\nsurface.1.length = 2.5 m\nsurface.1.width = 1,2 m\nbench.now.surface-temp = 25 °C"), 7)
	for at := range small { // and of a small job every bit of all
		for bit := range 8 {
			assertFlipRefused(t, small, at, bit)
		}
	}
	for _, added := range []string{saved + "\n", saved + "name = x\n", "\n" + saved, "\ufeff" + saved, strings.Replace(saved, "\n", "\r\n", -1)} {
		_, _, err := job.Load(added)
		assert.Error(t, err)
	}
}

func assertFlipRefused(t *testing.T, saved string, at, bit int) {
	t.Helper()
	raw := []byte(saved)
	raw[at] ^= 1 << bit
	_, _, err := job.Load(string(raw))
	assert.Error(t, err, "bit %d at %d", bit, at)
}

func TestANewerFormatIsSaidToBeNewer(t *testing.T) {
	saved := job.Save(job.Document{}.Set("name", "x"), 1)
	newer := strings.Replace(saved, "format = "+strconv.Itoa(job.Format), "format = "+strconv.Itoa(job.Format+1), 1)
	_, _, err := job.Load(newer)
	assert.ErrorIs(t, err, job.ErrNewer)
}

func TestSizeIsBounded(t *testing.T) {
	base := len(job.Save(job.Document{}.Set("name", "x"), 1)) - 1
	fits := job.Save(job.Document{}.Set("name", strings.Repeat("x", job.MaxSaved-base)), 1)
	require.Len(t, fits, job.MaxSaved)
	_, _, err := job.Load(fits)
	assert.NoError(t, err)
	_, _, err = job.Load(job.Save(job.Document{}.Set("name", strings.Repeat("x", job.MaxSaved-base+1)), 1))
	assert.ErrorIs(t, err, job.ErrTooLarge)
}

func ids(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strconv.Itoa(i+1) + " ")
	}
	return strings.TrimSpace(b.String())
}

func TestEveryListIsBoundedWhenLoaded(t *testing.T) {
	for path, most := range map[string]int{"surface": job.MaxSurfaces, "buildup": job.MaxBuildups, "card": job.MaxCards,
		"surface.1.cutout": job.MaxCutouts, "surface.1.stations": job.MaxRows, "surface.1.cutout.1.corners": job.MaxRows, "buildup.1.step": job.MaxSteps,
		"buildup.1.step.1.grid": fairing.MaxSide, "card.gelcoat.pack": order.MaxSizes} {
		d := job.Document{}.Set("surface", "1").Set("surface.1.cutout", "1").Set("buildup", "1").Set("buildup.1.step", "1").Set("card", "gelcoat")
		_, _, err := job.Load(job.Save(d.Set(path, ids(most)), 1))
		assert.NoError(t, err, path)
		_, _, err = job.Load(job.Save(d.Set(path, ids(most+1)), 1))
		var limit *job.LimitError
		require.True(t, errors.As(err, &limit), path)
		assert.Equal(t, []any{path, most, most + 1}, []any{limit.Path, limit.List.Max, limit.Items})
	}
}

// A saved job of every format version, as it was written then.
func TestJobsOfOlderFormatsAreRead(t *testing.T) {
	for format := 1; format <= job.Format; format++ {
		d := saved(t, format)
		assert.Equal(t, "Tern, 7 m open launch (made up)", d.Get("name"))
		_, problems := job.Read(d)
		assert.Empty(t, problems)
	}
}

// saved is the job of testdata that was saved in a format.
func saved(t *testing.T, format int) job.Document {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", "saved", "format-"+strconv.Itoa(format)+".txt"))
	require.NoError(t, err, "a format without a saved job of its time")
	d, _, err := job.Load(string(raw))
	require.NoError(t, err)
	return d
}

// A file in testdata/drift/saves says why it must be refused, then "--", then
// what was saved. The checksums in them were made by another program.
func TestBrokenSavesAreRefused(t *testing.T) {
	reasons := map[string]error{"not a job": job.ErrNotAJob, "newer": job.ErrNewer, "damaged": job.ErrDamaged}
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "drift", "saves", "*.txt"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		raw, err := os.ReadFile(file)
		require.NoError(t, err)
		reason, saved, found := strings.Cut(string(raw), "--\n")
		require.True(t, found, file)
		want, known := reasons[strings.TrimSpace(reason)]
		require.True(t, known, "%s: %q", file, reason)
		_, _, err = job.Load(saved)
		assert.ErrorIs(t, err, want, file)
	}
}
