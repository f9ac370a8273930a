package page_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

// Limits on what grows, each at and one over. Those of lists are in
// TestListsAreBounded here and TestEveryListIsBoundedWhenLoaded of job; of
// readings and stations in fairing and surface; of packs in order.

// sized is a job that is kept in so many bytes.
func sized(t *testing.T, bytes int) string {
	t.Helper()
	base := len(job.Save(job.Document{}.Set("name", "x"), 1)) - 1
	saved := job.Save(job.Document{}.Set("name", strings.Repeat("x", bytes-base)), 1)
	require.Len(t, saved, bytes)
	return saved
}

// A file of 1 MB is taken; what an edit could have made no longer can be made
// smaller, but not larger, and what is kept can be read back.
func TestImportOfOneMegabyte(t *testing.T) {
	require.Equal(t, 1<<20, job.MaxSaved)
	s, _ := page.Start(nil, moment(tenOClock))
	over, effects := sent(s, tenOClock, "import", "", sized(t, job.MaxSaved)+"x")
	assert.Empty(t, effects)
	assert.Contains(t, over.Notice, "larger than 1 MB")

	s, effects = sent(s, tenOClock, "import", "", sized(t, job.MaxSaved))
	require.NotEmpty(t, effects)
	assert.Contains(t, s.Notice, "Imported")
	_, _, err := job.Load(effects[0].Kept())
	assert.NoError(t, err)

	more, effects := sent(s, tenOClock, "set", "currency", "EUR")
	assert.Empty(t, effects)
	assert.Equal(t, docOf(s), docOf(more))
	assert.Contains(t, more.Notice, "more than a job can hold")
	less, effects := sent(s, tenOClock, "set", "name", docOf(s).Get("name")[1:])
	assert.NotEmpty(t, effects)
	assert.Len(t, docOf(less).Get("name"), len(docOf(s).Get("name"))-1)

	back, _ := sent(s, tenOClock, "undo", "", "")
	assert.Empty(t, docOf(back).Get("name"))
}

// No cup is weighed that would carry the job over what can be read back.
func TestNoCupInAFullJob(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	s = warm(t, s, tenOClock)
	left := job.MaxSaved - len(job.Save(docOf(s), 1))
	for spare, fits := range map[int]bool{2_000: false, 20_000: true} {
		full := docOf(s).Set("name", strings.Repeat("x", left-spare))
		s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(full, 1)}, moment(tenOClock))
		require.True(t, s.Bench().HasDose)
		s, effects := sent(s, tenOClock, "weighed", "", "")
		assert.Equal(t, fits, len(page.OpenCups(s.Doc(), page.Weighed)) == 1)
		assert.Equal(t, !fits, strings.Contains(s.Notice, "log is full"), s.Notice)
		if fits {
			_, _, err := job.Load(effects[0].Kept())
			assert.NoError(t, err)
		}
	}
}

// ofLink is a job that just fits, or doesn't, in a link: its name is drawn, since
// nothing in it may begin as the line before.
func ofLink(letters int) job.Document {
	return job.Document{}.Set("name", strings.Repeat("x", letters))
}

// A link of 64 KB is made and read, one longer is neither.
func TestLinkOf64Kilobytes(t *testing.T) {
	require.Equal(t, 64<<10, page.MaxLink)
	fits := 0
	for letters := 48_000; letters < 50_000; letters++ {
		if _, err := page.Link(ofLink(letters), 1); err != nil {
			require.ErrorIs(t, err, page.ErrLinkTooLong)
			break
		}
		fits = letters
	}
	text, err := page.Link(ofLink(fits), 1)
	require.NoError(t, err)
	assert.Greater(t, len(text), page.MaxLink-4, "four letters more are a step of base 64")
	assert.LessOrEqual(t, len(text), page.MaxLink)
	back, err := page.ReadLink(text)
	require.NoError(t, err)
	assert.Len(t, back.Get("name"), fits)

	full := text + strings.Repeat("A", page.MaxLink-len(text))
	_, err = page.ReadLink(full)
	assert.NotErrorIs(t, err, page.ErrLinkTooLong, "64 KB are looked at")
	_, err = page.ReadLink(full + "A")
	assert.ErrorIs(t, err, page.ErrLinkTooLong)
}

// Six sizes of pack have a path each; a seventh is no field, and can't be typed.
func TestSixSizesOfPack(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	for n := 1; n <= 6; n++ {
		s, _ = sent(s, tenOClock, "set", "card.gelcoat.pack."+strconv.Itoa(n)+".size", strconv.Itoa(n))
	}
	assert.Len(t, s.Plan.Job.ShopByKey("gelcoat").Packs, 6)
	s, _ = sent(s, tenOClock, "set", "card.gelcoat.pack.7.size", "7")
	assert.Len(t, s.Plan.Job.ShopByKey("gelcoat").Packs, 6)
}
