package page_test

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

type held = map[string]string

// startsAlone is a page that has started from what the quick store holds, which it goes on with.
func startsAlone(t *testing.T, quick held) (*page.State, held) {
	t.Helper()
	kept := page.Merge(quick, nil)
	s, effects := start(t, kept)
	store(kept, effects)
	return step(t, s, kept, page.Message{Verb: "behind"}), kept
}

// A durable store that comes late with something newer: it is shown at once where nothing was changed meanwhile.
func TestWhatCameLateIsShown(t *testing.T) {
	away := page.Prefix + "away.2.a"
	durable := held{keyA: saved("Two", 2), keyB: saved("Three", 3), away: saved("Punt", 4)}
	for what, quick := range map[string]held{"older": {keyA: saved("Two", 2)}, "lost": {}, "not to be read": nil} {
		s, kept := startsAlone(t, quick)
		assert.Contains(t, view.Page(s).String(), words.Behind, what)
		s, effects := page.Late(s, quick, durable)
		store(kept, effects)
		assert.Equal(t, "Three", s.Doc().Get("name"), what)
		assert.Equal(t, words.CameLate, s.Notice, what)
		assert.NotContains(t, view.Page(s).String(), words.Behind, what)
		assert.Equal(t, durable[away], s.Away[away], what)
		again, _ := start(t, kept)
		assert.Equal(t, "Three", again.Doc().Get("name"), "%s: kept too", what)
		assert.Greater(t, again.Own.Revision, 3, what)
	}
}

// What the page has newer stays, and nothing is said.
func TestNothingNewCameLate(t *testing.T) {
	quick := held{keyA: saved("Four", 4)}
	for what, durable := range map[string]held{"older": {keyB: saved("Three", 3)}, "the same": quick, "empty": {}, "spoilt": {keyB: "broken"}} {
		s, _ := startsAlone(t, quick)
		s = do(s, "set", "name", "Five")
		s, effects := page.Late(s, quick, durable)
		assert.Equal(t, "Five", s.Doc().Get("name"), what)
		assert.Empty(t, s.Own.Elsewhere, what)
		assert.Empty(t, s.Notice, what)
		assert.Empty(t, changing(effects), what)
	}
}

// Where both have gone on, what was typed is kept over the other, and the builder chooses.
func TestTwoStatesThatBothWentOn(t *testing.T) {
	quick, durable := held{keyA: saved("Two", 2)}, held{keyA: saved("Eight", 8), keyB: saved("Nine", 9)}
	s, kept := startsAlone(t, quick)
	s = step(t, s, kept, page.Message{Verb: "set", Path: "name", Text: "Typed"})
	s, effects := page.Late(s, quick, durable)
	disk := maps.Clone(durable)
	maps.Copy(disk, kept)
	store(disk, effects)
	assert.Equal(t, "Typed", s.Doc().Get("name"))
	assert.Contains(t, view.Page(s).String(), words.NewerCame)
	again, _ := start(t, page.Merge(disk, disk))
	assert.Equal(t, "Typed", again.Doc().Get("name"), "an end of the browser before the choice loses nothing typed")

	theirs := do(s, "theirs", "", "")
	assert.Equal(t, "Nine", theirs.Doc().Get("name"))
	mine := step(t, s, disk, page.Message{Verb: "mine"})
	assert.NotContains(t, view.Page(mine).String(), words.NewerCame)
	again, _ = start(t, page.Merge(disk, disk))
	assert.Equal(t, "Typed", again.Doc().Get("name"))
}

// A cup that was weighed gets no dose from what came late: its catalyst may be in. One that runs goes on.
func TestNoDoseComesLate(t *testing.T) {
	durable := held{}
	s := weighedCup(t, durable)
	require.NotEmpty(t, durable[keyPermit])
	for _, typed := range []string{"", "Typed"} {
		late, _ := startsAlone(t, held{})
		if typed != "" {
			late = do(late, "set", "name", typed)
		}
		late, _ = page.Late(late, held{}, durable)
		if typed != "" {
			late = do(late, "theirs", "", "")
		}
		_, may := late.DoseFor()
		assert.False(t, may && len(page.OpenCups(late.Doc(), page.Weighed)) > 0, typed)
		assert.True(t, late.LastMayHaveCatalyst(), typed)
	}
	step(t, s, durable, catalystIn())
	late, _ := startsAlone(t, held{})
	late, effects := page.Late(late, held{}, durable)
	assert.Len(t, page.OpenCups(late.Doc(), page.Running), 1)
	assert.Contains(t, effects, page.Effect{Kind: page.Timer, Key: "on"})
}

// What a newer version of the page has kept isn't touched, not when it comes late.
func TestWhatANewerVersionKeptComesLate(t *testing.T) {
	s, _ := startsAlone(t, held{keyA: saved("Two", 2)})
	s, effects := page.Late(s, held{keyA: saved("Two", 2)}, held{keyB: savedBy(job.Format+1, "Newer", 7)})
	assert.True(t, s.IsKeptByNewer())
	assert.Empty(t, changing(effects))
	_, effects = page.Update(s, page.Message{Verb: "set", Path: "name", Text: "x"})
	assert.Empty(t, changing(effects))
}

// A clock that may not outlive the browser says so, until the disk has it.
func TestAClockThatMayNotBeKeptSaysSo(t *testing.T) {
	const said = "This clock may be lost"
	s := weighedCup(t, held{})
	s, _ = page.Update(do(s, "go", "cup", ""), catalystIn())
	assert.NotContains(t, view.Page(s).String(), said)
	s = do(s, "unsettled", "", "")
	assert.Contains(t, view.Page(s).String(), said)
	s = do(s, "settled", "", "")
	assert.NotContains(t, view.Page(s).String(), said)
}
