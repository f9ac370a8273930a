package page_test

import (
	"maps"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

// weighedCup is a page and its store with a cup weighed and its dose shown.
func weighedCup(t *testing.T, kept map[string]string) *page.State {
	t.Helper()
	s, _ := start(t, kept)
	at := page.Moment{Unix: 1000, Day: 36000, Date: "2026-06-01"}
	for _, line := range []string{
		"bench.now.card=gelcoat", "bench.now.amount=100 g", "bench.now.product-temp=25", "bench.now.surface-temp=25", "bench.now.scale-step=0.1 g",
		"day.today.low=17", "day.today.high=29", "day.today.read-temp=24", "day.today.read-humidity=55",
	} {
		path, text, _ := strings.Cut(line, "=")
		s = step(t, s, kept, page.Message{Verb: "set", Path: path, Text: text, At: at})
	}
	s = step(t, s, kept, page.Message{Verb: "weighed", At: at})
	cup, may := s.DoseFor()
	require.Equal(t, "cup.1", cup)
	require.True(t, may)
	return s
}

func catalystIn() page.Message {
	return page.Message{Verb: "in", Path: "cup.1", At: page.Moment{Unix: 1060, Day: 36060, Date: "2026-06-01"}}
}

// noDoseAfterReload starts twice on a store: the second start finds what the
// first one kept.
func noDoseAfterReload(t *testing.T, name string, kept map[string]string) {
	t.Helper()
	for range 2 {
		s, effects := start(t, kept)
		cup, may := s.DoseFor()
		assert.False(t, cup != "" && may, "%s: dose given again", name)
		assert.Empty(t, page.OpenCups(s.Doc(), page.Weighed), name)
		store(kept, effects)
	}
}

func TestAWeighedCupKeepsItsDoseOverAReload(t *testing.T) {
	kept := map[string]string{}
	weighedCup(t, kept)
	again, _ := start(t, kept)
	assert.Len(t, page.OpenCups(again.Doc(), page.Weighed), 1)
}

func TestALostSaveNeverGivesADoseBack(t *testing.T) {
	kept := map[string]string{}
	s := weighedCup(t, kept)
	full := maps.Clone(kept)
	s, effects := page.Update(s, catalystIn())
	require.Equal(t, page.Running, page.CupPhase(s.Doc(), "cup.1"))
	store(kept, effects)
	newest := page.Prefix + "job." + []string{"a", "b"}[s.Own.Revision%2]
	_, revision, err := job.Load(kept[newest])
	require.NoError(t, err)
	require.Equal(t, s.Own.Revision, revision)

	for name, text := range map[string]string{"damaged": strings.Replace(kept[newest], "1060", "1061", 1), "cut": kept[newest][:40], "empty": ""} {
		broken := maps.Clone(kept)
		broken[newest] = text
		noDoseAfterReload(t, name, broken)
	}
	gone := maps.Clone(kept)
	delete(gone, newest)
	noDoseAfterReload(t, "gone", gone)

	for _, e := range effects { // a full store refuses every save, and lets go of a key
		if e.Kind == page.Forget || e.Kind == page.Revoke {
			delete(full, e.Key)
		}
	}
	noDoseAfterReload(t, "refused", full)

	again, _ := start(t, kept)
	assert.Len(t, page.OpenCups(again.Doc(), page.Running), 1, "with both copies the clock goes on")
}

func TestAnotherTabsDoseIsNotGivenAgain(t *testing.T) {
	kept := map[string]string{}
	mine := weighedCup(t, kept)
	theirs := step(t, mine, kept, catalystIn())
	key := page.Prefix + "job." + []string{"a", "b"}[theirs.Own.Revision%2]
	mine = step(t, mine, map[string]string{}, page.Message{Verb: "elsewhere", Path: key, Text: kept[key]})
	_, may := mine.DoseFor()
	assert.False(t, may, "until the builder has chosen a tab")
	mine = step(t, mine, map[string]string{}, catalystIn())
	assert.NotEqual(t, page.Running, page.CupPhase(mine.Doc(), "cup.1"))
	mine = step(t, mine, kept, page.Message{Verb: "mine"})
	assert.Empty(t, page.OpenCups(mine.Doc(), page.Weighed))
	noDoseAfterReload(t, "mine "+strconv.Itoa(mine.Own.Revision), kept)
}
