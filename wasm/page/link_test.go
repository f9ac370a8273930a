package page_test

import (
	"encoding/base64"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

func TestLinkRoundTrip(t *testing.T) {
	docs := []job.Document{docOf(loggedDemo(t)), {}, job.Document{}.Set("name", "a\nb\\n\t\x00\xff é "+strings.Repeat("long ", 80))}
	for seed := range uint64(30) {
		docs = append(docs, jobtest.New(seed).Document())
	}
	for _, d := range docs {
		text, err := page.Link(d, 7)
		require.NoError(t, err)
		back, err := page.ReadLink("#" + text)
		require.NoError(t, err)
		require.Equal(t, d.Lines(), back.Lines())
		assert.Regexp(t, `^[A-Za-z0-9=._-]*$`, text, "nothing that an address would have to escape")
	}
	text, err := page.Link(docOf(loggedDemo(t)), 7)
	require.NoError(t, err)
	assert.Less(t, len(text), 5000, "the made-up job fits a message")
}

// No damage passes: any byte changed, left out or added, any end cut off.
func TestDamagedLinks(t *testing.T) {
	text, err := page.Link(docOf(loggedDemo(t)), 7)
	require.NoError(t, err)
	random := rand.New(rand.NewPCG(3, 4))
	const letters = "ABCXYZabcxyz0189-_"
	refused := func(damaged string) {
		t.Helper()
		if damaged != text {
			_, err := page.ReadLink(damaged)
			require.Error(t, err, damaged)
		}
	}
	for range 2000 {
		at, letter := len(page.LinkMark)+random.IntN(len(text)-len(page.LinkMark)), string(letters[random.IntN(len(letters))])
		refused(text[:at] + letter + text[at+1:])
		refused(text[:at] + text[at+1:])
		refused(text[:at] + letter + text[at:])
		refused(text[:at])
	}
	for _, other := range []string{"", "#", "#heading", "job=", "job=2." + text[len(page.LinkMark):], "job=1.!!", "job=1.AA", text + "="} {
		refused(other)
	}
}

// A short text must not become a flood, nor a long one be read at all.
func TestHugeLinks(t *testing.T) {
	_, err := page.ReadLink(page.LinkMark + strings.Repeat("A", page.MaxLink))
	assert.ErrorIs(t, err, page.ErrLinkTooLong)
	flood := "\x00" + strings.Repeat("x", 255) + "\n" + strings.Repeat("\xff\n", 20_000)
	_, err = page.ReadLink(page.LinkMark + base64.RawURLEncoding.EncodeToString([]byte(flood)))
	assert.ErrorIs(t, err, job.ErrTooLarge)
	var d job.Document
	for i := range 400 {
		d = d.Set("surface."+strconv.Itoa(i)+".name", strings.Repeat(strconv.Itoa(i*7919), 60))
	}
	_, err = page.Link(d, 1)
	assert.ErrorIs(t, err, page.ErrLinkTooLong)
	s, _ := page.Start(map[string]string{page.Prefix + "job.a": job.Save(d, 1)}, moment(tenOClock))
	s, effects := sent(s, tenOClock, "link", "", "")
	assert.Empty(t, effects)
	assert.Contains(t, s.Notice, "too large")
}

// A link is asked about and becomes a job of its own; its open cups are ended.
func TestOpenedLink(t *testing.T) {
	theirs := docOf(inUse(t, tenOClock)).Set("name", "Theirs").Set("surface", "1")
	text, err := page.Link(theirs, 3)
	require.NoError(t, err)
	s, _ := page.Start(nil, moment(tenOClock))
	s, _ = sent(s, tenOClock, "set", "name", "Mine")
	s, _ = sent(s, tenOClock, "opened", "", "#"+text)
	require.NotNil(t, s.Pending)
	assert.Contains(t, s.Pending.Asks[0], "Theirs")
	assert.Equal(t, "Mine", s.Doc().Get("name"))
	assert.Contains(t, shownText(s, "surfaces"), `data-do="take-job"`)
	left, _ := sent(s, tenOClock, "drop-job", "", "")
	assert.Nil(t, left.Pending)
	assert.Equal(t, "Mine", left.Doc().Get("name"))
	taken, _ := sent(s, tenOClock, "take-job", "", "")
	assert.Equal(t, "Theirs", taken.Doc().Get("name"))
	assert.Equal(t, page.Ended, page.CupPhase(taken.Doc(), "cup.1"))
	back, _ := sent(taken, tenOClock, "job-open", "1", "")
	assert.Equal(t, "Mine", back.Doc().Get("name"))

	again, _ := page.Link(taken.Doc(), 9)
	same, _ := sent(taken, tenOClock, "opened", "", again)
	assert.Nil(t, same.Pending, "the same job once more")
	assert.Contains(t, same.Notice, "Nothing was changed")

	busy := inUse(t, tenOClock)
	busy, _ = sent(busy, tenOClock, "opened", "", text)
	busy, _ = sent(busy, tenOClock, "take-job", "", "")
	assert.Equal(t, page.Running, page.CupPhase(busy.Doc(), "cup.1"), "a running cup is never replaced")

	demo, _ := sent(s, tenOClock, "demo", "", "")
	demo, _ = sent(demo, tenOClock, "opened", "", text)
	demo, _ = sent(demo, tenOClock, "take-job", "", "")
	assert.False(t, demo.InDemo, "it never lands in the made-up job")
	assert.Equal(t, "Theirs", demo.Doc().Get("name"))

	for _, bad := range []string{"#" + text[:len(text)-9], "#job=1.zz"} {
		s, _ := sent(s, tenOClock, "opened", "", bad)
		assert.Contains(t, s.Notice, "Nothing was changed")
	}
	quiet, _ := sent(left, tenOClock, "opened", "", "#heading")
	assert.Empty(t, quiet.Notice)
}

// A log that can't be is refused; one of the future is asked about; the same
// file twice changes nothing.
func TestOddFiles(t *testing.T) {
	s, _ := page.Start(nil, moment(tenOClock))
	base := docOf(loggedDemo(t))
	s, _ = sent(s, tenOClock, "import", "", job.Save(base.Set("cup.1.mixed", "-100 g"), 1))
	assert.Contains(t, s.Notice, "Nothing was changed")
	assert.Empty(t, s.Doc().Lines())
	ahead := job.Save(base.Set("cup.1.weighed", strconv.FormatInt(tenOClock+9*86400, 10)), 1)
	s, _ = sent(s, tenOClock, "import", "", ahead)
	require.NotNil(t, s.Pending)
	assert.Contains(t, s.Pending.Asks[0], "9 days into the future")
	assert.Empty(t, s.Doc().Lines())
	taken, _ := sent(s, tenOClock, "take-job", "", "")
	assert.Contains(t, shownText(func() *page.State { s, _ := sent(taken, tenOClock, "sheet", "cup.1", ""); return s }(), "log"), "this is in the future")
	s, _ = sent(s, tenOClock, "import", "", job.Save(base, 1))
	undo := len(s.Slot().Undo)
	s, _ = sent(s, tenOClock, "import", "", job.Save(base, 8))
	assert.Contains(t, s.Notice, "as it stands here")
	assert.Len(t, s.Slot().Undo, undo)
}

// A link of the first format still opens, to the job that it was made of.
func TestOldLinksOpen(t *testing.T) {
	link, err := os.ReadFile("../../testdata/saved/link-1.txt")
	require.NoError(t, err)
	saved, err := os.ReadFile("../../testdata/saved/format-1.txt")
	require.NoError(t, err)
	want, _, err := job.Load(string(saved))
	require.NoError(t, err)
	got, err := page.ReadLink(strings.TrimSpace(string(link)))
	require.NoError(t, err)
	assert.Equal(t, want.Lines(), got.Lines())
}

// docOf is for states that have no place of their own.
func docOf(s *page.State) job.Document { return s.Doc() }

// A place in a page is a short plain word, and nothing is said of it; all else is a link that somebody meant to hold a job, and
// one that doesn't is answered.
func TestAPlaceInAPageIsNoLink(t *testing.T) {
	for fragment, isPlace := range map[string]bool{
		"": true, "#": true, "#main": true, "#log-2": true, "#z9a0": true, "#" + strings.Repeat("a", 32): true, "#" + strings.Repeat("a", 33): false,
		"#Main": false, "#a_b": false, "#a=b": false, "#ä": false, "#job%3D": false,
	} {
		s, _ := page.Start(nil, noon)
		s = do(s, "opened", "", fragment)
		assert.Equal(t, isPlace, s.Notice == "", "%q: %s", fragment, s.Notice)
		assert.Nil(t, s.Pending, fragment)
	}
}
