package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
)

func step(t *testing.T, s page.State, kept map[string]string, messages ...page.Message) page.State {
	t.Helper()
	for _, m := range messages {
		var effects []page.Effect
		s, effects = page.Update(s, m)
		store(kept, effects)
	}
	return s
}

func TestUndoOutlivesAReload(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	s = step(t, s, kept, page.Message{Verb: "add", Path: "surface"}, page.Message{Verb: "set", Path: "surface.1.length", Text: "2.4 m"},
		page.Message{Verb: "set", Path: "surface.1.name", Text: "a\tb\\c\nd"}, page.Message{Verb: "undo"})
	again, _ := start(t, kept)
	require.Equal(t, s.Doc(), again.Doc())
	again = step(t, again, kept, page.Message{Verb: "redo"})
	assert.Equal(t, "a\tb\\c\nd", again.Doc().Get("surface.1.name"))
	again = step(t, again, kept, page.Message{Verb: "undo"}, page.Message{Verb: "undo"}, page.Message{Verb: "undo"})
	assert.Empty(t, again.Doc().Lines())
	again = step(t, again, kept, page.Message{Verb: "undo"})
	assert.Empty(t, again.Doc().Lines())
}

func TestAHistoryOfAnotherSaveIsNotTaken(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	step(t, s, kept, page.Message{Verb: "add", Path: "surface"})
	key := page.Prefix + "job.history"
	kept[key] = strings.Replace(kept[key], "1\n", "7\n", 1)
	again, _ := start(t, kept)
	assert.Empty(t, again.Own.Undo)
}

func TestTwoTabsDontOverwriteEachOther(t *testing.T) {
	mine, theirs := map[string]string{}, map[string]string{}
	s, _ := start(t, mine)
	s = step(t, s, mine, page.Message{Verb: "add", Path: "surface"})
	other, _ := start(t, mine)
	other = step(t, other, theirs, page.Message{Verb: "set", Path: "surface.1.name", Text: "theirs"})
	var key string
	for k, text := range theirs {
		if _, _, err := job.Load(text); err == nil {
			key = k
		}
	}
	s = step(t, s, mine, page.Message{Verb: "elsewhere", Path: key, Text: theirs[key]})
	before := len(mine)
	keptBefore := mine[key]
	s = step(t, s, mine, page.Message{Verb: "set", Path: "surface.1.name", Text: "mine"})
	assert.Equal(t, keptBefore, mine[key], "nothing is kept until the builder chooses")
	assert.Len(t, mine, before)

	taken := step(t, s, map[string]string{}, page.Message{Verb: "theirs"})
	assert.Equal(t, other.Doc(), taken.Doc())
	kept := step(t, s, mine, page.Message{Verb: "mine"})
	assert.Equal(t, "mine", kept.Doc().Get("surface.1.name"))
	assert.Greater(t, kept.Own.Revision, other.Own.Revision, "the next start finds the chosen one")
}

func TestNoNewVersionUnderAnOpenCup(t *testing.T) {
	s, _ := start(t, map[string]string{})
	s = step(t, s, map[string]string{}, page.Message{Verb: "newer"})
	assert.True(t, s.Newer)
	_, effects := page.Update(s, page.Message{Verb: "switch"})
	assert.Equal(t, []page.Effect{{Kind: page.Switch}}, effects)
	s.Own.Doc = s.Own.Doc.Set("cup", "1").Set("cup.1.weighed", "5")
	s, effects = page.Update(s, page.Message{Verb: "switch"})
	assert.Empty(t, effects)
	assert.NotEmpty(t, s.Notice)
}

func TestAJobThatCantBeShownIsSetAside(t *testing.T) {
	kept := map[string]string{}
	s, _ := start(t, kept)
	step(t, s, kept, page.Message{Verb: "add", Path: "surface"}, page.Message{Verb: "add", Path: "surface"})
	s, effects := page.StartAside(kept, page.Moment{Date: "2026-06-01"})
	assert.Empty(t, s.Doc().Lines())
	assert.Len(t, s.Aside, 2, "both copies")
	store(kept, effects)
	again, _ := start(t, kept)
	assert.Empty(t, again.Doc().Lines())
	assert.Len(t, again.Aside, 2)
}
